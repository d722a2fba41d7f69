// What the tasks of a class's own numbers share: how a task and a question of them are put together.
import type { Shown, SheetUnit } from '../../../quantity/grade.ts';
import { msg, qty, type Message } from '../../../sheet/message.ts';
import type { SheetTask } from '../../../sheet/sheet.ts';
import type { Ask, Work } from '../../../tasks/task.ts';
import type { Grade } from '../../../tasks/grades.ts';
import type { Measure } from './measures.ts';

/** The key of all their words. */
export const KEY = 'visits.after.task';

/** What was measured, as a sheet of a grade tells it: numbers in whole steps of 1 / `den` of the unit. */
interface MeasuredHead {
  readonly unit: SheetUnit;
  readonly grade: Grade;
  readonly den: number;
}

/** A number of a doe. */
export interface DoeRow {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly steps: number;
}

/** Many numbers of one thing, least first. */
export type MeasuredMany = MeasuredHead & {
  readonly by: 'count';
  readonly measure: Measure | 'guess';
  readonly steps: readonly number[];
};
/** A number beside each of some does. */
export type MeasuredDoes = MeasuredHead & {
  readonly by: 'doe';
  readonly measure: Measure;
  readonly rows: readonly DoeRow[];
};

/** A task before it has its place on the sheet. */
export type Made = Omit<SheetTask, 'place' | 'earlier'>;

/** A task of these numbers; `slip` names its common mistake. */
export function made(
  name: string,
  standards: readonly string[],
  slip: string,
  rest: Pick<Made, 'lead' | 'picture' | 'asks'>,
): Made {
  const mistake = { what: msg(`${KEY}.mistake.${slip}`), why: msg(`${KEY}.why.${slip}`) };
  return { kind: `visit-${name}`, standards, ...rest, mistake, fromBook: [] };
}

/** A question whose answer is numbers in boxes, or is put into the picture. */
export function asked(
  prompt: Message,
  values: readonly Shown[],
  answer: Message,
  work: Work,
  steps: readonly Message[] = [],
): Ask {
  return { prompt, work, answer, values, accepted: [], steps };
}

/** A question for one amount in the unit. */
export function amountAsk(prompt: Message, value: Shown, unit: SheetUnit, steps: readonly Message[]): Ask {
  const answer = msg('sheet.answer', { amount: qty(value, unit) });
  return asked(prompt, [value], answer, { is: 'boxes', after: [unit] }, steps);
}
