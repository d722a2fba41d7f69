// The herd's figures worked out slowly by the contract's own sentences: plain loops over dates and rows.
import type { Book, Kidding, MilkingRow } from '../../shared/herd/types.ts';
import { asDouble, decimal, exact, isMore, over, sumOf, times, type Exact } from './fraction.ts';

/** A figure by the contract: its value, and how many rows it stands on where the contract leaves no doubt. */
export interface PlainFigure {
  readonly value: number | null;
  readonly rows?: number;
}

/** What the contract says `figures.json` holds. */
export interface PlainFigures {
  readonly asOf: string;
  readonly state: 'milking' | 'resting' | null;
  readonly wholeDay: boolean;
  readonly window: { readonly from: string; readonly to: string } | null;
  readonly figures: Readonly<Record<string, PlainFigure>>;
}

/** An entry that stands. */
export interface PlainEntry {
  readonly doe: string;
  readonly date: string;
  readonly milking: 'am' | 'pm';
  readonly use: string;
  readonly litres: Exact;
}

type Time = 'am' | 'pm';
const MS_PER_DAY = 86_400_000;
const TIMES: readonly Time[] = ['am', 'pm'];

// NIST Handbook 44, Appendix C; weights at 1.03 kg/L by the contract.
const GALLON_L = decimal('3.785411784');
const POUND_KG = decimal('0.45359237');
const KG_PER_L = decimal('1.03');
const ONE_L: Readonly<Record<string, Exact>> = {
  gal: GALLON_L,
  qt: over(GALLON_L, exact(4)),
  pt: over(GALLON_L, exact(8)),
  cup: over(GALLON_L, exact(16)),
  'fl oz': over(GALLON_L, exact(128)),
  L: exact(1),
  mL: exact(1, 1000),
  kg: over(exact(1), KG_PER_L),
  g: over(exact(1, 1000), KG_PER_L),
  lb: over(POUND_KG, KG_PER_L),
  oz: over(over(POUND_KG, exact(16)), KG_PER_L),
};

