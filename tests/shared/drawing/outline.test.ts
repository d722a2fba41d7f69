// Written points become facets; the same writing always gives the same cut.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutBlock, cutLine, cutRing } from '../../../shared/drawing/cut.ts';
import { gougeRow } from '../../../shared/drawing/gouges.ts';
import { mirrored, outline, pathOf } from '../../../shared/drawing/outline.ts';
import { textLines } from '../../../shared/drawing/textLines.ts';
import { areaOf } from './areaOf.ts';

const square = '0,0! 40,0! 40,40! 0,40!';

describe('outline', () => {
  it('keeps straight sides between marked corners', () => {
    expect(areaOf(outline(square, 5, true))).toBeCloseTo(1600, 9);
    expect(outline(square, 5, true)).toHaveLength(32);
  });

  it('bows out round a turn that is not marked', () => {
    expect(areaOf(outline('0,0 40,0 40,40 0,40', 5, true))).toBeGreaterThan(1600);
  });

  it('passes through every written point', () => {
    const points = outline('0,0 13,7 20,30', 4, false);
    for (const [x, y] of [
      [0, 0],
      [13, 7],
      [20, 30],
    ] as const) {
      expect(points.some(([px, py]) => Math.hypot(px - x, py - y) < 1e-9)).toBe(true);
    }
  });

  it('names the word that is no point', () => {
    expect(() => outline('0,0 12;5 3,4', 5, true)).toThrowErrorMatchingInlineSnapshot(
      `[Error: A point is written "x,y" or "x,y!" for a corner, not "12;5".]`,
    );
  });
});

describe('mirrored', () => {
  it('turns left and right about the axis, keeps corners, and comes back', () => {
    expect(mirrored('30,10! 0,20', 50)).toBe('70,10! 100,20');
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }), (x, axis_x) => {
        expect(mirrored(mirrored(`${x},7`, axis_x), axis_x)).toBe(`${x},7`);
      }),
    );
  });
});

describe('the cuts', () => {
  it('are the same each time, and hold numbers only', () => {
    for (const make of [
      () => cutBlock(square),
      () => cutRing(square, 4),
      () => cutLine('0,0 20,10 40,0', 5),
      () => gougeRow('0,0 60,10', { every: 9, length: 8, width: 2, lean_deg: 50 }),
    ]) {
      expect(make()).toBe(make());
      expect(make()).toMatch(/^[MLZ\d. -]+$/);
    }
  });

  it('stray less than a unit from the writing at the usual length of cut', () => {
    const points = cutBlock(square)
      .slice(1, -1)
      .split('L')
      .map((word) => word.split(' ').map(Number) as [number, number]);
    expect(points).toHaveLength(20);
    for (const [x, y] of points) {
      const offSide = Math.min(Math.abs(x), Math.abs(x - 40), Math.abs(y), Math.abs(y - 40));
      expect(offSide).toBeLessThan(1);
    }
  });
});

describe('pathOf', () => {
  it('rounds to a tenth and closes when asked', () => {
    expect(
      pathOf([
        [0, 0.04],
        [1.26, 2],
      ]),
    ).toBe('M0 0L1.3 2Z');
    expect(
      pathOf(
        [
          [0, 0],
          [1, 2],
        ],
        false,
      ),
    ).toBe('M0 0L1 2');
  });
});

describe('textLines', () => {
  it('breaks between words and loses none', () => {
    expect(textLines('for the kids to drink', 12)).toEqual(['for the kids', 'to drink']);
    expect(textLines('', 12)).toEqual([]);
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,12}$/)),
        fc.integer({ min: 1, max: 30 }),
        (words, most) => {
          const lines = textLines(words.join(' '), most);
          expect(lines.join(' ')).toBe(words.join(' '));
          for (const line of lines) expect(line.length <= most || !line.includes(' ')).toBe(true);
        },
      ),
    );
  });
});
