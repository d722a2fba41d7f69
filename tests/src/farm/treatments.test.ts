// Treatments: the forms that are read, the words of each fault, and what an empty use means while one holds.
import { describe, expect, it } from 'vitest';
import { HEADING as MILK, bookWith, noticesOf, reading, rowsOf, told } from './farmFolder.ts';

const HEADING = 'doe,from,until,what,note';
const file = (...rows: string[]) => ({ 'treatments.csv': [HEADING, ...rows, ''].join('\n') });
const treatments = (files: Record<string, string>) => {
  const read = reading(files);
  if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
  return read.book.treatments;
};

describe('treatments.csv', () => {
  it('need not be there, and is then no empty list', () => {
    expect(treatments({})).toBeUndefined();
    expect(treatments({ 'treatments.csv': `${HEADING}\n` })).toEqual([]);
  });

  it('reads a row in any column order, letter case and separator', () => {
    const text = '\ufeffUntil;WHAT;From;Doe;vet\r\n2026-05-19;"for a foot; left";2026-05-14;CLOVER;Ng\r\n';
    expect(treatments({ 'treatments.csv': text })).toEqual([
      { doe: 'clover', from: 20587, until: 20592, what: 'for a foot; left', note: '', file: 'treatments.csv', line: 2 },
    ]); // prettier-ignore
  });

  it('reads no end as "still under treatment", and an end on the first day as no day at all', () => {
    const [open, none] = treatments(file('clover,2026-05-14,,,', 'bell,2026-05-14,2026-05-14,drench,')) ?? [];
    expect(open?.until).toBeNull();
    expect(none?.until).toBe(none?.from);
  });

  it('names an unknown doe, a strange date, a missing start and an end before the start, all at once', () => {
    expect(told(file('clovr,2026-05-14,,,', 'bell,14.5.2026,,,', 'bell,,2026-05-19,,', 'bell,2026-05-14,2026-05-13,,')))
      .toMatchInlineSnapshot(`
        "treatments.csv:2:1  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv
        treatments.csv:3:6  found "14.5.2026"; expected a date as YYYY-MM-DD, for instance 2026-05-21; nearest "2026-05-14"; do: write 2026-05-14; in a spreadsheet, give the whole column the date format YYYY-MM-DD before you save
        treatments.csv:4:6  found an empty cell; expected the first day whose milk is kept apart; do: write it as YYYY-MM-DD, or take the row out
        treatments.csv:5:17  found 2026-05-13; expected a date on or after 2026-05-14, the day under from; do: correct one of the two dates; under until stands the first day whose milk may be kept again"
      `); // prettier-ignore
  });

  it('names the same treatment a second time, and takes two medicines on one day', () => {
    const rows = ['bell,2026-05-14,,Drench,', 'bell,2026-05-14,2026-05-19,drench,'];
    expect(told(file(...rows))).toContain(
      'treatments.csv:3:1  found bell, drench, from 2026-05-14 a second time (the first is treatments.csv:2)',
    );
    expect(told(file('bell,2026-05-14,,drench,', 'bell,2026-05-14,,for her foot,'))).toBe('ok');
  });

  it('says the nearest heading, and tells of a file with nearly its name', () => {
    expect(told({ 'treatments.csv': 'doe,from,untill,what\nbell,2026-05-14,2026-05-19,\n' })).toContain(
      'found the heading "untill"',
    );
    expect(noticesOf({ 'treatment.csv': `${HEADING}\n` })).toEqual([
      'treatment.csv |  | This file is not read. If it says whose milk is kept apart, rename it to treatments.csv.',
    ]);
    expect(noticesOf({ 'treatments.csv': '' })).toContain('treatments.csv |  | This file is empty.');
    expect(noticesOf(file('bell,2026-06-09,,,'))).toContain(
      "treatments.csv | 2 | bell's treatment from 2026-06-09 is still to come. It counts from that day on.",
    );
  });
});

describe('a milking of a doe under treatment', () => {
  const milkings = [
    '2026-05-13,pm,clover,1,,,,',
    '2026-05-14,am,clover,2,,,,',
    '2026-05-14,pm,clover,3,,kept,,',
    '2026-05-15,am,clover,4,,fed,,',
    '2026-05-15,pm,clover,5,,withheld,,',
    '2026-05-16,am,clover,6,,lost,,',
    '2026-05-16,am,bell,7,,,,',
    '2026-05-18,pm,clover,8,,,,',
    '2026-05-19,am,clover,9,,,,',
  ];
  const uses = (...rows: string[]) =>
    rowsOf({ ...file(...rows), ...bookWith(milkings, MILK) }).map(({ use }) => use);

  it('counts as withheld where its use is empty, from the first day up to but not with the last', () => {
    expect(uses('clover,2026-05-14,2026-05-19,,')).toEqual(
      ['kept', 'withheld', 'kept', 'fed', 'withheld', 'lost', 'kept', 'withheld', 'kept'], // prettier-ignore
    );
  });

  it('goes by the longest of several treatments, and by one without an end for good', () => {
    const both = ['clover,2026-05-14,2026-05-15,drench,', 'clover,2026-05-14,2026-05-19,for her foot,'];
    expect(uses(...both)).toEqual(uses('clover,2026-05-14,2026-05-19,,'));
    expect(uses(...both.toReversed())).toEqual(uses(...both));
    expect(uses('clover,2026-05-14,,,').at(-1)).toBe('withheld');
  });

  it('is told of: what counts as withheld, and what somebody wrote down as kept or fed', () => {
    const files = { ...file('clover,2026-05-14,2026-05-19,drench,'), ...bookWith(milkings, MILK) };
    expect(noticesOf(files)).toEqual([
      'treatments.csv | 2 | clover is under treatment (drench) from 2026-05-14 until 2026-05-19: 2 milkings without a use count as withheld: 2026-05-14 am, 2026-05-18 pm.',
      'treatments.csv | 2 | clover is under treatment (drench) from 2026-05-14 until 2026-05-19: 1 milking says kept and stays so, since somebody wrote it: 2026-05-14 pm. If that was a slip, write withheld under use.',
      'treatments.csv | 2 | clover is under treatment (drench) from 2026-05-14 until 2026-05-19: 1 milking says fed and stays so, since somebody wrote it: 2026-05-15 am. If that was a slip, write withheld under use.',
    ]);
  });

  it('is not told of once a correction has settled it', () => {
    const corrected = [
      '2026-05-14,am,clover,2,,kept,,',
      '2026-05-14,am,clover,2,,withheld,,2026-05-14T07:00',
    ];
    expect(noticesOf({ ...file('clover,2026-05-14,2026-05-19,,'), ...bookWith(corrected, MILK) })).toEqual(
      [],
    );
  });
});
