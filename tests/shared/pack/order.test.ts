// An order as an address: read whole or in part, nonsense told and left aside, written and read back the same.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { KEY_KINDS, isClassWord, orderQuery, readOrder, sheetsFor, type PackOrder, type Shelf } from '../../../shared/pack/order.ts'; // prettier-ignore
import { BANDS } from '../../../shared/quantity/grade.ts';
import { PAPERS, PRINT_SIZES } from '../../../shared/sheet/pageMeasures.ts';
import { gradeSign, GRADES_OF } from '../../../shared/tasks/standards.ts';

const sheet = (name: string, band: Shelf['sheets'][number]['band'], langs = ['en', 'es']) =>
  ({ name, band, when: 'before', minutes: 20, langs }) as const;
const SHELF: Shelf = {
  langs: ['en', 'es'],
  sheets: [
    sheet('cups', 'k-2'),
    sheet('kids', 'k-2'),
    sheet('rail', '3-5'),
    sheet('jugs', '3-5', ['en']),
    sheet('week', '6-8'),
    sheet('line', '9-12'),
  ],
  word: '2026-05-21',
  paper: 'letter',
};
const read = (query: string, lang = 'en') => readOrder(new URLSearchParams(query), SHELF, lang);

describe('readOrder', () => {
  it('takes the usual where nothing is said', () => {
    expect(read('')).toEqual({
      order: {
        grade: 2, sheets: ['cups'], copies: 24, word: '2026-05-21', lang: 'en', paper: 'letter', print: 'ordinary',
        key: 'short', cover: true,
      },
      aside: [],
    }); // prettier-ignore
    expect(read('', 'es').order.lang).toBe('es');
  });

  it('takes everything that is said', () => {
    const query = '?grade=k&sheets=kids,cups&copies=30&word=pezu%C3%B1a&lang=ES&paper=a4&print=large&key=full&cover=no'; // prettier-ignore
    expect(read(query)).toEqual({
      order: {
        grade: 0, sheets: ['cups', 'kids'], copies: 30, word: 'pezuña', lang: 'es', paper: 'a4', print: 'large',
        key: 'full', cover: false,
      },
      aside: [],
    }); // prettier-ignore
  });

  it('takes the grade from a sheet where none is said', () => {
    expect(read('?sheets=rail').order).toMatchObject({ grade: 5, sheets: ['rail'] });
  });

  it('keeps an empty choice of sheets', () => {
    expect(read('?sheets=')).toMatchObject({ order: { sheets: [] }, aside: [] });
  });

  it('tells what makes no sense, all at once, and leaves it aside', () => {
    const query =
      '?grade=13&sheets=cups,rail,cupz&copies=61&word=../x&lang=fr&paper=a5&print=huge&key=all&cover=maybe&name=Eva';
    const { order, aside } = read(query);
    expect(order).toEqual(read('').order);
    expect(aside.map(({ field, value, why }) => `${field}=${value} ${why}`).sort()).toEqual([
      'copies=61 copies',
      'cover=maybe choice',
      'grade=13 grade',
      'key=all choice',
      'lang=fr choice',
      'name=Eva field',
      'paper=a5 choice',
      'print=huge choice',
      'sheets=cupz sheet',
      'sheets=rail band',
      'word=../x word',
    ]);
  });

  it('leaves a sheet aside that is not written in the language', () => {
    expect(read('?grade=4&sheets=jugs&lang=es')).toMatchObject({
      order: { sheets: ['rail'] },
      aside: [{ field: 'sheets', value: 'jugs', why: 'language' }],
    });
  });

  it('repeats no more of a long text than a line holds', () => {
    expect(read(`?word=${'x'.repeat(999)}`).aside[0]?.value).toHaveLength(41);
  });

  it('reads back every order that it writes', () => {
    const orders = fc.constantFrom(...BANDS).chain((band) =>
      fc.constantFrom(...SHELF.langs).chain((lang) =>
        fc.record({
          grade: fc.constantFrom(...GRADES_OF[band]),
          sheets: fc.subarray(sheetsFor(SHELF, band, lang).map(({ name }) => name)),
          copies: fc.integer({ min: 1, max: 60 }),
          word: fc.string({ unit: 'grapheme', maxLength: 12 }).filter(isClassWord),
          lang: fc.constant(lang),
          paper: fc.constantFrom(...PAPERS),
          print: fc.constantFrom(...PRINT_SIZES),
          key: fc.constantFrom(...KEY_KINDS),
          cover: fc.boolean(),
        }),
      ),
    );
    fc.assert(
      fc.property(orders, (order: PackOrder) => {
        expect(read(orderQuery(order))).toEqual({ order, aside: [] });
      }),
    );
  });

  it('never fails, whatever an address holds, and always gives an order that can be made', () => {
    const fields = fc.array(
      fc.tuple(fc.oneof(fc.constantFrom('grade', 'sheets', 'copies', 'word', 'lang', 'paper'), fc.string()), fc.string()),
    ); // prettier-ignore
    fc.assert(
      fc.property(fields, (pairs) => {
        const { order } = readOrder(pairs, SHELF, 'en');
        expect(isClassWord(order.word)).toBe(true);
        expect(order.copies >= 1 && order.copies <= 60).toBe(true);
        const ready = SHELF.sheets.filter(({ band }) => GRADES_OF[band].includes(order.grade));
        expect(order.sheets.every((name) => ready.some((one) => one.name === name))).toBe(true);
      }),
    );
  });
});

describe('orderQuery', () => {
  it('can be read by people', () => {
    const { order } = read('?grade=K&sheets=cups,kids&word=fern&key=none&cover=no');
    expect(orderQuery(order)).toBe(
      '?grade=K&sheets=cups,kids&copies=24&word=fern&lang=en&paper=letter&print=ordinary&key=none&cover=no',
    );
    expect(gradeSign(12)).toBe('12');
  });
});
