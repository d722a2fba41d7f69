// The week as pages and sheets lay it out.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { weekView } from '../../../shared/herd/week.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';

const WEEK = dates('2026-06-01', '2026-06-07');
const A = 'a 2026-03-01 weaned 2026-04-01';
const viewOf = (book: ReturnType<typeof bookOf>, asOf: string) => weekView(book, openLedger(book, day(asOf)));

describe('weekView', () => {
  it('lists the milkings of a doe in order, with the place where each is written', () => {
    const rows = ['2026-06-07 pm a 1 1/2 cup withheld', '2026-06-07 am a 2 L', '2026-06-06 pm a 1 L'];
    const [a] = viewOf(bookOf([A], rows), '2026-06-07').does;
    expect(a?.milkings.map((one) => [one.date, one.milking, one.line, one.use])).toEqual([
      ['2026-06-06', 'pm', 4, 'kept'],
      ['2026-06-07', 'am', 3, 'kept'],
      ['2026-06-07', 'pm', 2, 'withheld'],
    ]);
    expect(a?.milkings[2]).toMatchObject({ amount: { num: 3, den: 2, unit: 'cup' }, file: 'milkings/a.csv' });
    expect(a?.milkings[2]?.amount_mL).toBeCloseTo(354.88235475, 9);
  });

  it('names every milking that was expected and is not there', () => {
    const rows = twice('a', WEEK).filter((text) => !/-03 pm|-05/.test(text.slice(0, 13)));
    const [a] = viewOf(bookOf([A], rows), '2026-06-07').does;
    expect(a?.missing).toEqual([
      { date: '2026-06-03', milking: 'pm' },
      { date: '2026-06-05', milking: 'am' },
      { date: '2026-06-05', milking: 'pm' },
    ]);
  });

  it('divides the milk by what became of it', () => {
    const rows = [
      '2026-06-07 am a 2 L',
      '2026-06-07 pm a 1 L lost',
      '2026-06-06 am a 1 L fed',
      '2026-06-06 pm a 3 L withheld',
    ];
    expect(viewOf(bookOf([A], rows), '2026-06-07').uses_mL).toEqual({
      kept: 2000,
      withheld: 3000,
      fed: 1000,
      lost: 1000,
    });
  });

  it('lays out all seven days, and of 28 days those with an entry', () => {
    const rows = [
      ...twice('a', ['2026-06-07'], '1 L'),
      '2026-05-12 am a 1 L',
      '2026-05-11 am a 1 L',
      '2026-05-10 am a 1 L',
    ];
    const view = viewOf(bookOf([A], rows), '2026-06-09');
    expect(view.days.map((one) => one.date)).toEqual(WEEK);
    expect(view.days.map((one) => one.total_mL)).toEqual([0, 0, 0, 0, 0, 0, 2000]);
    expect(view.recentDays.map((one) => [one.date, one.whole])).toEqual([
      ['2026-05-11', false],
      ['2026-05-12', false],
      ['2026-06-07', true],
    ]);
  });

  it('keeps does without milk in view, each in her phase', () => {
    const book = bookOf(
      [A, 'b 2026-06-05 weaned 2026-07-20', 'c 2025-03-01 dry 2025-10-01'],
      twice('a', WEEK),
    );
    const told = viewOf(book, '2026-06-07').does.map((doe) => [
      doe.id,
      doe.phase,
      doe.total_mL,
      doe.missing.length,
    ]);
    expect(told).toEqual([
      ['a', 'twice a day', 28000, 0],
      ['b', 'with kids', null, 0],
      ['c', 'dry', null, 0],
    ]);
  });

  it('shows the last week with milk while the does rest', () => {
    const book = bookOf(['a 2026-03-01 weaned 2026-04-01 dry 2026-06-08'], twice('a', WEEK));
    const view = viewOf(book, '2026-12-01');
    expect([view.state, view.window]).toEqual(['resting', { from: '2026-06-01', to: '2026-06-07' }]);
    expect(view.does[0]).toMatchObject({ phase: 'twice a day', total_mL: 28000 });
  });

  it('is empty, not broken, without a doe or without milk', () => {
    expect(viewOf(bookOf([]), '2026-06-07')).toEqual({
      asOf: '2026-06-07', state: 'empty', wholeDay: false, expectedNow: false, window: null, does: [],
      uses_mL: { kept: 0, withheld: 0, fed: 0, lost: 0 }, days: [], recentDays: [],
    }); // prettier-ignore
    expect(viewOf(bookOf([A]), '2026-06-07').does[0]).toMatchObject({
      phase: 'none',
      missing: [],
      total_mL: null,
    });
  });

  it('tells a herd that is only silent from one that rests', () => {
    const spring = bookOf(['a 2026-03-01 weaned 2026-04-01 dry 2026-10-01'], twice('a', ['2026-05-01']));
    expect(viewOf(spring, '2026-06-07')).toMatchObject({ state: 'resting', expectedNow: true });
    expect(viewOf(spring, '2026-12-07')).toMatchObject({ state: 'resting', expectedNow: false });
  });

  it('survives a passage through JSON unchanged, so that a page can carry it', () => {
    const view = viewOf(bookOf([A], twice('a', WEEK)), '2026-06-07');
    expect(JSON.parse(JSON.stringify(view))).toEqual(view);
  });
});
