// Pasteurizing, cooling and keeping against the law's own table and worked dates.
import { execFileSync, spawnSync } from 'node:child_process';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate } from '../../shared/calendar/day.ts';
import { coolingDeadlines } from '../../shared/milk/cooling.ts';
import { FREEZER_C, FRIDGE_C, rawCheeseFrom, useBy } from '../../shared/milk/keeping.ts';
import { HEAT_ROWS, isPasteurized } from '../../shared/milk/pasteurizing.ts';

// 21 CFR 1240.61 and 131.3 as printed (texts seen): degrees Celsius, degrees Fahrenheit, seconds.
const PRINTED = [
  [63, 145, 1800],
  [72, 161, 15],
  [89, 191, 1],
  [90, 194, 0.5],
  [94, 201, 0.1],
  [96, 204, 0.05],
  [100, 212, 0.01],
] as const;
const MILK = HEAT_ROWS.milk.slice(0, PRINTED.length);

describe('the pasteurizing table, 21 CFR', () => {
  it('is the printed pairs, row by row', () => {
    expect(MILK.map((row) => [row.at_C, row.at_F, row.hold_s])).toEqual(PRINTED);
  });

  it('is not made by converting: five of the seven pairs would come out otherwise', () => {
    const converted = PRINTED.filter(([c, f]) => Math.round((c * 9) / 5 + 32) !== f);
    expect(converted.map(([c]) => c)).toEqual([72, 89, 96]);
    const exact = PRINTED.filter(([c, f]) => (c * 9) / 5 + 32 === f);
    expect(exact.map(([c]) => c)).toEqual([90, 100]);
  });

  it('takes a batch at 191 °F that is 88.3 °C, by the scale its thermometer has', () => {
    expect(isPasteurized('milk', { degrees: 191, scale: 'F' }, 1).ok).toBe(true);
    expect(isPasteurized('milk', { degrees: 88.3, scale: 'C' }, 1).ok).toBe(false);
  });

  it('asks 3 °C and 5 °F more of rich milk, and has the printed rows for frozen dessert mix', () => {
    // 21 CFR 131.3; Texas 25 TAC 217; Michigan MCL 288.697 (texts seen).
    expect(HEAT_ROWS['rich milk'].slice(0, 2).map((row) => [row.at_C, row.at_F])).toEqual([[66, 150], [75, 166]]); // prettier-ignore
    expect(HEAT_ROWS['frozen dessert mix'].slice(0, 3)).toEqual([
      { at_C: 69, at_F: 155, hold_s: 1800 },
      { at_C: 80, at_F: 175, hold_s: 25 },
      { at_C: 83, at_F: 180, hold_s: 15 },
    ]);
    for (const rows of Object.values(HEAT_ROWS)) expect(rows.at(-1)).toEqual({ at_C: 138, at_F: 280, hold_s: 2 }); // prettier-ignore
  });
});

const hasUnits = spawnSync('units', ['--version']).status === 0;

describe.skipIf(!hasUnits)(
  'temperatures, GNU units (skipped where the command `units` is not installed)',
  () => {
    const fahrenheit = (celsius: number) => Number(execFileSync('units', ['--terse', `tempC(${celsius})`, 'tempF'], { encoding: 'utf8' })); // prettier-ignore

    it.each(PRINTED)(
      'lay the printed pair %s °C and %s °F within a degree and a half',
      (celsius, printed) => {
        expect(Math.abs(fahrenheit(celsius) - printed)).toBeLessThan(1.5);
      },
    );

    it('agree on the colds that keep milk', () => {
      expect(fahrenheit(FRIDGE_C)).toBeCloseTo(40, 4);
      expect(fahrenheit(FREEZER_C)).toBeCloseTo(0, 4);
    });

    it('lay the cooling pairs 10 °C and 50 °F, 7 °C and 45 °F together', () => {
      const found = coolingDeadlines(360, 450);
      for (const { atMost_C, atMost_F } of found.ok ? found.deadlines : [])
        expect(Math.abs(fahrenheit(atMost_C) - atMost_F)).toBeLessThan(0.5);
    });
  },
);

describe('the cooling clock, Grade A Pasteurized Milk Ordinance, table 1', () => {
  it('asks for 7 °C by 9:30 and 10 °C by 10:00 of a milking from 6:00 to 7:30', () => {
    // Worked by hand from the rule (text seen in two states' codes): the second deadline comes first.
    const found = coolingDeadlines(6 * 60, 7 * 60 + 30);
    expect(found.ok && found.deadlines.map((one) => [one.by_min / 60, one.atMost_C, one.atMost_F])).toEqual([[9.5, 7, 45], [10, 10, 50]]); // prettier-ignore
  });
});

describe('dates of keeping', () => {
  const day = (date: string) => dayNumber(date) ?? NaN;

  it('let raw-milk cheese of 1 May 2026 go on 30 June', () => {
    // 7 CFR 58.439: sixty days, by the calendar.
    const from = rawCheeseFrom(day('2026-05-01'), 10);
    expect(from.ok && isoDate(from.day)).toBe('2026-06-30');
  });

  it('are those of sqlite, over leap days and ends of years', () => {
    const db = new DatabaseSync(':memory:');
    const later = db.prepare("select date(?, '+' || ? || ' days') as date");
    for (const made of ['2024-02-27', '2023-12-30', '2026-05-28', '2099-12-31', '2100-02-25']) {
      const milk = useBy('pasteurized milk', day(made), 4);
      const cheese = useBy('whole hard cheese', day(made), 4);
      expect(milk.ok && isoDate(milk.day)).toBe(later.get(made, 7)?.['date']);
      expect(cheese.ok && isoDate(cheese.day)).toBe(later.get(made, 180)?.['date']);
      const raw = rawCheeseFrom(day(made), 12);
      expect(raw.ok && isoDate(raw.day)).toBe(later.get(made, 60)?.['date']);
    }
  });
});
