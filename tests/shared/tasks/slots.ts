// Reads what a sheet prints: slots of messages and figures as plain numbers, apart from the engine's own arithmetic.
import { expect } from 'vitest';
import type { Shown } from '../../../shared/quantity/grade.ts';
import type { Message, Slot } from '../../../shared/sheet/message.ts';
import type { CardsPicture, CupsPicture, Picture, TablePicture } from '../../../shared/sheet/picture.ts';
import type { Task } from '../../../shared/tasks/task.ts';

/** A printed number as a double. */
export const num = (shown: Shown): number => shown.num / shown.den;

/** The number in a slot of a message. */
export function slot(message: Message | undefined, name: string): number {
  const found = message?.slots[name];
  if (!found || (found.is !== 'number' && found.is !== 'quantity')) throw new Error(`no number in {${name}}`);
  return num(found);
}

/** The numbers of a list in a slot. */
export function slotList(message: Message | undefined, name: string): number[] {
  const found = message?.slots[name];
  if (!found || found.is !== 'list') throw new Error(`no list in {${name}}`);
  return found.of.map((one) => num(one as Slot & { is: 'number' }));
}

/** The text in a slot. */
export function slotText(message: Message | undefined, name: string): string {
  const found = message?.slots[name];
  if (!found || found.is !== 'text') throw new Error(`no text in {${name}}`);
  return found.text;
}

/** The equation in a slot: y = intercept (sign) slope x. */
export function slotLine(message: Message | undefined): { slope: number; intercept: number } {
  const found = message?.slots['equation'];
  if (!found || found.is !== 'math') throw new Error('no equation');
  const [, , intercept, sign, slope] = found.line as [string, string, Shown, string, Shown];
  return { intercept: num(intercept), slope: num(slope) * (sign === '−' ? -1 : 1) };
}

/** The task's figure, which must be of a kind. */
export function figure<K extends Picture['is']>(task: Task, is: K): Extract<Picture, { is: K }> {
  if (task.picture?.is !== is) throw new Error(`${task.kind} has no ${is}`);
  return task.picture as Extract<Picture, { is: K }>;
}

/** Counts of drawn cups, group by group. */
export const cupCounts = (picture: CupsPicture): number[] => picture.groups.map(({ count }) => count);
/** Numbers on cards. */
export const cardValues = (picture: CardsPicture): number[] => picture.cards.map(({ value }) => num(value));
/** Numbers of one row of a table, without its heading. */
export function rowValues(picture: TablePicture, row: number): number[] {
  return (picture.rows[row] ?? []).filter((cell): cell is Shown => 'num' in cell).map(num);
}

/** The values that an ask's answer holds, as doubles; names stay texts. */
export const answers = (task: Task, ask: number): (number | string)[] =>
  (task.asks[ask]?.values ?? []).map((value) => (typeof value === 'string' ? value : num(value)));

/** Expects answers equal to numbers worked out another way, to a hair. */
export function expectAnswers(task: Task, ask: number, expected: readonly (number | string)[]): void {
  const given = answers(task, ask);
  expect(given.length).toBe(expected.length);
  given.forEach((value, index) => {
    const want = expected[index];
    if (typeof want === 'number' && typeof value === 'number') expect(value).toBeCloseTo(want, 7);
    else expect(value).toBe(want);
  });
}

/** Rounds by writing the number out and reading its digits, half away from zero. */
export function written(value: number, places: number): number {
  const nudged = value + Math.sign(value) * 1e-9;
  return Number(nudged.toFixed(places));
}

/** Sum by plain addition. */
export const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/** The number told as a common mistake, or null where the mistake is told in words. */
export function wrongNumber(task: Task): number | null {
  const found = task.mistake.what.slots['wrong'];
  return found?.is === 'quantity' ? num(found) : null;
}
