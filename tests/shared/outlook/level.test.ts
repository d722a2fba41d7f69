// The level that is followed day by day equals what the whole run of days says at once.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterDay, ahead, atNextKidding, beforeAnyMilk, levelOn, shareOf, type Known } from '../../../shared/outlook/level.ts'; // prettier-ignore
import type { Way } from '../../../shared/outlook/outcome.ts';

interface Day {
  readonly t: number;
  readonly way: Way;
  readonly litres: number;
}

// The same rule told the other way round: milk of all days is jointly normal in its logarithm, and what is
// to come follows from the textbook rule for conditional normal variables, by plain elimination.
const DRIFT_VAR = 0.02 ** 2 / (1 - Math.exp(-2 / 200));
const feature = (t: number) => [1, Math.log(t / 45), -(t - 45)];
const PRIOR = [[16, 0, 0], [0, 0.07 ** 2, 0.4 * 0.07 * 0.0018], [0, 0.4 * 0.07 * 0.0018, 0.0018 ** 2]]; // prettier-ignore
const MEAN = [0, 0.105, 0.003];
const inner = (x: readonly number[], y: readonly number[]) =>
  x.reduce((sum, v, i) => sum + v * (y[i] ?? 0), 0);
const noise = (t: number) => 0.08 ** 2 + 0.3 ** 2 * Math.exp(-t / 5);
const isAm = (way: Way) => (way === 'am' ? 1 : 0);

function covariance(a: Omit<Day, 'litres'>, b: Omit<Day, 'litres'>): number {
  const curve = inner(
    feature(a.t),
    PRIOR.map((line) => inner(line, feature(b.t))),
  );
  const share = 0.2 ** 2 * isAm(a.way) * isAm(b.way);
  return curve + DRIFT_VAR * Math.exp(-Math.abs(a.t - b.t) / 200) + share;
}

const expected = ({ t, way }: Omit<Day, 'litres'>) => inner(MEAN, feature(t)) + Math.log(0.5) * isAm(way);

function solve(matrix: number[][], right: number[]): number[] {
  const n = right.length;
  const rows = matrix.map((line, i) => [...line, right[i] ?? 0]);
  const at = (i: number, j: number) => rows[i]?.[j] ?? 0;
  for (let i = 0; i < n; i += 1) {
    const pivot = Array.from({ length: n - i }, (_, k) => i + k).reduce((a, b) =>
      Math.abs(at(b, i)) > Math.abs(at(a, i)) ? b : a,
    );
    [rows[i], rows[pivot]] = [rows[pivot] ?? [], rows[i] ?? []];
    for (let k = i + 1; k < n; k += 1) {
      const part = at(k, i) / at(i, i);
      rows[k] = (rows[k] ?? []).map((value, j) => value - part * at(i, j));
    }
  }
  const x: number[] = Array.from({ length: n }, () => 0);
  for (let i = n - 1; i >= 0; i -= 1) {
    let rest = at(i, n);
    for (let j = i + 1; j < n; j += 1) rest -= at(i, j) * (x[j] ?? 0);
    x[i] = rest / at(i, i);
  }
  return x;
}

function allAtOnce(days: readonly Day[], to: Omit<Day, 'litres'>): { middle: number; sd: number } {
  const matrix = days.map((a, i) => days.map((b, j) => covariance(a, b) + (i === j ? noise(a.t) : 0)));
  const across = days.map((one) => covariance(one, to));
  const misses = days.map((one) => Math.log(one.litres) - expected(one));
  const middle = expected(to) + inner(across, solve(matrix, misses));
  const variance = covariance(to, to) + noise(to.t) - inner(across, solve(matrix, across));
  return { middle, sd: Math.sqrt(variance) };
}

const follow = (days: readonly Day[]): Known =>
  days.reduce((known, one) => afterDay(known, one.t, one.way, one.litres), beforeAnyMilk(null));

// Days that lie near a curve, so that none counts as far off: what is done with those is tested apart.
const steadyArb = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 1, max: 12 }),
      way: fc.constantFrom<Way>('am', 'both'),
      off: fc.double({ min: -0.04, max: 0.04, noNaN: true }),
    }),
    { minLength: 1, maxLength: 25 },
  )
  .map((list) => {
    let t = 0;
    return list.map(({ gap, way, off }): Day => {
      t += gap;
      const curve = 2 * (t / 45) ** 0.105 * Math.exp(-0.003 * (t - 45));
      return { t, way, litres: curve * (way === 'am' ? 0.5 : 1) * Math.exp(off) };
    });
  });

