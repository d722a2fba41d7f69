// The lactations of a doe, and in each the whole days on which she was milked twice: the days of a curve.
import { phaseSpans } from '../herd/expected.ts';
import { litres, type Ledger } from '../herd/ledger.ts';
import type { Book, Kidding } from '../herd/types.ts';

/** A whole day of full milking. */
export interface DoeDay {
  /** Days since kidding. */
  readonly t: number;
  /** All milk of the day, whatever its use. */
  readonly yield_L: number;
  /** Day number. */
  readonly day: number;
}

/** What ended a lactation; null while nothing on record does. */
export type LactationEnd = 'dry' | 'kidding' | null;

/** One lactation of a doe. Day numbers, both ends included. */
export interface Lactation {
  readonly doe: string;
  /** Which of her kiddings on record, from 1. */
  readonly number: number;
  readonly kidding: Kidding;
  /** Her last day before she was dry or kidded again; the day of the book where nothing ended it yet. */
  readonly last: number;
  readonly end: LactationEnd;
  /** The days on which she is milked twice; null where there were none. */
  readonly twice: { readonly from: number; readonly to: number } | null;
  /** In order of time. */
  readonly days: readonly DoeDay[];
  /** Whole days of nothing at her end that are left out: she gave no milk, whatever kiddings.csv says. */
  readonly dryDays: number;
  /** Whole days left out because they lie more than `LONGEST_days` after kidding. */
  readonly lateDays: number;
}

/**
 * Days after kidding up to which milk belongs to a curve; later days stay in every total. Lactations
 * of 419 to 696 days are on record of does in the US (Gipson & Wiggans 2001): past two years a kidding
 * or a dry date was most likely never written down.
 */
export const LONGEST_days = 730;

/**
 * Every lactation of a doe that began up to the book's day, the oldest first. A day counts when both
 * milkings were expected of her and both are entered: days with kids at foot, mornings alone and days
 * with a gap are not a doe's whole yield. A new kidding ends the lactation before it, soon or late and
 * whatever dry date stands there; of two kiddings on one day the one written last counts.
 */
export function lactationsOf(book: Pick<Book, 'kiddings'>, ledger: Ledger, doe: string): Lactation[] {
  const kiddings = book.kiddings.filter((one) => one.doe === doe && one.day <= ledger.asOf);
  const inOrder = [...kiddings].sort((a, b) => a.day - b.day);
  const counted = inOrder.filter((one, index) => inOrder[index + 1]?.day !== one.day);
  const fullDays = fullDaysOf(ledger, doe);
  return counted.map((kidding, index) => {
    const next = counted[index + 1]?.day ?? null;
    const { last, end } = endOf(kidding, next, ledger.asOf);
    const inside = fullDays.filter(({ day }) => kidding.day <= day && day <= last);
    const days = inside.map((one) => ({ ...one, t: one.day - kidding.day }));
    const inTime = days.filter(({ t }) => t <= LONGEST_days);
    const milk = inTime.findLastIndex(({ yield_L }) => yield_L > 0);
    const kept = milk < 0 ? inTime : inTime.slice(0, milk + 1);
    return {
      doe,
      number: index + 1,
      kidding,
      last,
      end,
      twice: twiceOf(kidding, last),
      days: kept,
      dryDays: inTime.length - kept.length,
      lateDays: days.length - inTime.length,
    };
  });
}

function endOf(kidding: Kidding, next: number | null, asOf: number): { last: number; end: LactationEnd } {
  const dry = kidding.dry === null ? null : Math.max(kidding.dry, kidding.day);
  if (dry !== null && dry <= asOf && (next === null || dry < next)) return { last: dry - 1, end: 'dry' };
  return next === null ? { last: asOf, end: null } : { last: next - 1, end: 'kidding' };
}

function twiceOf(kidding: Kidding, last: number): Lactation['twice'] {
  const span = phaseSpans([kidding]).find(({ phase }) => phase === 'twice a day');
  if (!span || span.from > last) return null;
  return { from: span.from, to: Math.min(span.to ?? last, last) };
}

/** Her days with both milkings expected and entered, in order of time. */
function fullDaysOf(ledger: Ledger, doe: string): Omit<DoeDay, 't'>[] {
  // A product of doubles is within one part in 10^15, and a thousand times as fast as exact fractions.
  const grain_L = litres(ledger, 1n);
  return [...(ledger.doeDays.get(doe) ?? [])]
    .filter(([, sum]) => sum.expected === 2 && sum.entered === 2)
    .map(([day, sum]) => ({ day, yield_L: Number(sum.grains) * grain_L }))
    .sort((a, b) => a.day - b.day);
}

/** The points of a lactation that a curve is fitted to: days since kidding and litres a day. */
export function pointsOf(lactation: Lactation): { t: number; y: number }[] {
  return lactation.days.map(({ t, yield_L }) => ({ t, y: yield_L }));
}
