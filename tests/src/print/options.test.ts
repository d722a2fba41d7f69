// What may be asked of the printer, and how it says what it cannot take.
import { describe, expect, it } from 'vitest';
import type { Shelf } from '../../../shared/pack/order.ts';
import { readPrintOptions } from '../../../src/print/options.ts';

const sheet = (name: string, band: Shelf['sheets'][number]['band'], langs = ['en', 'es']) =>
  ({ name, band, when: 'before', minutes: 20, langs }) as const;
const SHELF: Shelf = {
  langs: ['en', 'es'],
  sheets: [
    sheet('cups-we-can-count', 'k-2'),
    sheet('guess-the-pail', 'k-2'),
    sheet('milk-in-parts', '3-5'),
    sheet('clock-and-jug', '3-5', ['en']),
    sheet('the-week-in-numbers', '6-8'),
  ],
  word: '2026-05-21',
  paper: 'letter',
};
const read = (...args: string[]) => readPrintOptions(args, SHELF);
const packs = (...args: string[]) => {
  const reading = read(...args);
  if (!reading.ok) throw new Error(reading.faults.join('\n'));
  return reading.options.packs;
};
const faults = (...args: string[]) => {
  const reading = read(...args);
  return reading.ok ? [] : reading.faults;
};

describe('readPrintOptions', () => {
  it('means one PDF a band and language with all its sheets where nothing is asked', () => {
    expect(packs().map(({ order, whom, all }) => [order.lang, whom, order.grade, all, order.sheets])).toEqual(
      [
        ['en', 'k-2', 2, true, ['cups-we-can-count', 'guess-the-pail']],
        ['en', '3-5', 5, true, ['milk-in-parts', 'clock-and-jug']],
        ['en', '6-8', 8, true, ['the-week-in-numbers']],
        ['es', 'k-2', 2, true, ['cups-we-can-count', 'guess-the-pail']],
        ['es', '3-5', 5, true, ['milk-in-parts']],
        ['es', '6-8', 8, true, ['the-week-in-numbers']],
      ],
    );
    expect(packs()[0]?.order).toEqual({
      grade: 2, sheets: ['cups-we-can-count', 'guess-the-pail'], copies: 1, word: '2026-05-21', lang: 'en',
      paper: 'letter', print: 'ordinary', key: 'full', cover: true,
    }); // prettier-ignore
  });

  it('takes a whole order, in any order and in both ways of writing', () => {
    const order = {
      grade: 1, sheets: ['cups-we-can-count'], copies: 30, word: 'fern', lang: 'es', paper: 'a4', print: 'large',
      key: 'full', cover: true,
    }; // prettier-ignore
    const one = read('--grade', '1', '--sheets', 'cups-we-can-count', '--copies', '30', '--word', 'fern', '--lang', 'es', '--paper', 'a4', '--print', 'large', '--key', 'full', '--cover', '--out', '../for-monday'); // prettier-ignore
    expect(one).toEqual({ ok: true, options: { packs: [{ order, whom: 'grade-1', all: false }], out: '../for-monday' } }); // prettier-ignore
    expect(read('--cover', '--out=../for-monday', '--key=FULL', '--print=large', '--paper=A4', '--lang=ES', '--word=fern', '--copies=30', '--sheets=cups-we-can-count', '--grade=1')).toEqual(one); // prettier-ignore
  });

  it('takes a seed for a word, and prints all sheets of a band for it, one copy with its whole key', () => {
    expect(packs('--band', '3-5', '--lang', 'es', '--paper', 'a4', '--seed', 'clover')).toMatchObject([
      { order: { grade: 5, sheets: ['milk-in-parts'], copies: 1, word: 'clover', key: 'full' }, whom: '3-5', all: true }, // prettier-ignore
    ]);
  });

  it('ends a set with one short key', () => {
    expect(packs('--band', 'k-2', '--lang', 'en', '--copies', '2')[0]?.order.key).toBe('short');
  });

  it('takes several bands, with commas or one by one, each once', () => {
    const whom = packs('--band', 'k-2,6-8', '--band', 'K-2', '--lang', 'en').map((one) => one.whom);
    expect(whom).toEqual(['k-2', '6-8']);
  });

  it('finds the bands of sheets that are named without one', () => {
    const asked = packs('--sheets', 'the-week-in-numbers,guess-the-pail', '--lang', 'en');
    expect(asked.map(({ order, whom }) => [whom, order.sheets])).toEqual([
      ['k-2', ['guess-the-pail']],
      ['6-8', ['the-week-in-numbers']],
    ]);
  });

  it('takes kindergarten as K', () => {
    expect(packs('--grade', 'k', '--lang', 'en')[0]).toMatchObject({ order: { grade: 0 }, whom: 'grade-K' });
  });

  it('takes words in the letters of any language', () => {
    expect(packs('--word', 'pezuña_2')[0]?.order.word).toBe('pezuña_2');
  });

  it('leaves the cover out where it is not wanted', () => {
    expect(packs('--cover', 'no')[0]?.order.cover).toBe(false);
    expect(packs('--cover', '--lang', 'es')[0]?.order.cover).toBe(true);
  });

  it('names all that it cannot take, with what is allowed and what is near', () => {
    expect(faults('--bnad', '3-5', '--band', 'k2', '--sheets', 'guess-the-pial', '--lang', 'fr', '--paper=A5', '--seed', '../x', '--copies', '61', '--grade', '13', '--key=ful', '--cover=perhaps', 'clover', '--out')).toMatchInlineSnapshot(`
      [
        ""--bnad": there is no such option. There are: --band, --copies, --cover, --grade, --key, --lang, --out, --paper, --print, --seed, --sheets, --word. Did you mean "--band"?",
        ""clover": nothing is expected here without an option before it. There are: --band, --copies, --cover, --grade, --key, --lang, --out, --paper, --print, --seed, --sheets, --word.",
        "--out: its value is missing.",
        "--copies "61": allowed is a whole number from 1 to 60.",
        "--seed "../x": a class word is one word of letters, digits, "-" and "_", up to 40 of them.",
        "--paper "A5": allowed is letter, a4.",
        "--key "ful": allowed is short, full, none. Did you mean "full"?",
        "--cover "perhaps": allowed is yes, no.",
        "--lang "fr": allowed is en, es.",
        "--sheets "guess-the-pial": allowed is cups-we-can-count, guess-the-pail, milk-in-parts, clock-and-jug, the-week-in-numbers. Did you mean "guess-the-pail"?",
        "--band "k2": allowed is k-2, 3-5, 6-8, 9-12. Did you mean "k-2"?",
        "--grade "13": allowed is K, 1, 2, … 12.",
      ]
    `); // prettier-ignore
  });

  it('says where a sheet and what was asked for do not go together', () => {
    expect(faults('--grade', '4', '--sheets', 'guess-the-pail,clock-and-jug', '--lang', 'es', '--band', 'k-2')).toMatchInlineSnapshot(`
      [
        "--grade 4 is not in --band k-2; give one of them.",
      ]
    `); // prettier-ignore
    expect(faults('--grade', '4', '--sheets', 'guess-the-pail,clock-and-jug', '--lang', 'es')).toMatchInlineSnapshot(`
      [
        "--sheets "guess-the-pail": it is for grades k-2, which were not asked for.",
        "--sheets "clock-and-jug": it is not written in es.",
      ]
    `); // prettier-ignore
    expect(faults('--word', 'fern', '--seed', 'clover')).toMatchInlineSnapshot(`
      [
        "--word "fern" and --seed "clover" are two names of one thing; give one of them.",
      ]
    `);
  });

  it('does not take the next option for a value', () => {
    expect(faults('--seed', '--band', '3-5')).toEqual(['--seed: its value is missing.']);
    expect(faults('--paper=')).toEqual(['--paper: its value is missing.']);
  });
});
