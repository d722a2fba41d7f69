// What was asked: weeks from Monday, sums, and that no hidden count can be told from what is shown.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedWeeks, mondayOf } from '../../../../shared/board/asked/askedWeeks.ts';
import { hideSmall, LEAST_SHOWN, type ShownCounts } from '../../../../shared/board/asked/hidden.ts';
import { addVisit, readVisits, type Visits } from '../../../../shared/board/asked/visits.ts';

/** Every list of so many counts, each from 0 to the largest. */
function everyList(length: number, largest: number): number[][] {
  if (length === 0) return [[]];
  return everyList(length - 1, largest).flatMap((list) =>
    Array.from({ length: largest + 1 }, (_, count) => [...list, count]),
  );
}

describe('small counts', () => {
  it('are hidden, and a second one where the total would give the first away', () => {
    expect(hideSmall([12, 3, 9])).toEqual({
      counts: [{ as: 'count', count: 12 }, { as: 'few' }, { as: 'kept back' }],
      total: 24,
    });
    expect(hideSmall([12, 7, 9])).toEqual({
      counts: [12, 7, 9].map((count) => ({ as: 'count', count })),
      total: 28,
    });
  });

  it('have no total where nothing else hides them', () => {
    expect(hideSmall([3])).toEqual({ counts: [{ as: 'few' }], total: null });
    expect(hideSmall([0, 0, 6, 8]).total).toBeNull();
  });

  // The strictest reader: knows the rules, and tries every list of counts that would be shown just so.
  it.each([
    [1, 20],
    [2, 20],
    [3, 20],
    [4, 13],
  ])('cannot be told from what is shown: every list of %i counts up to %i', (length, largest) => {
    const alike = new Map<string, Set<number>[]>();
    for (const list of everyList(length, largest)) {
      const shown = JSON.stringify(hideSmall(list));
      const values = alike.get(shown) ?? list.map(() => new Set<number>());
      list.forEach((count, place) => values[place]?.add(count));
      alike.set(shown, values);
    }
    const told = [...alike].filter(([shown, values]) =>
      (JSON.parse(shown) as ShownCounts).counts.some(
        ({ as }, place) => as === 'few' && values[place]!.size < 2,
      ),
    );
    expect(told).toEqual([]);
  });

  it('are hidden, all other counts are shown as they are but one, and a total is the true one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 60 }), { maxLength: 40 }), (all) => {
        const { counts, total } = hideSmall(all);
        all.forEach((count, place) => {
          expect(counts[place]?.as === 'few').toBe(count < LEAST_SHOWN);
          const one = counts[place]!;
          if (one.as === 'count') expect(one.count).toBe(count);
        });
        expect(counts.filter(({ as }) => as === 'kept back').length).toBeLessThanOrEqual(1);
        if (total !== null) expect(total).toBe(all.reduce((sum, one) => sum + one, 0));
      }),
    );
  });
});

describe('weeks', () => {
  // ISO 8601: weeks begin on Monday. 2026-01-01 was a Thursday, 2024-02-29 a Thursday (any calendar).
  it('begin on Monday', () => {
    expect(mondayOf('2026-01-01')).toBe('2025-12-29');
    expect(mondayOf('2024-02-29')).toBe('2024-02-26');
    expect(mondayOf('2026-05-18')).toBe('2026-05-18');
    expect(mondayOf('2026-05-24')).toBe('2026-05-18');
  });

  it('sum the days by page and language, newest week first', () => {
    let visits: Visits = {};
    const add = (date: string, lang: string, name: string, times: number) => {
      for (let at = 0; at < times; at += 1) visits = addVisit(visits, date, lang, name);
    };
    add('2026-05-18', 'en', 'pail', 6);
    add('2026-05-24', 'en', 'pail', 5);
    add('2026-05-24', 'en', 'why-milk', 2);
    add('2026-05-24', 'en', 'males', 2);
    add('2026-05-17', 'es', 'pail', 8);
    const [week, before] = askedWeeks(visits, ['males', 'pail', 'why-milk'], ['en', 'es'], '2026-05-24');
    expect(week).toMatchObject({ from: '2026-05-18', to: '2026-05-24', names: ['pail'], others: 2 });
    // One count beside small ones has nothing to hide behind, so there is no total.
    expect(week!.columns[0]).toEqual({ lang: 'en', counts: [{ as: 'count', count: 11 }], total: null });
    expect(before).toMatchObject({ from: '2026-05-11', to: '2026-05-17' });
  });
});

describe('visits that are kept', () => {
  it('go back thirteen months, and no more', () => {
    const visits = { '2025-04-30': { en: { pail: 1 } }, '2025-05-01': { en: { pail: 2 } } };
    expect(readVisits(JSON.stringify(visits), '2026-05-30')).toEqual({ '2025-05-01': { en: { pail: 2 } } });
  });

  it('are read from anything without an error', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.constant(null)), (text) => {
        expect(typeof readVisits(text, '2026-05-21')).toBe('object');
      }),
    );
    const odd = { '2026-05-20': { en: { pail: 3, 'Not ours': 4, males: -1 }, '?': { pail: 2 } }, today: 4 };
    expect(readVisits(JSON.stringify(odd), '2026-05-21')).toEqual({ '2026-05-20': { en: { pail: 3 } } });
  });
});
