// The body of a lesson: MDX text to steps, with every fault and its place.
import type { Root } from 'mdast';
import remarkMdx from 'remark-mdx';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { STEP_KINDS, type StepKind } from '../../shared/lesson/types.ts';
import { TOPICS } from '../../shared/lesson/topics.ts';
import type { Band } from '../../shared/quantity/grade.ts';
import { isPlainName } from './contentFiles.ts';
import { attributesOf, type Asked, type FlowElement, type Given } from './lessonAttributes.ts';
import { blocksIn, notAllowed, placeOf, wrongComponent, type Reading } from './lessonBlocks.ts';
import { meant } from './lessonHead.ts';
import type { Found, LessonKnown, WrittenStep } from './lessonParts.ts';

const LONGEST_STEP_min = 120;
const ASKED: Readonly<Record<string, Asked>> = {
  name: 'needed',
  title: 'needed',
  kind: 'needed',
  minutes: 'needed',
  least: 'needed',
  most: 'needed',
  topics: 'needed',
  sheet: 'optional',
  must: 'flag',
};

/** Reads the text below the head, which begins on `bodyLine`. `band` is null where the head has none that holds. */
export function readSteps(
  body: string,
  bodyLine: number,
  band: Band | null,
  known: LessonKnown,
): { steps: readonly WrittenStep[]; faults: readonly Found[] } {
  // Empty lines for the head, so that every place is the file's own.
  const text = `${'\n'.repeat(bodyLine - 1)}${body}`;
  let tree: Root;
  try {
    tree = unified().use(remarkParse).use(remarkMdx).parse(text);
  } catch (error) {
    return { steps: [], faults: [brokenText(error, bodyLine)] };
  }
  const reading: Reading = { known, faults: [] };
  const steps = tree.children.flatMap((node): WrittenStep[] => {
    if (node.type === 'mdxJsxFlowElement' && node.name === 'Step') return [stepOf(reading, node, text, band)];
    const told =
      node.type === 'mdxJsxFlowElement'
        ? wrongComponent(node.name, 'the lesson outside a step')
        : node.type === 'paragraph' || node.type === 'list'
          ? 'this text stands outside a step; put it into a <Step>, between its first and its last line.'
          : notAllowed(node);
    reading.faults.push({ ...placeOf(node), text: told });
    return [];
  });
  if (!tree.children.some((node) => node.type === 'mdxJsxFlowElement'))
    reading.faults.push({
      line: bodyLine,
      column: null,
      text: 'the lesson has no step; below its head stand <Step …> and </Step> with the text of the step between.',
    });
  for (const [index, step] of steps.entries())
    if (step.name !== '' && steps.findIndex(({ name }) => name === step.name) < index)
      reading.faults.push({
        line: step.line,
        column: null,
        text: `there is a step "${step.name}" already; give this one another name.`,
      });
  return { steps, faults: reading.faults };
}

function stepOf(reading: Reading, node: FlowElement, text: string, band: Band | null): WrittenStep {
  const { faults } = reading;
  const given = attributesOf(faults, node, ASKED);
  const at = (one: Given | undefined, told: string) =>
    void faults.push({ ...(one?.place ?? placeOf(node)), text: told });
  const { name, title, kind, topics, sheet } = given;
  if (name && !isPlainName(name.value))
    at(name, `a step's name is made of small letters a to z, numbers and "-"; "${name.value}" is not.`);
  if (kind && !STEP_KINDS.some((one) => one === kind.value))
    at(kind, `there is no kind of step "${kind.value}"; ${meant(kind.value, STEP_KINDS)}`);
  const about = topics?.value.split(/[\s,]+/).filter((one) => one !== '') ?? [];
  for (const one of about)
    if (!TOPICS.includes(one)) at(topics, `there is no topic "${one}"; ${meant(one, TOPICS)}`);
  checkSheet(reading, given, band, at);
  const { minutes, least, most } = times(faults, given);
  const blocks = blocksIn(reading, node);
  if (blocks.length === 0) at(undefined, 'this step has no text; write what is said, or take it out.');
  return {
    name: name?.value ?? '',
    line: placeOf(node).line,
    title: title?.value ?? '',
    kind: (kind?.value ?? 'talk') as StepKind,
    minutes,
    least,
    most,
    topics: about,
    must: 'must' in given,
    sheet: sheet?.value ?? null,
    blocks,
    source: sourceOf(node, text),
  };
}

