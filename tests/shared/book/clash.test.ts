// Who saw what: marks that are read back, and clashes that stand until somebody has seen the later row.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hadSeen, openClashes, readMark, sayTheSame, type WrittenEntry } from '../../../shared/book/clash.ts';
import { markOf } from '../../../shared/book/mark.ts';
import { USES } from '../../../shared/herd/types.ts';
import { AMOUNT_UNITS } from '../../../shared/quantity/units.ts';

const mark = (minute: number, amount: string) => `${minute * 60_000 + 123} ${amount} kept`;
const [NINE, EIGHT, TEN] = [mark(1, '9/1 cup'), mark(2, '8/1 cup'), mark(3, '10/1 cup')];

describe('readMark', () => {
  it('gives back what markOf put in', () => {
    const part = fc.integer({ min: 1, max: 10_000 });
    const amount = fc.option(fc.record({ num: part, den: part, unit: fc.constantFrom(...AMOUNT_UNITS) }));
    const row = fc.record({
      amount,
      use: fc.option(fc.constantFrom(...USES)),
      entered_ms: fc.option(fc.integer()),
    });
    fc.assert(
      fc.property(row, (told) => {
        const use = told.use === null ? ({ use: 'withheld', unsaid: true } as const) : { use: told.use };
        const whole = {
          ...told,
          ...use,
          doe: 'bell',
          day: 0,
          milking: 'am',
          note: '',
          file: '',
          line: 1,
        } as const;
        expect(readMark(markOf(whole) ?? '')).toEqual(told);
      }),
    );
  });

  it.each([
    '',
    '7',
    '1 9/1 bucket kept',
    '1 9/1 cup sold',
    'soon 9/1 cup kept',
    '1 1/0 cup kept',
    `1 ${'9'.repeat(400)}/1 cup kept`,
  ])('gives nothing for %j', (text) => expect(readMark(text)).toBeNull());
});

describe('hadSeen', () => {
  it.each<[string, string | null, string | null, boolean]>([
    ['the row itself', NINE, NINE, true],
    ['nothing, where nothing stood', null, null, true],
    ['nothing, where a row stood', null, NINE, false],
    ['another row', EIGHT, NINE, false],
    ['the row before a spreadsheet cut its seconds off', '60123 19/2 cup kept', '60000 95/10 cup kept', true],
    ['the row before somebody changed its amount', '60123 19/2 cup kept', '60000 9/1 cup kept', false],
    ['nothing, where a row had been struck out', null, '60123 struck out kept', true],
    ['a row that is gone', NINE, null, false],
    ['no mark at all', 'something', NINE, false],
  ])('%s', (_, saw, stood, seen) => expect(hadSeen(saw, stood)).toBe(seen));
});

describe('sayTheSame', () => {
  const said = (text: string) => readMark(text) ?? { entered_ms: null, amount: null, use: 'kept' as const };

  it('compares exact volumes, and what became of them', () => {
    expect(sayTheSame(said('1 2/1 cup kept'), said('9 1/1 pt kept'))).toBe(true);
    expect(sayTheSame(said('1 2/1 cup kept'), said('1 2/1 cup fed'))).toBe(false);
    expect(sayTheSame(said('1 struck out kept'), said('1 struck out fed'))).toBe(true);
    expect(sayTheSame(said('1 struck out kept'), said('1 0/1 cup kept'))).toBe(false);
  });
});

describe('clashes', () => {
  const written = (own: string, saw: string | null, stood: string | null): WrittenEntry => ({ doe: 'bell', date: '2026-05-21', milking: 'am', mark: own, saw, stood }); // prettier-ignore
  const marksAfter = (entries: readonly WrittenEntry[], standing: string | null) => {
    const clashes = openClashes();
    for (const entry of entries) clashes.add(entry);
    return clashes
      .list({ mark: () => standing, unsaid: () => 'kept' })
      .map(({ amounts }) => amounts.map((one) => one.mark));
  };
  const TWO = [written(NINE, null, null), written(EIGHT, null, NINE)];

  it('holds both amounts, the standing one last', () => {
    expect(marksAfter(TWO, EIGHT)).toEqual([[NINE, EIGHT]]);
    expect(marksAfter(TWO, NINE)).toEqual([[EIGHT, NINE]]);
  });

  it('holds a third one that saw neither', () => {
    expect(marksAfter([...TWO, written(TEN, NINE, EIGHT)], TEN)).toEqual([[NINE, EIGHT, TEN]]);
  });

  it('is over once somebody has seen the later one', () => {
    expect(marksAfter([...TWO, written(TEN, EIGHT, EIGHT)], TEN)).toEqual([]);
  });

  it('is over once a row written by hand counts, or none', () => {
    expect(marksAfter(TWO, mark(9, '7/1 cup'))).toEqual([]);
    expect(marksAfter(TWO, null)).toEqual([]);
  });

  it('is none where both say the same', () => {
    expect(marksAfter([written(NINE, null, null), written(mark(2, '18/2 cup'), null, NINE)], NINE)).toEqual(
      [],
    );
  });
});
