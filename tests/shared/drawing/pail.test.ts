// Pail and measuring cup: the milk seen is the share asked for.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cupLevel, pailLevel } from '../../../shared/drawing/pail.ts';
import { areaOf } from './areaOf.ts';

describe.each([
  ['pailLevel', pailLevel],
  ['cupLevel', cupLevel],
])('%s', (_, levelOf) => {
  it('shows the share of the window that was asked for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fill) => {
        const { inside, milk } = levelOf(fill);
        expect(areaOf(milk)).toBeCloseTo(fill * areaOf(inside), 8);
      }),
    );
  });

  it('holds a share within the vessel, and refuses one that is no number', () => {
    expect(levelOf(2)).toEqual(levelOf(1));
    expect(levelOf(-1).milk).toEqual([]);
    expect(() => levelOf(Number.NaN)).toThrow(/not a number/);
  });
});
