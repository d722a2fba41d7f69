// Day numbers against the platform's own calendar.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { civilFromDay, dayFromCivil, dayNumber, isoDate, weekday } from '../../../shared/calendar/day.ts';

const MS_PER_DAY = 86_400_000;
const FIRST = Date.UTC(1900, 0, 1) / MS_PER_DAY;
const LAST = Date.UTC(2100, 11, 31) / MS_PER_DAY;

describe('day numbers', () => {
  it('agree with Date in UTC on every day from 1900 to 2100', () => {
    const off: number[] = [];
    for (let day = FIRST; day <= LAST; day += 1) {
      const date = new Date(day * MS_PER_DAY);
      const iso = date.toISOString().slice(0, 10);
      const [year, month, dayOfMonth] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
      const civil = civilFromDay(day);
      const same =
        dayNumber(iso) === day &&
        isoDate(day) === iso &&
        dayFromCivil(year, month, dayOfMonth) === day &&
        civil.year === year &&
        civil.month === month &&
        civil.dayOfMonth === dayOfMonth &&
        weekday(day) === date.getUTCDay();
      if (!same) off.push(day);
    }
    expect(off).toEqual([]);
    expect(LAST - FIRST + 1).toBe(73_414);
  });

  it('agree with Date far outside those years', () => {
    const days = fc.integer({
      min: Date.UTC(1600, 0, 1) / MS_PER_DAY,
      max: Date.UTC(9999, 11, 31) / MS_PER_DAY,
    });
    const same = (day: number) => {
      expect(isoDate(day)).toBe(new Date(day * MS_PER_DAY).toISOString().slice(0, 10));
      expect(dayNumber(isoDate(day))).toBe(day);
    };
    fc.assert(fc.property(days, same), { numRuns: 1000 });
  });
});

describe('dayNumber', () => {
  it.each(['2024-02-29', '2000-02-29', '2400-02-29', '2026-01-31', '2026-12-31', '2026-04-30'])(
    'knows %s',
    (iso) => {
      expect(dayNumber(iso)).toBe(Date.parse(iso) / MS_PER_DAY);
    },
  );

  it.each([
    '2026-02-29', '1900-02-29', '2100-02-29', '2026-02-30', '2026-04-31', '2026-01-32', '2026-13-01', '2026-00-10', '2026-01-00',
    '2026-1-5', '26-01-05', '2026/01/05', '05.01.2026', '2026-01-05T00:00', ' 2026-01-05', '2026-01-05 ', '', 'today', '２０２６-01-05',
  ])('gives null for "%s"', (text) => {
    expect(dayNumber(text)).toBeNull();
  }); // prettier-ignore
});
