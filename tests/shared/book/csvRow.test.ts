// A row of the desk in the farm's file: it reads back as it was entered, and no spreadsheet runs or turns any of it.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountCell, BOOK_HEADING, csvRow, noteCell, noteOf } from '../../../shared/book/csvRow.ts';
import { readNumber } from '../../../shared/quantity/amount.ts';

const ENTRY = { date: '2026-05-21', milking: 'am', doe: 'bell', amount: '7', unit: 'cup', use: 'kept', note: '' } as const; // prettier-ignore

describe('csvRow', () => {
  it('is one line that csv-parse reads back cell by cell, whatever the note', () => {
    const note = fc
      .string({ unit: 'grapheme', maxLength: 40 })
      .filter((text) => !/[\p{Cc}\u2028\u2029]/u.test(text));
    fc.assert(
      fc.property(note, (text) => {
        const row = csvRow({ ...ENTRY, note: text }, '2026-05-21T06:40:00.000-05:00');
        expect(row).not.toMatch(/[\r\n]/);
        const rows: string[][] = parse(`${BOOK_HEADING}\n${row}\n`);
        expect(rows).toHaveLength(2);
        expect(rows[1]?.slice(0, 6)).toEqual(['2026-05-21', 'am', 'bell', '7', 'cup', 'kept']);
        expect(noteOf(rows[1]?.[6] ?? '')).toBe(/^'[=+\-@＝＋－＠]/.test(text) ? text.slice(1) : text);
      }),
    );
  });
});

describe('noteCell', () => {
  // Source: OWASP, "CSV Injection": cells that begin with =, +, - or @ (from memory).
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '＝1', '＋1', '－1', '＠x'])(
    'gives %s a quote mark, and noteOf takes it off',
    (note) => {
      expect(noteCell(note)).toBe(`'${note}`);
      expect(noteOf(noteCell(note))).toBe(note);
    },
  );

  it.each(['', "'tis well", 'kicked - twice', '1=1'])('leaves %j as it is', (note) => {
    expect(noteCell(note)).toBe(note);
    expect(noteOf(note)).toBe(note);
  });
});

describe('amountCell', () => {
  it.each([
    ['7', '7'], ['9.50', '9.50'], ['9 1/2', '9 1/2'], ['1/2', '0 1/2'], ['19/2', '9 1/2'], ['8/2', '4'], ['½', '0 1/2'], ['9½', '9 1/2'],
    ['.5', '0.5'], ['+3', '3'], ['3.', '3'], ['0.050', '0.050'], ['+12.0625', '12.0625'], ['a jug', 'a jug'],
  ])('writes %s as %s', (amount, cell) => expect(amountCell(amount)).toBe(cell)); // prettier-ignore

  it('strikes out with an empty cell', () => expect(amountCell(null)).toBe(''));

  it('is the same amount, and nothing that a spreadsheet takes for a date', () => {
    const part = fc.integer({ min: 0, max: 999 });
    const amount = fc.oneof(
      fc.tuple(part, fc.integer({ min: 1, max: 99 })).map(([num, den]) => `${num}/${den}`),
      fc.tuple(part, part).map(([whole, rest]) => `${whole}.${rest}`),
      fc
        .tuple(part, part, fc.integer({ min: 1, max: 99 }))
        .map(([whole, num, den]) => `${whole} ${num}/${den}`),
    );
    fc.assert(
      fc.property(amount, fc.constantFrom('', '+'), (text, sign) => {
        const before = readNumber(sign + text);
        if (!before.ok) return;
        const cell = amountCell(sign + text);
        const after = readNumber(cell);
        expect(after.ok && after.num * before.den).toBe(before.num * (after.ok ? after.den : 0));
        expect(cell).toMatch(/^\d+(\.\d+)?( \d+\/\d+)?$/);
      }),
    );
  });
});