function checkSheet(
  { known }: Reading,
  { kind, sheet }: Record<string, Given>,
  band: Band | null,
  at: (one: Given | undefined, told: string) => void,
): void {
  if (!sheet) {
    if (kind?.value === 'sheet') at(kind, 'a step of kind "sheet" hands one out: add sheet="NAME".');
    return;
  }
  if (kind && kind.value !== 'sheet' && STEP_KINDS.some((one) => one === kind.value))
    at(sheet, 'only a step of kind="sheet" hands out a sheet.');
  const found = known.sheets.find(({ name }) => name === sheet.value);
  const fitting = known.sheets
    .filter((one) => band === null || (one.band ?? band) === band)
    .map(({ name }) => name);
  if (!found)
    at(sheet, `there is no sheet "${sheet.value}"${band ? ` for ${band}` : ''}; ${meant(sheet.value, fitting)}`); // prettier-ignore
  else if (band !== null && found.band !== null && found.band !== band)
    at(sheet, `the sheet "${sheet.value}" is for ${found.band}, and the lesson for ${band}; there are ${fitting.join(', ')}.`); // prettier-ignore
}

function times(faults: Found[], given: Record<string, Given>) {
  const read = (name: 'minutes' | 'least' | 'most'): number | null => {
    const one = given[name];
    if (!one) return null;
    const number = /^\d{1,3}$/.test(one.value) ? Number(one.value) : 0;
    if (number >= 1 && number <= LONGEST_STEP_min) return number;
    const text = `${name}="${one.value}": a whole number of minutes from 1 to ${LONGEST_STEP_min} stands here.`;
    faults.push({ ...one.place, text });
    return null;
  };
  const [minutes, least, most] = [read('minutes'), read('least'), read('most')];
  const inOrder = (less: number | null, more: number | null) =>
    less === null || more === null || less <= more;
  if (!(inOrder(least, minutes) && inOrder(minutes, most) && inOrder(least, most)))
    faults.push({
      ...(given['minutes'] ?? given['least'] ?? given['most'])!.place,
      text: `the times are not in order: least (${least}) is at most minutes (${minutes}), and minutes at most most (${most}).`,
    });
  return { minutes: minutes ?? 1, least: least ?? 1, most: most ?? 1 };
}

/** The text between the first and the last line of a step, as written. */
function sourceOf({ children }: FlowElement, text: string): string {
  const start = children[0]?.position?.start;
  const end = children.at(-1)?.position?.end;
  if (start?.offset === undefined || end?.offset === undefined) return '';
  const indent = new RegExp(`^ {0,${start.column - 1}}`);
  return text
    .slice(start.offset, end.offset)
    .split('\n')
    .map((line, index) => (index === 0 ? line : line.replace(indent, '')))
    .join('\n');
}

function brokenText(error: unknown, bodyLine: number): Found {
  const { line, column, reason } = error as { line?: number; column?: number; reason?: string };
  if (reason === undefined) throw error;
  // Where the message has no place of its own it tells that of the opening line.
  const told = /\((\d+):(\d+)/.exec(reason);
  const place = line === undefined && told ? { line: Number(told[1]), column: Number(told[2]) } : null;
  return {
    line: place?.line ?? line ?? bodyLine,
    column: place?.column ?? column ?? null,
    text:
      `the text cannot be read here: ${reason.replace(/ \(note that.*$/, '')}. Each <Step> and <Note> is closed by </Step> and </Note>, ` +
      'with an empty line around its text; "\\<" and "\\{" write these signs as text.',
  };
}
