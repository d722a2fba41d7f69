// Messages of a sheet: a key and what fills its slots, without a word of any language.
import type { Shown, SheetUnit } from '../quantity/grade.ts';

/** A number alone. */
export type NumberSlot = Shown & { readonly is: 'number' };
/** A number and its unit, which takes the singular or the plural in each language. */
export type QuantitySlot = Shown & {
  readonly is: 'quantity';
  readonly unit: SheetUnit;
  /** A step ("the nearest 0.1 cup") takes the form of a part, whatever its number. */
  readonly step?: true;
};
/** How a calendar day is written. */
export type DateStyle = 'day' | 'short' | 'date' | 'year';
/** What may fill a slot. */
export type Slot =
  | NumberSlot
  | QuantitySlot
  /** A name that stands the same in every language. */
  | { readonly is: 'text'; readonly text: string }
  /** Another message. */
  | { readonly is: 'message'; readonly message: Message }
  /** A calendar day: `day` is "Tuesday", `short` "Tue", `date` "May 12", `year` "May 12, 2026". */
  | { readonly is: 'date'; readonly iso: string; readonly style: DateStyle }
  /** A time of day, `HH:MM`. */
  | { readonly is: 'time'; readonly time: string }
  /** A list with "and" before its last. */
  | { readonly is: 'list'; readonly of: readonly Slot[]; readonly bare?: true }
  /** A line of arithmetic: numbers and signs in turn. */
  | { readonly is: 'math'; readonly line: readonly (string | Shown)[] };

/** A message of the words files: `key` names it, `slots` fill it. `n` chooses its plural. */
export interface Message {
  readonly key: string;
  readonly slots: Readonly<Record<string, Slot>>;
}

/** A message. */
export function msg(key: string, slots: Readonly<Record<string, Slot>> = {}): Message {
  return { key, slots };
}

/** A number as a slot. */
export const num = (shown: Shown): NumberSlot => ({ is: 'number', ...shown });
/** A whole number as a slot. */
export const count = (n: number): NumberSlot => ({ is: 'number', num: n, den: 1 });
/** A number with a unit as a slot. */
export const qty = (shown: Shown, unit: SheetUnit): QuantitySlot => ({ is: 'quantity', ...shown, unit });
/** A step of a scale as a slot: "0.1 cup", "5 cups". */
export const stepOf = (shown: Shown, unit: SheetUnit): QuantitySlot =>
  shown.num <= shown.den ? { ...qty(shown, unit), step: true } : qty(shown, unit);
/** A name as a slot. */
export const text = (value: string): Slot => ({ is: 'text', text: value });
/** A message as a slot. */
export const sub = (message: Message): Slot => ({ is: 'message', message });
/** A weekday as a slot. */
export const day = (iso: string): Slot => ({ is: 'date', iso, style: 'day' });
/** A short weekday as a slot. */
export const shortDay = (iso: string): Slot => ({ is: 'date', iso, style: 'short' });
/** A date as a slot. */
export const date = (iso: string): Slot => ({ is: 'date', iso, style: 'date' });
/** A list as a slot. */
export const list = (of: readonly Slot[]): Slot => ({ is: 'list', of });
/** A list without "and", for rows of numbers. */
export const row = (of: readonly Slot[]): Slot => ({ is: 'list', of, bare: true });
/** A line of arithmetic as a slot. */
export const math = (...line: readonly (string | Shown)[]): Slot => ({ is: 'math', line });

/** Numbers with one sign between each two: `joined([a, b], '+')` is a + b. */
export function joined(numbers: readonly Shown[], sign: string): (string | Shown)[] {
  return numbers.flatMap((one, index) => (index === 0 ? [one] : [sign, one]));
}
