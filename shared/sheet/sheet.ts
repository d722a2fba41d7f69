// Tasks, a grade band and a seed make a sheet; its key comes from the same object.
import { seedOf } from '../drawing/wobble.ts';
import type { HerdState } from '../herd/lastDay.ts';
import type { UnitSystem } from '../herd/types.ts';
import type { Band } from '../quantity/grade.ts';
import { taskContext, type SheetSource } from '../tasks/context.ts';
import { kindNamed, kindsOf } from '../tasks/kinds.ts';
import type { Task, TaskKind } from '../tasks/task.ts';
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
 * Makes a sheet. A task that the week cannot carry is replaced, in its place, by another of the band that it
 * can; where none is left the sheet is shorter and `lacks` says what was missing. Throws for a name that is
 * no kind of task.
 */
export function makeSheet(request: SheetRequest): Sheet {
  const { band, seed, tasks: wished, week, units } = request;
  const context = taskContext(request, band, seed);
  // Each task draws its own chance, so that one that is left out does not change the others.
  const make = (kind: TaskKind): Task =>
    kind.make({ ...context, chance: chanceOf(`${seed}|${band}|${kind.name}`) });
  const lacks: string[] = [];
  const places = wished.map((name): Task | null => {
    const kind = kindNamed(name);
    if (!kind) throw new Error(`There is no kind of task called "${name}".`);
    const fit = kind.fits(context);
    if (fit === true) return make(kind);
    lacks.push(fit);
    return null;
  });
  const others = kindsOf(band).filter(({ name }) => !wished.includes(name));
  const tasks = places.flatMap((task): Task[] => {
    if (task) return [task];
    while (others.length > 0) {
      const other = others.shift() as TaskKind;
      if (other.fits(context) === true) return [make(other)];
    }
    return [];
  });
  return {
    band,
    seed,
    code: sheetCode(`${band}|${seed}|${week.window?.to ?? ''}`),
    title: msg(`sheet.title.${band}`),
    units,
    state: week.state,
    week: week.window,
    tasks,
    lacks: tasks.length < wished.length ? [...new Set(lacks)] : [],
  };
}
