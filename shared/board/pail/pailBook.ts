// Which doe's milking the children guess, now and on the days before, and what it truly was.
import { dayNumber, isoDate } from '../../calendar/day.ts';
import { milkingsOf, phaseOn } from '../../herd/expected.ts';
import { findLastDay, RECENT_DAYS } from '../../herd/lastDay.ts';
import { litres, type Ledger } from '../../herd/ledger.ts';
import type { Book, Doe, MilkingTime } from '../../herd/types.ts';
import { median } from './median.ts';

/** A milking that children guess: plain JSON. Volumes in mL. */
export interface AskedMilking {
  readonly date: string;
  readonly milking: MilkingTime;
  /** Her id. */
  readonly doe: string;
  readonly name: string;
  readonly breed: string;
  /** The middle, the least and the most of her milkings at that time of day in the seven days before. */
  readonly usual_mL: number;
  readonly low_mL: number;
  readonly high_mL: number;
  /** What the book says she gave; null until it is entered. */
  readonly truth_mL: number | null;
}

/** Why there is nothing to guess: an empty book, does that rest, or a book in which nothing new stands. */
export type PailPause = 'empty' | 'resting' | 'silent';

/** The milkings to guess, from the book. */
export interface PailBook {
  /** The milking to guess now. */
  readonly next: AskedMilking | null;
  /** Why there is none; null where there is one. */
  readonly pause: PailPause | null;
  /** The first day from `asOf` on which the list of kiddings has a milking; null where it has none. */
  readonly from: string | null;
  /** The milkings that were asked before and are entered, newest first. */
  readonly past: readonly AskedMilking[];
}

const KNOWN_DAYS = 7;
/** How far back milkings that were asked are told. */
export const PAST_DAYS = 28;
// Two days hold a milking of every doe who is milked at all.
const SLOTS_AHEAD = 4;
const FAR_AHEAD_DAYS = 400;

// Milkings are counted: two a day, the morning one first.
const slotOf = (day: number, milking: MilkingTime) => day * 2 + (milking === 'pm' ? 1 : 0);
const dayOf = (slot: number) => Math.floor(slot / 2);
const timeOf = (slot: number): MilkingTime => (slot % 2 === 0 ? 'am' : 'pm');

/** Her milk in mL by milking, for the does of a book. */
type Amounts = ReadonlyMap<string, ReadonlyMap<number, number>>;

/**
 * The milkings to guess. Now it is the first one after, or still open at, the newest milking in the book; its doe is
 * one that is milked then and has an amount at that time of day in the seven days before. She depends on the day alone
 * and on what stood in the book before it: so all children of a milking guess the same doe, and another day another one.
 */
export function pailBook(book: Book, ledger: Ledger): PailBook {
  const amounts = recentAmounts(ledger);
  const asked = (slot: number) => askedAt(book, ledger, amounts, slot);
  let newest = -Infinity;
  for (const own of amounts.values()) for (const slot of own.keys()) newest = Math.max(newest, slot);
  const from = firstExpected(ledger);
  if (!Number.isFinite(newest)) return { next: null, pause: pauseOf(ledger, from), from, past: [] };
  const past = steps(newest, -PAST_DAYS * 2).flatMap((slot) => asked(slot) ?? []);
  // A herd that has rested for two weeks is not asked about, though the newest entry is the newest.
  const isRecent = ledger.asOf - dayOf(newest) < RECENT_DAYS;
  const ahead = isRecent ? steps(newest, SLOTS_AHEAD) : [];
  const next = ahead.flatMap((slot) => asked(slot) ?? []).find((one) => one.truth_mL === null) ?? null;
  return {
    next,
    pause: next ? null : pauseOf(ledger, from),
    from,
    past: past.filter((one) => one.truth_mL !== null),
  };
}

function steps(from: number, by: number): number[] {
  return Array.from({ length: Math.abs(by) + 1 }, (_, index) => from + Math.sign(by) * index);
}

/** The amounts of the days that may be told, and of the week before them. */
function recentAmounts(ledger: Ledger): Amounts {
  const { day: last } = findLastDay(ledger);
  const amounts = new Map<string, Map<number, number>>();
  if (last === null) return amounts;
  for (const { row, grains } of ledger.entries) {
    if (row.day < last - PAST_DAYS - KNOWN_DAYS) continue;
    const own = amounts.get(row.doe) ?? new Map<number, number>();
    own.set(slotOf(row.day, row.milking), litres(ledger, grains) * 1000);
    amounts.set(row.doe, own);
  }
  return amounts;
}

/** The milking that is asked at a place in time, with its doe; null where no doe's amount could be known. */
function askedAt(book: Book, ledger: Ledger, amounts: Amounts, slot: number): AskedMilking | null {
  const [day, milking] = [dayOf(slot), timeOf(slot)];
  const known = book.does.flatMap((doe) => {
    const isMilked = milkingsOf(phaseOn(ledger.phases.get(doe.id) ?? [], day)).includes(milking);
    const before = isMilked ? amountsBefore(amounts, doe, slot) : [];
    return before.length > 0 ? [{ doe, before }] : [];
  });
  if (known.length === 0) return null;
  // The evening's doe stands half the herd away from the morning's.
  const turn = day + (milking === 'pm' ? Math.floor(known.length / 2) : 0);
  const { doe, before } = known[turn % known.length] as (typeof known)[number];
  return {
    date: isoDate(day),
    milking,
    doe: doe.id,
    name: doe.name,
    breed: doe.breed,
    usual_mL: median(before) as number,
    low_mL: Math.min(...before),
    high_mL: Math.max(...before),
    truth_mL: amounts.get(doe.id)?.get(slot) ?? null,
  };
}

function amountsBefore(amounts: Amounts, doe: Doe, slot: number): number[] {
  const own = amounts.get(doe.id);
  return Array.from({ length: KNOWN_DAYS }, (_, index) => own?.get(slot - 2 * (index + 1))).filter(
    (amount): amount is number => amount !== undefined,
  );
}

function firstExpected(ledger: Ledger): string | null {
  for (let day = ledger.asOf; day <= ledger.asOf + FAR_AHEAD_DAYS; day += 1)
    for (const spans of ledger.phases.values())
      if (milkingsOf(phaseOn(spans, day)).length > 0) return isoDate(day);
  return null;
}

function pauseOf(ledger: Ledger, from: string | null): PailPause {
  if (ledger.entries.length === 0) return 'empty';
  return from !== null && dayNumber(from) === ledger.asOf ? 'silent' : 'resting';
}
