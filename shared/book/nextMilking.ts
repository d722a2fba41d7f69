// Which milking the Milk book opens with: by the farm's clock, and by what is already in the book.
import { dayFromCivil, dayNumber } from '../calendar/day.ts';
import { milkingsOf, phaseOn } from '../herd/expected.ts';
import type { MilkingTime } from '../herd/types.ts';
import type { BookDoe, BookFarm, BookRow } from './types.ts';

/** One of the two milkings of a day; `day` is a day number. */
export interface Milking {
  readonly day: number;
  readonly milking: MilkingTime;
}

/** The farm's day, and the minutes of its clock since midnight. */
export interface FarmClock {
  readonly today: number;
  readonly minutes: number;
}

/** How long before its clock time a milking is open, minutes. Common practice, no source. */
export const OPENS_BEFORE_min = 120;
/** How long after its clock time a milking that is all entered stays chosen, for labels and corrections, minutes. */
export const STAYS_min = 180;

const DAY_min = 1440;

/**
 * The farm's clock at a moment of the phone's: in the farm's time zone, wherever the phone thinks it is. The day is
 * `fixedDay` where the farm sets one.
 * @example farmClock({ timeZone: 'America/Chicago', fixedDay: null }, Date.UTC(2026, 4, 21, 3, 5)) // => { today: 20593, minutes: 1325 }
 */
export function farmClock(farm: Pick<BookFarm, 'timeZone' | 'fixedDay'>, now_ms: number): FarmClock {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: farm.timeZone,
    hourCycle: 'h23',
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  }).formatToParts(new Date(now_ms));
  const read = (type: string) => Number(parts.find((part) => part.type === type)?.value);
  const today = dayFromCivil(read('year'), read('month'), read('day'));
  const fixed = farm.fixedDay === null ? null : dayNumber(farm.fixedDay);
  return { today: fixed ?? today, minutes: read('hour') * 60 + read('minute') };
}

/** When a milking begins, minutes after the midnight that `today` began with. */
export function beginsAt_min(
  { day, milking }: Milking,
  clock: FarmClock,
  farm: Pick<BookFarm, 'milkings'>,
): number {
  const [hour = 0, minute = 0] = farm.milkings[milking].split(':').map(Number);
  return (day - clock.today) * DAY_min + hour * 60 + minute;
}

/** The milking after (`by` 1) or before (`by` -1) another one. */
export function stepped({ day, milking }: Milking, by: 1 | -1): Milking {
  if (milking === 'am') return by === 1 ? { day, milking: 'pm' } : { day: day - 1, milking: 'pm' };
  return by === 1 ? { day: day + 1, milking: 'am' } : { day, milking: 'am' };
}

/**
 * The milking that is open: the latest one that has opened. Each opens two hours before its clock time and stays open
 * until the next one does, so there is always one, also after midnight.
 */
export function openMilking(farm: Pick<BookFarm, 'milkings'>, clock: FarmClock): Milking {
  let latest: Milking = { day: clock.today + 1, milking: 'pm' };
  while (beginsAt_min(latest, clock, farm) - OPENS_BEFORE_min > clock.minutes) latest = stepped(latest, -1);
  return latest;
}

/** The does that are expected at a milking, in the order of the list. */
export function expectedAt(does: readonly BookDoe[], { day, milking }: Milking): BookDoe[] {
  return does.filter((doe) => milkingsOf(phaseOn(doe.spans, day)).includes(milking));
}

/** Does that are expected at a milking and of whom nothing stands, neither at the desk nor on this phone. */
export function missingAt(
  does: readonly BookDoe[],
  rows: readonly Pick<BookRow, 'doe' | 'date' | 'milking'>[],
  of: Milking,
): BookDoe[] {
  const there = new Set(
    rows.filter((row) => row.milking === of.milking && dayNumber(row.date) === of.day).map(({ doe }) => doe),
  );
  return expectedAt(does, of).filter(({ id }) => !there.has(id));
}

/**
 * The milking that the page opens with: the open one while a doe is missing in it, and for three hours after its clock
 * time; then the coming one. No milking after today is ever chosen, since the desk takes none.
 */
export function nextMilking(
  farm: Pick<BookFarm, 'milkings'>,
  does: readonly BookDoe[],
  rows: readonly Pick<BookRow, 'doe' | 'date' | 'milking'>[],
  clock: FarmClock,
): Milking {
  const open = openMilking(farm, clock);
  const latest = lastOfToday(clock);
  // A clock time late in the evening may open tomorrow's milking today: then today's last one is chosen.
  const first = isAfter(open, latest) ? latest : open;
  if (missingAt(does, rows, first).length > 0) return first;
  if (clock.minutes < beginsAt_min(first, clock, farm) + STAYS_min) return first;
  const coming = stepped(first, 1);
  return isAfter(coming, latest) ? first : coming;
}

/** The last milking that may be entered: this evening's. */
export function lastOfToday({ today }: FarmClock): Milking {
  return { day: today, milking: 'pm' };
}

/** Whether a milking comes after another one. */
export function isAfter(one: Milking, other: Milking): boolean {
  return orderOf(one) > orderOf(other);
}

const orderOf = ({ day, milking }: Milking) => day * 2 + (milking === 'pm' ? 1 : 0);
