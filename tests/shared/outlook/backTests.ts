// The back-tests whose numbers stand in content/facts/outlook-backtest.yaml: a real herd and simulated ones.
import { isoDate } from '../../../shared/calendar/day.ts';
import { backTest, type Distance, type Errors } from '../../../shared/outlook/backTest.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { simulatedHerd, type Shape } from './simulatedHerd.ts';

export const DISTANCES_DAYS = [7, 14, 28];
const SEEDS = ['first', 'second', 'third'];
/** Spread of what a day does to all does of a simulated herd alike. */
const ALIKE = 0.04;

// Litres are written to the tenth of a millilitre.
const rounded = (litres: number | null) => (litres === null ? null : Math.round(litres * 1e4) / 1e4);
const written = ({ days, outlook_L, plain_L, held }: Errors): Errors => ({
  days,
  outlook_L: rounded(outlook_L),
  plain_L: rounded(plain_L),
  held,
});
const writtenAll = (distances: readonly Distance[]): Distance[] =>
  distances.map(({ distance_days, doe, herd }) => ({
    distance_days,
    doe: written(doe),
    herd: written(herd),
  }));

/** The back-test of a farm folder, read for a day after its last row. */
export function ofFarm(folder: string): { from: string; to: string; distances: Distance[] } {
  const reading = readFarm(folder, { asOf: '2026-06-01', now_ms: 0 });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  const days = reading.book.rows.map(({ day }) => day).sort((a, b) => a - b);
  const distances = writtenAll(backTest(reading.book, DISTANCES_DAYS));
  return { from: isoDate(days[0] ?? 0), to: isoDate(days.at(-1) ?? 0), distances };
}

/** The back-tests of simulated herds of one shape, three seeds together. */
export function ofShape(shape: Shape): Distance[] {
  const runs = SEEDS.map((seed) => backTest(simulatedHerd(seed, shape, ALIKE), DISTANCES_DAYS));
  return writtenAll(pooled(runs));
}

/** The back-tests of all shapes as one. */
export function allShapes(shapes: readonly (readonly Distance[])[]): Distance[] {
  return writtenAll(pooled(shapes));
}

/** Errors of several back-tests as one: means weighted by days. */
function pooled(runs: readonly (readonly Distance[])[]): Distance[] {
  return DISTANCES_DAYS.map((distance_days, index) => {
    const at = runs.flatMap((run) => run[index] ?? []);
    return {
      distance_days,
      doe: together(at.map(({ doe }) => doe)),
      herd: together(at.map(({ herd }) => herd)),
    };
  });
}

function together(all: readonly Errors[]): Errors {
  const days = all.reduce((sum, one) => sum + one.days, 0);
  const mean = (of: (one: Errors) => number | null) =>
    days === 0 ? null : all.reduce((sum, one) => sum + (of(one) ?? 0) * one.days, 0) / days;
  const held = all.reduce((sum, one) => sum + one.held, 0);
  return { days, outlook_L: mean((one) => one.outlook_L), plain_L: mean((one) => one.plain_L), held };
}
