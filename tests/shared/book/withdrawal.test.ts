// The first day whose milk may be kept, against a walk over every milking after the dose.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DOSE_LATE_min, MOST_HOURS, withdrawal } from '../../../shared/book/withdrawal.ts';

const CLOCKS = { am: '06:30', pm: '17:30' };
const free = (milking: 'am' | 'pm', hours: number, clocks = CLOCKS) => withdrawal({ day: 10, milking, hours }, clocks)?.freeDay; // prettier-ignore

describe('the first day whose milk may be kept', () => {
  // Withholding counts from the last dose (FDA, AMDUCA 1994; from memory). The two hours are our own rule.
  it('is never one on which a milking comes too early, were the dose given late in its milking', () => {
    // Four days to the hour from a morning: that morning's milking may begin before the hours are over.
    expect(free('am', 96)).toBe(15);
    expect(free('am', 94)).toBe(14);
    // From 5:30 p.m., 36 hours end at 5:30 a.m. of the second day; with the two hours after the milking has begun.
    expect(free('pm', 36)).toBe(13);
    expect(free('pm', 35)).toBe(12);
    expect([free('am', 0), free('pm', 0)]).toEqual([11, 11]);
  });

  it('is none where there are no hours that make sense', () => {
    for (const hours of [-1, NaN, Infinity, MOST_HOURS + 1]) expect(free('am', hours)).toBeUndefined();
    expect(free('am', MOST_HOURS)).toBe(71);
  });

  it('is the first day all of whose milkings lie behind the hours, whenever in its milking the dose was given', () => {
    const minutes = fc.integer({ min: 0, max: 1439 });
    const clock = (of_min: number) => `${String(Math.floor(of_min / 60)).padStart(2, '0')}:${String(of_min % 60).padStart(2, '0')}`; // prettier-ignore
    fc.assert(
      fc.property(
        fc.tuple(minutes, minutes).filter(([a, b]) => a !== b),
        fc.constantFrom<'am' | 'pm'>('am', 'pm'),
        fc.double({ min: 0, max: MOST_HOURS, noNaN: true }),
        fc.integer({ min: 0, max: DOSE_LATE_min }),
        (clocks, milking, hours, late_min) => {
          const [am, pm] = [Math.min(...clocks), Math.max(...clocks)];
          const got = withdrawal({ day: 100, milking, hours }, { am: clock(am), pm: clock(pm) });
          const end_min = 100 * 1440 + (milking === 'am' ? am : pm) + late_min + hours * 60;
          const isClear = (day: number) => day * 1440 + am >= end_min && day * 1440 + pm >= end_min;
          let day = 100;
          while (!isClear(day)) day += 1;
          // On the safe side: at most one day later than the clock alone would have it.
          expect(got?.freeDay).toBeGreaterThanOrEqual(day);
          expect(got?.freeDay).toBeLessThanOrEqual(day + 1);
          if (late_min === DOSE_LATE_min && Number.isInteger(hours)) expect(got?.freeDay).toBe(day);
        },
      ),
    );
  });
});
