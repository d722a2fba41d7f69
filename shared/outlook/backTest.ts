// How far off the outlook would have been: asked every week of a book that has since been filled in.
import { openLedger, type Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import type { BreedYear } from './breeds.ts';
import { openOutlook } from './outlook.ts';
import { wholeDays, type WholeDay } from './wholeDays.ts';

/** Errors of a kind of day (a doe's or the herd's) at one distance. L a day; null where no day was compared. */
export interface Errors {
  readonly days: number;
  /** Mean absolute error of the outlook's middle, and of "the same as the mean day of her last week". */
  readonly outlook_L: number | null;
  readonly plain_L: number | null;
  /** Days that lay inside the 80 % range. */
  readonly held: number;
}

/** The back-test at one distance. */
export interface Distance {
  readonly distance_days: number;
  readonly doe: Errors;
  readonly herd: Errors;
}

const WEEK_DAYS = 7;

interface Told {
  readonly middle_L: number;
  readonly low_L: number;
  readonly high_L: number;
}

class Tally {
  days = 0;
  outlook_L = 0;
  plain_L = 0;
  held = 0;

  add(told: Told, plain_L: number, milk_L: number): void {
    this.days += 1;
    this.outlook_L += Math.abs(told.middle_L - milk_L);
    this.plain_L += Math.abs(plain_L - milk_L);
    if (told.low_L <= milk_L && milk_L <= told.high_L) this.held += 1;
  }

  errors(): Errors {
    const { days, held } = this;
    const mean = (sum: number) => (days > 0 ? sum / days : null);
    return { days, outlook_L: mean(this.outlook_L), plain_L: mean(this.plain_L), held };
  }
}

/**
 * Opens the book every seventh day from its first week on, as if nothing later were written, and compares
 * what the outlook and the plain rule say of the days at each distance with what was milked. A doe-day
 * counts where it is whole and both rules have an answer; a herd-day where that holds for every doe of
 * whom milkings were expected, and there are two at least.
 */
export function backTest(
  book: Book,
  distances_days: readonly number[],
  breeds: readonly BreedYear[] = [],
): Distance[] {
  const rowDays = book.rows.map(({ day }) => day).sort((a, b) => a - b);
  const [first, last] = [rowDays[0], rowDays.at(-1)];
  const tallies = distances_days.map((distance_days) => ({
    distance_days,
    doe: new Tally(),
    herd: new Tally(),
  }));
  if (first !== undefined && last !== undefined) {
    const whole = openLedger(book, last);
    const milked = wholeDays(whole);
    for (let asOf = first + WEEK_DAYS - 1; asOf < last; asOf += WEEK_DAYS) {
      const ledger = openLedger(book, asOf);
      const opened = openOutlook(book, ledger, breeds);
      const plain = lastWeeks(wholeDays(ledger), asOf);
      for (const { distance_days, doe, herd } of tallies)
        compare(opened.on(asOf + distance_days), plain, milked, whole, doe, herd);
    }
  }
  return tallies.map(({ distance_days, doe, herd }) => ({
    distance_days,
    doe: doe.errors(),
    herd: herd.errors(),
  }));
}

/** The plain rule: each doe's mean whole day of the week that ends on `asOf`. */
function lastWeeks(days: ReadonlyMap<string, readonly WholeDay[]>, asOf: number): Map<string, number> {
  const means = new Map<string, number>();
  for (const [doe, own] of days) {
    const week = own.filter(({ day }) => day > asOf - WEEK_DAYS);
    if (week.length > 0) means.set(doe, week.reduce((sum, one) => sum + one.amount_L, 0) / week.length);
  }
  return means;
}

function compare(
  told: ReturnType<ReturnType<typeof openOutlook>['on']>,
  plain: ReadonlyMap<string, number>,
  milked: ReadonlyMap<string, readonly WholeDay[]>,
  ledger: Ledger,
  doeTally: Tally,
  herdTally: Tally,
): void {
  let [milk_L, plain_L, compared, expected] = [0, 0, 0, 0];
  for (const one of told.does) {
    const id = one.doe;
    if ((ledger.doeDays.get(id)?.get(told.day)?.expected ?? 0) > 0) expected += 1;
    const day = milked.get(id)?.find((whole) => whole.day === told.day);
    const same_L = plain.get(id);
    if (!one.ok || !day || same_L === undefined) continue;
    doeTally.add(one, same_L, day.amount_L);
    compared += 1;
    milk_L += day.amount_L;
    plain_L += same_L;
  }
  if (told.herd.ok && compared >= 2 && compared === expected) herdTally.add(told.herd, plain_L, milk_L);
}
