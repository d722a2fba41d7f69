// How a doe stands on a day, from the herd's tables as they are written: her year, and her treatments.
import { dayNumber, isoDate } from '../calendar/day.ts';
import { milkingsOf, phaseOn, phaseSpans, type Phase } from '../herd/expected.ts';
import { firstFreeDay, holdsOn } from '../herd/treated.ts';
import type { Kidding, MilkingTime } from '../herd/types.ts';
import type { HerdBook, KiddingRow, TreatmentRow } from './herdBook.ts';

/** A turn of her year. */
export type TurnName = 'date' | 'apart' | 'weaned' | 'dry';

/** A turn with its date as written: past or of today, still to come, or not written yet. */
export interface Turn {
  readonly name: TurnName;
  readonly date: string;
  readonly state: 'reached' | 'planned' | 'open';
  /** The milkings that are expected of her from it on. */
  readonly milkings: readonly MilkingTime[];
}

/** A doe as she stands. */
export interface DoeNow {
  readonly phase: Phase;
  /** Since when she is in it, ISO; null where she has no kidding yet. */
  readonly since: string | null;
  /** The milkings that are expected of her today. */
  readonly expected: readonly MilkingTime[];
  /** Her latest kidding, those still to come included, and the older ones, newest first. */
  readonly kidding: KiddingRow | null;
  readonly older: readonly KiddingRow[];
  /** Set while her milk is kept apart: the first day whose milk may be kept, null while nobody has set one. */
  readonly treated: { readonly free: string | null } | null;
  /** Treatments that hold or are still to come, and those that are over, newest first. */
  readonly treatments: readonly TreatmentRow[];
  readonly past: readonly TreatmentRow[];
}

const plain = (text: string) => text.normalize('NFC').toLowerCase();

/** Whether a cell names a doe. */
export function namesDoe(cell: string, doe: string): boolean {
  return cell === doe || plain(cell) === plain(doe);
}

/** How a doe stands on the book's day. Rows with a date that cannot be read are left to the faults of the book. */
export function doeNow(herd: HerdBook, doe: string): DoeNow {
  const today = dayNumber(herd.today) ?? 0;
  const kiddings = herd.kiddings
    .filter((row) => namesDoe(row.doe, doe))
    .sort(newestFirst(({ date }) => date));
  const spans = phaseSpans(kiddings.flatMap((row) => kiddingOf(row) ?? []));
  const span = spans.find(({ from, to }) => from <= today && (to === null || today <= to));
  const treatments = herd.treatments
    .filter((row) => namesDoe(row.doe, doe))
    .sort(newestFirst(({ from }) => from));
  const days = treatments.flatMap((row) => daysOf(row) ?? []);
  const isOver = (row: TreatmentRow) => (daysOf(row)?.until ?? Infinity) <= today;
  const free = days.some((one) => holdsOn(one, today)) ? firstFreeDay(days, '', today) : undefined;
  const phase = phaseOn(spans, today);
  return {
    phase,
    since: span ? isoDate(span.from) : null,
    expected: milkingsOf(phase),
    kidding: kiddings[0] ?? null,
    older: kiddings.slice(1),
    treated: free === undefined ? null : { free: free === null ? null : isoDate(free) },
    treatments: treatments.filter((row) => !isOver(row)),
    past: treatments.filter(isOver),
  };
}

/** Whether the kids of a kidding grow up on bottles: neither nights apart nor weaning is written down. */
export function isBottleReared({ apart, weaned }: Pick<KiddingRow, 'apart' | 'weaned'>): boolean {
  return apart === '' && weaned === '';
}

/** The turns of the year that a kidding began. Where kids grow up on bottles there are no nights apart and no weaning. */
export function yearTurns(row: KiddingRow, today: string): Turn[] {
  const bottle = isBottleReared(row);
  const names: TurnName[] = bottle ? ['date', 'dry'] : ['date', 'apart', 'weaned', 'dry'];
  const milkings: Record<TurnName, readonly MilkingTime[]> = {
    date: bottle ? ['am', 'pm'] : [],
    apart: ['am'],
    weaned: ['am', 'pm'],
    dry: [],
  };
  return names.map((name) => {
    const date = row[name];
    const state = date === '' ? 'open' : date <= today ? 'reached' : 'planned';
    return { name, date, state, milkings: milkings[name] };
  });
}

function kiddingOf({ doe, date, apart, weaned, dry }: KiddingRow): Kidding | null {
  const day = dayNumber(date);
  if (day === null) return null;
  return { doe, day, kids: null, apart: dayNumber(apart), weaned: dayNumber(weaned), dry: dayNumber(dry) };
}

/** Under one name for every doe, since they are those of one. */
function daysOf({ from, until }: TreatmentRow): { doe: ''; from: number; until: number | null } | null {
  const day = dayNumber(from);
  return day === null ? null : { doe: '', from: day, until: dayNumber(until) };
}

function newestFirst<Row>(dateOf: (row: Row) => string): (a: Row, b: Row) => number {
  return (a, b) => (dateOf(a) < dateOf(b) ? 1 : dateOf(a) > dateOf(b) ? -1 : 0);
}
