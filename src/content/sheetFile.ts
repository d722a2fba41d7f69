// Reads one sheet of content/sheets: a head, and below it tasks ("- count-cups") with text between.
import * as z from 'zod';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { WHENS, type SheetPlan, type SheetText, type When } from '../../shared/sheet/plan.ts';
import { kindNamed, kindsOf, TASK_KINDS } from '../../shared/tasks/kinds.ts';
import { nearestName } from '../farm/nearest.ts';
import type { ContentFault } from './contentFault.ts';
import { readHead } from './frontMatter.ts';
import { oneOf, standardFault, text, wholeNumber } from './headFields.ts';

/** A sheet in one language, as written: figures still stand in braces. */
export interface SheetFile {
  readonly file: string;
  readonly plan: SheetPlan;
  readonly title: string;
  readonly about: string;
  readonly materials: readonly string[];
  readonly texts: readonly SheetText[];
  /** Line of each task, for faults that compare languages. */
  readonly taskLines: readonly number[];
}

/** A sheet, or everything that is wrong with it. */
export type SheetReading =
  | { readonly ok: true; readonly sheet: SheetFile }
  | { readonly ok: false; readonly faults: readonly ContentFault[] };

const shape = z.strictObject({
  title: text.describe('What stands in large letters on the sheet.'),
  band: oneOf<Band>(BANDS).describe('The grade band.'),
  when: oneOf<When>(WHENS).describe('Before the visit, at the farm, or after it.'),
  minutes: wholeNumber(3, 120).describe('How long a class takes.'),
  about: text.describe('One or two sentences for the teacher who chooses.'),
  materials: z.array(text, 'a list stands here').default([]).describe('What each child needs.'),
  standards: z
    .array(text, 'a list of codes stands here')
    .default([])
    .describe('Standards beside those of the tasks.'),
});

const TASK_LINE = /^[-*]\s+(.*?)\s*$/;
/** A figure in a text: `{herd.week.total}`. */
export const FIGURE_SLOT = /\{\s*([^{}]*?)\s*\}/g;

/** Reads one sheet. `figures` are the ids that a text may name. */
export function readSheetFile(
  file: string,
  name: string,
  written: string,
  figures: readonly string[],
): SheetReading {
  const reading = readHead(file, written, shape);
  // What stands below a faulty head is looked at all the same, so that everything is told at once.
  const parts = reading.body === null ? [] : partsOf(reading.body, reading.bodyLine);
  const tasks = parts.filter((part) => part.is === 'task');
  const faults = [
    ...(reading.ok ? standardFaults(file, reading.head, reading.lineOf) : reading.faults),
    ...taskFaults(file, reading.ok ? reading.head.band : null, tasks),
    ...parts.flatMap((part) => (part.is === 'text' ? figureFaults(file, part, figures) : [])),
  ];
  if (tasks.length === 0 && reading.body !== null)
    faults.push({
      file,
      line: reading.bodyLine,
      column: null,
      text: 'the sheet has no task; below its head each task stands on a line of its own, as "- count-cups".',
    });
  if (faults.length > 0 || !reading.ok) return { ok: false, faults };
  const { title, about, materials, ...plan } = reading.head;
  let place = 0;
  const texts = parts.flatMap((part): SheetText[] => {
    if (part.is === 'text') return [{ before: place, text: part.text }];
    place += 1;
    return [];
  });
  return {
    ok: true,
    sheet: {
      file,
      plan: { name, ...plan, tasks: tasks.map((task) => task.text) },
      title,
      about,
      materials,
      texts,
      taskLines: tasks.map(({ line }) => line),
    },
  };
}

interface Part {
  readonly is: 'task' | 'text';
  readonly text: string;
  readonly line: number;
}

/** Tasks and paragraphs in order; the lines of a paragraph run on until an empty line or a task. */
function partsOf(body: string, bodyLine: number): Part[] {
  const parts: Part[] = [];
  let open = false;
  body.split('\n').forEach((raw, index) => {
    const line = bodyLine + index;
    const task = TASK_LINE.exec(raw.trim());
    const last = parts.at(-1);
    if (task) parts.push({ is: 'task', text: task[1] ?? '', line });
    else if (raw.trim() !== '') {
      if (open && last) parts[parts.length - 1] = { ...last, text: `${last.text} ${raw.trim()}` };
      else parts.push({ is: 'text', text: raw.trim(), line });
    }
    open = !task && raw.trim() !== '';
  });
  return parts;
}

function standardFaults(
  file: string,
  { standards, band }: Pick<SheetPlan, 'standards' | 'band'>,
  lineOf: (path: readonly PropertyKey[]) => number,
): ContentFault[] {
  return standards.flatMap((code, index) => {
    const text = standardFault(code, band);
    return text === null ? [] : [{ file, line: lineOf(['standards', index]), column: null, text }];
  });
}

/** Tasks that there are not, that are for another band, or that stand twice; with the band unknown any task of any band is taken. */
function taskFaults(file: string, band: Band | null, tasks: readonly Part[]): ContentFault[] {
  const known = (band === null ? TASK_KINDS : kindsOf(band)).map(({ name }) => name);
  return tasks.flatMap(({ text: task, line }, index): ContentFault[] => {
    const fault = (text: string): ContentFault[] => [{ file, line, column: null, text }];
    if (tasks.findIndex((one) => one.text === task) < index)
      return fault(`"${task}" stands on this sheet twice; take one out.`);
    if (known.includes(task)) return [];
    const near = nearestName(task, known);
    const told = kindNamed(task)
      ? `"${task}" is a task for another grade band`
      : `there is no task "${task}"`;
    return fault(
      `${told}; ${near ? `did you mean "${near}"?` : `${band ?? 'the list'} has ${known.join(', ')}.`}`,
    );
  });
}

function figureFaults(file: string, part: Part, figures: readonly string[]): ContentFault[] {
  return [...part.text.matchAll(FIGURE_SLOT)].flatMap(([, id = '']): ContentFault[] => {
    if (figures.includes(id)) return [];
    const near = nearestName(id, figures);
    const told = near ? `did you mean "${near}"?` : `there are ${figures.join(', ')}.`;
    return [{ file, line: part.line, column: null, text: `there is no figure "${id}"; ${told}` }];
  });
}
