// The milk page's numbers: pail, calcium, dates, cooling, and what it says where the book is silent.
import { describe, expect, it } from 'vitest';
import type { FiguresFile } from '../../../shared/herd/figures.ts';
import type { Farm } from '../../../shared/herd/types.ts';
import { milkPage } from '../../../shared/milk/milkPage.ts';
import { holdOf } from '../../../shared/milk/pasteurizing.ts';
import { servedAges } from '../../../shared/milk/servedAges.ts';
import { mainMilkTable } from '../../../src/site/milkTables.ts';

const farm: Farm = {
  name: 'X',
  timeZone: 'UTC',
  units: 'metric',
  recordUnit: 'L',
  languages: ['en'],
  milkings: { am: '05:45', pm: '22:30' },
  jar: { size: 1, unit: 'L' },
  largestMilking: { amount: 10, unit: 'L' },
  screen_mm: 546.1,
};
const figuresWith = (values: Record<string, number>): FiguresFile =>
  ({
    asOf: '2026-05-21',
    figures: Object.fromEntries(Object.entries(values).map(([id, value]) => [id, { value }])),
  }) as unknown as FiguresFile;
const pageOf = (values: Record<string, number>) =>
  milkPage({ farm, figures: figuresWith(values), table: mainMilkTable(), tested: null });

describe('the milk page', () => {
  it('fills a pail of two US cups with twice what a cup holds', () => {
    const { contents } = pageOf({ 'herd.week.dailyMean': 0.473176473 });
    const calcium = contents.find(({ nutrient }) => nutrient === 'calcium');
    // 134 mg in 100 g, 244 g a cup.
    expect(calcium?.cup.amount).toBeCloseTo(326.96, 6);
    expect(calcium?.pail?.amount).toBeCloseTo(653.92, 6);
  });

  it('leaves the gap of the table a gap, in cup and pail', () => {
    const { contents } = pageOf({ 'herd.week.dailyMean': 10 });
    const lactose = contents.find(({ nutrient }) => nutrient === 'lactose');
    expect([lactose?.cup.amount, lactose?.pail?.amount]).toEqual([null, null]);
  });

  it('counts whole children alone', () => {
    const served = [{ from_y: 1, to_y: 3, need_mg: 700, children: 2.9999 }, { from_y: 4, to_y: 8, need_mg: 1000, children: 3 - 1e-12 }]; // prettier-ignore
    expect(servedAges(served).map(({ children }) => children)).toEqual([2, 3]);
  });

  it('has neither pail nor products for an empty book, and still its dates and its cup', () => {
    const page = pageOf({});
    expect(page).toMatchObject({ pail_L: null, calcium: null, made: { ok: false, why: 'no milk was kept' } });
    expect(page.contents.every(({ pail }) => pail === null)).toBe(true);
    expect(page.kept.find(({ kind }) => kind === 'raw milk')).toMatchObject({ by: '2026-05-24', what: 'pasteurize by', cold: 'fridge' }); // prettier-ignore
    expect(page.kept.find(({ kind }) => kind === 'ice cream')?.cold).toBe('freezer');
  });

  it('takes the richness for the cheese formula from the table where nothing was tested', () => {
    expect(pageOf({ 'herd.week.kept': 100 }).richness).toEqual({
      from: 'table',
      of: { fat_pct: 4.14, protein_pct: 3.56 },
    });
  });

  it('counts the cooling clock from the farm’s own times, past midnight too', () => {
    const [am, pm] = pageOf({}).cooling;
    expect(am?.deadlines.map(({ by_min }) => by_min)).toEqual([8 * 60 + 45, 9 * 60 + 45]);
    expect(pm?.deadlines.map(({ by_min }) => by_min)).toEqual([25 * 60 + 30, 26 * 60 + 30]);
  });

  it('tells holds from a minute up in minutes', () => {
    expect(holdOf({ at_C: 63, at_F: 145, hold_s: 1800 })).toEqual({ amount: 30, unit: 'minutes' });
    expect(holdOf({ at_C: 89, at_F: 191, hold_s: 1 })).toEqual({ amount: 1, unit: 'seconds' });
  });
});
