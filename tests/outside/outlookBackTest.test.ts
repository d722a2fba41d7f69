// The outlook's back-test: its numbers worked out again, and what we ask of them.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Distance } from '../../shared/outlook/backTest.ts';
import { allShapes, ofFarm, ofShape } from '../shared/outlook/backTests.ts';
import { SHAPES } from '../shared/outlook/simulatedHerd.ts';
import { NOT_HERE, openData } from '../support/handouts.ts';

interface Written {
  readonly real: { from: string; to: string; distances: Distance[] };
  readonly simulated: {
    shapes: { shape: string; distances: Distance[] }[];
    together: Distance[];
  };
}

const written = parse(readFileSync('content/facts/outlook-backtest.yaml', 'utf8')) as Written;
// Six dairy cows: data set `milkman` of the R package doBy (GPL-2 or later), Friggens et al. 2007; not carried.
const folder = openData('herd-ampm');

const share = ({ held, days }: { held: number; days: number }) => held / days;

describe('the written back-test', () => {
  it('is no worse than the plain rule on the real herd, at any distance, by doe and by herd', () => {
    expect(written.real.distances.map((one) => one.distance_days)).toEqual([7, 14, 28]);
    for (const { doe, herd } of written.real.distances) {
      for (const errors of [doe, herd]) expect(errors.outlook_L).toBeLessThanOrEqual(errors.plain_L ?? 0);
    }
  });

  it("held a doe's day in 76 to 84 of 100 on the real herd and on simulated ones", () => {
    for (const { doe } of [...written.real.distances, ...written.simulated.together]) {
      expect(doe.days).toBeGreaterThan(200);
      expect(share(doe)).toBeGreaterThanOrEqual(0.76);
      expect(share(doe)).toBeLessThanOrEqual(0.84);
    }
  });

  it("held the herd's day in 72 to 88 of 100: there are few days to count", () => {
    for (const { herd } of [...written.real.distances, ...written.simulated.together]) {
      expect(share(herd)).toBeGreaterThanOrEqual(0.72);
      expect(share(herd)).toBeLessThanOrEqual(0.88);
    }
  });

  it('is no worse than the plain rule on simulated herds, all shapes together', () => {
    for (const { doe, herd } of written.simulated.together)
      for (const errors of [doe, herd]) expect(errors.outlook_L).toBeLessThanOrEqual(errors.plain_L ?? 0);
  });
});

describe.skipIf(!folder)(`the back-test of a real herd (${NOT_HERE})`, () => {
  it('comes out as written', { timeout: 120_000 }, () => {
    const { from, to, distances } = ofFarm(folder ?? '');
    expect({ from, to, distances }).toEqual({
      from: written.real.from,
      to: written.real.to,
      distances: written.real.distances,
    });
  });
});

describe('the back-test of simulated herds', () => {
  it('comes out as written', { timeout: 240_000 }, () => {
    const shapes = SHAPES.map((shape) => ({ shape, distances: ofShape(shape) }));
    expect(shapes).toEqual(written.simulated.shapes);
    expect(allShapes(shapes.map(({ distances }) => distances))).toEqual(written.simulated.together);
  });
});
