// Tables as they are set: within the page, and never a cell lost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { msg, text, type Message } from '../../../shared/sheet/message.ts';
import { measuresFor, PRINT_SIZES } from '../../../shared/sheet/pageMeasures.ts';
import type { Cell, TablePicture } from '../../../shared/sheet/picture.ts';
import { cellText, isOpen, tableFit } from '../../../shared/sheet/tableFit.ts';
import { GRADES_OF } from '../../../shared/tasks/standards.ts';
import { wordsOf } from '../../../src/site/words.ts';

const words = wordsOf('en');
const head = (name: string): Message => msg('sheet.label.name', { name: text(name) });
const nameArb = fc.stringMatching(/^[A-Z][a-z]{1,8}( [a-z]{2,6})?$/);
const tableArb: fc.Arbitrary<TablePicture> = fc
  .tuple(fc.integer({ min: 2, max: 10 }), fc.integer({ min: 1, max: 10 }))
  .chain(([columns, rows]) =>
    fc.record({
      is: fc.constant('table' as const),
      columns: fc.array(nameArb.map(head), { minLength: columns, maxLength: columns }),
      rows: fc.array(
        fc.array(
          fc.oneof(
            fc.integer({ min: -999, max: 999 }).map((num): Cell => ({ num, den: 100, places: 2 })),
            fc.constant<Cell>({ free: true }),
          ),
          { minLength: columns, maxLength: columns },
        ),
        { minLength: rows, maxLength: rows },
      ),
    }),
  );
/** Texts of all cells with the heads; a head may stand twice where a table is set in two halves. */
const told = ({ columns, rows }: Pick<TablePicture, 'rows'> & { columns: readonly Cell[] }) =>
  new Set([...columns, ...rows.flat()].map((cell) => cellText(cell, words)).filter((one) => one !== ''));
const open = (rows: TablePicture['rows']) => rows.flat().filter(isOpen).length;

describe('tableFit', () => {
  it('keeps every cell, whichever way it is set', () => {
    fc.assert(
      fc.property(tableArb, fc.constantFrom(...Object.values(GRADES_OF).flat()), fc.constantFrom(...PRINT_SIZES), (table, grade, print) => {
        const fit = tableFit(table, words, measuresFor(grade, print));
        expect(told(fit)).toEqual(told(table));
        expect(open([...fit.rows, fit.columns])).toBeGreaterThanOrEqual(open(table.rows));
        expect(fit.height_mm).toBeGreaterThan(0);
        expect(fit.scale).toBeLessThanOrEqual(1);
      }),
    ); // prettier-ignore
  });

  it('leaves a small table as it is written', () => {
    const table: TablePicture = { is: 'table', columns: [head('Day'), head('Cups')], rows: [[{ num: 1, den: 1 }, { num: 8, den: 1 }]] }; // prettier-ignore
    const fit = tableFit(table, words, measuresFor(4, 'ordinary'));
    expect(fit.columns).toEqual(table.columns);
    expect(fit.rows).toEqual(table.rows);
  });

  it('turns a table that is wider than the page', () => {
    const wide: TablePicture = {
      is: 'table',
      columns: Array.from({ length: 9 }, (_, day) => head(`Weekday${'abcdefghi'.charAt(day)}`)),
      rows: [Array.from({ length: 9 }, (_, day) => ({ num: day, den: 1 }))],
    };
    const fit = tableFit(wide, words, measuresFor(12, 'large'));
    expect(fit.columns.length).toBeLessThan(9);
  });
});
