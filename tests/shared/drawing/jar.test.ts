// The jar's promise: the area drawn is the milk measured.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jarHatch, jarInside, jarLevel, jarMarks_y } from '../../../shared/drawing/jar.ts';
import { areaOf } from './areaOf.ts';

const fullArea = (jarInside.right - jarInside.left) * (jarInside.base_y - jarInside.full_y);

describe('jarLevel', () => {
  it('draws an area in exact proportion to the fill', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fill) => {
        expect(areaOf(jarLevel(fill).outline)).toBeCloseTo(fill * fullArea, 8);
      }),
    );
  });

  it('leaves the rest of the jar as air: milk and air together never change', () => {
    const whole = areaOf(jarLevel(0).air);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fill) => {
        const level = jarLevel(fill);
        expect(areaOf(level.outline) + areaOf(level.air)).toBeCloseTo(whole, 8);
      }),
    );
  });

  it('keeps the surface between the base and the full line', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fill) => {
        for (const [x, y] of jarLevel(fill).outline) {
          expect(y).toBeGreaterThanOrEqual(jarInside.full_y - 1e-9);
          expect(y).toBeLessThanOrEqual(jarInside.base_y + 1e-9);
          expect(x).toBeGreaterThanOrEqual(jarInside.left);
          expect(x).toBeLessThanOrEqual(jarInside.right);
        }
      }),
    );
  });

  it('holds a fill outside 0..1 within the jar, and refuses one that is no number', () => {
    expect(jarLevel(-0.2)).toEqual(jarLevel(0));
    expect(jarLevel(1.4)).toEqual(jarLevel(1));
    expect(jarLevel(0).outline).toEqual([]);
    expect(() => jarLevel(Number.NaN)).toThrowErrorMatchingInlineSnapshot(
      `[Error: A jar was asked for with a fill that is not a number.]`,
    );
  });

  it('marks the quarters where milk of that fill stands', () => {
    expect(jarMarks_y).toEqual([75, 60, 45, 30]);
    [0.25, 0.5, 0.75, 1].forEach((fill, i) => expect(jarLevel(fill).y).toBe(jarMarks_y[i]));
  });
});

describe('jarHatch', () => {
  it('keeps every stroke within the milk, and draws none in an empty jar', () => {
    expect(jarHatch(jarLevel(0))).toEqual([]);
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (fill) => {
        const level = jarLevel(fill);
        const strokes = jarHatch(level);
        expect(strokes.length).toBeGreaterThan(3);
        for (const [x, y] of strokes.flat()) {
          expect(x).toBeGreaterThanOrEqual(jarInside.left - 1e-9);
          expect(x).toBeLessThanOrEqual(jarInside.right + 1e-9);
          expect(y).toBeGreaterThanOrEqual(level.y);
          expect(y).toBeLessThanOrEqual(jarInside.base_y + 1e-9);
        }
      }),
    );
  });
});
