// The board's answers, by example and over random books.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerTo, QUESTIONS } from '../../../shared/board/answers.ts';
import { middleDoe } from '../../../shared/board/howMuch.ts';
import { jarScale, servings, writtenText } from '../../../shared/board/shown.ts';
import type { BoardInput } from '../../../shared/board/types.ts';
import { boardFarm } from '../../../shared/board/boardFarm.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { TEST_FARM } from '../../support/testFarm.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';

const WEEK = dates('2026-05-14', '2026-05-20');

function inputOf(book: Book, asOf: number, units: 'us' | 'metric' = 'metric'): BoardInput {
  const ledger = openLedger(book, asOf);
  const farm = { ...TEST_FARM, units };
  return { ...boardFarm(farm, book, ledger), lang: 'en', composition: [] };
}

const threeDoes = () =>
  bookOf(
    [
      'ash 2026-02-01 weaned 2026-04-01',
      'bay 2026-02-01 weaned 2026-04-01',
      'fir 2026-02-01 weaned 2026-04-01',
    ],
    [...twice('ash', WEEK, '1 L'), ...twice('bay', WEEK, '3 L'), ...twice('fir', WEEK, '2 L')],
  );

describe('how much one doe gives', () => {
  it('is told by the doe in the middle', () => {
    const answer = answerTo('how-much', inputOf(threeDoes(), day('2026-05-20')));
    expect(answer.slots).toMatchObject({ name: 'fir', amount: '4' });
    expect(answer.variants).toMatchObject({ headline: 'middle', unit: 'metric' });
    expect(answer.proof.figure).toBe('doe.fir.week.dailyMean');
    expect(answer.proof.steps.at(-1)?.sum).toBe('28.00 ÷ 7 = 4.00');
  });

  it('leaves a day with a gap out of the sums, and says that a milking is missing', () => {
    const book = threeDoes();
    const rows = book.rows.filter(
      (row) => !(row.doe === 'fir' && row.day === day('2026-05-16') && row.milking === 'pm'),
    );
    const { proof } = answerTo('how-much', inputOf({ ...book, rows }, day('2026-05-20')));
    expect(proof.missing).toBe(1);
    expect(proof.steps).toHaveLength(7);
    expect(proof.steps.at(-1)?.sum).toBe('24.00 ÷ 6 = 4.00');
    expect(proof.rows).toHaveLength(13);
  });

  it('does not put a doe in the middle of two', () => {
    const book = threeDoes();
    const two = { ...book, does: book.does.slice(0, 2), rows: book.rows.filter((row) => row.doe !== 'fir') };
    expect(middleDoe(inputOf(two, day('2026-05-20')))?.inMiddle).toBe(false);
  });

  it('is missing in an empty book', () => {
    const answer = answerTo('how-much', inputOf(bookOf([]), day('2026-05-20')));
    expect(answer).toMatchObject({ missing: true, number: '', face: null });
  });
});

describe('who gave how much', () => {
  it('tells kindly of a doe whose milk is kept apart today, unless she rests anyway', () => {
    const treatments = ['ash', 'fir'].map((doe, index) => (
      { doe, from: day('2026-05-10'), until: day('2026-05-20') + index, what: '', note: '', file: '', line: 2 }
    )); // prettier-ignore
    const standings = (asOf: string, book: Book) => {
      const { picture } = answerTo('whose-milk', inputOf({ ...book, treatments }, day(asOf)));
      return picture.kind === 'does' ? picture.does.map(({ standing }) => standing) : [];
    };
    expect(standings('2026-05-20', threeDoes())).toEqual(['twice', 'twice', 'treated']);
    const dry = threeDoes().kiddings.map((one) => (one.doe === 'fir' ? { ...one, dry: day('2026-05-20') } : one)); // prettier-ignore
    expect(standings('2026-05-20', { ...threeDoes(), kiddings: dry })).toEqual(['twice', 'twice', 'dry']);
  });
});

describe('where the milk goes', () => {
  it('tells most, some or none by the share that was kept', () => {
    const kidding = ['ash 2026-02-01 weaned 2026-04-01'];
    const of = (rows: string[]) =>
      answerTo('where-it-goes', inputOf(bookOf(kidding, rows), day('2026-05-20')));
    const row = (amount: string, use: string, milking: string) =>
      `2026-05-20 ${milking} ash ${amount} L ${use}`;
    expect(of([row('3', 'kept', 'am'), row('1', 'lost', 'pm')]).variants['headline']).toBe('most');
    expect(of([row('1', 'kept', 'am'), row('3', 'fed', 'pm')]).variants['headline']).toBe('some');
    expect(of([row('3', 'withheld', 'am'), row('3', 'withheld', 'pm')]).variants['headline']).toBe('none');
  });
});

describe('why goats have milk', () => {
  it("counts the kids of the last day's year that are born by then", () => {
    const book = threeDoes();
    const kiddings = [
      ...book.kiddings,
      { ...book.kiddings[0]!, day: day('2025-03-01') },
      { ...book.kiddings[0]!, day: day('2026-06-01') },
      { ...book.kiddings[0]!, day: day('2026-03-03'), kids: null },
    ];
    expect(answerTo('why-milk', inputOf({ ...book, kiddings }, day('2026-05-20'))).number).toBe('6');
  });
});

describe('every answer, for any book', () => {
  it('stands or says that it is missing; its shares make the whole; its rows have a place', () => {
    fc.assert(
      fc.property(caseArb, fc.constantFrom('us' as const, 'metric' as const), ({ book, asOf }, units) => {
        const input = inputOf(book, asOf, units);
        for (const name of QUESTIONS) {
          const answer = answerTo(name, input);
          expect(answer.number === '').toBe(answer.missing);
          expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined/);
          if (answer.picture.kind === 'road' && !answer.missing) {
            const whole = answer.picture.parts.reduce((sum, part) => sum + part.share, 0);
            expect(whole).toBeCloseTo(1, 9);
          }
          for (const row of answer.proof.rows) {
            expect(row.cells).toHaveLength(answer.proof.columns.length);
            expect(row.place).not.toBeNull();
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('amounts on the board', () => {
  it('draws no more jars than asked, in powers of ten', () => {
    expect(jarScale(0, 1000, 10)).toBe(1);
    expect(jarScale(10_000, 1000, 10)).toBe(1);
    expect(jarScale(10_001, 1000, 10)).toBe(10);
    expect(jarScale(1_000_001, 1000, 10)).toBe(1000);
  });

  it('serves whole servings of half a pint', () => {
    // 1 US gallon is 16 servings of 8 fl oz: NIST Handbook 44, Appendix C.
    expect(servings(3785.411784)).toBe(16);
    expect(servings(3785.4)).toBe(15);
  });

  it('shows an amount as the book has it', () => {
    const written = (num: number, den: number) => writtenText({ num, den, unit: 'cup' });
    expect([written(11, 1), written(23, 2), written(115, 10), written(1, 4)]).toEqual([
      '11 cup',
      '11 1/2 cup',
      '11.5 cup',
      '1/4 cup',
    ]);
  });
});
