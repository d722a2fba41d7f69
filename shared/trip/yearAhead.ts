// The herd over the coming year for the Trip plan, from book and outlook; for the build, a page carries what comes of it.
import { phaseOn, phaseSpans } from '../herd/expected.ts';
import type { Ledger } from '../herd/ledger.ts';
import type { Book, Farm, Kidding } from '../herd/types.ts';
import { readClock } from '../lesson/clock.ts';
import { openOutlook, type Outlook } from '../outlook/outlook.ts';
import { shownUnit, UNIT_ML } from '../quantity/units.ts';
import { DRY_DAYS } from '../year/gestation.ts';
import { nextKidding } from '../year/nextKidding.ts';
import { isMilked, isReared, LIKELY, milkDays } from './doeOn.ts';
import { SEASON_DAYS } from './season.ts';
import type { Span } from './types.ts';
import { MILKING_DOE_MIN } from './doeMinutes.ts';
import type { SeasonDoe, SeasonMilk, TripSeason } from './visitTypes.ts';

/**
 * The herd's coming year as of a ledger's day. Kiddings that are not on record are taken as `nextKidding` tells
 * them, and milk from them on with the range of their earliest, usual and latest day together.
 */
export function tripSeason(
  book: Book,
  ledger: Ledger,
  { milkings, trip, units, jar }: Pick<Farm, 'milkings' | 'trip' | 'units' | 'jar'>,
): TripSeason {
  const does = book.does.map(({ id, name, breed }): SeasonDoe => {
    const own = kiddingsOf(book, id);
    const spans = ledger.phases.get(id) ?? [];
    return { id, name, breed, spans, kiddings: own.map(({ day }) => day), due: dueOf(own, ledger, id) };
  });
  const { milk, quiet } = milkAhead(book, ledger, does);
  const shown = trip?.shownMilking;
  return {
    asOf: ledger.asOf,
    unit: shownUnit(units),
    jar_mL: UNIT_ML[jar.unit].mul(jar.size).valueOf(),
    milkings: { am: spanFrom(milkings.am, does.length), pm: spanFrom(milkings.pm, does.length) },
    ...(shown && { shownMilking: shown }),
    does: does.map((doe) => (quiet.has(doe.id) ? { ...doe, quiet: true } : doe)),
    milk,
  };
}

function kiddingsOf(book: Book, doe: string): Kidding[] {
  return book.kiddings.filter((one) => one.doe === doe).sort((a, b) => a.day - b.day);
}

function spanFrom(clock: string, does: number): Span {
  const from = readClock(clock) ?? 0;
  return { from, to: from + does * MILKING_DOE_MIN };
}

/** Her next kidding. One told by custom is dropped where she is milked so late that she cannot rest before it. */
function dueOf(own: readonly Kidding[], { asOf, phases }: Ledger, doe: string): SeasonDoe['due'] {
  const next = nextKidding(own, [], asOf);
  if (!next.ok) return null;
  const isInMilk = isMilked(phaseOn(phases.get(doe) ?? [], asOf));
  if (next.basis === 'common practice' && isInMilk && asOf > next.day - DRY_DAYS.short) return null;
  const { day, from, to, basis } = next;
  return { day, from, to, basis };
}

/** Milk by days ahead, and the does of whom the book tells too little. */
function milkAhead(
  book: Book,
  ledger: Ledger,
  does: readonly SeasonDoe[],
): { milk: (SeasonMilk | null)[]; quiet: ReadonlySet<string> } {
  const guessed = does.some(({ due }) => due && due.basis !== 'book');
  const days = guessed ? (['from', 'day', 'to'] as const) : (['day'] as const);
  const outlooks = days.map((which) => reckonedOutlook(book, ledger, does, which));
  const quiet = new Set<string>();
  const milk = Array.from({ length: SEASON_DAYS }, (_, index): SeasonMilk | null => {
    const told = outlooks.map((outlook) => outlook.on(ledger.asOf + index + 1));
    for (const one of told[0]?.does ?? [])
      if (!one.ok && (one.why.kind === 'silent' || one.why.kind === 'no kidding')) quiet.add(one.doe);
    const herds = told.flatMap(({ herd }) => (herd.ok ? [herd] : []));
    const usual = herds[Math.floor(herds.length / 2)];
    // Where nobody tells of the does in milk, the dry ones alone would make nought of it.
    if (!usual || herds.some((herd) => herd.does.length === 0 && herd.without.length > 0)) return null;
    const low = Math.min(...herds.map(({ low_L }) => low_L));
    const high = Math.max(...herds.map(({ high_L }) => high_L));
    return [to100(usual.middle_L), to100(low), to100(high)];
  });
  return { milk, quiet };
}

const to100 = (amount_L: number) => Math.round(amount_L * 100) / 100;

/** The outlook with the kiddings that are only reckoned, so that it tells the milk after them. */
function reckonedOutlook(
  book: Book,
  ledger: Ledger,
  does: readonly SeasonDoe[],
  which: 'from' | 'day' | 'to',
): Outlook {
  const reckoned = does.flatMap(({ id, due, spans, kiddings: past }): Kidding[] => {
    if (!due || due.basis === 'book') return [];
    const day = due[which];
    const dry = day + milkDays(spans, past);
    if (!isReared(spans, past)) return [{ doe: id, day, kids: null, apart: null, weaned: null, dry }];
    return [{ doe: id, day, kids: null, apart: day + LIKELY.apart, weaned: day + LIKELY.weaned, dry }];
  });
  const kiddings = [...book.kiddings, ...reckoned];
  const phases = new Map(does.map(({ id }) => [id, phaseSpans(kiddings.filter(({ doe }) => doe === id))]));
  return openOutlook({ ...book, kiddings }, { ...ledger, phases });
}
