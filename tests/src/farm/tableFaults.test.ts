// Each thing that can be wrong in the form of a table: headings, cells, quotes; and that places hold.
import { describe, expect, it } from 'vitest';
import { BOOK, bookWith, HEADING, told } from './farmFolder.ts';

const row = (cells: string, heading?: string) => told(bookWith([cells], heading));

describe('headings', () => {
  it('that are missing', () => {
    expect(told(bookWith(['2026-05-20,am,7'], 'date,milking,amount'))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:1  found no column "doe" among "date, milking, amount"; expected the columns date, milking, doe, amount; do: add the heading doe to this line, and what belongs under it"`,
    );
    expect(told(bookWith([], 'date,use'))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:1  found no column "milking" and no column "doe" and no column "amount" among "date, use"; expected the columns date, milking, doe, amount; do: add the headings milking, doe, amount to this line, and what belongs under them"`,
    );
  });
  it('that are misspelt: their cells are checked all the same', () => {
    expect(row('2026-05-20,am,clover,lots,drunk', 'date,miking,doe,ammount,used')).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:1:6  found the heading "miking"; expected one of date, milking, doe, amount, unit, use, note, entered; nearest "milking"; do: write milking over this column
      milkings/2026-05.csv:1:17  found the heading "ammount"; expected one of date, milking, doe, amount, unit, use, note, entered; nearest "amount"; do: write amount over this column
      milkings/2026-05.csv:1:25  found the heading "used"; expected one of date, milking, doe, amount, unit, use, note, entered; nearest "use"; do: write use over this column
      milkings/2026-05.csv:2:22  found "lots"; expected a number such as 11, 11.5, 11 1/2 or 11½; do: write the number alone; leave the cell empty to strike the entry out
      milkings/2026-05.csv:2:27  found "drunk"; expected one of kept, withheld, fed, lost; do: write what became of the milk, or leave the cell empty (kept); other words go under note"
    `);
  });
  it('that stand twice', () => {
    expect(row('2026-05-20,am,clover,7,8', 'date,milking,doe,amount,Amount')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:25  found the column "Amount" a second time (the first is column 4); expected each heading once; do: take one of the two columns out, or give it another heading"`,
    );
  });
  it('that are not there at all, or under a title', () => {
    expect(row('2026-05-21,am,clover,7', '2026-05-20,am,clover,7')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:1  found "2026-05-20,am,clover,7"; expected the headings date, milking, doe, amount in the first line, with a comma, semicolon or tab between them; do: make date,milking,doe,amount,unit,use,note,entered the first line of the file; nothing may stand above it"`,
    );
    expect(row('date,milking,doe,amount', 'Our milk book,,,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:1  found "Our milk book,,,"; expected the headings date, milking, doe, amount in the first line, with a comma, semicolon or tab between them; do: make date,milking,doe,amount,unit,use,note,entered the first line of the file; nothing may stand above it"`,
    );
    expect(row('2026-05-20 am clover 7', 'date milking doe amount')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:1:1  found "date milking doe amount"; expected the headings date, milking, doe, amount in the first line, with a comma, semicolon or tab between them; do: make date,milking,doe,amount,unit,use,note,entered the first line of the file; nothing may stand above it"`,
    );
  });
});

describe('cells that are too few or too many', () => {
  it('too few', () => {
    expect(row('2026-05-20,am')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found 2 cells; expected 8 cells, one under each heading; do: add what is missing (doe, amount); a cell that stays empty still needs its comma"`,
    );
  });
  it('another separator than in the heading', () => {
    expect(row('2026-05-20;am;clover;7')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:1  found 1 cell; expected 8 cells, one under each heading; do: put a comma between the cells, as in the heading line, not a semicolon"`,
    );
  });
  it('too many, or under no heading', () => {
    expect(row('2026-05-20,am,clover,7,,,hot, dry, windy')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:35  found "windy" in a cell with no heading over it; expected at most 8 cells, one under each heading; do: put a text that holds a comma in double quotes ("…"), or take the extra comma out"`,
    );
    expect(row('2026-05-20,am,clover,7,8', 'date,milking,doe,amount,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:24  found "8" in a cell with no heading over it; expected at most 4 cells, one under each heading; do: put a text that holds a comma in double quotes ("…"), or take the extra comma out"`,
    );
  });
});

describe('quotes', () => {
  it('that are never closed: the rows below are checked too', () => {
    const rows = ['2026-05-20,am,clover,7,,,"fine,', '2026-05-21,am,clovr,7,,,,'];
    expect(told(bookWith(rows))).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:2:26  found a double quote that opens a cell and is not closed, before "fine,"; expected a second double quote at the end of the cell; do: close the quote where the cell ends, or take it out; the rows below were checked as if it were not there
      milkings/2026-05.csv:3:15  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv"
    `);
  });
  it('that end in the midst of another row', () => {
    const rows = ['2026-05-20,am,clover,7,,,"fine,', '2026-05-21,am,clover,7,,,"hot, dry",'];
    expect(told(bookWith(rows))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:26  found a double quote that opens a cell and is not closed, before "fine,"; expected a second double quote at the end of the cell; do: close the quote where the cell ends, or take it out; the rows below were checked as if it were not there"`,
    );
  });
  it('that swallow rows, whichever column they stand in', () => {
    const rows = [
      '2026-05-20,am,clover,7,,,"fine,',
      '2026-05-21,am,clover,7,,,,',
      '2026-05-22,am,clover,7,,,dry",',
    ];
    expect(told(bookWith(rows))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:26  found what looks like a row of its own inside a quoted cell: "2026-05-21,am,clover,7,,,,"; expected a double quote that closes the cell before the next row; do: close the quote where the cell ends, so that the rows below it count"`,
    );
    const weather = [
      '2026-05-20,am,clover,7,"fine',
      '2026-05-21,am,clover,7,',
      '2026-05-22,am,clover,7,dry"',
    ];
    expect(told(bookWith(weather, 'date,milking,doe,amount,weather'))).toContain('a row of its own inside');
  });
  it('inside a cell', () => {
    expect(row('2026-05-20,am,clovr,7,,,5" of rain,')).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:2:15  found "clovr"; expected the short name of a doe in does.csv; nearest "clover"; do: correct the name, or give her a row in does.csv
      milkings/2026-05.csv:2:26  found a double quote inside a cell, in "5" of rain,"; expected double quotes only around a whole cell; do: take it out; or put the whole cell in double quotes and write each one inside it twice ("")"
    `);
    expect(row('2026-05-20,am,clover,7,,,"hot" day,')).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:2:30  found a double quote inside a cell, in ""hot" day,"; expected double quotes only around a whole cell; do: take it out; or put the whole cell in double quotes and write each one inside it twice ("")"`,
    );
  });
});

describe('places', () => {
  it('count characters, not bytes, and lines inside quotes', () => {
    const rows = ['"2026-05-20","am","clover","7",,,"ñandú 🐐\nñandú 🐐","soon"'];
    expect(told(bookWith(rows))).toMatchInlineSnapshot(
      `"milkings/2026-05.csv:3:10  found "soon"; expected a date and time as 2026-05-21T06:40, or a date alone; do: write when the row was written, or leave the cell empty (it then counts as the oldest)"`,
    );
  });
  it('hold with a byte-order mark and Windows line breaks', () => {
    const text = `\ufeff${HEADING}\r\n2026-05-20,am,clover,7,,,,\r\n2026-05-21,am,clover,lots,,,,\r\n`;
    expect(told({ [BOOK]: text })).toMatch(/^milkings\/2026-05\.csv:3:22 {2}found "lots"/);
  });
});
