// Milk tests joined to the milk they were drawn from.
import { isWhole, litres, type Ledger } from '../../herd/ledger.ts';
import type { Book, MilkTest } from '../../herd/types.ts';
import { MILK_DENSITY_KG_PER_L } from '../../quantity/units.ts';

/** A test with the milk that the doe gave that day. */
export interface TestedDay {
  readonly test: MilkTest;
  readonly milk_kg: number;
}

/** Why a test has no milk to be weighed by. */
export type TestGap = 'no milk of hers is in the book that day' | 'a milking of hers is missing that day';

/** Tests with milk, and tests without. */
export interface TestedDays {
  readonly days: readonly TestedDay[];
  readonly left: readonly { readonly test: MilkTest; readonly why: TestGap }[];
}

const KG_PER_L = MILK_DENSITY_KG_PER_L.valueOf();

/**
 * Joins each test up to the ledger's day to that day's milk of the doe, in order of day. A day with a
 * milking missing would weigh her too lightly, so its test is left out and named. Withheld milk
 * counts: she gave it.
 */
export function testedDays(book: Book, ledger: Ledger): TestedDays {
  const days: TestedDay[] = [];
  const left: { test: MilkTest; why: TestGap }[] = [];
  const counted = (book.milkTests ?? []).filter((test) => test.day <= ledger.asOf);
  for (const test of [...counted].sort((a, b) => a.day - b.day)) {
    const sum = ledger.doeDays.get(test.doe)?.get(test.day);
    if (!sum || sum.grains === 0n) left.push({ test, why: 'no milk of hers is in the book that day' });
    else if (sum.expected > 0 && !isWhole(sum))
      left.push({ test, why: 'a milking of hers is missing that day' });
    else days.push({ test, milk_kg: litres(ledger, sum.grains) * KG_PER_L });
  }
  return { days, left };
}
