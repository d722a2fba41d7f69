// Follows every doe of a book up to its last day: what is known of her, and how far off it was on the way.
import type { PhaseSpan } from '../herd/expected.ts';
import type { Ledger } from '../herd/ledger.ts';
import type { Book, Kidding } from '../herd/types.ts';
import { breedYear, type BreedYear } from './breeds.ts';
import { afterDay, ahead, atNextKidding, beforeAnyMilk, LEAST_L, type Known } from './level.ts';
import type { Basis, Way } from './outcome.ts';
import { anchorLevel } from './shape.ts';
import { DISTANCES, wideningsOf, type PastErrors, type Widenings } from './spread.ts';
import { lactationsOf, wholeDays, type LactationDays } from './wholeDays.ts';

/** An error of the past: the day it fell on, the distance, and the error in spreads of that day's outlook. */
export interface Miss {
  readonly day: number;
  readonly distance_days: (typeof DISTANCES)[number];
  readonly miss: number;
  readonly milk_L: number;
  readonly middle_L: number;
  readonly sd_ln: number;
}

/** A doe as followed up to the book's last day. */
export interface FollowedDoe {
  readonly id: string;
  readonly breed: string;
  /** In order of time, those to come included. */
  readonly kiddings: readonly Kidding[];
  readonly spans: readonly PhaseSpan[];
  readonly known: Known;
  /** Her newest kidding up to the last day; null before the first. */
  readonly kidding: number | null;
  readonly newest: { readonly day: number; readonly way: Way } | null;
  /** What an outlook within this lactation stands on, and one after her next kidding; null for nothing. */
  readonly basis: Basis | null;
  readonly nextBasis: Basis | null;
  /** Days with milkings expected since her newest whole day of this lactation, up to the last day. */
  readonly silent_days: number;
  /** Entries of hers in the book. */
  readonly rows: number;
  readonly widenings: Widenings;
  readonly misses: readonly Miss[];
}

/** A herd as followed up to the book's last day. */
export interface FollowedHerd {
  readonly asOf: number;
  readonly does: readonly FollowedDoe[];
}

/**
 * Follows the herd of a book. `breeds` is the table asked for does without milk of their own. Rows after
 * the ledger's day are not looked at; kiddings to come are, as they are plans.
 */
export function followHerd(book: Book, ledger: Ledger, breeds: readonly BreedYear[]): FollowedHerd {
  const days = wholeDays(ledger);
  const rows = new Map<string, number>();
  for (const { row } of ledger.entries) rows.set(row.doe, (rows.get(row.doe) ?? 0) + 1);
  const does = book.does.map(({ id, breed }): FollowedDoe => {
    const lactations = lactationsOf(book.kiddings, id, days.get(id) ?? []);
    const begun = lactations.filter(({ kidding }) => kidding.day <= ledger.asOf);
    const figures = breedYear(breeds, breed);
    const { known, misses } = followDoe(begun, figures);
    const current = begun.at(-1) ?? null;
    const newest = current?.days.at(-1) ?? null;
    const fallback: Basis | null = figures && { kind: 'breed', ...figures };
    return {
      id,
      breed,
      kiddings: lactations.map(({ kidding }) => kidding),
      spans: ledger.phases.get(id) ?? [],
      known,
      kidding: current?.kidding.day ?? null,
      newest,
      basis: newest && current ? { kind: 'own', whole_days: current.days.length, newest: newest.day } : (lastBasis(begun) ?? fallback),
      nextBasis: lastBasis(begun) ?? fallback,
      silent_days: current ? silentDays(ledger, id, (newest?.day ?? current.kidding.day - 1) + 1) : 0,
      rows: rows.get(id) ?? 0,
      widenings: wideningsOf(pastErrors(misses)),
      misses,
    };
  }); // prettier-ignore
  return { asOf: ledger.asOf, does };
}

/** The newest lactation with a whole day, as the ground of one to come. */
function lastBasis(lactations: readonly LactationDays[]): Basis | null {
  const last = lactations.findLast(({ days }) => days.length > 0);
  const newest = last?.days.at(-1);
  return last && newest ? { kind: 'last', whole_days: last.days.length, newest: newest.day } : null;
}

function silentDays(ledger: Ledger, doe: string, from: number): number {
  let count = 0;
  for (let day = from; day <= ledger.asOf; day += 1)
    if ((ledger.doeDays.get(doe)?.get(day)?.expected ?? 0) > 0) count += 1;
  return count;
}

function followDoe(
  lactations: readonly LactationDays[],
  figures: BreedYear | null,
): { known: Known; misses: Miss[] } {
  let known = beforeAnyMilk(figures && anchorLevel(figures.year_L));
  const misses: Miss[] = [];
  for (const [index, { kidding, days }] of lactations.entries()) {
    if (index > 0) known = atNextKidding(known);
    const knownOn = new Map<number, Known>();
    for (const { day, way, amount_L } of days) {
      const daysInMilk = day - kidding.day;
      for (const distance_days of DISTANCES) {
        const then = knownOn.get(day - distance_days);
        if (!then) continue;
        const { middle_ln, sd_ln } = ahead(then, daysInMilk, way);
        const milk_L = Math.max(amount_L, LEAST_L);
        const miss = (Math.log(milk_L) - middle_ln) / sd_ln;
        misses.push({ day, distance_days, miss, milk_L, middle_L: Math.exp(middle_ln), sd_ln });
      }
      known = afterDay(known, daysInMilk, way, amount_L);
      knownOn.set(day, known);
    }
  }
  return { known, misses };
}

function pastErrors(misses: readonly Miss[]): PastErrors {
  const at = (distance_days: number) =>
    misses.filter((one) => one.distance_days === distance_days).map(({ miss }) => miss);
  return { 7: at(7), 14: at(14), 28: at(28) };
}
