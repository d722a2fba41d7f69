// Few or many children: the figures add up, and never grow too many.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { childrenServed } from '../../../shared/drawing/childrenServed.ts';

describe('childrenServed', () => {
  it('draws each child while there is room', () => {
    expect(childrenServed(12, 12)).toEqual({ each: 1, whole: 12, rest: 0 });
  });

  it('groups them by 2, 5, 10 and so on when there is not', () => {
    expect(childrenServed(13, 12)).toEqual({ each: 2, whole: 6, rest: 1 });
    expect(childrenServed(43, 12)).toEqual({ each: 5, whole: 8, rest: 3 });
    expect(childrenServed(0, 12)).toEqual({ each: 1, whole: 0, rest: 0 });
  });

  it('adds up to the count with at most so many figures', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 1, max: 60 }), (count, max) => {
        const { each, whole, rest } = childrenServed(count, max);
        expect(whole * each + rest).toBe(count);
        expect(rest).toBeLessThan(each);
        expect(whole + (rest > 0 ? 1 : 0)).toBeLessThanOrEqual(max);
      }),
    );
  });

  it('refuses parts of children', () => {
    expect(() => childrenServed(2.5, 10)).toThrow(/whole numbers/);
    expect(() => childrenServed(2, 0)).toThrow();
  });
});
