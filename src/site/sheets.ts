// Loads the sheets that the farm hands out: which tasks, for which grades (content/sheets).
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { parseDocument, LineCounter } from 'yaml';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { kindNamed, kindsOf } from '../../shared/tasks/kinds.ts';
import { nearestName } from '../farm/nearest.ts';

/** A sheet as a teacher or coordinator writes it. */
export interface SheetPlan {
  readonly band: Band;
  /** Names of the kinds of tasks, in order. */
  readonly tasks: readonly string[];
}

const planShape = z.strictObject({
  band: z.enum(BANDS as unknown as [Band, ...Band[]]),
  tasks: z.array(z.string()).min(1),
});

const SHEETS_DIR = join(process.cwd(), 'content', 'sheets');

/** All sheets, the youngest band first. Throws with file, line and the nearest name where one is miswritten. */
export function sheetPlans(dir: string = SHEETS_DIR): readonly SheetPlan[] {
  const plans = readdirSync(dir)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readPlan(`content/sheets/${name}`, readFileSync(join(dir, name), 'utf8')));
  return [...plans].sort((a, b) => BANDS.indexOf(a.band) - BANDS.indexOf(b.band));
}

/** Reads one sheet; `file` is the name that faults are told by. */
export function readPlan(file: string, text: string): SheetPlan {
  const lines = new LineCounter();
  const written = parseDocument(text, { lineCounter: lines });
  const lineOf = (path: readonly PropertyKey[]): number => {
    const node = written.getIn(path as (string | number)[], true) as
      { range?: [number, number, number] } | undefined;
    return node?.range ? lines.linePos(node.range[0]).line : 1;
  };
  const broken = written.errors[0];
  if (broken)
    throw new Error(
      `${file}:${lines.linePos(broken.pos[0]).line}  this is no YAML: ${broken.message.split('\n')[0]}`,
    );
  const read = planShape.safeParse(written.toJS());
  if (!read.success) {
    const faults = read.error.issues.map((issue) => {
      const where = issue.path.length > 0 ? `"${issue.path.join('.')}"` : 'the file';
      return `${file}:${lineOf(issue.path)}  ${where}: ${issue.message}. A sheet has "band" (${BANDS.join(', ')}) and a list "tasks".`;
    });
    throw new Error(faults.join('\n'));
  }
  const { band, tasks } = read.data;
  const known = kindsOf(band).map(({ name }) => name);
  const faults = tasks.flatMap((task, index) => {
    const at = `${file}:${lineOf(['tasks', index])}`;
    if (tasks.indexOf(task) < index) return [`${at}  "${task}" stands on this sheet twice; take one out.`];
    if (known.includes(task)) return [];
    if (kindNamed(task))
      return [`${at}  "${task}" is a task for another grade band; ${band} has ${known.join(', ')}.`];
    const near = nearestName(task, known);
    return [
      `${at}  there is no task "${task}"; ${near ? `did you mean "${near}"?` : `${band} has ${known.join(', ')}.`}`,
    ];
  });
  if (faults.length > 0) throw new Error(faults.join('\n'));
  return { band, tasks };
}
