// How far off the outlook would have been, from the numbers of the back-test.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { FACTS_DIR } from './facts.ts';

const tallyShape = z.strictObject({
  days: z.number().int().positive(),
  outlook_L: z.number().nonnegative(),
  plain_L: z.number().nonnegative(),
  held: z.number().int().nonnegative(),
});
const distanceShape = z.strictObject({
  distance_days: z.number().int().positive(),
  doe: tallyShape,
  herd: tallyShape,
});
const backTestShape = z.strictObject({
  real: z.strictObject({
    herd: z.string(),
    source: z.string(),
    from: z.string(),
    to: z.string(),
    distances: z.array(distanceShape).min(1),
  }),
  simulated: z.strictObject({
    herd: z.string(),
    source: z.string(),
    together: z.array(distanceShape).min(1),
    shapes: z.array(z.strictObject({ shape: z.string(), distances: z.array(distanceShape).min(1) })).min(1),
  }),
});

/** The back-test of the outlook. */
type BackTest = z.infer<typeof backTestShape>;

/** Reads the numbers that the back-test wrote down. Throws where the file has another shape. */
export function backTest(): BackTest {
  return backTestShape.parse(parse(readFileSync(join(FACTS_DIR, 'outlook-backtest.yaml'), 'utf8')));
}
