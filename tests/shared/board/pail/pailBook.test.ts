// Which milking is guessed: by example, over the demo farm's own years, and over random books.
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guessRow, inGuessParts, rowChoices } from '../../../../shared/board/pail/guessRow.ts';
import { pailBook } from '../../../../shared/board/pail/pailBook.ts';
import { openLedger } from '../../../../shared/herd/ledger.ts';
import type { Book } from '../../../../shared/herd/types.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';
import { bookOf, dates, day, twice } from '../../../support/bookOf.ts';
import { dateOf, plainExpected } from '../../../support/plainHerd.ts';
import { caseArb } from '../../../support/randomBook.ts';

const WEEK = dates('2026-05-14', '2026-05-20');
const KIDDINGS = ['ash', 'bay', 'fir'].map((doe) => `${doe} 2026-02-01 weaned 2026-04-01`);
const threeDoes = (more: string[] = []) =>
  bookOf(KIDDINGS, [...['ash', 'bay', 'fir'].flatMap((doe) => twice(doe, WEEK)), ...more]);
const pailOf = (book: Book, date: string) => pailBook(book, openLedger(book, day(date)));

describe('the milking to guess', () => {
  it('is the one after the newest in the book', () => {
    expect(pailOf(threeDoes(), '2026-05-20').next).toMatchObject({
      date: '2026-05-21',
      milking: 'am',
      truth_mL: null,
    });
  });

  it('stays while other does are entered, and is told once its own doe is', () => {
    const asked = pailOf(threeDoes(), '2026-05-20').next!;
    const others = ['ash', 'bay', 'fir'].filter((doe) => doe !== asked.doe);
    const rows = others.map((doe) => `2026-05-21 am ${doe} 2 L`);
    expect(pailOf(threeDoes(rows), '2026-05-21').next).toEqual(asked);
    const known = pailOf(threeDoes([...rows, `2026-05-21 am ${asked.doe} 1.5 L`]), '2026-05-21');
    expect(known.past[0]).toEqual({ ...asked, truth_mL: 1500 });
    expect(known.next).toMatchObject({ date: '2026-05-21', milking: 'pm' });
  });

  it('goes on where one was forgotten and the next milking is in the book', () => {
    const asked = pailOf(threeDoes(), '2026-05-20').next!;
    const others = ['ash', 'bay', 'fir'].filter((doe) => doe !== asked.doe);
    const rows = [
      ...others.map((doe) => `2026-05-21 am ${doe} 2 L`),
      ...['ash', 'bay', 'fir'].map((doe) => `2026-05-21 pm ${doe} 2 L`),
    ];
    expect(pailOf(threeDoes(rows), '2026-05-21').next).toMatchObject({ date: '2026-05-22', milking: 'am' });
  });

  it('changes its doe from day to day, each in her turn', () => {
    const week = dates('2026-05-15', '2026-05-20').map((date) => {
      const until = bookOf(
        KIDDINGS,
        ['ash', 'bay', 'fir'].flatMap((doe) => twice(doe, dates('2026-05-08', date))),
      );
      return pailOf(until, date).next?.doe;
    });
    expect(new Set(week.slice(0, 3)).size).toBe(3);
    expect(week.slice(3)).toEqual(week.slice(0, 3));
  });

  it('knows her usual milking of that time of day: middle, least and most of the seven days before', () => {
    const amounts = ['1', '2', '3', '4', '5', '6', '7'];
    const rows = WEEK.flatMap((date, index) => [`${date} am ash ${amounts[index]} L`, `${date} pm ash 9 L`]);
    const { next } = pailOf(bookOf(KIDDINGS.slice(0, 1), rows), '2026-05-20');
    expect(next).toMatchObject({ milking: 'am', usual_mL: 4000, low_mL: 1000, high_mL: 7000 });
  });

  it('is none in an empty book, in a silent one and while the does rest; then it says from when', () => {
    expect(pailOf(bookOf([]), '2026-05-20')).toMatchObject({ next: null, pause: 'empty', from: null });
    expect(pailOf(threeDoes(), '2026-06-20')).toMatchObject({ next: null, pause: 'silent' });
    const dry = bookOf(
      ['ash 2026-02-01 weaned 2026-04-01 dry 2026-05-21', 'ash 2027-02-01 apart 2027-02-20'],
      twice('ash', WEEK),
    );
    expect(pailOf(dry, '2026-05-25')).toMatchObject({ next: null, pause: 'resting', from: '2027-02-20' });
  });
});

describe('over two years of the demo farm', () => {
  const reading = readFarm(resolve('content/farm'), { asOf: '2026-12-20', now_ms: 0 });
  if (!reading.ok) throw new Error('The demo farm cannot be read.');
  const { book } = reading;

  it('asks of the same doe before and after, and the row holds what she gave, with room on both sides', () => {
    let asked = 0;
    for (let today = day('2025-05-01'); today < day('2026-11-20'); today += 9) {
      const { next } = pailBook(book, openLedger(book, today));
      if (!next) continue;
      const known = pailBook(book, openLedger(book, today + 2)).past.find(
        (one) => one.date === next.date && one.milking === next.milking,
      );
      if (!known) continue;
      expect(known.doe).toBe(next.doe);
      const choices = rowChoices(guessRow(next, 'cup'));
      const truth = inGuessParts(known.truth_mL as number, 'cup');
      // Two cups of room, or nothing at all below.
      expect(truth).toBeGreaterThanOrEqual(choices[0] === 0 ? 0 : (choices[0] as number) + 1);
      expect(truth).toBeLessThanOrEqual((choices.at(-1) as number) - 1);
      asked += 1;
    }
    expect(asked).toBeGreaterThan(30);
  });
});

describe('for any book', () => {
  it('asks only what is expected, is not yet entered and could be known; its row is short and wide enough', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const { next, pause, past } = pailBook(book, openLedger(book, asOf));
        expect(next === null).toBe(pause !== null);
        for (const one of past) expect(one.truth_mL).not.toBeNull();
        if (!next) return;
        // Expected by the slow reference of the herd's tests.
        expect(plainExpected(book.kiddings, next.doe, next.date)).toContain(next.milking);
        expect(next.low_mL).toBeLessThanOrEqual(next.usual_mL);
        expect(next.usual_mL).toBeLessThanOrEqual(next.high_mL);
        expect(dateOf(day(next.date))).toBe(next.date);
        for (const part of ['cup', 'half-L'] as const) {
          const choices = rowChoices(guessRow(next, part));
          expect(choices.length).toBeLessThanOrEqual(12);
          expect(choices.length).toBeGreaterThanOrEqual(3);
          const low = inGuessParts(next.low_mL, part);
          expect(choices[0]! === 0 || choices[0]! <= low - 1).toBe(true);
          expect(choices.at(-1)!).toBeGreaterThanOrEqual(inGuessParts(next.high_mL, part) + 1);
        }
      }),
      { numRuns: 150 },
    );
  });
});
