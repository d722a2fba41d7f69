// Tasks, a grade band and a seed make a sheet; its key comes from the same object.
import { seedOf } from '../drawing/wobble.ts';
import type { HerdState } from '../herd/lastDay.ts';
import type { UnitSystem } from '../herd/types.ts';
import type { Band } from '../quantity/grade.ts';
import { carryKey, taskContext, type SheetSource, type TaskContext } from '../tasks/context.ts';
import { kindNamed, kindsOf } from '../tasks/kinds.ts';
import { topGrade, type Grade } from '../tasks/standards.ts';
import { ABOVE_GRADE, type Task, type TaskKind } from '../tasks/task.ts';
import { chanceOf } from './chance.ts';

/** A week's first and last date. */
export interface Span {
  readonly from: string;
  readonly to: string;
}

/** Everything that a sheet is made from. */
export interface SheetRequest extends SheetSource {
  /** The sheet's own name (its file in content/sheets), so that two sheets of one seed differ. */
  readonly name: string;
  readonly band: Band;
  /** The oldest grade that a task may be for; without it the top grade of the band. */
  readonly grade?: Grade | undefined;
  /** Any word or number. The same seed gives the same sheet. */
  readonly seed: string;
  /** Names of the kinds of tasks, in the order of the sheet. */
  readonly tasks: readonly string[];
}

/** A task on a sheet. */
export interface SheetTask extends Task {
  /** Which task of the sheet's list it is, or stands in for. */
  readonly place: number;
  /** Set where it is not the task that the list names at this place. */
  readonly standsIn?: true;
  /** The earlier week that its numbers come from; null where they are this week's. */
  readonly earlier: Span | null;
}

/** A sheet, without a word of any language: plain JSON. */
export interface Sheet {
  readonly name: string;
  readonly band: Band;
  readonly grade: Grade;
  readonly seed: string;
  /** Short code of sheet, grade, seed and week, for the foot and the key. */
  readonly code: string;
  readonly units: UnitSystem;
  readonly state: HerdState;
  readonly week: Span | null;
  readonly tasks: readonly SheetTask[];
  /** What the book lacks for the tasks that nothing could stand in for: keys under `sheet.lack`. */
  readonly lacks: readonly string[];
}

const CODE_LETTERS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
/** How many signs a code has. */
export const CODE_LENGTH = 5;

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

/** The code that a request's sheet has with a seed, without making it. */
export function codeOf(request: Omit<SheetRequest, 'seed'>, seed: string): string {
  const { name, band, week, grade = topGrade(band) } = request;
  return sheetCode(`${name}|${grade}|${seed}|${week.window?.to ?? ''}`);
}

/** The seed that a page opens with: the last date of the week, or a word where there is none. */
export function firstSeed(week: { readonly window: { readonly to: string } | null }): string {
  return week.window?.to ?? 'pail';
}

/** What a kind is made from now. */
interface Ready {
  readonly context: TaskContext;
  readonly earlier: Span | null;
}

/**
 * Makes a sheet. A task that the week cannot carry takes the last earlier week that can, or gives its place to another
 * task of the same standard, or else to any of the band. One above the grade gives its place likewise. Where none is
 * left the sheet is shorter and `lacks` says what was missing. Throws for a name that is no kind of task.
 */
export function makeSheet(request: SheetRequest): Sheet {
  const { name, band, seed, tasks: wished, week, units } = request;
  const grade = request.grade ?? topGrade(band);
  const ready = readiness(request, grade);
  // Each task draws its own chance, so that one that is left out does not change the others.
  const tryMake = (kind: TaskKind, place: number): SheetTask | string => {
    const found = ready(kind);
    if (typeof found === 'string') return found;
    const chance = chanceOf(`${seed}|${name}|${kind.name}`);
    return { ...kind.make({ ...found.context, chance }), place, earlier: found.earlier };
  };
  const kinds = wished.map((one) => {
    const kind = kindNamed(one);
    if (!kind) throw new Error(`There is no kind of task called "${one}".`);
    return kind;
  });
  // Every wished task comes first, so that none is taken as a stand-in before its turn.
  const placed = kinds.map(tryMake);
  const met = new Set(wished);
  const tasks = placed.flatMap((one, place): SheetTask[] => {
    if (typeof one !== 'string') return [one];
    for (const other of standIns(kinds[place] as TaskKind, band)) {
      if (met.has(other.name)) continue;
      const made = tryMake(other, place);
      if (typeof made === 'string') continue;
      met.add(other.name);
      return [{ ...made, standsIn: true }];
    }
    return [];
  });
  const lacks = placed.filter((one): one is string => typeof one === 'string' && one !== ABOVE_GRADE);
  return {
    name,
    band,
    grade,
    seed,
    code: codeOf(request, seed),
    units,
    state: week.state,
    week: week.window,
    tasks,
    lacks: tasks.length < wished.length ? [...new Set(lacks)] : [],
  };
}

/** Asks of a kind which week carries it: this one, an earlier one, or none (then: why not). */
function readiness(request: SheetRequest, grade: Grade): (kind: TaskKind) => Ready | string {
  const { band, seed, earlier } = request;
  const now = taskContext(request, band, seed, grade);
  const before = (earlier?.weeks ?? []).map(
    // What one task has used counts for all, whichever week it is from.
    (week): TaskContext => ({ ...taskContext({ ...request, week }, band, seed, grade), used: now.used }),
  );
  return (kind) => {
    const fit = kind.fits(now);
    if (fit === true) return { context: now, earlier: null };
    const place = earlier?.carry[carryKey(kind.name, grade)];
    const context = place === undefined ? undefined : before[place];
    if (fit === ABOVE_GRADE || !context || kind.fits(context) !== true) return fit;
    return { context, earlier: context.week.window };
  };
}

/** Who may stand in for a kind: first those that support one of its standards, then the rest of the band. */
function standIns(kind: TaskKind, band: Band): readonly TaskKind[] {
  const others = kindsOf(band).filter((one) => one.name !== kind.name);
  const alike = (one: TaskKind): boolean => one.standards.some((code) => kind.standards.includes(code));
  return [...others.filter(alike), ...others.filter((one) => !alike(one))];
}
