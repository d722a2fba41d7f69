// Which pages an order prints.
import { describe, expect, it } from 'vitest';
import { sheetJobs } from '../../../src/print/jobs.ts';
import { readPrintOptions } from '../../../src/print/options.ts';

function jobs(args: readonly string[], units: 'us' | 'metric', first = 'en') {
  const reading = readPrintOptions(args, ['en', 'es']);
  if (!reading.ok) throw new Error(reading.faults.join());
  return sheetJobs(reading.options, units, first).map(({ address, file }) => `${address}  ${file}`);
}

describe('sheetJobs', () => {
  it('prints every band in every language, on the paper of the farm, with the seed of the page', () => {
    expect(jobs([], 'us')).toMatchInlineSnapshot(`
      [
        "sheets/k-2/?paper=letter  sheet-k-2-en-letter.pdf",
        "sheets/3-5/?paper=letter  sheet-3-5-en-letter.pdf",
        "sheets/6-8/?paper=letter  sheet-6-8-en-letter.pdf",
        "sheets/9-12/?paper=letter  sheet-9-12-en-letter.pdf",
        "es/sheets/k-2/?paper=letter  sheet-k-2-es-letter.pdf",
        "es/sheets/3-5/?paper=letter  sheet-3-5-es-letter.pdf",
        "es/sheets/6-8/?paper=letter  sheet-6-8-es-letter.pdf",
        "es/sheets/9-12/?paper=letter  sheet-9-12-es-letter.pdf",
      ]
    `);
  });

  it('prints A4 for a metric farm, and what was asked for before that', () => {
    expect(jobs(['--band', '6-8', '--lang', 'en'], 'metric')).toEqual([
      'sheets/6-8/?paper=a4  sheet-6-8-en-a4.pdf',
    ]);
    expect(jobs(['--band', '6-8', '--lang', 'en', '--paper', 'letter', '--seed', 'ñu'], 'metric')).toEqual([
      'sheets/6-8/?seed=%C3%B1u&paper=letter  sheet-6-8-en-letter-ñu.pdf',
    ]);
  });

  it('looks for the first language of the site at its root, whichever that is', () => {
    expect(jobs(['--band', 'k-2'], 'metric', 'es')).toEqual([
      'en/sheets/k-2/?paper=a4  sheet-k-2-en-a4.pdf',
      'sheets/k-2/?paper=a4  sheet-k-2-es-a4.pdf',
    ]);
  });
});
