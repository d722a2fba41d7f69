// Random treatments over random milkings: uses and kept milk as a slow reading of the rule has them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../../shared/herd/figures.ts';
import type { Book, Use } from '../../../shared/herd/types.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { day } from '../../support/bookOf.ts';
import { dateOf, plainFigures, plainUse } from '../../support/plainHerd.ts';
import { farmWith, HEADING, NOW_MS, temporaryFolder } from './farmFolder.ts';

const FIRST = day('2026-05-01');
const dates = fc.integer({ min: 0, max: 29 }).map((days) => dateOf(FIRST + days));
const milkings = fc.uniqueArray(
  fc.record({
    date: dates,
    milking: fc.constantFrom('am', 'pm'),
    doe: fc.constantFrom('clover', 'bell'),
    quarters: fc.integer({ min: 1, max: 40 }),
    use: fc.constantFrom('', '', '', 'kept', 'withheld', 'fed', 'lost'),
  }),
  { selector: ({ date, milking, doe }) => `${date} ${milking} ${doe}`, minLength: 1, maxLength: 40 },
);
const treatments = fc.uniqueArray(
  fc.record({
    doe: fc.constantFrom('clover', 'bell'),
    from: dates,
    days: fc.option(fc.integer({ min: 0, max: 9 }), { freq: 5 }),
  }),
  { selector: ({ doe, from }) => `${doe} ${from}`, maxLength: 5 },
);

describe('any book with treatments', () => {
  it('has the uses and the kept milk that the rule gives, day by day', () => {
    const dir = temporaryFolder();
    fc.assert(
      fc.property(milkings, treatments, (rows, drawn) => {
        const treated = drawn.map(({ doe, from, days }) => ({
          doe,
          from,
          until: days === null ? '' : dateOf(day(from) + days),
        }));
        farmWith(
          {
            'treatments.csv': ['doe,from,until', ...treated.map((one) => Object.values(one).join()), ''].join('\n'), // prettier-ignore
            'milkings/2026-05.csv': [HEADING, ...rows.map(({ date, milking, doe, quarters, use }) => `${date},${milking},${doe},${quarters}/4,cup,${use},,`), ''].join('\n'), // prettier-ignore
          },
          dir,
        );
        const read = readFarm(dir, { now_ms: NOW_MS });
        if (!read.ok) throw new Error(JSON.stringify(read.faults));
        const uses = rows.map(({ use, doe, date }) => plainUse(use, treated, doe, date));
        expect(read.book.rows.map(({ use }) => use)).toEqual(uses);
        const plainBook: Book = {
          ...read.book,
          rows: read.book.rows.map((row, index) => ({ ...row, use: uses[index] as Use })),
        };
        const plain = plainFigures(plainBook, read.asOf).figures;
        const quick = computeFigures(read.book, read.asOf).figures;
        for (const id of ['herd.week.kept', 'herd.week.total', 'herd.year.total'])
          expect(quick[id]).toMatchObject(plain[id] ?? {});
      }),
      { numRuns: 60 },
    );
  });
});
