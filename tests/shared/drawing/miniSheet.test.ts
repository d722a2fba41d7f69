// A sheet from afar: everything within its page, one number block a task, the heights in proportion.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { miniSheet } from '../../../shared/drawing/miniSheet.ts';

const taskArb = fc.record({
  height_mm: fc.double({ min: 5, max: 200, noNaN: true }),
  picture: fc.option(
    fc.constantFrom('cups', 'bars', 'jars', 'number-line', 'scatter', 'clocks', 'table', 'steps'),
  ),
  works: fc.array(fc.constantFrom('boxes', 'ring', 'lines', 'drawing', 'working', 'picture'), {
    minLength: 1,
    maxLength: 3,
  }),
});
/** Where each stroke begins. */
const begins = (path: string) => [...path.matchAll(/M(-?[\d.]+) (-?[\d.]+)/g)].map((one) => [Number(one[1]), Number(one[2])] as const); // prettier-ignore
const numberBlocks = (path: string) =>
  [...path.matchAll(/M8 ([\d.]+)h4\.5v4\.5h-4\.5z/g)].map((one) => Number(one[1]));

describe('miniSheet', () => {
  it('keeps within its page and numbers every task', () => {
    fc.assert(
      fc.property(fc.array(taskArb, { maxLength: 6 }), (tasks) => {
        const mini = miniSheet(tasks);
        for (const [x, y] of [...begins(mini.solid), ...begins(mini.lines)]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(mini.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(mini.height);
        }
        expect(`${mini.solid}${mini.lines}`).not.toMatch(/NaN|Infinity|-\d[\d.]*(?=v)/);
        expect(numberBlocks(mini.solid)).toHaveLength(tasks.length);
      }),
    );
  });

  it('gives each task its share of the page', () => {
    const tall = (height_mm: number) => ({ height_mm, picture: null, works: ['lines'] });
    const [first = 0, second = 0, third = 0] = numberBlocks(miniSheet([tall(60), tall(20), tall(40)]).solid);
    // The box has 83 between the title and the foot; 60 of 120 is one half of it, 20 a sixth.
    expect(second - first).toBeCloseTo(41.5, 1);
    expect(third - second).toBeCloseTo(83 / 6, 1);
  });
});
