// Graphs: what is drawn measures what it says, in millimetres.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisOf, roundAxis } from '../../../shared/drawing/axis.ts';
import { barGraph } from '../../../shared/drawing/bars.ts';
import { clockHands, onDial } from '../../../shared/drawing/clockHands.ts';
import { dotStacks } from '../../../shared/drawing/dotPlot.ts';
import { HATCHES, hatchStrokes } from '../../../shared/drawing/hatch.ts';
import { scatterPlot } from '../../../shared/drawing/scatter.ts';

describe('axisOf', () => {
  it('puts both ends and every step where a ruler finds them', () => {
    const axis = axisOf(4, 7, 0.25, 144);
    expect(axis.ticks.length).toBe(13);
    expect([4, 5.5, 7].map((value) => axis.at(value))).toEqual([0, 72, 144]);
  });

  it('throws for an axis without length', () => {
    expect(() => axisOf(3, 3, 1, 100)).toThrowErrorMatchingInlineSnapshot(
      `[Error: An axis cannot run from 3 to 3 in steps of 1 over 100 mm.]`,
    );
  });
});

describe('roundAxis', () => {
  it('holds every value between round ticks, not too many', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5000, max: 9000 }), { minLength: 1, maxLength: 9 }),
        (tenths) => {
          const values = tenths.map((one) => one / 10);
          const axis = roundAxis(values, 6, 100);
          for (const value of values) {
            expect(axis.at(value)).toBeGreaterThanOrEqual(-1e-6);
            expect(axis.at(value)).toBeLessThanOrEqual(100 + 1e-6);
          }
          expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
          expect(axis.ticks.length).toBeLessThanOrEqual(9);
          const step = (axis.ticks[1] ?? 0) - (axis.ticks[0] ?? 0);
          expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
        },
      ),
    );
  });
});

describe('barGraph', () => {
  it('draws a bar as tall as its value on the grid', () => {
    const graph = barGraph([7, 20, 0], { scale: 2, top: 20 }, 6, 30);
    expect(graph.height_mm).toBe(60);
    expect(graph.bars.map(({ height }) => height)).toEqual([21, 60, 0]);
    expect(graph.bars.map(({ y, height }) => y + height)).toEqual([60, 60, 60]);
  });

  it('tells five neighbours apart by hatch', () => {
    const graph = barGraph([1, 2, 3, 4, 5], { scale: 1, top: 5 }, 6, 30);
    expect(new Set(graph.bars.map(({ hatch }) => hatch)).size).toBe(5);
  });
});

describe('hatchStrokes', () => {
  it('keeps every stroke inside its block, and tells the ways apart', () => {
    const box = { x: 10, y: 20, width: 16, height: 40 };
    const drawn = HATCHES.map((hatch) => hatchStrokes(box, hatch));
    for (const stroke of drawn.flat()) {
      for (const x of [stroke.x1, stroke.x2])
        expect(x).toSatisfy((at: number) => at >= 10 - 1e-9 && at <= 26 + 1e-9);
      for (const y of [stroke.y1, stroke.y2])
        expect(y).toSatisfy((at: number) => at >= 20 - 1e-9 && at <= 60 + 1e-9);
    }
    expect(new Set(drawn.map((strokes) => JSON.stringify(strokes))).size).toBe(HATCHES.length);
    expect(hatchStrokes({ ...box, height: 0 }, 'slant')).toEqual([]);
  });
});

describe('dotStacks', () => {
  it('stacks equal numbers and leaves none out', () => {
    expect(dotStacks([5.5, 5.7, 5.5], 5.5, 0.1)).toEqual([
      { step: 0, above: 0 },
      { step: 2, above: 0 },
      { step: 0, above: 1 },
    ]);
  });

  it('throws for a number off the axis', () => {
    expect(() => dotStacks([5.55], 5, 0.1)).toThrowErrorMatchingInlineSnapshot(
      `[Error: 5.55 does not stand on an axis from 5 in steps of 0.1.]`,
    );
    expect(() => dotStacks([4], 5, 1)).toThrow('does not stand');
  });
});

describe('clockHands', () => {
  it('points where a clock points', () => {
    expect(clockHands('12:00')).toEqual({ hour_deg: 0, minute_deg: 0 });
    expect(clockHands('17:30')).toEqual({ hour_deg: 165, minute_deg: 180 });
    expect(clockHands('00:15')).toEqual({ hour_deg: 7.5, minute_deg: 90 });
    expect(() => clockHands('24:00')).toThrow('"24:00" is no time of day.');
  });

  it('counts angles from twelve, clockwise', () => {
    expect(onDial(0, 10).y).toBeCloseTo(-10);
    expect(onDial(90, 10).x).toBeCloseTo(10);
  });
});

describe('scatterPlot', () => {
  const points = [{ x: 1, y: 70.2 }, { x: 2, y: 72 }, { x: 4, y: 71.1 }];

  it('keeps points and line on the plot, a day the same distance everywhere', () => {
    const plot = scatterPlot({ points, line: { slope: 0.4, intercept: 70.2 }, zeroLine: false }, 140, 40);
    for (const { x, y } of plot.points) expect(x > 0 && x < 140 && y > 0 && y < 40).toBe(true);
    expect((plot.points[1]?.x ?? 0) - (plot.points[0]?.x ?? 0)).toBeCloseTo(140 / 5);
    expect(plot.line).not.toBeNull();
  });

  it('has its zero in the middle for residuals', () => {
    const plot = scatterPlot({ points: [{ x: 1, y: 0.8 }, { x: 2, y: -0.2 }], line: null, zeroLine: true }, 140, 40);
    expect(plot.y.at(0)).toBeCloseTo(20);
    expect(plot.line).toBeNull();
  });
}); // prettier-ignore
