// Phrases that many tasks share.
import type { MilkingTime } from '../herd/types.ts';
import type { DoeWeek } from '../herd/week.ts';
import type { Measure, Shown } from '../quantity/grade.ts';
import { exactly, rounded, shownIn } from '../quantity/grade.ts';
import { day, msg, num, shortDay, sub, text, type Message, type Slot } from '../sheet/message.ts';
import type { Face } from '../sheet/picture.ts';
import type { Reading } from './context.ts';

/** "Tuesday morning". */
export function whenOf(date: string, milking: MilkingTime): Slot {
  return sub(msg(`sheet.when.${milking}`, { day: day(date) }));
}

/** "on Tuesday morning": when something was, within a sentence. */
export function onOf(date: string, milking: MilkingTime): Slot {
  return sub(msg(`sheet.on.${milking}`, { day: day(date) }));
}

/** "on Tuesday". */
export function onDay(date: string): Slot {
  return sub(msg('sheet.on.day', { day: day(date) }));
}

/** The doe's name as a slot. */
export function nameOf(doe: DoeWeek): Slot {
  return text(doe.name);
}

/** Her face. */
export function faceOf(doe: DoeWeek): Face {
  return { breed: doe.breed, id: doe.id };
}

/** A weekday as a label. */
export function dayLabel(date: string): Message {
  return msg('sheet.label.day', { day: day(date) });
}

/** A short weekday as the heading of a narrow column. */
export function shortDayLabel(date: string): Message {
  return msg('sheet.label.day', { day: shortDay(date) });
}

/** A milking read in a measure. */
export function readIn(reading: Reading, measure: Measure): Shown {
  return shownIn(reading.amount_mL, measure);
}

/** Whole number of cups of a milking. */
export function cupsOf(reading: Reading, measure: Measure): number {
  return shownIn(reading.amount_mL, measure).num;
}

/** Names what a milking uses, so that tasks take turns: the milking, the doe. */
export function touchesOf(readings: readonly Reading[]): string[] {
  return readings.flatMap(({ doe, date, milking }) => [doe.id, `${doe.id}|${date}|${milking}`]);
}

/** A half, a quarter or an eighth as a decimal, which a key accepts too; nothing for other numbers. */
export function asDecimal(shown: Shown): readonly Message[] {
  const places = { 2: 1, 4: 2, 8: 3 }[shown.den];
  return places ? [msg('sheet.accept.decimal', { decimal: num(rounded(exactly(shown), places)) })] : [];
}
