// The shortest day beside GLPK, which reads the same model from a file: GNU's glpsol on CPLEX LP text.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shortestDay } from '../../shared/trip/shortest/shortestDay.ts';
import { smallDay } from '../../shared/trip/shortest/smallDay.ts';
import { smallCaseArb } from '../support/randomTrip.ts';
import { tripMip } from '../support/tripMip.ts';

// Debian package `glpk-utils` 5.0.
const hasGlpsol = spawnSync('glpsol', ['--version']).status === 0;

/** The least `load` of a model by glpsol, minutes after arrival; null where it finds that there is none. */
function byGlpsol(model: string, folder: string): number | null {
  const [from, to] = [join(folder, 'day.lp'), join(folder, 'day.txt')];
  writeFileSync(from, model);
  const run = spawnSync('glpsol', ['--lp', from, '--output', to, '--cuts', '--tmlim', '20'], { encoding: 'utf8' }); // prettier-ignore
  if (run.status !== 0) throw new Error(`glpsol: ${run.stdout}`);
  // glpsol leaves the output undefined where its relaxation has no solution already.
  if (/NO (PRIMAL|INTEGER)? ?FEASIBLE SOLUTION/.test(run.stdout)) return null;
  const said = readFileSync(to, 'utf8');
  const status = /^Status:\s+(.*)$/m.exec(said)?.[1];
  if (status !== 'INTEGER OPTIMAL') throw new Error(`glpsol says ${status}: ${run.stdout}`);
  return Math.round(Number(/^Objective:\s+goal = (\S+)/m.exec(said)?.[1]));
}

describe.skipIf(!hasGlpsol)(
  'the shortest day beside GLPK (skipped where the command `glpsol` is not installed)',
  () => {
    it('is the same to the minute, and none exactly where the model has no solution', () => {
      const folder = mkdtempSync(join(tmpdir(), 'trip-mip-'));
      const met = { days: 0, none: 0 };
      try {
        for (const small of fc.sample(smallCaseArb(2, 2), { numRuns: 60, seed: 5 })) {
          const day = smallDay(small);
          if (day.meal === 'no seats') continue;
          const least = byGlpsol(tripMip(day, 1), folder);
          const found = shortestDay(small, 400_000, 1);
          const expected = least === null ? { kind: 'none' } : { kind: 'shortest', load: day.arrive + least };
          expect(found, JSON.stringify(small)).toMatchObject(expected);
          met[least === null ? 'none' : 'days'] += 1;
        }
      } finally {
        rmSync(folder, { recursive: true });
      }
      expect(met.days).toBeGreaterThan(15);
      expect(met.none).toBeGreaterThan(5);
    });
  },
);
