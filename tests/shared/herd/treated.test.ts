// Whose milk is kept apart on a day, against a walk over the days one by one.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countedUse,
  firstFreeDay,
  holdsOn,
  isTreated,
  type TreatmentSpan,
} from '../../../shared/herd/treated.ts';
import { USES } from '../../../shared/herd/types.ts';

const span = (from: number, until: number | null, doe = 'a'): TreatmentSpan => ({ doe, from, until });

describe('a treatment', () => {
  // Withdrawal ends with an exclusive end: milk of the day itself may be kept again (the farm folder's rule).
  it('holds from its first day up to but not with its end', () => {
    expect([9, 10, 11, 12, 13].map((day) => holdsOn(span(10, 12), day))).toEqual([
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(holdsOn(span(10, null), 100_000)).toBe(true);
    expect(holdsOn(span(10, 10), 10)).toBe(false);
  });

  it('frees a doe on the last end of those that follow one another, and never without an end', () => {
    const chain = [span(10, 14), span(12, 20), span(20, 22), span(30, 40), span(1, 99, 'b')];
    expect(firstFreeDay(chain, 'a', 10)).toBe(22);
    expect(firstFreeDay(chain, 'a', 9)).toBe(9);
    expect(firstFreeDay(chain, 'a', 25)).toBe(25);
    expect(firstFreeDay([...chain, span(21, null)], 'a', 10)).toBeNull();
  });

  it('says the same as a walk over the days', () => {
    const spans = fc.array(
      fc.record({
        doe: fc.constantFrom('a', 'b'),
        from: fc.integer({ min: 0, max: 40 }),
        days: fc.option(fc.integer({ min: 0, max: 12 }), { freq: 8 }),
      }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(spans, fc.integer({ min: 0, max: 60 }), (drawn, day) => {
        const all = drawn.map(({ doe, from, days }) => span(from, days === null ? null : from + days, doe));
        const dark = new Set<number>();
        for (const { doe, from, until } of all)
          if (doe === 'a') for (let one = from; one < (until ?? 200); one += 1) dark.add(one);
        expect(isTreated(all, 'a', day)).toBe(dark.has(day));
        let free = day;
        while (dark.has(free)) free += 1;
        expect(firstFreeDay(all, 'a', day)).toBe(free === 200 ? null : free);
      }),
    );
  });
});

describe('what counts as a use', () => {
  it('is what somebody wrote, and withheld only where nobody did', () => {
    const all = [span(10, 12)];
    for (const use of USES) expect(countedUse(use, all, 'a', 10)).toBe(use);
    expect([countedUse(null, all, 'a', 10), countedUse(null, all, 'a', 12), countedUse(null, all, 'b', 10)]).toEqual(['withheld', 'kept', 'kept']); // prettier-ignore
  });
});
