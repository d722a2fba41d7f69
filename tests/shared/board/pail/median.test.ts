// The middle of numbers, against what others print for it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median } from '../../../../shared/board/pail/median.ts';

describe('the median', () => {
  // R 4, ?median: "the sample median": the middle value, or the mean of the two middle ones; its own example
  // `median(1:4)  # = 2.5 [even number]` (R documentation of stats::median, from memory).
  it('is that of R for an even number', () => {
    expect(median([1, 2, 3, 4])).toBe(2.5);
  });

  // Worked by hand: 4 5 6 7 9.
  it('is the middle one of an odd number, in whatever order they come', () => {
    expect(median([9, 4, 5, 7, 6])).toBe(6);
  });

  it('is null of none', () => {
    expect(median([])).toBeNull();
  });

  // The definition itself: no more than half lie below, no more than half above.
  it('has no more than half of the numbers on either side', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 60 }), (values) => {
        const middle = median(values) as number;
        expect(values.filter((one) => one < middle).length).toBeLessThanOrEqual(values.length / 2);
        expect(values.filter((one) => one > middle).length).toBeLessThanOrEqual(values.length / 2);
      }),
    );
  });
});
