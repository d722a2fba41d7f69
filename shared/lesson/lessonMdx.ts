// Writes a lesson from the bench as a file that content/lessons takes.
import { bandOfGrade } from '../tasks/standards.ts';
import { planHead } from './planHead.ts';
import type { PlannedStep } from './pool.ts';
import type { Material } from './types.ts';
import type { Wish } from './wish.ts';

/**
 * The text of a lesson file: head and steps in their order, each with its minutes on the bench and its text as it was
 * written. A name that two lessons give to a step gets a number. Reading it gives the same steps.
 */
export function lessonMdx(title: string, steps: readonly PlannedStep[], wish: Wish): string {
  const { aims, standards, words, materials, cautions } = planHead(steps, wish.children, wish.place);
  const names = stepNames(steps);
  const head = [
    `title: ${quoted(title)}`,
    `band: ${bandOfGrade(wish.grade)}`,
    `place: ${wish.place}`,
    ...list('aims', aims.map(quoted)),
    `standards: [${standards.join(', ')}]`,
    ...list('words', words.map(({ word, means }) => `{ word: ${quoted(word)}, means: ${quoted(means)} }`)), // prettier-ignore
    ...list('materials', once(materials).map(materialLine)),
    `cautions: [${cautions.join(', ')}]`,
  ];
  const parts = steps.map((one, index) => stepText(one, names[index] ?? ''));
  return `---\n${head.join('\n')}\n---\n\n${parts.join('\n\n')}\n`;
}

function stepText({ step, minutes }: PlannedStep, name: string): string {
  const { title, kind, sheet, least, most, topics, must, source } = step;
  const pairs = { name, title, kind, ...(sheet === null ? {} : { sheet }), minutes, least, most, topics: topics.join(' ') }; // prettier-ignore
  const attributes = Object.entries(pairs).map(([key, value]) => `${key}="${escaped(String(value))}"`);
  return `<Step ${attributes.join(' ')}${must ? ' must' : ''}>\n\n${source.trim()}\n\n</Step>`;
}

/** The names of the steps in their files, each once. */
function stepNames(steps: readonly PlannedStep[]): string[] {
  const names: string[] = [];
  for (const { step } of steps) {
    const own = step.id.slice(step.id.indexOf('.') + 1);
    let name = own;
    for (let number = 2; names.includes(name); number += 1) name = `${own}-${number}`;
    names.push(name);
  }
  return names;
}

function materialLine({ what, count, per, groupOf }: Material): string {
  const group = groupOf === null ? '' : `, groupOf: ${groupOf}`;
  return `{ what: ${quoted(what)}, count: ${count}, per: ${per}${group} }`;
}

/** The same thing with the same number, once. */
function once(materials: readonly Material[]): Material[] {
  const lines = materials.map(materialLine);
  return materials.filter((_, index) => lines.indexOf(lines[index] ?? '') === index);
}

const list = (name: string, lines: readonly string[]) =>
  lines.length === 0 ? [`${name}: []`] : [`${name}:`, ...lines.map((line) => `  - ${line}`)];

/** A text between quotation marks, as YAML and JSON both read it. */
const quoted = (text: string) => JSON.stringify(text);

/** A text between the quotation marks of an attribute. */
const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
