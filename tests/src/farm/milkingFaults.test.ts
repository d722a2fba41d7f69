// Each thing that can be wrong in the milk book, and the words that the coordinator reads.
import { describe, expect, it } from 'vitest';
import { BOOK, bookWith, SOUND_FARM, told } from './farmFolder.ts';

const row = (cells: string, heading?: string) => told(bookWith([cells], heading));

describe('dates', () => {
  it('of another form, and what they meant', () => {
    expect(row('05/21/2026,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "05/21/2026"; expected a date as YYYY-MM-DD, for instance 2026-05-21; nearest "2026-05-21"; do: write 2026-05-21; in a spreadsheet, give the whole column the date format YYYY-MM-DD before you save"`,
    );
    const others = ['21.05.2026', '2026/5/21', '20260521', '2026-5-1', '5/21/26', '46163', 'May 21, 2026', '21 de mayo de 2026', '2026-05-21T06:40']; // prettier-ignore
    const nearest = others.map(
      (text) => /nearest ("[^"]*")/.exec(row(`"${text}",am,clover,7,,,,`))?.[1] ?? text,
    );
    expect(nearest).toMatchInlineSnapshot(`
      [
        ""2026-05-21"",
        ""2026-05-21"",
        ""2026-05-21"",
        ""2026-05-01"",
        ""2026-05-21"",
        ""2026-05-21"",
        ""2026-05-21"",
        ""2026-05-21"",
        ""2026-05-21"",
      ]
    `);
  });
  it('that may be either of two', () => {
    expect(row('05/06/2026,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "05/06/2026"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write 2026-05-06 or 2026-06-05, whichever is meant"`,
    );
  });
  it('that nobody can guess', () => {
    expect(row('last Tuesday,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "last Tuesday"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write the year, the month and the day with a hyphen between them"`,
    );
    expect(row(',am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found an empty cell; expected the date of the milking; do: write it as YYYY-MM-DD"`,
    );
  });
  it('that do not exist', () => {
    expect(row('2026-02-30,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "2026-02-30"; expected a day that exists: 2026-02 has 28 days; do: correct the day"`,
    );
    expect(row('2026-13-01,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "2026-13-01"; expected a month from 01 to 12; do: correct the date: year, month, day"`,
    );
    expect(row('0026-05-20,am,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found "0026-05-20"; expected a date from 1900 on; do: correct the year"`,
    );
  });
  it('that are still to come, where only the clock says what today is', () => {
    const future = bookWith(['2026-06-02,am,clover,7,,,,', '2026-06-01,am,clover,7,,,,']);
    expect(told(future)).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found 2026-06-02; expected a date up to today, 2026-06-01; do: correct the date: this milking is still to come"`,
    );
    expect(told(future, '2026-05-21')).toBe('ok');
    expect(told({ ...future, 'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}asOf: '2026-05-21'\n` })).toBe(
      'ok',
    );
  });
});

describe('cells', () => {
  it('a milking that is neither am nor pm', () => {
    expect(row('2026-05-20,morning,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:12  found "morning"; expected am or pm; nearest "am"; do: write am for the morning milking, pm for the evening one"`,
    );
    expect(row('2026-05-20,,clover,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:12  found an empty cell; expected am or pm; do: write am for the morning milking, pm for the evening one"`,
    );
  });
  it('an unknown doe, and the nearest one', () => {
    expect(row('2026-05-20,am,clovr,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:15  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv"`,
    );
    expect(row('2026-05-20,am,Bluebell,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:15  found "Bluebell"; expected the short name of a doe in does.csv; nearest "bell"; do: correct the name, or give her a row in does.csv"`,
    );
    expect(row('2026-05-20,am,esmeralda,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:15  found "esmeralda"; expected the short name of a doe in does.csv; do: give her a row in does.csv, or correct the name"`,
    );
    expect(row('2026-05-20,am,,7,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:15  found an empty cell; expected the short name of a doe in does.csv; do: write which doe it was"`,
    );
  });
  it('a doe who may be either of two', () => {
    const does = { 'does.csv': 'doe\nAb\naB\n', 'kiddings.csv': 'doe,date\n' };
    expect(told({ ...does, ...bookWith(['2026-05-20,am,AB,7,,,,']) })).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:15  found "AB"; expected Ab or aB, with its own capitals; do: write which of the two is meant"`,
    );
  });
  it('an amount below nothing', () => {
    expect(row('2026-05-20,am,clover,-3,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "-3"; expected an amount of 0 or more; do: correct the amount; to strike an entry out, leave the amount empty"`,
    );
  });
  it('an amount that is no number', () => {
    expect(row('2026-05-20,am,clover,a lot,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "a lot"; expected a number such as 11, 11.5, 11 1/2 or 11½; do: write the number alone; leave the cell empty to strike the entry out"`,
    );
    expect(row('2026-05-20,am,clover,3/0,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "3/0"; expected a fraction with a number below the line; do: correct the fraction"`,
    );
    expect(row('2026-05-20,am,clover,1.1234567890123,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "1.1234567890123"; expected a number of at most 12 digits; do: round the amount to what the jug or scale shows"`,
    );
  });
  it('an amount with its unit in it', () => {
    expect(row('2026-05-20,am,clover,11 cups,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "11 cups"; expected a number such as 11, 11.5, 11 1/2 or 11½; nearest "11"; do: put the unit in the unit column: 11 under amount, cup under unit"`,
    );
    expect(row('2026-05-20,am,clover,2½ lbs.,,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "2½ lbs."; expected a number such as 11, 11.5, 11 1/2 or 11½; nearest "2½"; do: put the unit in the unit column: 2½ under amount, lb under unit"`,
    );
  });
  it('a decimal comma where cells stand between commas', () => {
    expect(row('2026-05-20,am,clover,"11,5",,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found "11,5"; expected a number such as 11, 11.5, 11 1/2 or 11½; nearest "11.5"; do: write 11.5; a decimal comma is read only in files whose cells stand between semicolons"`,
    );
    expect(row('2026-05-20,am,clover,11,5', 'date,milking,doe,amount')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:25  found "5" in a cell with no heading over it; expected at most 4 cells, one under each heading; do: put a text that holds a comma in double quotes ("…"), or take the extra comma out"`,
    );
  });
  it('an amount above the largest milking, by the farm or by default', () => {
    expect(row('2026-05-20,am,clover,110,cup,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:22  found 110 cup; expected at most 24 cup from one doe at one milking (largestMilking in farm.yaml); do: check: correct the amount or its unit; or, if she truly gave so much, make largestMilking larger in farm.yaml"`,
    );
    expect(row('2026-05-20,am,clover,24,,,,')).toBe('ok');
    expect(row('2026-05-20,am,clover,1.5,gal,,,')).toBe('ok');
    expect(row('2026-05-20,am,clover,24.01,,,,')).not.toBe('ok');
    const yaml = String(SOUND_FARM['farm.yaml']).replace(/largestMilking.*\n/, '');
    expect(told({ 'farm.yaml': yaml, ...bookWith(['2026-05-20,am,clover,11,L,,,', '2026-05-20,pm,clover,10,L,,,']) })).toMatchInlineSnapshot(`"milkings/2026-05.csv:2:22  found 11 L; expected at most 10 L from one doe at one milking (largestMilking where farm.yaml names none); do: check: correct the amount or its unit; or, if she truly gave so much, make largestMilking larger in farm.yaml"`); // prettier-ignore
  });
  it('a unit that is none', () => {
    expect(row('2026-05-20,am,clover,7,cupp,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:24  found "cupp"; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; nearest "cup"; do: write one of these, or leave the cell empty for the unit that farm.yaml names (recordUnit)"`,
    );
    expect(row('2026-05-20,am,clover,cup,7,,,')).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:2:22  found "cup"; expected a number such as 11, 11.5, 11 1/2 or 11½; do: write the number alone; leave the cell empty to strike the entry out
      milkings/2026-05.csv:2:26  found "7"; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: put the number under amount and the unit here; leave the cell empty for the unit that farm.yaml names"
    `);
  });
  it('a use that is none', () => {
    expect(row('2026-05-20,am,clover,7,,witheld,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:25  found "witheld"; expected one of kept, withheld, fed, lost; nearest "withheld"; do: write what became of the milk, or leave the cell empty (kept); other words go under note"`,
    );
    expect(row('2026-05-20,am,clover,7,,"spilled, sadly",,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:25  found "spilled, sadly"; expected one of kept, withheld, fed, lost; do: write what became of the milk, or leave the cell empty (kept); other words go under note"`,
    );
  });
  it('a time of entry that is none', () => {
    expect(row('2026-05-20,am,clover,7,,,,6.40')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:27  found "6.40"; expected a date and time as 2026-05-21T06:40, or a date alone; do: write when the row was written, or leave the cell empty (it then counts as the oldest)"`,
    );
    for (const text of ['2026-05-20T25:00', '2026-05-20T06:60', '2026-02-30T06:40', '2026-05-20T06:40+24:00'])
      expect(row(`2026-05-20,am,clover,7,,,,${text}`)).toContain(`found "${text}"`);
  });
  it('everything that is wrong in one row, in order of column', () => {
    expect(row('2026-05-32,noon,clovr,lots,buckets,drunk,"fine, all",soon')).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:2:1  found "2026-05-32"; expected a day that exists: 2026-05 has 31 days; do: correct the day
      milkings/2026-05.csv:2:12  found "noon"; expected am or pm; do: write am for the morning milking, pm for the evening one
      milkings/2026-05.csv:2:17  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv
      milkings/2026-05.csv:2:23  found "lots"; expected a number such as 11, 11.5, 11 1/2 or 11½; do: write the number alone; leave the cell empty to strike the entry out
      milkings/2026-05.csv:2:28  found "buckets"; expected one of fl oz, cup, pt, qt, gal, mL, L, g, kg, oz, lb; do: write one of these, or leave the cell empty for the unit that farm.yaml names (recordUnit)
      milkings/2026-05.csv:2:36  found "drunk"; expected one of kept, withheld, fed, lost; do: write what became of the milk, or leave the cell empty (kept); other words go under note
      milkings/2026-05.csv:2:54  found "soon"; expected a date and time as 2026-05-21T06:40, or a date alone; do: write when the row was written, or leave the cell empty (it then counts as the oldest)"
    `);
  });
});

describe('rows for the same milking', () => {
  it('that "entered" does not tell apart are named with both places', () => {
    const rows = ['2026-05-20,am,clover,7,,,,', '2026-05-20,AM,Clover,8,,,,'];
    expect(told(bookWith(rows))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:3:1  found clover, 2026-05-20 am a second time (the first is milkings/2026-05.csv:2), and "entered" does not say which is newer; expected one row for each doe, date and milking, or a later "entered" in the row that counts; do: take the wrong row out, or write under entered when the right one was written"`,
    );
    const sameTime = [
      '2026-05-20,am,clover,7,,,,2026-05-20T07:00',
      '2026-05-20,am,clover,,,,,2026-05-20T07:00:00-05:00',
    ];
    expect(told(bookWith(sameTime))).toContain('a second time');
  });
  it('in two files', () => {
    const other = { 'milkings/copy.csv': SOUND_FARM[BOOK] ?? '' };
    expect(told(other)).toMatchInlineSnapshot(
      `"milkings/copy.csv:2:1  found clover, 2026-05-20 am a second time (the first is milkings/2026-05.csv:2), and "entered" does not say which is newer; expected one row for each doe, date and milking, or a later "entered" in the row that counts; do: take the wrong row out, or write under entered when the right one was written"`,
    );
  });
});
