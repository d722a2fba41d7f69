// Which page an order prints from, and what its file is called.
import { describe, expect, it } from 'vitest';
import type { PackOrder, Shelf } from '../../../shared/pack/order.ts';
import { packJobs } from '../../../src/print/jobs.ts';

const SHELF: Shelf = { langs: ['en', 'es'], sheets: [], word: '2026-05-21', paper: 'letter' };
const ORDER: PackOrder = {
  grade: 5, sheets: ['a', 'b', 'c'], copies: 1, word: '2026-05-21', lang: 'en', paper: 'letter', print: 'ordinary',
  key: 'full', cover: true,
}; // prettier-ignore
const job = (change: Partial<PackOrder>, whom: string, all: boolean, shelf = SHELF) =>
  packJobs([{ order: { ...ORDER, ...change }, whom, all }], shelf)[0];

describe('packJobs', () => {
  it('prints the week of a band from the print room', () => {
    expect(job({}, '3-5', true)).toEqual({
      address:
        'print/?grade=5&sheets=a,b,c&copies=1&word=2026-05-21&lang=en&paper=letter&print=ordinary&key=full&cover=yes',
      file: 'sheets-3-5-en-letter.pdf',
      media: 'screen',
    });
  });

  it('names what differs from the week, in the language of the sheets', () => {
    const change = { grade: 2, sheets: ['a'], copies: 30, word: 'ñu', lang: 'es', paper: 'a4', print: 'large', cover: false } as const; // prettier-ignore
    expect(job(change, 'grade-2', false)).toEqual({
      address:
        'es/print/?grade=2&sheets=a&copies=30&word=%C3%B1u&lang=es&paper=a4&print=large&key=full&cover=no',
      file: 'sheets-grade-2-a-30-copies-ñu-es-a4-large.pdf',
      media: 'screen',
    });
  });

  it('names the first of many sheets', () => {
    expect(job({}, 'grade-5', false)?.file).toBe('sheets-grade-5-a-and-2-more-en-letter.pdf');
  });

  it('looks for the first language of the site at its root, whichever that is', () => {
    const shelf = { ...SHELF, langs: ['es', 'en'] };
    expect(job({ lang: 'es' }, '3-5', true, shelf)?.address).toMatch(/^print\//);
    expect(job({ lang: 'en' }, '3-5', true, shelf)?.address).toMatch(/^en\/print\//);
  });
});
