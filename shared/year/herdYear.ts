// The herd's year: its seasons so far, when this one will stop, and the one to come.
import type { Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { doeYear, type DoeYear, type YearEvent, type YearMark } from './doeYear.ts';
import type { DayRange } from './gestation.ts';
import type { Basis, Breeding, NextKidding } from './nextKidding.ts';
import { seasonsOf, type Season } from './seasons.ts';

/** A day of the herd: its usual day, the span of it over the does, and the least sure ground under it. */
export interface HerdEvent extends DayRange {
  readonly basis: Basis;
  readonly does: number;
}

/** Why a coming thing cannot be told. */
export type YearGap =
  | 'no doe is in milk'
  | 'no dry date is in the book and the usual length has passed'
  | 'no next kidding can be told for any doe';

/** The season to come. */
export type ComingSeason =
  | {
      readonly ok: true;
      readonly start: HerdEvent;
      /** When the herd likely gives the most, from the first doe's early peak to the last doe's late one. */
      readonly most: HerdEvent;
      readonly stop: HerdEvent;
      /** The season that runs has not stopped by then: the herd is never without milk. */
      readonly overlaps: boolean;
    }
  | { readonly ok: false; readonly why: YearGap };

/** The herd's year. */
export interface HerdYear {
  readonly does: readonly DoeYear[];
  readonly seasons: readonly Season[];
  /** When the running season stops: with the last doe that is dried off. */
  readonly stop: ({ readonly ok: true } & HerdEvent) | { readonly ok: false; readonly why: YearGap };
  /** The running season may still rise: a doe in milk has her best weeks ahead. */
  readonly peakAhead: boolean;
  readonly coming: ComingSeason;
  /** Does left out of the season to come, each with why. */
  readonly leftOut: readonly {
    readonly doe: string;
    readonly why: Extract<NextKidding, { ok: false }>['why'];
  }[];
}

const SURENESS: readonly Basis[] = ['book', 'counted', 'common practice'];

/** Lays out the herd's year from an open ledger; breedings are optional, since the book has none. */
export function herdYear(book: Book, ledger: Ledger, breedings: readonly Breeding[] = []): HerdYear {
  const does = book.does.map((doe) => doeYear(book, ledger.asOf, doe.id, breedings));
  const seasons = seasonsOf(ledger);
  const running = does.filter((one) => isInMilk(one, ledger.asOf));
  const dry = pick(running, 'this lactation', 'dry');
  const stop = dry.length === 0 ? null : lastOf(dry);
  const most = pick(running, 'this lactation', 'most milk');
  return {
    does,
    seasons,
    stop: stopOf(stop, ledger.asOf),
    peakAhead: most.some((event) => event.to > ledger.asOf),
    coming: comingOf(does, stop),
    leftOut: does.flatMap(({ doe, next }) => (next.ok ? [] : [{ doe, why: next.why }])),
  };
}

function stopOf(stop: HerdEvent | null, asOf: number): HerdYear['stop'] {
  if (!stop) return { ok: false, why: 'no doe is in milk' };
  if (stop.to >= asOf) return { ok: true, ...stop };
  return { ok: false, why: 'no dry date is in the book and the usual length has passed' };
}

function isInMilk({ events }: DoeYear, asOf: number): boolean {
  const own = events.filter((event) => event.of === 'this lactation');
  const dry = own.find((event) => event.what === 'dry');
  // A doe that the book never dried off counts as in milk, however long ago she kidded.
  const isMilked = own.some((event) => event.what === 'first milk');
  return isMilked && (dry === undefined || dry.day > asOf || dry.basis !== 'book');
}

function pick(does: readonly DoeYear[], of: YearEvent['of'], what: YearMark): YearEvent[] {
  return does.flatMap(({ events }) => events.filter((event) => event.of === of && event.what === what));
}

function leastSure(events: readonly YearEvent[]): Basis {
  const worst = Math.max(...events.map((event) => SURENESS.indexOf(event.basis)));
  return SURENESS[worst] ?? 'common practice';
}

function herdEvent(events: readonly YearEvent[], end: (numbers: readonly number[]) => number): HerdEvent {
  return {
    day: end(events.map(({ day }) => day)),
    from: end(events.map(({ from }) => from)),
    to: end(events.map(({ to }) => to)),
    basis: leastSure(events),
    does: events.length,
  };
}

const firstOf = (events: readonly YearEvent[]) => herdEvent(events, (days) => Math.min(...days));
const lastOf = (events: readonly YearEvent[]) => herdEvent(events, (days) => Math.max(...days));

function comingOf(does: readonly DoeYear[], stop: HerdEvent | null): ComingSeason {
  const milked = does.filter((doe) => pick([doe], 'the next one', 'first milk').length > 0);
  const milk = pick(milked, 'the next one', 'first milk');
  if (milk.length === 0) return { ok: false, why: 'no next kidding can be told for any doe' };
  const most = pick(does, 'the next one', 'most milk');
  const days = most.map(({ day }) => day).sort((a, b) => a - b);
  const start = firstOf(milk);
  return {
    ok: true,
    start,
    most: {
      day: days[Math.floor(days.length / 2)] ?? start.day,
      from: Math.min(...most.map(({ from }) => from)),
      to: Math.max(...most.map(({ to }) => to)),
      basis: leastSure(most),
      does: most.length,
    },
    stop: lastOf(pick(milked, 'the next one', 'dry')),
    overlaps: stop !== null && stop.day >= start.day,
  };
}
