// The text of a step: paragraphs, lists and notes of an MDX tree, as plain blocks; what else it holds is a fault.
import type { Nodes, Paragraph, Parents, PhrasingContent } from 'mdast';
import { nearestName } from '../farm/nearest.ts';
import { attributesOf, type FlowElement, type JsxElement, type TextElement } from './lessonAttributes.ts';
import { meant } from './lessonHead.ts';
import type { Found, LessonKnown, Piece, WrittenBlock } from './lessonParts.ts';

/** Components that a lesson may use. */
export const COMPONENTS = ['Step', 'Note', 'Figure', 'Farm'];

/** What is known while a lesson is read, and the faults found so far. */
export interface Reading {
  readonly known: LessonKnown;
  readonly faults: Found[];
}

type Marks = { readonly strong?: true; readonly emphasis?: true };

/** The place of a node in the file. */
export function placeOf(node: Nodes | JsxElement): { line: number; column: number } {
  const { line, column } = node.position?.start ?? { line: 1, column: 1 };
  return { line, column };
}

/** The blocks inside a step. */
export function blocksIn(reading: Reading, parent: Parents): WrittenBlock[] {
  return (parent.children as Nodes[]).flatMap((node): WrittenBlock[] => {
    if (node.type === 'paragraph')
      return notesIn(reading, node) ?? [{ is: 'paragraph', pieces: piecesIn(reading, node.children) }];
    if (node.type === 'list') {
      const lines = node.children.map((line) => listLine(reading, line.children));
      return [{ is: 'list', ordered: node.ordered === true, lines }];
    }
    if (node.type === 'mdxJsxFlowElement') return elementBlock(reading, node);
    reading.faults.push({ ...placeOf(node), text: notAllowed(node) });
    return [];
  });
}

function elementBlock(reading: Reading, node: FlowElement): WrittenBlock[] {
  if (node.name === 'Note') {
    attributesOf(reading.faults, node, {});
    return noteBlocks(reading, node);
  }
  if (node.name === 'Figure' || node.name === 'Farm')
    return [{ is: 'paragraph', pieces: piecesIn(reading, [node as unknown as PhrasingContent]) }];
  reading.faults.push({ ...placeOf(node), text: wrongComponent(node.name, 'a step') });
  return [];
}

/** A line of nothing but notes is no paragraph: MDX takes `<Note>…</Note>` on one line for text. */
function notesIn(reading: Reading, { children }: Paragraph): WrittenBlock[] | null {
  const full = children.filter((child) => !(child.type === 'text' && child.value.trim() === ''));
  const notes = full.filter(
    (child): child is TextElement => child.type === 'mdxJsxTextElement' && child.name === 'Note',
  );
  if (notes.length === 0 || notes.length < full.length) return null;
  return notes.map((note) => {
    attributesOf(reading.faults, note, {});
    return { is: 'note', pieces: piecesIn(reading, note.children) };
  });
}

function noteBlocks(reading: Reading, note: FlowElement): WrittenBlock[] {
  if (note.children.length === 0)
    reading.faults.push({ ...placeOf(note), text: 'this <Note> is empty; write it or take it out.' });
  return note.children.flatMap((node): WrittenBlock[] => {
    if (node.type === 'paragraph') return [{ is: 'note', pieces: piecesIn(reading, node.children) }];
    const text = 'a note is made of paragraphs; write this as sentences, or move it out of the <Note>.';
    reading.faults.push({ ...placeOf(node), text });
    return [];
  });
}

function listLine(reading: Reading, children: readonly Nodes[]): Piece[] {
  const [first, ...others] = children;
  const wrong = first?.type === 'paragraph' ? others[0] : first;
  if (wrong)
    reading.faults.push({
      ...placeOf(wrong),
      text: 'a line of a list is one paragraph; lists in lists and more paragraphs are not for lessons.',
    });
  return first?.type === 'paragraph' ? piecesIn(reading, first.children) : [];
}

