// Which milking the Milk book opens with, against a clock of another make and a plain look through a list.
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  beginsAt_min, expectedAt, farmClock, isAfter, lastOfToday, missingAt, nextMilking, openMilking, stepped, type Milking,
} from '../../../shared/book/nextMilking.ts'; // prettier-ignore
import type { BookDoe } from '../../../shared/book/types.ts';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';

const farm = { milkings: { am: '06:30', pm: '17:30' } };
const day = (iso: string) => dayNumber(iso) ?? NaN;
const TODAY = day('2026-05-21');
const at = (clock: string, today = TODAY) => {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return { today, minutes: hour * 60 + minute };
};
const doe = (id: string, phase: 'twice a day' | 'nights apart' | 'dry' = 'twice a day'): BookDoe => ({
  id, name: id, breed: '', spans: [{ phase, from: 0, to: null }],
}); // prettier-ignore
const row = (of: string, date: string, milking: 'am' | 'pm') => ({ doe: of, date, milking });
const told = ({ day: number, milking }: Milking) => `${isoDate(number)} ${milking}`;

describe('farmClock', () => {
  it('reads the farm’s zone, wherever the phone is, as Temporal does', () => {
    const zones = ['America/Chicago', 'Pacific/Auckland', 'Asia/Kolkata', 'Europe/Copenhagen', 'UTC'];
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 0, max: Date.UTC(2100, 0, 1) }),
        (timeZone, now_ms) => {
          const there = Temporal.Instant.fromEpochMilliseconds(now_ms).toZonedDateTimeISO(timeZone);
          expect(farmClock({ timeZone, fixedDay: null }, now_ms)).toEqual({
            today: day(there.toPlainDate().toString()),
            minutes: there.hour * 60 + there.minute,
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('keeps to the day that the farm sets, and to the clock', () => {
    const clock = farmClock(
      { timeZone: 'America/Chicago', fixedDay: '2026-05-21' },
      Date.UTC(2030, 0, 1, 20, 5),
    );
    expect(clock).toEqual({ today: TODAY, minutes: 14 * 60 + 5 });
  });
});

describe('openMilking', () => {
  it.each([
    ['04:29', '2026-05-20 pm'],
    ['04:30', '2026-05-21 am'],
    ['15:29', '2026-05-21 am'],
    ['15:30', '2026-05-21 pm'],
    ['23:59', '2026-05-21 pm'],
    ['00:10', '2026-05-20 pm'],
  ])('at %s is %s', (clock, milking) => {
    expect(told(openMilking(farm, at(clock)))).toBe(milking);
  });

  it('is the last that has opened, for any clock times', () => {
    const time = fc.integer({ min: 0, max: 1439 });
    const text = (minutes: number) => `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`; // prettier-ignore
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 719 }),
        fc.integer({ min: 720, max: 1439 }),
        time,
        (am, pm, minutes) => {
          // The slow way: every milking of five days with the minute at which it opens, and the last one that has.
          const all = [-2, -1, 0, 1, 2].flatMap((by) => [
            { name: `${isoDate(TODAY + by)} am`, opens: by * 1440 + am - 120 },
            { name: `${isoDate(TODAY + by)} pm`, opens: by * 1440 + pm - 120 },
          ]);
          const last = all.filter(({ opens }) => opens <= minutes).at(-1);
          const open = openMilking({ milkings: { am: text(am), pm: text(pm) } }, { today: TODAY, minutes });
          expect(told(open)).toBe(last?.name);
        },
      ),
    );
  });
});

describe('nextMilking', () => {
  const does = [doe('juniper'), doe('wren', 'nights apart'), doe('hester', 'dry')];
  const morning = [row('juniper', '2026-05-21', 'am'), row('wren', '2026-05-21', 'am')];

  it.each([
    ['05:00', [], '2026-05-21 am', 'a milking that is open and empty'],
    ['12:00', morning.slice(0, 1), '2026-05-21 am', 'a milking in which a doe is missing, however late'],
    ['08:00', morning, '2026-05-21 am', 'a whole milking, for its labels'],
    ['09:29', morning, '2026-05-21 am', 'a whole milking until three hours after its time'],
    ['09:30', morning, '2026-05-21 pm', 'the coming milking after that'],
    ['16:00', [], '2026-05-21 pm', 'the milking that is open, though one before it lacks a doe'],
    ['23:00', [...morning, row('juniper', '2026-05-21', 'pm')], '2026-05-21 pm', 'no milking of tomorrow'],
    ['02:00', morning, '2026-05-20 pm', 'last evening’s after midnight'],
    [
      '02:00',
      [row('juniper', '2026-05-20', 'pm')],
      '2026-05-21 am',
      'this morning’s, once last evening’s is whole',
    ],
  ])('at %s is, with %j, %s: %4$s', (clock, rows, milking) => {
    expect(told(nextMilking(farm, does, rows, at(clock)))).toBe(milking);
  });

  it('is never after today, and never leaves an open milking that lacks a doe', () => {
    const entry = fc.record({
      doe: fc.constantFrom('juniper', 'wren', 'hester'),
      date: fc.constantFrom('2026-05-20', '2026-05-21'),
      milking: fc.constantFrom('am' as const, 'pm' as const),
    });
    fc.assert(
      fc.property(fc.array(entry), fc.integer({ min: 0, max: 1439 }), (rows, minutes) => {
        const clock = { today: TODAY, minutes };
        const next = nextMilking(farm, does, rows, clock);
        expect(isAfter(next, lastOfToday(clock))).toBe(false);
        const open = openMilking(farm, clock);
        if (missingAt(does, rows, open).length > 0) expect(next).toEqual(open);
      }),
    );
  });
});

describe('the does of a milking', () => {
  const does = [doe('juniper'), doe('wren', 'nights apart'), doe('hester', 'dry')];
  it('are those whose phase asks for it', () => {
    expect(expectedAt(does, { day: TODAY, milking: 'am' }).map(({ id }) => id)).toEqual(['juniper', 'wren']);
    expect(expectedAt(does, { day: TODAY, milking: 'pm' }).map(({ id }) => id)).toEqual(['juniper']);
  });

  it('are missing until something stands for that very milking', () => {
    const of: Milking = { day: TODAY, milking: 'am' };
    const rows = [row('juniper', '2026-05-21', 'pm'), row('wren', '2026-05-20', 'am')];
    expect(missingAt(does, rows, of)).toHaveLength(2);
    expect(missingAt(does, [row('juniper', '2026-05-21', 'am')], of).map(({ id }) => id)).toEqual(['wren']);
  });
});

describe('stepping', () => {
  it('goes on and comes back through every milking', () => {
    const milking = fc.record({ day: fc.integer({ min: 0, max: 30_000 }), milking: fc.constantFrom('am' as const, 'pm' as const) }); // prettier-ignore
    fc.assert(
      fc.property(milking, (one) => {
        const next = stepped(one, 1);
        expect(stepped(next, -1)).toEqual(one);
        expect(isAfter(next, one)).toBe(true);
        const clock = { today: one.day, minutes: 0 };
        expect(beginsAt_min(next, clock, farm)).toBeGreaterThan(beginsAt_min(one, clock, farm));
      }),
    );
  });
});
