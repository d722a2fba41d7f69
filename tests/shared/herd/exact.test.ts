// Sums are exact, however many rows and however odd their fractions.
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import type { MilkingRow } from '../../../shared/herd/types.ts';
import type { Amount } from '../../../shared/quantity/amount.ts';
import { asDouble, decimal, exact, over, sumOf, times } from '../../support/fraction.ts';
import { bookOf, day, row } from '../../support/bookOf.ts';

const CUP_L = over(decimal('3.785411784'), exact(16));

/** A book of one doe a row, all on one morning, so that the day's total is the sum of the amounts. */
function sumOfAmounts(amounts: readonly Amount[]): number | null {
  const first = row('2026-06-01 am a 1 L');
  const rows = amounts.map((amount, index): MilkingRow => ({
    ...first,
    doe: `d${index}`,
    amount,
    line: index,
  }));
  const book = { does: [{ id: 'd0', name: '', breed: '', born: null, weight_kg: null }], kiddings: [], rows };
  return computeFigures(book, day('2026-06-01')).figures['herd.day.total']?.value ?? null;
}

describe('exact sums', () => {
  it('makes exactly 1 L of ten times 0.1 L', () => {
    const rows = Array.from({ length: 5 }, (_, index) => [
      `2026-06-0${index + 1} am a 0.1 L`,
      `2026-06-0${index + 1} pm a 0.1 L`,
    ]);
    const { figures } = computeFigures(bookOf(['a 2026-05-01'], rows.flat()), day('2026-06-05'));
    expect(figures['herd.week.total']?.value).toBe(1);
    expect(figures['herd.day.total']?.value).toBe(0.2);
  });

  it('sums a million thirds of a cup to the nearest double', () => {
    const first = row('2026-01-01 am a 1/3 cup');
    const ids = Array.from({ length: 1370 }, (_, index) => `d${index}`);
    const rows: MilkingRow[] = [];
    for (let day = first.day; day < first.day + 365; day += 1)
      for (const doe of ids) rows.push({ ...first, doe, day }, { ...first, doe, day, milking: 'pm' });
    expect(rows).toHaveLength(1_000_100);
    const { figures } = computeFigures({ does: [], kiddings: [], rows }, day('2026-12-31'));
    expect(figures['herd.year.total']?.value).toBe(asDouble(times(exact(1_000_100, 3), CUP_L)));
  });

  it('loses no millilitre beside a great sum', () => {
    const amounts = [
      { num: 99_999_999, den: 1, unit: 'gal' } as const,
      { num: 1, den: 1000, unit: 'mL' } as const,
    ];
    const expected = sumOf([times(exact(99_999_999), decimal('3.785411784')), exact(1, 1_000_000)]);
    const value = sumOfAmounts(amounts);
    expect(value).toBe(asDouble(expected));
  });

  it('gives a number for a book with a hundred fractions that have no common parts', () => {
    const primes: number[] = [];
    for (let n = 1_000_003; primes.length < 100; n += 2) {
      let isPrime = true;
      for (let d = 3; d * d <= n; d += 2) if (n % d === 0) isPrime = false;
      if (isPrime) primes.push(n);
    }
    const value = sumOfAmounts(primes.map((den) => ({ num: den + 1, den, unit: 'L' })));
    const expected = asDouble(sumOf(primes.map((den) => exact(den + 1, den))));
    expect(value).toBe(expected);
  });

  it('turns weights to volume at 1.03 kg/L', () => {
    expect(sumOfAmounts([{ num: 1030, den: 1, unit: 'g' }])).toBe(1);
    expect(sumOfAmounts([{ num: 103, den: 100, unit: 'kg' }, { num: 1, den: 1, unit: 'L' }])).toBe(2); // prettier-ignore
  });
});
