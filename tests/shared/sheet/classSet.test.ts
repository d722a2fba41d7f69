// Class sets: the same word the same set, every copy its own code, as different as the week allows, found by code.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { findCopy, isMisread, tidyCode } from '../../../shared/pack/findCode.ts';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import { classCopies, classSet, copyByCode, copySeeds } from '../../../shared/sheet/classSet.ts';
import { MOST_COPIES } from '../../../shared/sheet/mostCopies.ts';
import { makeSheet, type Sheet, type SheetRequest } from '../../../shared/sheet/sheet.ts';
import { kindsOf } from '../../../shared/tasks/kinds.ts';
import { GRADES_OF } from '../../../shared/tasks/standards.ts';
import { bookOf, dates, day } from '../../support/bookOf.ts';
import { requestArb } from '../tasks/randomWeek.ts';

const AMOUNTS = ['5 1/4', '6', '5 3/4', '6 1/2', '5', '7 1/4', '6 3/4', '8', '4 1/2'];
const NAMES = ['ada', 'bea', 'cleo', 'dot'];
const BOOK = bookOf(
  NAMES.map((name) => `${name} 2026-02-01 apart 2026-02-20 weaned 2026-03-01`),
  dates('2026-05-01', '2026-05-21').flatMap((date, at) =>
    NAMES.flatMap((name, which) =>
      ['am', 'pm'].map(
        (time, half) =>
          `${date} ${time} ${name} ${AMOUNTS[(at * at + which * 2 + half * (3 + at)) % AMOUNTS.length]} cup`,
      ),
    ),
  ),
);
const weekOn = (date: string) => weekView(BOOK, openLedger(BOOK, day(date)));
const request = (band: Band, date = '2026-05-21', name = 'a-sheet'): Omit<SheetRequest, 'seed'> => ({
  week: weekOn(date),
  units: 'us',
  jar_mL: 1892.705892,
  milkings: { am: '06:30', pm: '17:30' },
  name,
  band,
  tasks: kindsOf(band)
    .slice(0, 6)
    .map((kind) => kind.name),
});
const wordArb = fc.stringMatching(/^[a-zñ][a-z0-9_-]{0,11}$/u);
const codesOf = (copies: readonly Sheet[]) => copies.map(({ code }) => code);
const tasksOf = (copies: readonly Sheet[]) => copies.map(({ tasks }) => JSON.stringify(tasks));

describe('classSet', () => {
  it('gives the same set for the same word, byte for byte', () => {
    fc.assert(
      fc.property(requestArb, wordArb, fc.integer({ min: 1, max: 5 }), (one, word, copies) => {
        const made = JSON.stringify(classSet(one, word, copies));
        expect(JSON.stringify(classSet(structuredClone(one), word, copies))).toBe(made);
      }),
      { numRuns: 20 },
    );
  });

  it('gives the same set a month later, read for the same day', () => {
    const later = bookOf(
      NAMES.map((name) => `${name} 2026-02-01 apart 2026-02-20 weaned 2026-03-01`),
      dates('2026-06-01', '2026-06-21').flatMap((date) => NAMES.map((name) => `${date} am ${name} 7 cup`)),
    );
    const grown = { ...BOOK, rows: [...BOOK.rows, ...later.rows] };
    const week = weekView(grown, openLedger(grown, day('2026-05-21')));
    expect(classSet({ ...request('3-5'), week }, 'fern', 5)).toEqual(classSet(request('3-5'), 'fern', 5));
  });

  it('begins every larger set as the smaller one', () => {
    const large = classSet(request('6-8'), 'fern', 20);
    expect(classSet(request('6-8'), 'fern', 9)).toEqual(large.slice(0, 9));
    expect([...classCopies(request('6-8'), 'fern', 20)]).toEqual(large);
  });

  it('gives one copy alone the very word as its seed', () => {
    expect(classSet(request('k-2'), 'fern', 1)).toEqual([makeSheet({ ...request('k-2'), seed: 'fern' })]);
  });

  it.each(BANDS)('gives every copy of %s its own code, whatever the word', (band) => {
    fc.assert(
      fc.property(wordArb, fc.constantFrom(...GRADES_OF[band]), (word, grade) => {
        const codes = codesOf(classSet({ ...request(band), grade }, word, 12));
        expect(new Set(codes).size).toBe(12);
      }),
      { numRuns: 12 },
    );
  });

  it.each(BANDS)('gives no two alike of thirty copies of %s from a full week', (band) => {
    const copies = classSet(request(band), 'fern', 30);
    expect(new Set(tasksOf(copies)).size).toBe(30);
    expect(new Set(codesOf(copies)).size).toBe(30);
  });

  it('leaves copies alike where the week has no other, and still tells them apart by code', () => {
    const thin = bookOf(['ada 2026-02-01 apart 2026-02-20 weaned 2026-03-01'], ['2026-05-20 am ada 5 cup']);
    const week = weekView(thin, openLedger(thin, day('2026-05-21')));
    const copies = classSet({ ...request('k-2'), week, tasks: ['kids-milk'] }, 'fern', 10);
    expect(new Set(codesOf(copies)).size).toBe(10);
  });

  it('gives other copies for another word, week, grade or sheet', () => {
    const codes = [
      codesOf(classSet(request('3-5'), 'fern', 10)),
      codesOf(classSet(request('3-5'), 'clover', 10)),
      codesOf(classSet(request('3-5', '2026-05-14'), 'fern', 10)),
      codesOf(classSet({ ...request('3-5'), grade: 3 }, 'fern', 10)),
      codesOf(classSet(request('3-5', '2026-05-21', 'another'), 'fern', 10)),
    ].flat();
    expect(new Set(codes).size).toBe(50);
  });

  // Printed sheets lie in folders for years: a code may not change under them. From this code, on 2026-11-25.
  it('gives the codes that it has always given', () => {
    expect(codesOf(classSet(request('k-2'), 'fern', 5))).toMatchInlineSnapshot(`
      [
        "9Z2NX",
        "AZB3E",
        "K5XK4",
        "8SZ3H",
        "BAE4W",
      ]
    `);
    expect(codesOf(classSet(request('9-12'), 'ñandú', 3))).toMatchInlineSnapshot(`
      [
        "92G3C",
        "JJTX4",
        "FA6E8",
      ]
    `);
  });

  it.each([0, -1, 61, 1.5, Number.NaN])('takes no set of %s', (copies) => {
    expect(() => classSet(request('k-2'), 'fern', copies)).toThrow(/1 to 60 copies/);
  });
});

