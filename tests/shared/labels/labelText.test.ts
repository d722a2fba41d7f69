// What stands on a label: the keeping rule's last day, and for milk that nobody drinks first of all that nobody drinks it.
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import type { Jar } from '../../../shared/labels/jars.ts';
import { keptAgainFrom, milkOf, newestMilking, type LabelBook } from '../../../shared/labels/labelBook.ts';
import { labelQuery, readLabelOrder, type LabelOrder } from '../../../shared/labels/labelOrder.ts';
import { jarAmount, labelLines, lastDay, pasteurizedFault } from '../../../shared/labels/labelText.ts';
import { wordsOf } from '../../../src/site/words.ts';

const day = (iso: string) => dayNumber(iso) ?? Number.NaN;
const MILKED = day('2026-05-21');
const jar: Jar = { key: 'kept:ida:1', of: 'doe', doe: 'ida', names: ['Ida'], use: 'kept', volume_mL: 1892.705892, fill: 1, nth: 1, count: 2 }; // prettier-ignore
const setting = { words: wordsOf('en'), farm: 'Elm Hill', units: 'us', day: MILKED, milking: 'am', pasteurized: null, keptAgain: null } as const; // prettier-ignore
const told = (one: Jar, change: Partial<Parameters<typeof labelLines>[1]> = {}) =>
  labelLines(one, { ...setting, ...change }).map(({ text }) => text);

describe('labelLines()', () => {
  it('of raw milk names the day to pasteurize it by, and that nobody drinks it', () => {
    expect(told(jar)).toEqual([
      'Ida',
      'Thu, May 21 · a.m.',
      '8 cups · jar 1 of 2',
      'Raw: do not drink',
      'Pasteurize by Sun, May 24',
      'Elm Hill',
    ]);
  });

  it('of pasteurized milk names the day to use it by, counted from its heating', () => {
    expect(told(jar, { pasteurized: day('2026-05-22') })).toEqual([
      'Ida',
      'Thu, May 21 · a.m.',
      '8 cups · jar 1 of 2',
      'Pasteurized Fri, May 22',
      'Use by Fri, May 29',
      'Elm Hill',
    ]);
  });

  it('of withheld milk begins with that, pasteurized or not, and has no last day', () => {
    const withheld: Jar = { ...jar, use: 'withheld', count: 1 };
    const lines = ['WITHHELD', 'Do not drink, now or later', 'Ida', 'Thu, May 21 · a.m. · 8 cups'];
    for (const pasteurized of [null, MILKED])
      expect(told(withheld, { pasteurized })).toEqual([...lines, 'Ask the veterinarian how long']);
    const until = told(withheld, { keptAgain: day('2026-05-25') });
    expect(until).toEqual([...lines, 'New milk kept from Mon, May 25']);
    expect(lastDay('withheld', setting)).toBeNull();
  });

  it('of a mix says so, and names its does where there is room', () => {
    const mix: Jar = { ...jar, of: 'mix', doe: null, names: ['Ida', 'Fern'] };
    expect(told(mix)).toEqual(expect.arrayContaining(['Mix of 2 does', 'Ida, Fern']));
  });

  it('says the same in Spanish', () => {
    expect(told({ ...jar, use: 'withheld' }, { words: wordsOf('es'), milking: 'pm' })).toEqual([
      'RETIRADA',
      'No se bebe, ni hoy ni después',
      'Ida',
      'jue 21 de may · tarde · 8 tazas',
      'Pregunte al veterinario',
    ]);
  });
});

describe('jarAmount()', () => {
  it('tells quarters of a cup, or litres, and never nothing', () => {
    const en = setting.words;
    // 1 US cup = 1/16 gal = 236.5882365 mL: NIST Handbook 44.
    expect([236.5882365, 118.3, 414, 1, 1892.7].map((mL) => jarAmount(mL, 'us', en))).toEqual([
      '1 cup',
      '½ cup',
      '1¾ cups',
      '¼ cup',
      '8 cups',
    ]);
    expect([1000, 354, 1].map((mL) => jarAmount(mL, 'metric', en))).toEqual(['1 L', '0.35 L', '0.01 L']);
  });
});

