// What the milk page shows of milk tests: newest first, weighed, cells beside the limit, and gaps named.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book, MilkTest } from '../../../shared/herd/types.ts';
import { testedRichness, testsPage } from '../../../shared/milk/testsPage.ts';
import { bookOf, day, twice } from '../../support/bookOf.ts';

const milkTest = (doe: string, date: string, values: Partial<MilkTest> = {}): MilkTest => ({
  doe, day: day(date), fat_pct: 4, protein_pct: 3, lactose_pct: null, cells_perML: null, file: 'milk-tests.csv', line: 2, ...values,
}); // prettier-ignore
const pageOf = (book: Book, ...milkTests: MilkTest[]) => {
  const whole = { ...book, milkTests };
  return testsPage(whole, openLedger(whole, day('2026-05-21')));
};
// Clover gives 4 L a day, Bell 12 L.
const DATES = ['2026-05-19', '2026-05-20'];
const BOOK = bookOf(
  ['clover 2026-03-01', 'bell 2026-03-01'],
  [...twice('clover', DATES, '2 L'), ...twice('bell', DATES, '6 L')],
);

describe('testsPage()', () => {
  it('says that there are none, or none with milk, and which were left', () => {
    expect(pageOf(BOOK)).toEqual({ ok: false, why: 'no tests', left: [] });
    const alone = pageOf(BOOK, milkTest('clover', '2026-04-01'));
    expect(alone).toMatchObject({ ok: false, why: 'no test with milk' });
    expect(alone.left).toHaveLength(1);
  });

  it('puts the newest day first and weighs the herd by milk', () => {
    const page = pageOf(BOOK, milkTest('clover', DATES[0] ?? ''), milkTest('clover', DATES[1] ?? '', { fat_pct: 6 }), milkTest('bell', DATES[1] ?? '')); // prettier-ignore
    if (!page.ok) throw new Error(page.why);
    expect(page.days.map(({ date }) => date)).toEqual([DATES[1], DATES[0]]);
    // (4 × 6 + 12 × 4) ÷ 16, not the mean of 6 and 4.
    expect(testedRichness(page)?.fat_pct).toBeCloseTo(4.5, 12);
    expect(page.does.map(({ doe }) => doe).sort()).toEqual(['bell', 'clover']);
  });

  it('draws cells against the limit, whichever is larger', () => {
    const low = pageOf(BOOK, milkTest('clover', DATES[1] ?? '', { cells_perML: 750_000 }));
    const high = pageOf(BOOK, milkTest('clover', DATES[1] ?? '', { cells_perML: 3_000_000 }));
    if (!low.ok || !high.ok) throw new Error('no page');
    expect(low.cells[0]?.within).toBe(true);
    expect((low.cells[0]?.bar_pct ?? 0) / low.limit_pct).toBeCloseTo(0.5, 12);
    expect(high.cells[0]).toMatchObject({ within: false, bar_pct: 100 });
    expect(high.limit_pct).toBe(50);
  });
});
