// What may be asked of the printer, and how it says what it cannot take.
import { describe, expect, it } from 'vitest';
import { readPrintOptions } from '../../../src/print/options.ts';

const LANGS = ['en', 'es'];
const read = (...args: string[]) => readPrintOptions(args, LANGS);
const faults = (...args: string[]) => {
  const reading = read(...args);
  return reading.ok ? [] : reading.faults;
};

describe('readPrintOptions', () => {
  it('means everything where nothing is asked', () => {
    expect(read()).toEqual({
      ok: true,
      options: {
        bands: ['k-2', '3-5', '6-8', '9-12'],
        langs: ['en', 'es'],
        paper: null,
        seed: null,
        out: null,
      },
    });
  });

  it('takes options in any order, in both ways of writing', () => {
    const options = { bands: ['3-5'], langs: ['es'], paper: 'a4', seed: 'clover', out: '../for-monday' };
    expect(read('--band', '3-5', '--seed', 'clover', '--paper', 'a4', '--lang', 'es', '--out', '../for-monday')).toEqual({ ok: true, options }); // prettier-ignore
    expect(read('--out=../for-monday', '--paper=A4', '--lang=ES', '--band=3-5', '--seed=clover')).toEqual({ ok: true, options }); // prettier-ignore
  });

  it('takes several bands, with commas or one by one, each once', () => {
    expect(read('--band', 'k-2,6-8', '--band', 'K-2')).toMatchObject({ options: { bands: ['k-2', '6-8'] } });
  });

  it('takes seeds in the letters of any language', () => {
    expect(read('--seed', 'pezuña_2')).toMatchObject({ options: { seed: 'pezuña_2' } });
  });

  it('names all that it cannot take, with what is allowed and what is near', () => {
    expect(faults('--bnad', '3-5', '--band', 'k2', '--lang', 'fr', '--paper=A5', '--seed', '../x', 'clover', '--out')).toMatchInlineSnapshot(`
      [
        ""--bnad": there is no such option. There are: --band, --lang, --out, --paper, --seed. Did you mean "--band"?",
        ""clover": nothing is expected here without an option before it. There are: --band, --lang, --out, --paper, --seed.",
        "--out: its value is missing.",
        "--band "k2": allowed is k-2, 3-5, 6-8, 9-12. Did you mean "k-2"?",
        "--lang "fr": allowed is en, es.",
        "--paper "A5": allowed is letter, a4.",
        "--seed "../x": a seed is one word of letters, digits, "-" and "_", up to 40 of them.",
      ]
    `); // prettier-ignore
  });

  it('does not take the next option for a value', () => {
    expect(faults('--seed', '--band', '3-5')).toEqual(['--seed: its value is missing.']);
    expect(faults('--paper=')).toEqual(['--paper: its value is missing.']);
  });
});
