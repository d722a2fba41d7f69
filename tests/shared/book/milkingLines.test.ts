// The lines of a milking: who has one, what stands in it, and who is under treatment, day by day.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doesToAdd, milkingLines, treatmentOn, type LinesBook } from '../../../shared/book/milkingLines.ts';
import type { BookDoe, BookRow, Treatment } from '../../../shared/book/types.ts';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';

const DAY = dayNumber('2026-05-21') ?? NaN;
const doe = (id: string, phase: 'twice a day' | 'nights apart' | 'dry'): BookDoe => ({
  id, name: id, breed: '', spans: [{ phase, from: 0, to: null }],
}); // prettier-ignore
const row = (of: string, back: number, milking: 'am' | 'pm', cups = 9): BookRow => ({
  doe: of, date: isoDate(DAY - back), milking, amount: { num: cups, den: 1, unit: 'cup' }, use: 'kept', note: '', mark: `${of} ${back} ${milking}`, corrects: 0,
}); // prettier-ignore
const does = [doe('juniper', 'twice a day'), doe('wren', 'nights apart'), doe('hester', 'dry')];
const book = (rows: readonly BookRow[], more: Partial<LinesBook> = {}): LinesBook => ({
  does, rows, treatments: [], clashes: [], ...more,
}); // prettier-ignore
const EVENING = { day: DAY, milking: 'pm' } as const;
const ids = (of: LinesBook, added: string[] = []) =>
  milkingLines(of, EVENING, added).map((line) => line.doe.id);

describe('milkingLines', () => {
  it('has a line for each doe that is expected, in the order of the list', () => {
    expect(ids(book([]))).toEqual(['juniper']);
    expect(milkingLines(book([]), { day: DAY, milking: 'am' }).map((line) => line.doe.id)).toEqual([
      'juniper',
      'wren',
    ]);
  });

  it('has one for a doe that is entered though nobody expected her, and for one that was asked for', () => {
    expect(ids(book([row('hester', 0, 'pm')]))).toEqual(['juniper', 'hester']);
    expect(ids(book([]), ['wren'])).toEqual(['juniper', 'wren']);
    const lines = milkingLines(book([]), EVENING, ['wren']);
    expect(lines.map(({ expected }) => expected)).toEqual([true, false]);
    expect(doesToAdd(book([]), lines).map(({ id }) => id)).toEqual(['hester']);
  });

  it('keeps its order whatever is put down', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('juniper', 'wren', 'hester'), { maxLength: 6 }), (entered) => {
        const order = ids(book([...new Set(entered)].map((id) => row(id, 0, 'pm'))));
        expect(order).toEqual(does.map(({ id }) => id).filter((id) => order.includes(id)));
      }),
    );
  });

  it('shows her last milking before this one, and what stands for this one', () => {
    const rows = [
      row('juniper', 2, 'pm', 7),
      row('juniper', 0, 'am', 11),
      row('juniper', 1, 'pm', 8),
      row('juniper', 0, 'pm', 10),
    ];
    const [line] = milkingLines(book(rows), EVENING);
    expect(line?.row?.amount.num).toBe(10);
    expect(line?.last?.amount.num).toBe(11);
    expect(line?.usual?.milkings).toBe(2);
  });

  it('shows a clash at its own milking alone', () => {
    const clash = { doe: 'wren', date: isoDate(DAY), milking: 'pm', amounts: [] } as const;
    const lines = milkingLines(book([], { clashes: [clash] }), EVENING);
    expect(lines.map((line) => [line.doe.id, line.clash !== null])).toEqual([['juniper', false], ['wren', true]]); // prettier-ignore
    expect(milkingLines(book([], { clashes: [clash] }), { day: DAY, milking: 'am' }).every(({ clash: c }) => c === null)).toBe(true); // prettier-ignore
  });
});

describe('the use that a line begins with', () => {
  const begins = (of: LinesBook, at: { day: number; milking: 'am' | 'pm' }) =>
    milkingLines(of, at).map((line) => line.startingUse);
  const kidded = (back: number): BookDoe => ({
    id: 'juniper', name: '', breed: '', spans: [{ phase: 'with kids', from: DAY - back, to: DAY - back }, { phase: 'twice a day', from: DAY - back + 1, to: null }],
  }); // prettier-ignore

  // Four days: common practice, no source. That colostrum is not milk for people: Grade A PMO (from memory).
  it('is fed in the first four days after a kidding, and kept from the fifth', () => {
    const uses = [1, 2, 3, 4, 5].map((back) => begins(book([], { does: [kidded(back)] }), EVENING)[0]);
    expect(uses).toEqual(['fed', 'fed', 'fed', 'fed', 'kept']);
  });

  it('is fed where her last milk of the same time of day was', () => {
    const rows: BookRow[] = [{ ...row('juniper', 1, 'pm'), use: 'fed' }, row('juniper', 0, 'am')];
    expect(begins(book(rows), EVENING)[0]).toBe('fed');
    expect(begins(book([...rows, row('juniper', 0, 'pm')]), { day: DAY + 1, milking: 'pm' })[0]).toBe('kept');
    expect(begins(book(rows), { day: DAY, milking: 'am' })[0]).toBe('kept');
  });

  it('is withheld under treatment, first milk or not', () => {
    const treatments: Treatment[] = [{ doe: 'juniper', from: DAY, until: null, what: '' }];
    expect(begins(book([], { does: [kidded(1)], treatments }), EVENING)).toEqual(['withheld']);
  });
});

describe('treatmentOn', () => {
  // Source: the farm folder's contract: `until` is the first day whose milk may be kept again; the longest wins.
  it('withholds from the first day up to, and without, the day that milk may be kept again', () => {
    const one: Treatment = { doe: 'wren', from: 10, until: 13, what: '' };
    expect([9, 10, 12, 13].map((day) => treatmentOn([one], 'wren', day) !== null)).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect(treatmentOn([one], 'juniper', 11)).toBeNull();
    expect(treatmentOn([{ ...one, until: null }], 'wren', 9_999)?.until).toBeNull();
  });

  it('is, day by day, the longest of all that hold', () => {
    const treatment = fc.record({
      doe: fc.constant('wren'),
      from: fc.integer({ min: 0, max: 20 }),
      until: fc.option(fc.integer({ min: 1, max: 30 })),
      what: fc.constant(''),
    });
    fc.assert(
      fc.property(fc.array(treatment, { maxLength: 5 }), fc.integer({ min: 0, max: 32 }), (all, day) => {
        // The slow way: every treatment written out as the days that it withholds, and the last day of any that hold.
        const spans = all.map(({ from, until }) => {
          const days: number[] = [];
          for (let one = from; one < (until ?? 1000); one += 1) days.push(one);
          return days;
        });
        const holding = spans.filter((days) => days.includes(day));
        const last = Math.max(-1, ...holding.map((days) => days.at(-1) ?? -1));
        const found = treatmentOn(all, 'wren', day);
        expect(found === null ? -1 : (found.until ?? 1000) - 1).toBe(last);
      }),
    );
  });
});
