// The fit of Wood's curve: it finds known curves, its errors are honest, and nothing makes it crash.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitWood, woodSeAt, type WoodFit } from '../../../shared/lactation/fitWood.ts';
import { woodAt } from '../../../shared/lactation/wood.ts';
import { searchWood } from '../../../shared/lactation/woodSearch.ts';
import { woodSeries } from '../../../shared/lactation/woodSeries.ts';
import { woodPoints, type Curve } from '../../support/woodPoints.ts';

const DEMO: Curve = { a: 2, b: 0.2, c: 0.004 };
const curveArb = fc.record({
  a: fc.double({ min: 0.2, max: 30, noNaN: true }),
  b: fc.double({ min: 0.05, max: 1, noNaN: true }),
  c: fc.double({ min: 0.002, max: 0.015, noNaN: true }),
});

function fitted(points: readonly { t: number; y: number }[]): WoodFit {
  const fit = fitWood(points);
  if (!fit.ok) throw new Error(`no fit: ${JSON.stringify(fit.why)}`);
  return fit;
}

function expectNear(actual: number, wanted: number, part: number): void {
  expect(Math.abs(actual - wanted), `${actual} against ${wanted}`).toBeLessThanOrEqual(part * Math.abs(wanted)); // prettier-ignore
}

/** Every number within an answer. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

describe('a curve without noise', () => {
  it('is found again', () => {
    fc.assert(
      fc.property(curveArb, fc.integer({ min: 60, max: 305 }), (curve, last) => {
        const fit = fitted(woodPoints(curve, 1, last));
        for (const key of ['a', 'b', 'c'] as const) expectNear(fit.curve[key], curve[key], 1e-7);
        expect(fit.residualSd).toBeLessThan(1e-7 * curve.a);
        expect(fit.r2).toBeGreaterThan(1 - 1e-9);
      }),
    );
  });

  it('is found from a third of its days, and from its last part', () => {
    const all = woodPoints(DEMO, 1, 305);
    for (const points of [all.filter(({ t }) => t % 3 === 0), all.slice(200), all.slice(0, 20)])
      for (const key of ['a', 'b', 'c'] as const) expectNear(fitted(points).curve[key], DEMO[key], 1e-5);
  });

  it('is found though a gap, a zero day or the day of kidding is among its days', () => {
    const points = woodPoints(DEMO, 1, 305).filter(({ t }) => t < 100 || t > 160);
    expectNear(fitted([{ t: 0, y: 1.2 }, ...points]).curve.b, 0.2, 1e-7);
    const withZero = points.map((point) => (point.t === 50 ? { t: 50, y: 0 } : point));
    expectNear(fitted(withZero).curve.b, 0.2, 0.15);
  });
});

describe('a curve with noise', () => {
  const seeds = Array.from({ length: 300 }, (_, index) => index + 1);
  const fits = seeds.map((seed) => fitted(woodPoints(DEMO, 1, 300, 0.3, seed)));
  const scores = (value: (fit: WoodFit) => number, se: (fit: WoodFit) => number, truth: number) => {
    const z = fits.map((fit) => (value(fit) - truth) / se(fit));
    const mean = z.reduce((sum, one) => sum + one, 0) / z.length;
    return { mean, sd: Math.sqrt(z.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (z.length - 1)) };
  };
  const total = woodPoints(DEMO, 1, 305).reduce((sum, { y }) => sum + y, 0);

  // Over 300 series an honest standard error gives scores of spread 1, known to ± 0.04, about 0 ± 0.06.
  it.each<[string, (fit: WoodFit) => number, (fit: WoodFit) => number, number]>([
    ['a', (fit) => fit.curve.a, (fit) => fit.se.a, DEMO.a],
    ['b', (fit) => fit.curve.b, (fit) => fit.se.b, DEMO.b],
    ['c', (fit) => fit.curve.c, (fit) => fit.se.c, DEMO.c],
    ['the day of the peak', (fit) => fit.peak?.day ?? 0, (fit) => fit.peak?.day_se ?? 0, 50],
    ['the peak', (fit) => fit.peak?.yield ?? 0, (fit) => fit.peak?.yield_se ?? 0, woodAt(DEMO, 50)],
    ['the 305-day total', (fit) => fit.total_305, (fit) => fit.total_305_se, total],
    ['persistency', (fit) => fit.persistency ?? 0, (fit) => fit.persistency_se ?? 0, -1.2 * Math.log(0.004)],
    ['the curve on day 200', (fit) => woodAt(fit.curve, 200), (fit) => woodSeAt(fit, 200), woodAt(DEMO, 200)],
  ])('tells %s as well as it says', (_, value, se, truth) => {
    const { mean, sd } = scores(value, se, truth);
    expect(Math.abs(mean)).toBeLessThan(0.25);
    expect(sd).toBeGreaterThan(0.85);
    expect(sd).toBeLessThan(1.15);
  });

  it('is found in few steps, as only second derivatives do where residuals are large', () => {
    const steps = Array.from({ length: 100 }, (_, seed) => {
      const series = woodSeries(woodPoints(DEMO, 1, 300, 0.6, seed + 1));
      return (series.start && searchWood(series, series.start)?.steps) ?? Infinity;
    });
    expect(Math.max(...steps)).toBeLessThanOrEqual(6);
  });

  it('has the least sum of squares: no step to any side betters it', () => {
    fc.assert(
      fc.property(curveArb, fc.integer({ min: 1, max: 1e6 }), (curve, seed) => {
        const points = woodPoints(curve, 5, 250, 0.1 * curve.a, seed);
        const { curve: best, se, rss } = fitted(points);
        const squares = ({ a, b, c }: Curve) =>
          points.reduce((sum, { t, y }) => sum + (y - a * t ** b * Math.exp(-c * t)) ** 2, 0);
        expectNear(squares(best), rss, 1e-9);
        for (const key of ['a', 'b', 'c'] as const)
          for (const step of [-0.01, 0.01])
            expect(squares({ ...best, [key]: best[key] + step * se[key] })).toBeGreaterThan(rss);
      }),
      { numRuns: 50 },
    );
  });
});

describe('another way to write the same days', () => {
  const points = woodPoints(DEMO, 1, 280, 0.25, 77);
  const plain = fitted(points);

  it('gives the same curve in the other unit of milk', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (scale) => {
        const fit = fitted(points.map(({ t, y }) => ({ t, y: y * scale })));
        expectNear(fit.curve.a, plain.curve.a * scale, 1e-8);
        expectNear(fit.se.a, plain.se.a * scale, 1e-7);
        expectNear(fit.curve.b, plain.curve.b, 1e-8);
        expectNear(fit.se.c, plain.se.c, 1e-7);
        expectNear(fit.r2 ?? 0, plain.r2 ?? 1, 1e-9);
        expectNear(fit.peak?.yield_se ?? 0, (plain.peak?.yield_se ?? 1) * scale, 1e-7);
      }),
    );
  });

  it('gives the same curve in weeks', () => {
    const fit = fitted(points.map(({ t, y }) => ({ t: t / 7, y })));
    expectNear(fit.curve.b, plain.curve.b, 1e-8);
    expectNear(fit.curve.c, plain.curve.c * 7, 1e-8);
    expectNear((fit.peak?.day ?? 0) * 7, plain.peak?.day ?? 1, 1e-8);
    expectNear((fit.peak?.day_se ?? 0) * 7, plain.peak?.day_se ?? 1, 1e-7);
    expectNear(fit.residualSd, plain.residualSd, 1e-9);
  });

  it('gives the same curve in any order', () => {
    const fit = fitted([...points].reverse());
    expectNear(fit.curve.a, plain.curve.a, 1e-9);
    expectNear(fit.se.b, plain.se.b, 1e-8);
  });

  it('leaves out what is no point of the curve', () => {
    const odd = [{ t: 0, y: 3 }, { t: -4, y: 3 }, { t: NaN, y: 1 }, { t: 20, y: -1 }, { t: 20, y: NaN }, { t: Infinity, y: 1 }]; // prettier-ignore
    expect(fitWood([...odd, ...points])).toEqual(plain);
  });
});

describe('days that carry no curve or no peak', () => {
  it.each([0, 1, 3, 7])('says that %i days are too few', (n) => {
    expect(fitWood(woodPoints(DEMO, 1, n))).toEqual({
      ok: false,
      why: { kind: 'tooFew', days: n, need: 8 },
    });
  });

  it('counts different days, not points', () => {
    const one = Array.from({ length: 30 }, (_, index) => ({ t: 5, y: 1 + index / 10 }));
    expect(fitWood(one)).toEqual({ ok: false, why: { kind: 'tooFew', days: 1, need: 8 } });
  });

  it('says that all is zero', () => {
    const zeros = woodPoints(DEMO, 1, 40).map(({ t }) => ({ t, y: 0 }));
    expect(fitWood(zeros)).toEqual({ ok: false, why: { kind: 'allZero', days: 40 } });
  });

  it('says that no curve fits a single day with milk among zeros', () => {
    const spike = woodPoints(DEMO, 1, 40).map(({ t }) => ({ t, y: t === 20 ? 3 : 0 }));
    expect(fitWood(spike)).toEqual({ ok: false, why: { kind: 'notConverged', days: 40 } });
  });

  it('tells a fall, a rise, level and sagging milk apart, with parameters and without a peak', () => {
    const of = (y: (t: number) => number) =>
      fitted(Array.from({ length: 60 }, (_, index) => ({ t: index + 10, y: y(index + 10) })));
    const runs = [
      of((t) => 3 * t ** -0.1 * Math.exp(-0.003 * t)),
      of((t) => t ** 0.3 * Math.exp(0.002 * t)),
      of(() => 2.5),
      of((t) => 9 * t ** -0.6 * Math.exp(0.012 * t)),
    ];
    expect(runs.map(({ peak, why }) => [peak, why])).toEqual(
      ['falling', 'rising', 'level', 'sagging'].map((run) => [null, { kind: 'noPeak', run }]),
    );
    expect(runs[2]?.r2).toBeNull();
    expectNear(runs[2]?.curve.a ?? 0, 2.5, 1e-9);
  });

  it('shows no peak before the first or after the last day', () => {
    const early = fitted(woodPoints(DEMO, 1, 40));
    expect(early.peak).toBeNull();
    expect(early.why).toMatchObject({ kind: 'peakOutside', side: 'after', first_day: 1, last_day: 40 });
    const late = fitted(woodPoints(DEMO, 60, 200));
    expect(late.why).toMatchObject({ kind: 'peakOutside', side: 'before', first_day: 60, last_day: 200 });
    expectNear(late.curve.b, 0.2, 1e-6);
  });

  it('shows no peak where the curve explains next to nothing', () => {
    // Level milk that goes up and down by a litre from day to day, a little higher in the middle.
    const points = Array.from({ length: 200 }, (_, index) => ({ t: index + 1, y: 3 + (index % 2) + 0.002 * Math.min(index, 199 - index) })); // prettier-ignore
    const fit = fitted(points);
    expect(fit.peak).toBeNull();
    expect(fit.why).toMatchObject({ kind: 'poorFit', need: 0.1 });
  });

  it('shows no peak while noise could have turned the curve down', () => {
    // On day 30 of a curve that peaks on day 50 an unsure fit would tell many a peak.
    const seeds = Array.from({ length: 200 }, (_, index) => index + 1);
    const early = seeds.map((seed) => fitted(woodPoints(DEMO, 1, 30, 0.2, seed)));
    const late = seeds.map((seed) => fitted(woodPoints(DEMO, 1, 100, 0.2, seed)));
    expect(early.filter(({ peak }) => peak !== null).length).toBeLessThan(10);
    expect(early.filter(({ why }) => why?.kind === 'peakUnsure').length).toBeGreaterThan(10);
    expect(late.filter(({ peak }) => peak === null)).toEqual([]);
  });

  it('takes limits of its own', () => {
    const points = woodPoints(DEMO, 1, 30, 0.2, 1);
    expect(fitWood(points, { days: 31, r2: 0.1, peakShare: 0.5, passed: 1.5 })).toMatchObject({ ok: false });
    const strict = fitWood(woodPoints(DEMO, 1, 100, 0.2, 1), {
      days: 8,
      r2: 0.999,
      peakShare: 0.5,
      passed: 1.5,
    });
    expect(strict.why).toMatchObject({ kind: 'poorFit', need: 0.999 });
    expect(fitWood(points.slice(0, 3), { days: 1, r2: 0, peakShare: 9, passed: 0 }).why?.kind).toBe('tooFew');
  });
});

describe('whatever the days', () => {
  const oddArb = fc.oneof(
    fc.constantFrom(0, 0, 1, 2.5),
    fc.double({ min: 0, max: 12, noNaN: true }),
    fc.double(),
    fc.constantFrom(1e-300, 1e300, 5e-324, Number.MAX_VALUE),
  );
  const pointArb = fc.record({ t: fc.oneof(fc.integer({ min: -2, max: 3660 }), fc.double({ min: 0, max: 400 })), y: oddArb }); // prettier-ignore

  it('gives finite numbers or a reason, and a peak only inside the days', () => {
    fc.assert(
      fc.property(fc.array(pointArb, { maxLength: 60 }), (points) => {
        const fit = fitWood(points);
        expect(numbersIn(fit).filter((value) => !Number.isFinite(value))).toEqual([]);
        if (!fit.ok) return;
        expect(fit.peak === null).toBe(fit.why !== null);
        if (fit.peak) {
          expect(fit.peak.day).toBeGreaterThanOrEqual(fit.first_day);
          expect(fit.peak.day).toBeLessThanOrEqual(fit.last_day);
        }
        expect([fit.se.a, fit.se.b, fit.se.c].every((se) => se >= 0)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('takes ten years of milk', () => {
    const fit = fitted(woodPoints({ a: 2, b: 0.1, c: 0.0008 }, 1, 3650, 0.2, 5));
    expectNear(fit.curve.c, 0.0008, 0.05);
  });
});
