// A doe as she stands: her year's turns and her treatments, from rows as they are written.
import { describe, expect, it } from 'vitest';
import { doeId } from '../../../shared/book/doeId.ts';
import { doeNow, yearTurns } from '../../../shared/book/doeNow.ts';
import type { HerdBook, KiddingRow, TreatmentRow } from '../../../shared/book/herdBook.ts';

const kidding = (text: string, line = 2): KiddingRow => {
  const [doe = '', date = '', kids = '', apart = '', weaned = '', dry = ''] = text.split(',');
  return { doe, date, kids, apart, weaned, dry, line };
};
const treatment = (text: string, line = 2): TreatmentRow => {
  const [doe = '', from = '', until = '', what = ''] = text.split(',');
  return { doe, from, until, what, note: '', line };
};
const herd = (kiddings: string[], treatments: string[] = [], today = '2026-05-21'): HerdBook => ({
  today,
  milkings: { am: '06:30', pm: '17:30' },
  does: [],
  kiddings: kiddings.map((text, index) => kidding(text, index + 2)),
  treatments: treatments.map((text, index) => treatment(text, index + 2)),
  spoken: [],
  marks: { 'does.csv': null, 'kiddings.csv': null, 'treatments.csv': null },
  faults: [],
});

describe('how a doe stands', () => {
  it('follows her latest kidding, whatever the order of the rows and the case of her name', () => {
    const rows = ['Ash,2026-02-23,2,2026-03-16,2026-05-04,', 'bay,2026-05-20,1,,,', 'ash,2025-02-26,2,2025-03-19,2025-05-07,2025-10-29'];
    const now = doeNow(herd(rows), 'ash');
    expect(now).toMatchObject({ phase: 'twice a day', since: '2026-05-04', expected: ['am', 'pm'], kidding: { line: 2 }, older: [{ line: 4 }], treated: null });
    expect(doeNow(herd(rows, [], '2025-12-01'), 'ash')).toMatchObject({ phase: 'dry', since: '2025-10-29', expected: [] });
    expect(doeNow(herd([]), 'ash')).toMatchObject({ phase: 'none', since: null, kidding: null });
  }); // prettier-ignore

  it('has her milk kept apart until the last of the treatments that follow one another', () => {
    const rows = ['ash,2026-05-20,2026-05-23,a', 'ash,2026-05-22,2026-05-27,b', 'bay,2026-05-01,,c', 'ash,2026-04-01,2026-04-05,d'];
    const now = doeNow(herd([], rows), 'ash');
    expect(now.treated).toEqual({ free: '2026-05-27' });
    expect(now.treatments.map(({ what }) => what)).toEqual(['b', 'a']);
    expect(now.past.map(({ what }) => what)).toEqual(['d']);
    expect(doeNow(herd([], rows), 'bay').treated).toEqual({ free: null });
    // The end is exclusive: on that day her milk may be kept.
    expect(doeNow(herd([], rows, '2026-05-27'), 'ash')).toMatchObject({ treated: null, treatments: [], past: [{}, {}, {}] });
    expect(doeNow(herd([], rows, '2026-05-19'), 'ash')).toMatchObject({ treated: null, treatments: [{}, {}] });
  }); // prettier-ignore
});

describe("the turns of a doe's year", () => {
  // The farm folder's rule: a.m. from the nights apart, both from weaning, none once dry.
  it('say which milkings are expected from each on', () => {
    const turns = yearTurns(kidding('ash,2026-02-23,2,2026-03-16,2026-06-04,'), '2026-05-21');
    expect(turns.map(({ name, state, milkings }) => [name, state, milkings.join()])).toEqual([
      ['date', 'reached', ''], ['apart', 'reached', 'am'], ['weaned', 'planned', 'am,pm'], ['dry', 'open', ''],
    ]); // prettier-ignore
  });

  it('leave nights apart and weaning out where kids grow up on bottles', () => {
    const turns = yearTurns(kidding('ash,2026-02-23,2,,,'), '2026-05-21');
    expect(turns.map(({ name, milkings }) => [name, milkings.join()])).toEqual([['date', 'am,pm'], ['dry', '']]); // prettier-ignore
  });
});

describe('the short name of a new doe', () => {
  it('keeps letters of any script, has no spaces, and is not taken', () => {
    expect(doeId('  Mrs. O’Hara the 2nd! ', [])).toBe('mrs-o-hara-the-2nd');
    expect(doeId('Ñandú', [])).toBe('ñandú');
    expect(doeId('山羊', ['山羊', '山羊-2'])).toBe('山羊-3');
    expect(doeId('¡!', [])).toBe('');
    expect(doeId('x'.repeat(200), ['x'.repeat(56)])).toHaveLength(58);
  });
});
