// How many lactations of 300 days are fitted a second, beside scipy's `curve_fit` on the same series in the same run.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fitWood, type WoodFit } from '../../shared/lactation/fitWood.ts';
import { woodPoints } from '../support/woodPoints.ts';
import { shortest_ms, type Line, type Part } from './line.ts';

const SERIES = 200;
const DAYS = 300;
const RUNS = 5;
const WAIT_MS = 120_000;
const SCRIPT = join(import.meta.dirname, 'woodScipy.py');

type Points = readonly { readonly t: number; readonly y: number }[];
interface Timed {
  readonly ms: number;
  /** a, b, c and their standard errors, of each series. */
  readonly fits: readonly (readonly number[])[];
}

/** Noisy lactations about curves of many heights and shapes; the noise never reaches 0, so that logarithms exist. */
function lactations(): Points[] {
  return Array.from({ length: SERIES }, (_, index) => {
    const curve = { a: 1 + (index % 7) / 4, b: 0.1 + (index % 11) / 40, c: 0.002 + (index % 5) / 1500 };
    return woodPoints(curve, 1, DAYS, 0.08 * curve.a, index + 1).map(({ t, y }) => ({
      t,
      y: Math.max(0.05, y),
    }));
  });
}

function scipy(series: readonly Points[]): { version: string; plain: Timed; withSlopes: Timed } | null {
  const input = { runs: RUNS, series: series.map((points) => ({ t: points.map(({ t }) => t), y: points.map(({ y }) => y) })) }; // prettier-ignore
  const python = spawnSync('python3', [SCRIPT], {
    input: JSON.stringify(input),
    encoding: 'utf8',
    timeout: WAIT_MS,
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  });
  if (python.status !== 0) return null;
  return JSON.parse(python.stdout) as { version: string; plain: Timed; withSlopes: Timed };
}

/** Measures both; throws where they do not find the same curves, since then they did not do the same. */
export const woodPart: Part = async (say) => {
  say(`Wood's curve on ${SERIES} series of ${DAYS} days …`);
  const series = lactations();
  const fits = series.map((points) => fitWood(points));
  const ours_ms = await shortest_ms(RUNS, () => series.map((points) => fitWood(points)));
  const theirs = scipy(series);
  const found = fits.filter((fit): fit is WoodFit => fit.ok);
  if (found.length !== SERIES) throw new Error(`${SERIES - found.length} of ${SERIES} series have no fit.`);
  const perSecond = (ms: number) => `${Math.round(SERIES / (ms / 1000)).toLocaleString('en')}/s`;
  if (!theirs) {
    const what = `Wood fits, ${DAYS} days`;
    return [{ what, ours: perSecond(ours_ms), beside: "scipy's curve_fit (not installed)", theirs: null, ratio: null }]; // prettier-ignore
  }
  return (['plain', 'withSlopes'] as const).map((way): Line => {
    mustAgree(found, theirs[way].fits);
    return {
      what: `Wood fits, ${DAYS} days, one core`,
      ours: perSecond(ours_ms),
      beside: `curve_fit of scipy ${theirs.version}${way === 'plain' ? '' : ', analytic derivatives'}`,
      theirs: perSecond(theirs[way].ms),
      ratio: ours_ms / theirs[way].ms,
    };
  });
};

function mustAgree(ours: readonly WoodFit[], theirs: Timed['fits']): void {
  ours.forEach(({ curve, se }, index) => {
    const own = [curve.a, curve.b, curve.c, se.a, se.b, se.c];
    own.forEach((value, at) => {
      const other = theirs[index]?.[at] ?? Number.NaN;
      // curve_fit stops at 1e-8 of the sum of squares, which leaves some 1e-4 of a parameter.
      if (!(Math.abs(value - other) <= 1e-3 * Math.abs(other)))
        throw new Error(`Series ${index}: ${value} by the engine and ${other} by scipy.`);
    });
  });
}
