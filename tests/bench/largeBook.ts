// A large book for measuring: sixty does over as many seasons as it takes to fill the rows.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { dayFromCivil } from '../../shared/calendar/day.ts';
import type { Book, Kidding, MilkingRow, MilkingTime, Use } from '../../shared/herd/types.ts';
import type { Amount } from '../../shared/quantity/amount.ts';

const DOES = 60;
const TIMES: readonly MilkingTime[] = ['am', 'pm'];
const FIRST_YEAR = 1990;
const SEED = 20260521;

/** A book of exactly `rows` rows and the last day in it. */
export interface LargeBook {
  readonly book: Book;
  readonly asOf: number;
}

/**
 * Each year every doe kids on 1 March, gives milk twice a day from the next day on and is dry from
 * 15 December. One milking in a hundred is missing, one in a hundred is corrected later.
 */
export function largeBook(rows: number): LargeBook {
  const random = xoroshiro128plus(SEED);
  const int = (low: number, high: number) => uniformInt(random, low, high);
  const ids = Array.from({ length: DOES }, (_, index) => `doe-${index + 1}`);
  const kiddings: Kidding[] = [];
  const book: MilkingRow[] = [];
  let last = 0;
  for (let year = FIRST_YEAR; book.length < rows; year += 1) {
    const kidded = dayFromCivil(year, 3, 1);
    const dry = dayFromCivil(year, 12, 15);
    for (const doe of ids) kiddings.push({ doe, day: kidded, kids: 2, apart: null, weaned: null, dry });
    for (let day = kidded + 1; day < dry && book.length < rows; day += 1) {
      last = day;
      for (const doe of ids) for (const milking of TIMES) addMilking(book, { doe, day, milking }, int);
    }
  }
  const does = ids.map((id) => ({ id, name: id, breed: 'Alpine', born: null, weight_kg: null }));
  return { book: { does, kiddings, rows: book.slice(0, rows) }, asOf: last };
}

function addMilking(
  book: MilkingRow[],
  slot: Pick<MilkingRow, 'doe' | 'day' | 'milking'>,
  int: (low: number, high: number) => number,
): void {
  const chance = int(1, 100);
  if (chance === 1) return;
  const row = (entered_ms: number | null): MilkingRow => ({
    ...slot,
    amount: amountOf(int),
    use: useOf(int(1, 100)),
    note: '',
    entered_ms,
    file: 'milkings/large.csv',
    line: book.length + 2,
  });
  book.push(row(null));
  if (chance === 2) book.push(row(slot.day * 86_400_000));
}

/** Cups in quarters as a jug shows them, or pounds in tenths as a scale does. */
function amountOf(int: (low: number, high: number) => number): Amount {
  if (int(1, 10) <= 7) return { num: int(8, 48), den: 4, unit: 'cup' };
  return { num: int(10, 70), den: 10, unit: 'lb' };
}

function useOf(chance: number): Use {
  if (chance <= 92) return 'kept';
  return chance <= 95 ? 'withheld' : chance <= 98 ? 'fed' : 'lost';
}
