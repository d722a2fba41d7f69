// Lanes of a place on the day sheet: no two spans over each other, and no more lanes than are there at once.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lanesOf } from '../../../../shared/trip/visits/lanes.ts';

const spanArb = fc
  .record({ from: fc.nat(200), length: fc.integer({ min: 1, max: 60 }) })
  .map(({ from, length }) => ({ from, to: from + length }));

it('lanesOf keeps spans of a lane apart and takes as many lanes as meet in the fullest minute', () => {
  fc.assert(
    fc.property(fc.array(spanArb, { maxLength: 12 }), (unsorted) => {
      const spans = unsorted.toSorted((a, b) => a.from - b.from);
      const { of, count } = lanesOf(spans);
      const minutes = Array.from({ length: 261 }, (_, minute) => spans.filter(({ from, to }) => from <= minute && minute < to)); // prettier-ignore
      expect(count).toBe(Math.max(...minutes.map((there) => there.length)));
      for (const there of minutes) {
        const lanes = there.map((span) => of[spans.indexOf(span)]);
        expect(new Set(lanes).size).toBe(lanes.length);
      }
    }),
  );
});
