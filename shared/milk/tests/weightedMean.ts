// Means of milk tests, each weighed by the milk it speaks for.

/** A test value and the milk it was drawn from; null is "not tested". */
export interface WeighedValue {
  readonly milk_kg: number;
  readonly value: number | null;
}

/** A mean with what it stands on, or why there is none. */
export type WeightedMean =
  | {
      readonly ok: true;
      readonly mean: number;
      /** Milk of the tests that count. */
      readonly milk_kg: number;
      readonly tests: number;
      /** Entries that were not tested, or gave no milk. */
      readonly left: number;
    }
  | { readonly ok: false; readonly why: 'nothing was tested' };

/**
 * The mean of test values weighed by milk: the value that the pooled milk would have. Averaging the
 * percents themselves would let a doe of little milk count as much as one of plenty. Entries that
 * were not tested leave both sums. Source: ICAR Guidelines, section 2 (from memory).
 * @example weightedMean([{ milk_kg: 3, value: 4 }, { milk_kg: 1, value: 6 }, { milk_kg: 2, value: null }]) // => { ok: true, mean: 4.5, milk_kg: 4, tests: 2, left: 1 }
 */
export function weightedMean(values: readonly WeighedValue[]): WeightedMean {
  let [milk_kg, sum, tests] = [0, 0, 0];
  for (const one of values) {
    if (one.value === null || one.milk_kg <= 0) continue;
    milk_kg += one.milk_kg;
    sum += one.milk_kg * one.value;
    tests += 1;
  }
  if (tests === 0) return { ok: false, why: 'nothing was tested' };
  return { ok: true, mean: sum / milk_kg, milk_kg, tests, left: values.length - tests };
}
