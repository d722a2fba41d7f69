// Sheets: the same seed the same sheet, thin books told as they are, no two tasks alike.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { firstSeed, makeSheet, sheetCode, type SheetRequest } from '../../../shared/sheet/sheet.ts';
import { taskContext } from '../../../shared/tasks/context.ts';
import { kindsOf } from '../../../shared/tasks/kinds.ts';
import { bookOf, dates, day } from '../../support/bookOf.ts';
import { requestArb } from '../tasks/randomWeek.ts';

const AMOUNTS = ['5 1/4', '6', '5 3/4', '6 1/2', '5', '7 1/4', '6 3/4', '8', '4 1/2'];
const herd = (names: readonly string[], from: string, to: string) =>
  bookOf(
    names.map((name) => `${name} 2026-02-01 apart 2026-02-20 weaned 2026-03-01`),
    dates(from, to).flatMap((date, at) =>
      names.flatMap((name, which) =>
        ['am', 'pm'].map(
          (time, half) =>
            `${date} ${time} ${name} ${AMOUNTS[(at * at + which * 2 + half * (3 + at)) % AMOUNTS.length]} cup`,
        ),
      ),
    ),
  );
const weekOf = (book: ReturnType<typeof bookOf>, asOf: string) => weekView(book, openLedger(book, day(asOf)));
const request = (
  band: (typeof BANDS)[number],
  week: ReturnType<typeof weekOf>,
  seed = 'a',
): SheetRequest => ({
  week,
  units: 'us',
  jar_mL: 1892.705892,
  milkings: { am: '06:30', pm: '17:30' },
  name: 'a-sheet',
  band,
  seed,
  tasks: kindsOf(band)
    .slice(0, 7)
    .map(({ name }) => name),
});

const full = weekOf(herd(['ada', 'bea', 'cleo', 'dot'], '2026-05-01', '2026-05-21'), '2026-05-21');

describe('makeSheet', () => {
  it.each(BANDS)('gives %s seven tasks from a full week', (band) => {
    const sheet = makeSheet(request(band, full));
    expect(sheet.tasks.map(({ kind }) => kind)).toEqual(request(band, full).tasks);
    expect(sheet.lacks).toEqual([]);
  });

  it('gives the same sheet for the same seed, byte for byte', () => {
    fc.assert(
      fc.property(requestArb, (one) => {
        expect(JSON.stringify(makeSheet(one))).toBe(JSON.stringify(makeSheet(structuredClone(one))));
      }),
      { numRuns: 300 },
    );
  });

  it.each(BANDS)('gives %s other numbers for other seeds', (band) => {
    const sheets = Array.from({ length: 12 }, (_, n) =>
      JSON.stringify(makeSheet(request(band, full, `seed ${n}`)).tasks),
    );
    expect(new Set(sheets).size).toBe(12);
  });

  it('does not change when it is carried as JSON', () => {
    for (const band of BANDS) {
      const sheet = makeSheet(request(band, full));
      expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet);
    }
  });

  it('has no two tasks alike', () => {
    fc.assert(
      fc.property(requestArb, (one) => {
        const { tasks } = makeSheet(one);
        expect(new Set(tasks.map(({ kind }) => kind)).size).toBe(tasks.length);
        const asked = tasks.map(({ lead, picture, asks }) =>
          JSON.stringify([lead, picture, asks.map(({ prompt }) => prompt)]),
        );
        expect(new Set(asked).size).toBe(tasks.length);
      }),
      { numRuns: 500 },
    );
  });

  it('throws for a task that there is no kind of', () => {
    expect(() =>
      makeSheet({ ...request('k-2', full), tasks: ['count-kups'] }),
    ).toThrowErrorMatchingInlineSnapshot(`[Error: There is no kind of task called "count-kups".]`);
  });
});

describe('a thin book', () => {
  it('takes other tasks where one does not fit', () => {
    const one = weekOf(herd(['ada'], '2026-05-10', '2026-05-21'), '2026-05-21');
    for (const band of BANDS) {
      const sheet = makeSheet(request(band, one));
      expect(sheet.tasks.length, band).toBeGreaterThanOrEqual(6);
    }
    expect(makeSheet(request('k-2', one)).tasks.map(({ kind }) => kind)).not.toContain('more-or-less');
  });

  it('says what is missing where nothing can stand in', () => {
    const morning = weekOf(
      bookOf(['ada 2026-02-01 apart 2026-02-20'], ['2026-05-21 am ada 6 cup']),
      '2026-05-21',
    );
    for (const band of BANDS) {
      const tasks = kindsOf(band).map(({ name }) => name);
      const sheet = makeSheet({ ...request(band, morning), tasks });
      expect(sheet.tasks.length, band).toBeLessThan(tasks.length);
      const left = kindsOf(band).filter(({ name }) => !sheet.tasks.some(({ kind }) => kind === name));
      const why = left.map((kind) => kind.fits(taskContext(request(band, morning), band, 'a')));
      expect(sheet.lacks).toEqual([...new Set(why)]);
    }
  });

  it('gives an empty book and a farm without does the tasks that need no milk, and says what the rest lacks', () => {
    for (const book of [bookOf(['ada 2026-02-01']), bookOf([])]) {
      const week = weekOf(book, '2026-05-21');
      for (const band of BANDS) {
        const sheet = makeSheet(request(band, week));
        expect([sheet.state, sheet.week]).toEqual(['empty', null]);
        const plain = kindsOf(band).filter(
          (kind) => kind.fits(taskContext(request(band, week), band, 'a')) === true,
        );
        expect(sheet.tasks.length, band).toBe(Math.min(7, plain.length));
        for (const { kind, fromBook } of sheet.tasks) {
          expect(plain.map(({ name }) => name)).toContain(kind);
          expect(fromBook).toEqual([]);
        }
        expect(sheet.lacks.length > 0).toBe(sheet.tasks.length < 7);
      }
    }
  });

  it('takes the last week with milk when the does are resting', () => {
    const sheet = makeSheet(
      request('3-5', weekOf(herd(['ada', 'bea', 'cleo'], '2026-05-01', '2026-05-21'), '2026-12-10')),
    );
    expect([sheet.state, sheet.week]).toEqual(['resting', { from: '2026-05-15', to: '2026-05-21' }]);
    expect(sheet.tasks.length).toBe(7);
  });
});

describe('sheetCode', () => {
  it('is five letters that nobody mixes up', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(sheetCode(text)).toMatch(/^[2-9A-HJKMNPQRSTVWXYZ]{5}$/);
      }),
    );
    expect(sheetCode('a')).not.toBe(sheetCode('b'));
  });
});

describe('firstSeed', () => {
  it('is the last date of the week, or a word', () => {
    expect(firstSeed(full)).toBe('2026-05-21');
    expect(firstSeed({ window: null })).toBe('pail');
  });
}); // prettier-ignore
