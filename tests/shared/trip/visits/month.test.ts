// Which months the calendar shows: those that a date can have, whatever an address asks for.
import { describe, expect, it } from 'vitest';
import { monthAfter, monthIn, monthWeeks } from '../../../../shared/trip/visits/monthWeeks.ts';
import { dayName, monthName, weekdayShort } from '../../../../src/components/visits/calendarText.ts';

it.each([
  ['2026-05', '2026-05'],
  ['9999-12', '9999-12'],
  ['0000-01', null],
  ['2026-13', null],
  ['10000-01', null],
  ['2026-5', null],
  ['', null],
])('monthIn reads %s as %s', (text, month) => expect(monthIn(text)).toBe(month));

describe('the first and the last month', () => {
  it('have nothing before and after them', () => {
    expect(monthAfter('9999-12', 1)).toBe('9999-12');
    expect(monthAfter('9999-11', 1)).toBe('9999-12');
    expect(monthAfter('0001-01', -1)).toBe('0001-01');
    expect(monthAfter('0001-02', -1)).toBe('0001-01');
  });

  it.each(['0001-01', '9999-12'])('%s can be shown whole, with the months beside it', (month) => {
    for (const by of [-1, 0, 1]) expect(monthName(monthAfter(month, by), 'en')).toMatch(/^[A-Z][a-z]+ \d+/);
    const weeks = monthWeeks(month);
    expect(weeks[0]?.map(({ date }) => weekdayShort(date, 'en'))[0]).toBe('Sun');
    const own = weeks.flat().filter(({ isOther }) => !isOther);
    expect(own).toHaveLength(31);
    for (const { date } of own) expect(dayName(date, 'es')).toMatch(/ de /);
  });
});