function piecesIn(reading: Reading, nodes: readonly PhrasingContent[], marks: Marks = {}): Piece[] {
  return nodes.flatMap((node): Piece[] => {
    const { line } = placeOf(node);
    if (node.type === 'text')
      return node.value.split('\n').map((text, index, all) => ({
        is: 'text',
        // A line that runs on in the next one is parted from it by a space.
        text: index < all.length - 1 ? `${text.trimEnd()} ` : text,
        line: line + index,
        ...marks,
      }));
    if (node.type === 'strong') return piecesIn(reading, node.children, { ...marks, strong: true });
    if (node.type === 'emphasis') return piecesIn(reading, node.children, { ...marks, emphasis: true });
    if (node.type === 'mdxJsxTextElement') return elementPiece(reading, node, marks);
    // The element of a line of its own has another type, and the same fields.
    if ((node as { type: string }).type === 'mdxJsxFlowElement')
      return elementPiece(reading, node as unknown as TextElement, marks);
    reading.faults.push({ ...placeOf(node), text: notAllowed(node) });
    return [];
  });
}

function elementPiece(reading: Reading, node: TextElement, marks: Marks): Piece[] {
  const { line, column } = placeOf(node);
  const { faults, known } = reading;
  if (node.name !== 'Figure' && node.name !== 'Farm') {
    const text =
      node.name === 'Note'
        ? 'a <Note> stands apart: put an empty line before and after it.'
        : wrongComponent(node.name, 'a text');
    faults.push({ line, column, text });
    return [];
  }
  if (node.children.length > 0) {
    const text = `<${node.name}> holds no text; write it as <${node.name} … />.`;
    faults.push({ line, column, text });
  }
  if (node.name === 'Farm') {
    attributesOf(faults, node, {});
    return [{ is: 'farm', line, ...marks }];
  }
  const given = attributesOf(faults, node, { id: 'needed', otherwise: 'needed' });
  if (given['id']) {
    const told = figureFault(given['id'].value, known.figures);
    if (told) faults.push({ ...given['id'].place, text: told });
  }
  return [
    {
      is: 'figure',
      id: given['id']?.value ?? '',
      otherwise: given['otherwise']?.value ?? '',
      line,
      ...marks,
    },
  ];
}

function figureFault(id: string, figures: readonly string[]): string | null {
  const herd = figures.filter((one) => one.startsWith('herd.'));
  if (herd.includes(id)) return null;
  if (id.startsWith('doe.'))
    return `"${id}" belongs to one doe, and a lesson is shared by all farms; there are ${herd.join(', ')}.`;
  return `there is no figure "${id}"; ${meant(id, herd)}`;
}

/** What to do about a component that does not belong. */
export function wrongComponent(name: string | null, where: string): string {
  if (name !== null && COMPONENTS.includes(name)) return `<${name}> does not belong into ${where}; move it.`;
  const near = name === null ? null : nearestName(name, COMPONENTS);
  const told = near ? `did you mean <${near}>?` : `there are <Step>, <Note>, <Figure> and <Farm>.`;
  return `there is no component <${name ?? ''}>; ${told}`;
}

const NAMES: Readonly<Record<string, string>> = {
  heading: 'a heading; the title of a step stands in its "title"',
  link: 'a link',
  image: 'a picture',
  code: 'a block of code; take out the spaces or marks before it',
  inlineCode: 'code marks (`)',
  blockquote: 'a quotation block (">")',
  thematicBreak: 'a line across',
  break: 'a forced line break',
  definition: 'a link',
  mdxjsEsm: 'an import or export',
  mdxFlowExpression: 'an expression in braces; write "\\{" for a brace that is text',
  mdxTextExpression: 'an expression in braces; write "\\{" for a brace that is text',
};

/** Says that a kind of mark is not for lessons. */
export function notAllowed(node: { readonly type: string }): string {
  const told = NAMES[node.type] ?? `a mark of the kind "${node.type}"`;
  return `lessons have no place for ${told}. A text is paragraphs, lists, **strong** and *emphasis*.`;
}
