// The milk page's pictures: bars across milks, and the strip of the cooling clock.
import { describe, expect, it } from 'vitest';
import { coolingStrip } from '../../../shared/drawing/coolingStrip.ts';
import { milkBars } from '../../../shared/drawing/milkBars.ts';
import { sideBySide } from '../../../shared/milk/sideBySide.ts';
import { mainMilkTable } from '../../../src/site/milkTables.ts';

describe('milkBars()', () => {
  it('makes the largest bar full and the others in proportion', () => {
    const [protein] = milkBars(sideBySide(mainMilkTable(), ['goat', 'sheep']), ['protein']);
    expect(protein?.bars.map(({ length_pct }) => length_pct)).toEqual([expect.closeTo((3.56 / 5.98) * 100, 9), 100]); // prettier-ignore
  });

  it('draws no bar where the table has no value', () => {
    const [lactose] = milkBars(sideBySide(mainMilkTable(), ['goat', 'cow']), ['lactose']);
    expect(lactose?.bars[0]).toEqual({ milk: 'goat', amount: null, length_pct: 0 });
  });
});

describe('coolingStrip()', () => {
  it('stands every mark on its minute', () => {
    const deadlines = [{ from: 'end of milking', by_min: 570, atMost_C: 7, atMost_F: 45 }, { from: 'start of milking', by_min: 630, atMost_C: 10, atMost_F: 50 }] as const; // prettier-ignore
    const strip = coolingStrip({ milking: 'am', starts_min: 390, ends_min: 450, deadlines }, 500);
    expect(strip.hours.map(({ at_min }) => at_min)).toEqual([360, 420, 480, 540, 600, 660]);
    expect(strip.milking).toEqual({ x: 50, width: 100 });
    expect(strip.marks.map(({ x }) => x)).toEqual([350, 450]);
  });
});
