// Tasks, a grade band and a seed make a sheet; its key comes from the same object.
import { seedOf } from '../drawing/wobble.ts';
import type { HerdState } from '../herd/lastDay.ts';
import type { UnitSystem } from '../herd/types.ts';
import type { Band } from '../quantity/grade.ts';
import { taskContext, type SheetSource, type TaskContext } from '../tasks/context.ts';
import { kindNamed, kindsOf } from '../tasks/kinds.ts';
import type { Task } from '../tasks/task.ts';
import { chanceOf } from './chance.ts';
import { msg, type Message } from './message.ts';

/** Everything that a sheet is made from. */
export interface SheetRequest extends SheetSource {
  readonly band: Band;
  /** Any word or number. The same seed gives the same sheet. */
  readonly seed: string;
  /** Names of the kinds of tasks, in the order of the sheet. */
  readonly tasks: readonly string[];
}

/** A sheet, without a word of any language: plain JSON. */
export interface Sheet {
  readonly band: Band;
  readonly seed: string;
  /** Short code of band, seed and week, for the foot and the key. */
  readonly code: string;
  readonly title: Message;
  readonly units: UnitSystem;
  readonly state: HerdState;
  readonly week: { readonly from: string; readonly to: string } | null;
  readonly tasks: readonly Task[];
  /** What the week lacks for the tasks that nothing could stand in for: keys under `sheet.lack`. */
  readonly lacks: readonly string[];
}

const CODE_LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const CODE_LENGTH = 5;

/** A short code from a text, without letters that look like digits. */
export function sheetCode(text: string): string {
  let rest = seedOf(text);
  let code = '';
  for (let place = 0; place < CODE_LENGTH; place += 1) {
    code += CODE_LETTERS[rest % CODE_LETTERS.length];
    rest = Math.floor(rest / CODE_LETTERS.length);
  }
  return code;
}

/** The seed that a page opens with: the last date of the week, or a word where there is none. */
export function firstSeed(week: { readonly window: { readonly to: string } | null }): string {
  return week.window?.to ?? 'pail';
}

/**
 * Makes a sheet. A task that the week cannot carry is replaced by another of the band that it can; where
 * none is left the sheet is shorter and `lacks` says what was missing. Throws for a name that is no kind of task.
 */
export function makeSheet(request: SheetRequest): Sheet {
  const { band, seed, tasks: wished, week, units } = request;
  const context = taskContext(request, band, seed);
  const made: Task[] = [];
  const lacks: string[] = [];
  const kept = new Set(wished);
  for (const name of wished) {
    const kind = kindNamed(name);
    if (!kind) throw new Error(`There is no kind of task called "${name}".`);
    const fit = kind.fits(context);
    // Each task draws its own chance, so that one that is left out does not change the others.
    const chance = chanceOf(`${seed}|${band}|${name}`);
    if (fit === true) made.push(kind.make({ ...context, chance }));
    else lacks.push(fit);
  }
  return {
    band,
    seed,
    code: sheetCode(`${band}|${seed}|${week.window?.to ?? ''}`),
    title: msg(`sheet.title.${band}`),
    units,
    state: week.state,
    week: week.window,
    ...filledUp(context, seed, made, lacks, kept),
  };
}

/** Stands in for the tasks that did not fit, as far as the band has others that do. */
function filledUp(
  context: TaskContext,
  seed: string,
  made: Task[],
  lacks: readonly string[],
  wished: ReadonlySet<string>,
): Pick<Sheet, 'tasks' | 'lacks'> {
  const others = kindsOf(context.band).filter(({ name }) => !wished.has(name));
  let missing = lacks.length;
  for (const kind of others) {
    if (missing === 0) break;
    if (kind.fits(context) !== true) continue;
    made.push(kind.make({ ...context, chance: chanceOf(`${seed}|${context.band}|${kind.name}`) }));
    missing -= 1;
  }
  return { tasks: made, lacks: missing > 0 ? [...new Set(lacks)] : [] };
}