describe('pasteurizedFault()', () => {
  // Raw milk waits three days at most: the fact raw-waits, after the milk ordinance (from memory).
  it('takes a day from the milking to the last that raw milk waits', () => {
    expect(['2026-05-20', '2026-05-21', '2026-05-24', '2026-05-25'].map((on) => pasteurizedFault(MILKED, day(on)))).toEqual(['too early', null, null, 'too late']); // prettier-ignore
  });
});

describe('the book of labels', () => {
  const book: LabelBook = {
    today: '2026-05-21',
    does: [
      { id: 'ida', name: 'Ida' },
      { id: 'fern', name: 'Fern' },
    ],
    rows: [
      { doe: 'fern', date: '2026-05-20', milking: 'pm', volume_mL: 900, use: 'kept' },
      { doe: 'ida', date: '2026-05-20', milking: 'pm', volume_mL: 800, use: 'withheld' },
      { doe: 'ida', date: '2026-05-20', milking: 'am', volume_mL: 700, use: 'kept' },
      { doe: 'ida', date: '2026-05-22', milking: 'am', volume_mL: 1, use: 'kept' },
    ],
    treatments: [
      { doe: 'ida', from: day('2026-05-18'), until: day('2026-05-22'), what: 'a drug' },
      { doe: 'ida', from: day('2026-05-21'), until: day('2026-05-26'), what: 'another' },
      { doe: 'fern', from: day('2026-05-21'), until: null, what: 'a third' },
    ],
  };

  it('gives one milking in the order of the does, and the newest that is not to come', () => {
    expect(milkOf(book, '2026-05-20', 'pm').map(({ name, use }) => [name, use])).toEqual([
      ['Ida', 'withheld'],
      ['Fern', 'kept'],
    ]);
    expect(newestMilking(book)).toEqual({ date: '2026-05-20', milking: 'pm' });
    expect(newestMilking({ ...book, rows: [] })).toEqual({ date: '2026-05-21', milking: 'am' });
  });

  it('tells from when milk is kept again: the longest of several treatments, no day where none is set', () => {
    // "Until" is the first day that is free again; a discard time counts from the last dose (FDA, AMDUCA 1994; from memory).
    const from = keptAgainFrom(book.treatments, 'ida', day('2026-05-20'));
    expect(from === null ? null : isoDate(from)).toBe('2026-05-26');
    expect(keptAgainFrom(book.treatments, 'ida', day('2026-05-26'))).toBeNull();
    expect(keptAgainFrom(book.treatments, 'fern', day('2026-05-22'))).toBeNull();
    expect(keptAgainFrom(book.treatments, null, MILKED)).toBeNull();
  });
});

describe('an order in an address', () => {
  const usual: LabelOrder = { date: '2026-05-21', milking: 'pm', way: 'doe', pasteurized: null, kids: false, sheet: 'letter-3x10', start: 1, edges: false, without: [] }; // prettier-ignore
  const read = (query: string) => readLabelOrder(new URLSearchParams(query), usual, ['letter-3x10', 'own']);

  it('is read back as it was written', () => {
    const order: LabelOrder = { date: '2026-05-20', milking: 'am', way: 'mix', pasteurized: '2026-05-21', kids: true, sheet: 'own', start: 7, edges: true, without: ['kept:a, b:1', 'kept:mix:2'] }; // prettier-ignore
    expect(read(labelQuery(order))).toEqual(order);
    expect(read(labelQuery(usual))).toEqual(usual);
  });

  it('is as usual where the address says nothing, or nothing sound', () => {
    expect(read('')).toEqual(usual);
    expect(read('?date=2026-02-30&milking=noon&sheet=other&start=-2&pasteurized=soon')).toEqual(usual);
    expect(read('?date=2026-05-19&milking=am')).toEqual({ ...usual, date: '2026-05-19', milking: 'am' });
  });
});