/** The date of a day number, by the platform's own calendar. */
export function dateOf(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** The date some days later. */
export function daysLater(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Days from one date to another. */
export function daysFromTo(from: string, to: string): number {
  return (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY;
}

/** Dates from one to another, both included; ISO dates sort as text. */
export function datesBetween(from: string, to: string): string[] {
  const dates = [];
  for (let date = from; date <= to; date = daysLater(date, 1)) dates.push(date);
  return dates;
}

/**
 * "Rows of a doe under treatment with nothing under use count as withheld; what somebody wrote stays." Walks the days of
 * each treatment as dates. `written` is the cell as it stands.
 */
export function plainUse(
  written: string,
  treatments: readonly { doe: string; from: string; until: string }[],
  doe: string,
  date: string,
): string {
  if (written !== '') return written;
  for (const one of treatments) {
    if (one.doe !== doe) continue;
    const lastDay = one.until === '' ? '9999-12-31' : daysLater(one.until, -1);
    if (one.from <= date && date <= lastDay) return 'withheld';
  }
  return 'kept';
}

/** "The latest `entered`, a row without counts as oldest; an empty amount strikes the entry out." */
export function plainEntries(rows: readonly MilkingRow[], asOf: number): PlainEntry[] {
  const counted = rows.filter((row) => row.day <= asOf);
  const entries: PlainEntry[] = [];
  for (const row of counted) {
    const rivals = counted.filter(
      (other) => other.doe === row.doe && other.day === row.day && other.milking === row.milking,
    );
    const beaten = rivals.some(
      (other) => other.entered_ms !== null && (row.entered_ms === null || other.entered_ms > row.entered_ms),
    );
    if (beaten || row.amount === null) continue;
    const unit = ONE_L[row.amount.unit];
    if (!unit) throw new Error(`no such unit: ${row.amount.unit}`);
    const litres = times(exact(row.amount.num, row.amount.den), unit);
    entries.push({ doe: row.doe, date: dateOf(row.day), milking: row.milking, use: row.use, litres });
  }
  return entries;
}

/** "Which milkings are expected of a doe, from her kidding row." */
export function plainExpected(kiddings: readonly Kidding[], doe: string, date: string): readonly Time[] {
  let current: Kidding | null = null;
  for (const kidding of kiddings) {
    if (kidding.doe !== doe || dateOf(kidding.day) > date) continue;
    if (current === null || kidding.day > current.day) current = kidding;
  }
  if (current === null) return [];
  const reached = (day: number | null) => day !== null && dateOf(day) <= date;
  if (reached(current.dry)) return [];
  if (current.apart === null && current.weaned === null) return dateOf(current.day) < date ? TIMES : [];
  if (reached(current.weaned)) return TIMES;
  return reached(current.apart) ? ['am'] : [];
}

/** A book opened for a day, with the questions that the contract asks of it. */
export class PlainBook {
  readonly book: Book;
  readonly today: string;
  readonly entries: readonly PlainEntry[];
  readonly dates: readonly string[];

  constructor(book: Book, asOf: number) {
    this.book = book;
    this.today = dateOf(asOf);
    this.entries = plainEntries(book.rows, asOf);
    const known = [
      ...book.kiddings.map((kidding) => dateOf(kidding.day)),
      ...this.entries.map((one) => one.date),
    ];
    const first = known.sort()[0] ?? this.today;
    this.dates = datesBetween(first, this.today);
  }

  expected(doe: string, date: string): readonly Time[] {
    return plainExpected(this.book.kiddings, doe, date);
  }

  on(date: string, doe?: string): PlainEntry[] {
    return this.entries.filter((one) => one.date === date && (doe === undefined || one.doe === doe));
  }

  missing(doe: string, date: string): Time[] {
    const entered = this.on(date, doe).map((one) => one.milking);
    return this.expected(doe, date).filter((milking) => !entered.includes(milking));
  }

  isComplete(doe: string, date: string): boolean {
    return this.expected(doe, date).length > 0 && this.missing(doe, date).length === 0;
  }

  isWhole(date: string): boolean {
    const ids = this.book.does.map((doe) => doe.id);
    const anyExpected = ids.some((id) => this.expected(id, date).length > 0);
    return anyExpected && ids.every((id) => this.missing(id, date).length === 0);
  }

  total(dates: readonly string[], doe?: string): Exact {
    return sumOf(dates.flatMap((date) => this.on(date, doe)).map((one) => one.litres));
  }

  /** The last day; a book with neither a whole day nor a recent entry falls back on its newest entry. */
  lastDay(): { date: string; whole: boolean } | null {
    const newestFirst = [...this.dates].reverse();
    const newestWhole = newestFirst.find((date) => this.isWhole(date));
    const newestEntry = newestFirst.find((date) => this.on(date).length > 0);
    const recent = (date: string | undefined) => date !== undefined && date >= daysLater(this.today, -13);
    if (newestWhole !== undefined && recent(newestWhole)) return { date: newestWhole, whole: true };
    if (newestEntry !== undefined && recent(newestEntry)) return { date: newestEntry, whole: false };
    if (newestWhole !== undefined) return { date: newestWhole, whole: true };
    return newestEntry === undefined ? null : { date: newestEntry, whole: false };
  }
}

/** Every figure of the contract, slowly. */
export function plainFigures(book: Book, asOf: number): PlainFigures {
  const plain = new PlainBook(book, asOf);
  const last = plain.lastDay();
  const window = last && { from: daysLater(last.date, -6), to: last.date };
  const away = last === null ? null : daysFromTo(last.date, plain.today);
  return {
    asOf: plain.today,
    state: away === null ? null : away >= 14 ? 'resting' : 'milking',
    wholeDay: last?.whole ?? false,
    window,
    figures: {
      ...herdFigures(plain, last?.date ?? null),
      ...Object.fromEntries(
        book.does.flatMap((doe) => Object.entries(doeFigures(plain, last?.date ?? null, doe.id))),
      ),
    },
  };
}

const litresOf = (value: Exact, rows: number): PlainFigure => ({ value: asDouble(value), rows });
const none = (rows?: number): PlainFigure => (rows === undefined ? { value: null } : { value: null, rows });

function meanOf(plain: PlainBook, dates: readonly string[], doe?: string): PlainFigure {
  if (dates.length === 0) return none(0);
  const rows = dates.flatMap((date) => plain.on(date, doe)).length;
  return litresOf(over(plain.total(dates, doe), exact(dates.length)), rows);
}

function herdFigures(plain: PlainBook, last: string | null): Record<string, PlainFigure> {
  const best = bestDay(plain);
  if (last === null) {
    const ids = [
      'day.total',
      'week.total',
      'week.kept',
      'week.missing',
      'week.dailyMean',
      'week.does',
      'year.total',
    ];
    return { ...Object.fromEntries(ids.map((id) => [`herd.${id}`, none(0)])), 'herd.best.day': best };
  }
  const week = datesBetween(daysLater(last, -6), last);
  const entries = week.flatMap((date) => plain.on(date));
  const kept = entries.filter((one) => one.use === 'kept');
  const year = plain.dates.filter((date) => date.slice(0, 4) === last.slice(0, 4));
  const ids = plain.book.does.map((doe) => doe.id);
  const missing = ids.flatMap((id) => week.flatMap((date) => plain.missing(id, date)));
  const inMilk = ids.filter((id) => plain.total(week, id).num > 0n);
  return {
    'herd.day.total': litresOf(plain.total([last]), plain.on(last).length),
    'herd.week.total': litresOf(plain.total(week), entries.length),
    'herd.week.kept': litresOf(sumOf(kept.map((one) => one.litres)), kept.length),
    'herd.week.missing': { value: missing.length },
    'herd.week.dailyMean': meanOf(plain, week.filter((date) => plain.isWhole(date))),
    'herd.week.does': { value: inMilk.length },
    'herd.year.total': litresOf(plain.total(year), year.flatMap((date) => plain.on(date)).length),
    'herd.best.day': best,
  }; // prettier-ignore
}

function bestDay(plain: PlainBook): PlainFigure {
  let best: Exact | null = null;
  for (const date of plain.dates.filter((one) => plain.isWhole(one))) {
    const total = plain.total([date]);
    if (best === null || isMore(total, best)) best = total;
  }
  return best === null ? none(0) : { value: asDouble(best) };
}

function doeFigures(plain: PlainBook, last: string | null, doe: string): Record<string, PlainFigure> {
  const week = last === null ? [] : datesBetween(daysLater(last, -6), last);
  const entries = week.flatMap((date) => plain.on(date, doe));
  const best = entries.reduce<Exact | null>(
    (most, one) => (most === null || isMore(one.litres, most) ? one.litres : most),
    null,
  );
  return {
    [`doe.${doe}.week.total`]: best === null ? none(0) : litresOf(plain.total(week, doe), entries.length),
    [`doe.${doe}.week.best`]: best === null ? none() : { value: asDouble(best) },
    [`doe.${doe}.week.dailyMean`]: meanOf(plain, week.filter((date) => plain.isComplete(doe, date)), doe),
    [`doe.${doe}.daysInMilk`]: { value: daysInMilk(plain, doe) },
  }; // prettier-ignore
}

function daysInMilk(plain: PlainBook, doe: string): number | null {
  const own = plain.book.kiddings.filter((one) => one.doe === doe && dateOf(one.day) <= plain.today);
  const latest = own.sort((a, b) => b.day - a.day)[0];
  if (latest === undefined) return null;
  if (latest.dry !== null && dateOf(latest.dry) <= plain.today) return null;
  return daysFromTo(dateOf(latest.day), plain.today);
}
