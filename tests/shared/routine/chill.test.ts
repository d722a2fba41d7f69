// The cooling clock against the published rules, in the unit of the thermometer.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chillMarks, clockOf, degreesOf, judgeMark, minutesOf } from '../../../shared/routine/chill.ts';
import type { TickedReading } from '../../../shared/routine/ticks.ts';

const marksOf = (start: string, end: string) => {
  const read = chillMarks(start, end);
  if (!read.ok) throw new Error(read.why);
  return read.marks;
};
const f = (at: string, degrees: number): TickedReading => ({ at, degrees, unit: 'F' });
const c = (at: string, degrees: number): TickedReading => ({ at, degrees, unit: 'C' });

describe('chillMarks()', () => {
  // Grade A Pasteurized Milk Ordinance, table 1: 50 °F (10 °C) within four hours of the start of milking, 45 °F (7 °C)
  // within two hours after its end. 330 CMR 27.05: 40 °F (4.45 °C) within two hours after milking.
  it('are the ordinance’s two times and the stricter one', () => {
    expect(marksOf('06:30', '07:40').map(({ by, by_min, atMost_F, atMost_C }) => [by, clockOf(by_min), atMost_F, atMost_C])).toEqual([
      ['ordinance', '09:40', 45, 7],
      ['good practice', '09:40', 40, 4.45],
      ['ordinance', '10:30', 50, 10],
    ]); // prettier-ignore
    // After a long milking the four hours are over first.
    expect(marksOf('06:00', '09:00').map(({ by_min, atMost_F }) => [clockOf(by_min), atMost_F])).toEqual([
      ['10:00', 50],
      ['11:00', 45],
      ['11:00', 40],
    ]);
  });

  it('go on past midnight', () => {
    expect(marksOf('23:10', '00:20').map(({ by_min }) => [by_min >= 1440, clockOf(by_min)])).toEqual([
      [true, '02:20'],
      [true, '02:20'],
      [true, '03:10'],
    ]);
  });

  it('are none for a milking that no herd needs', () => {
    expect(chillMarks('06:00', '13:00')).toEqual({ ok: false, why: 'a milking lasts at most six hours' });
  });
});

describe('judgeMark()', () => {
  const [second, best, first] = marksOf('06:30', '07:40') as [never, never, never];

  it('holds a reading against the number in its own unit: 45 °F is in time, and so is 7 °C', () => {
    expect(judgeMark(second, '06:30', [f('09:30', 45)])).toBe('met');
    expect(judgeMark(second, '06:30', [c('09:30', 7)])).toBe('met');
    expect(judgeMark(second, '06:30', [f('09:40', 45.1)])).toBe('missed');
    expect(judgeMark(second, '06:30', [c('09:41', 7.2)])).toBe('missed');
    expect(judgeMark(best, '06:30', [f('09:30', 40)])).toBe('met');
    expect(judgeMark(best, '06:30', [f('09:45', 41)])).toBe('missed');
  });

  it('does not know without a reading that could tell', () => {
    expect(judgeMark(first, '06:30', [])).toBe('not known');
    // Too warm an hour before the time says nothing of the time itself; cold long after it says nothing either.
    expect(judgeMark(first, '06:30', [f('09:30', 60)])).toBe('not known');
    expect(judgeMark(first, '06:30', [f('12:00', 38)])).toBe('not known');
  });

  it('takes a time before the start for the next morning', () => {
    const [late] = marksOf('22:30', '23:30') as [never];
    expect(judgeMark(late, '22:30', [f('01:00', 44)])).toBe('met');
  });

  it('is never worse for colder milk', () => {
    const rank = { met: 2, 'not known': 1, missed: 0 } as const;
    fc.assert(
      fc.property(fc.integer({ min: 391, max: 800 }), fc.integer({ min: 30, max: 100 }), fc.integer({ min: 0, max: 30 }), (at, degrees, colder) => {
        for (const mark of [first, second, best])
          expect(rank[judgeMark(mark, '06:30', [f(clockOf(at), degrees - colder)])]).toBeGreaterThanOrEqual(
            Math.min(rank[judgeMark(mark, '06:30', [f(clockOf(at), degrees)])], 1),
          );
      }),
    ); // prettier-ignore
  });
});

describe('clock times and degrees', () => {
  it('are read and written', () => {
    expect([minutesOf('00:00'), minutesOf('17:30'), clockOf(1050), clockOf(1500), clockOf(-10)]).toEqual([0, 1050, '17:30', '01:00', '23:50']); // prettier-ignore
    expect(degreesOf(' 44.5 ', 'F')).toBe(44.5);
    expect(degreesOf('6,5', 'C')).toBe(6.5);
    expect(['', 'cold', '445', '-40', '1e2'].map((text) => degreesOf(text, 'F'))).toEqual([null, null, null, null, null]); // prettier-ignore
    // Milk comes from the doe at about 39 °C (101 to 103 °F: from memory), and freezes a little below 0 °C.
    expect([degreesOf('102', 'F'), degreesOf('39', 'C'), degreesOf('102', 'C')]).toEqual([102, 39, null]);
  });
});