describe('following a doe day by day', () => {
  it('gives what the whole run of days gives at once', () => {
    fc.assert(
      fc.property(
        steadyArb,
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom<Way>('am', 'both'),
        (days, on, way) => {
          const t = (days.at(-1)?.t ?? 0) + on;
          fc.pre(t <= 120); // Later days may not rise, which the rule at once does not know.
          const { middle_ln, sd_ln } = ahead(follow(days), t, way);
          const other = allAtOnce(days, { t, way });
          expect(middle_ln).toBeCloseTo(other.middle, 8);
          expect(sd_ln).toBeCloseTo(Math.min(other.sd, 1), 8);
        },
      ),
    );
  });

  it('gives the prior where she has no day yet', () => {
    const { middle_ln, sd_ln } = ahead(beforeAnyMilk(3), 45, 'both');
    expect(middle_ln).toBeCloseTo(Math.log(3), 12);
    expect(sd_ln).toBeCloseTo(Math.sqrt(0.35 ** 2 + DRIFT_VAR + noise(45)), 12);
  });
});

const run = (litres: readonly number[], from = 60): Known =>
  follow(litres.map((one, i) => ({ t: from + i, way: 'both', litres: one })));
const told = (known: Known, t: number) => Math.exp(ahead(known, t, 'both').middle_ln);

describe('a day far off', () => {
  const steady = Array.from({ length: 30 }, () => 2);

  it('hardly moves the level: a pail kicked over, a decimal point in the wrong place', () => {
    const before = told(run(steady), 91);
    expect(Math.abs(told(run([...steady, 0]), 91) / before - 1)).toBeLessThan(0.06);
    expect(Math.abs(told(run([...steady, 20]), 91) / before - 1)).toBeLessThan(0.06);
  });

  it('is believed once it stays', () => {
    const fallen = run([...steady, ...Array.from({ length: 10 }, () => 1)]);
    expect(told(fallen, 101)).toBeLessThan(1.15);
    const stopped = run([...steady, ...Array.from({ length: 14 }, () => 0)]);
    expect(told(stopped, 105)).toBeLessThan(0.1);
  });
});

describe('what is known', () => {
  it('is less sure the further ahead, and never wider than threefold either way', () => {
    const known = run(Array.from({ length: 40 }, (_, i) => 3 - i * 0.01));
    const spreads = [101, 107, 128, 200, 400, 4000].map((t) => ahead(known, t, 'both').sd_ln);
    for (const [i, sd] of spreads.entries()) {
      expect(sd).toBeGreaterThanOrEqual(spreads[i - 1] ?? 0);
      expect(sd).toBeLessThanOrEqual(1);
    }
  });

  it('never rises after day 120, however her days rose before', () => {
    const rising = run(
      Array.from({ length: 100 }, (_, i) => 1 + i * 0.03),
      20,
    );
    const later = [130, 200, 400, 4000].map((t) => told(rising, t));
    for (const [i, litres] of later.entries())
      expect(litres).toBeLessThanOrEqual((later[i - 1] ?? 99) + 1e-12);
  });

  it('learns her share of a morning from the change to two milkings', () => {
    const am = Array.from({ length: 30 }, (_, i): Day => ({ t: 20 + i, way: 'am', litres: 0.6 * 2 }));
    const both = Array.from({ length: 30 }, (_, i): Day => ({ t: 50 + i, way: 'both', litres: 2 }));
    expect(Math.exp(shareOf(follow(am)))).toBeCloseTo(0.5, 2);
    expect(Math.exp(shareOf(follow([...am, ...both])))).toBeGreaterThan(0.56);
  });

  it('carries level and share over to her next kidding, less surely', () => {
    const known = run(Array.from({ length: 100 }, () => 2));
    const next = atNextKidding(known);
    expect(next.daysInMilk).toBeNull();
    expect(levelOn(next, 45, 'both') - levelOn(known, 45, 'both') + (known.mean[3] ?? 0)).toBeCloseTo(0, 12);
    expect(ahead(next, 170, 'both').sd_ln).toBeGreaterThan(ahead(known, 170, 'both').sd_ln);
  });
});
