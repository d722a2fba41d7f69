// Milk tests: the forms that are read, and the words of each fault.
import { describe, expect, it } from 'vitest';
import { noticesOf, reading, told } from './farmFolder.ts';

const HEADING = 'date,doe,fat_pct,protein_pct,lactose_pct,scc';
const file = (...rows: string[]) => ({ 'milk-tests.csv': [HEADING, ...rows, ''].join('\n') });
const tests = (files: Record<string, string>) => {
  const read = reading(files);
  if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
  return read.book.milkTests;
};

describe('milk-tests.csv', () => {
  it('need not be there, and is then no empty list', () => {
    expect(tests({})).toBeUndefined();
    expect(reading({}).notices.map(({ file }) => file)).not.toContain('milk-tests.csv');
  });

  it('reads percents as written, and counts of cells in thousands', () => {
    const [test] = tests(file('2026-05-20,Clover,4.14,3.56,4.4,850')) ?? [];
    expect(test).toEqual({
      doe: 'clover', day: 20593, fat_pct: 4.14, protein_pct: 3.56, lactose_pct: 4.4, cells_perML: 850_000,
      file: 'milk-tests.csv', line: 2,
    }); // prettier-ignore
  });

  it('reads an empty cell, a 0 and a column that is not there as "not tested"', () => {
    const [first, second] = tests(file('2026-05-20,clover,0,0.00,,0', '2026-05-20,bell,3.9 %,,,')) ?? [];
    expect([first?.fat_pct, first?.protein_pct, first?.lactose_pct, first?.cells_perML]).toEqual([null, null, null, null]); // prettier-ignore
    expect([second?.fat_pct, second?.protein_pct]).toEqual([3.9, null]);
    expect(tests({ 'milk-tests.csv': 'doe;date;fat_pct\nclover;2026-05-20;4,1\n' })?.[0]).toMatchObject({
      fat_pct: 4.1,
      cells_perML: null,
    });
    expect(noticesOf(file('2026-05-20,clover,,,,'))).toEqual([
      'milk-tests.csv | 2 | This row has no result.',
    ]);
  });

  it('names a percent that cannot be, with its place', () => {
    expect(told(file('2026-05-20,clover,41.4,,,'))).toMatchInlineSnapshot(
      `"milk-tests.csv:2:19  found "41.4"; expected parts of fat in 100 of milk, a number from 1 to 15; do: check the laboratory's report; leave the cell empty where it was not tested"`,
    );
    expect(told(file('2026-05-20,clover,0.4,,,'))).toContain('from 1 to 15');
    expect(told(file('2026-05-20,clover,,12,,'))).toContain(
      'parts of protein in 100 of milk, a number from 1 to 9',
    );
    expect(told({ 'milk-tests.csv': 'date\tdoe\tfat_pct\n2026-05-20\tclover\t4,1\n' })).toMatchInlineSnapshot(
      `"milk-tests.csv:2:19  found "4,1"; expected parts of fat in 100 of milk, a number from 1 to 15; nearest "4.1"; do: write 4.1; a decimal comma is read only in files whose cells stand between semicolons"`,
    );
  });

  it('takes a count of single cells for a slip, and says the thousands', () => {
    expect(told(file('2026-05-20,clover,,,,850000'))).toMatchInlineSnapshot(
      `"milk-tests.csv:2:22  found "850000"; expected thousands of cells in a millilitre, a number up to 30000; nearest "850"; do: write thousands, without a sign between the digits: 850 for 850,000 cells; leave the cell empty where it was not tested"`,
    );
    expect(told(file('2026-05-20,clover,,,,many'))).toContain('thousands of cells');
  });

  it('names an unknown doe, a strange date, a date to come and a second row', () => {
    expect(told(file('2026-05-20,clovr,4,,,'))).toContain('nearest "clover"');
    expect(told(file('20.5.2026,clover,4,,,'))).toContain('nearest "2026-05-20"');
    expect(told(file(',clover,4,,,'))).toContain('the day of the milk test');
    expect(told(file('2026-06-02,clover,4,,,'))).toContain('a date up to today, 2026-06-01');
    expect(told(file('2026-05-20,clover,4,,,', '2026-05-20,clover,5,,,'))).toMatchInlineSnapshot(
      `"milk-tests.csv:3:12  found clover on 2026-05-20 a second time (the first is milk-tests.csv:2); expected one row for each doe and test day; do: take one of the two rows out"`,
    );
  });

  it('tells all its faults at once, and of a file with nearly its name', () => {
    expect(told(file('2026-05-20,clover,99,99,99,', '2026-05-21,bell,4,,,999999')).split('\n')).toHaveLength(
      4,
    );
    expect(noticesOf({ 'milk_tests.csv': `${HEADING}\n` })).toEqual([
      'milk_tests.csv |  | This file is not read. If it holds milk tests, rename it to milk-tests.csv.',
    ]);
    expect(noticesOf({ 'milk-tests.csv': '' })).toContain('milk-tests.csv |  | This file is empty.');
  });
});
