// Whole farms: the demo farm, and a real herd's book where it is at hand.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { NOW_MS } from './farmFolder.ts';

const rowsIn = (dir: string) =>
  readdirSync(join(dir, 'milkings'))
    .map(
      (file) =>
        readFileSync(join(dir, 'milkings', file), 'utf8')
          .trimEnd()
          .split('\n').length - 1,
    )
    .reduce((sum, count) => sum + count, 0);

describe('the demo farm', () => {
  it('reads without a fault, every row of it', () => {
    const read = readFarm('content/farm', { now_ms: NOW_MS });
    if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
    expect(read.book.rows).toHaveLength(rowsIn('content/farm'));
    expect(read.book.does).toHaveLength(6);
    expect(read.asOfFrom).toBe('farm.yaml');
  });
});

// Measurements of Friggens et al. 2007, J. Dairy Sci. 90:5453, from the R package doBy (data set milkman).
const REAL_HERD = '../shared/data/herd-ampm';
describe('a real herd', () => {
  it.skipIf(!existsSync(REAL_HERD))(
    'reads without a fault, every row of it (skipped where its data are not at hand)',
    () => {
      const read = readFarm(REAL_HERD, { now_ms: NOW_MS });
      if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
      expect(read.book.rows).toHaveLength(rowsIn(REAL_HERD));
      expect(read.book.rows.length).toBeGreaterThan(2000);
      expect(read.farm).toMatchObject({ timeZone: 'Europe/Copenhagen', recordUnit: 'kg' });
      // The sum of its kilograms, added up from the bare text.
      const text = readdirSync(join(REAL_HERD, 'milkings')).map((file) => readFileSync(join(REAL_HERD, 'milkings', file), 'utf8')); // prettier-ignore
      const grams = text.flatMap((one) => one.trimEnd().split('\n').slice(1)).reduce((sum, line) => sum + Math.round(Number(line.split(',')[3]) * 1000), 0); // prettier-ignore
      const read_g = read.book.rows.reduce((sum, { amount }) => sum + Math.round(((amount?.num ?? 0) / (amount?.den ?? 1)) * 1000), 0); // prettier-ignore
      expect(read_g).toBe(grams);
    },
  );
});