describe('copyByCode', () => {
  it('finds each copy by its code, typed as it may be, and none by another', () => {
    const copies = classSet(request('k-2'), 'fern', 6);
    for (const copy of copies) expect(copyByCode(copies, ` ${copy.code.toLowerCase()} `)).toBe(copy);
    expect(copyByCode(copies, 'AAAAA')).toBe(null);
  });
});

describe('findCopy', () => {
  const stems = BANDS.flatMap((band) => [request(band), request(band, '2026-05-21', 'another')]);

  it('finds any copy of any sheet and grade by its code, and says which it is', () => {
    for (const { name, band, ...rest } of stems.slice(0, 4)) {
      const grade = GRADES_OF[band][1] as (typeof GRADES_OF)[Band][number];
      const copies = classSet({ ...rest, name, band, grade }, 'fern', MOST_COPIES);
      for (const copy of [1, 2, 17, MOST_COPIES]) {
        const sheet = copies[copy - 1] as Sheet;
        expect(findCopy(` ${sheet.code.toLowerCase()}`, 'fern', stems)).toEqual({ sheet, copy });
      }
    }
  });

  it('finds a sheet that was printed alone', () => {
    const sheet = makeSheet({ ...request('6-8'), grade: 7, seed: 'fern' });
    expect(findCopy(sheet.code, 'fern', stems)).toEqual({ sheet, copy: null });
  });

  it('finds nothing for another word or another week', () => {
    const [sheet] = classSet(request('3-5'), 'fern', 2) as [Sheet, Sheet];
    expect(findCopy(sheet.code, 'clover', stems)).toBe(null);
    expect(findCopy(sheet.code, 'fern', [request('3-5', '2026-05-14')])).toBe(null);
    expect(findCopy('', 'fern', stems)).toBe(null);
  });

  it('takes a copy that was drawn again by its later seed', () => {
    const thin = bookOf(['ada 2026-02-01 apart 2026-02-20 weaned 2026-03-01'], ['2026-05-20 am ada 5 cup']);
    const week = weekView(thin, openLedger(thin, day('2026-05-21')));
    const stem = { ...request('k-2'), week, tasks: ['kids-milk'] };
    const grade = GRADES_OF['k-2'][0] as 0;
    for (const [place, sheet] of classSet({ ...stem, grade }, 'fern', 5).entries())
      expect(findCopy(sheet.code, 'fern', [stem])).toEqual({ sheet, copy: place + 1 });
    expect(copySeeds('fern', 2)).toHaveLength(6);
  });
});

describe('a code that is typed', () => {
  it('is taken without spaces, dashes and small letters', () => {
    expect(tidyCode(' ab-2c d\n')).toBe('AB2CD');
  });

  it('is misread where it holds a sign that no code has', () => {
    expect(['AB0CD', 'O2345', 'A1BCD'].every(isMisread)).toBe(true);
    expect(classSet(request('k-2'), 'fern', 30).some(({ code }) => isMisread(code))).toBe(false);
  });
});
