// A school day made by hand, for the tests of what checks such days: every rule has something to hold in it.
import type { DayPlan, Slot, Station, TripFarm } from '../../shared/trip/types.ts';
import type { Checked } from './tripChecked.ts';

/** The same value with nothing that may not be changed. */
export type Loose<T> = T extends object ? { -readonly [K in keyof T]: Loose<T[K]> } : T;

const each = <T>(value: T) => ({ 'k-2': value, '3-5': value, '6-8': value, '9-12': value });
const station = (id: string, walk_min: number, rest: Partial<Station>): Station => ({
  id,
  minutes: each(10),
  capacity: 8,
  zone: 'clean',
  roofed: true,
  wheelchair: true,
  touch: false,
  milking: false,
  kidding: false,
  standIn: null,
  walk_min,
  ...rest,
});

const FARM: TripFarm = {
  stations: [
    station('milking-stand', 1, { zone: 'animal', milking: true }),
    station('kid-pen', 1, { zone: 'animal', kidding: true }),
    station('pasture-rail', 1, { zone: 'animal', roofed: false, wheelchair: false, standIn: 'hay-loft' }),
    station('hay-loft', 1, { zone: 'between' }),
    station('kid-table', 2, {}),
  ],
  usual: each(['milking-stand', 'kid-pen']),
  taps: 4,
  toilets: 5,
  busesAtOnce: 1,
  gateWalk_min: 2,
  tapsWalk_min: 2,
  seats: 18,
  lunchSlack_min: 15,
  washTogether_min: 12,
  washSpare: 0.2,
  childrenPerSpare: 15,
  leastAdults: 2,
  busSpare_min: 5,
  kiddingDays: { before: 14, after: 21 },
  rules: each({
    perAdult: { aim: 8, most: 9 },
    groupMost: 8,
    wash_s: 60,
    toilet_s: 60,
    toiletWithin_min: 45,
    bus_min: 5,
    headCount_min: 2,
    lunch_min: 20,
    welcome_min: 6,
  }),
};

type Entry = readonly [Slot['kind'], number, number, string?];
const slots = (entries: readonly Entry[]): Slot[] =>
  entries.map(([kind, from, to, at]) => ({
    kind,
    from,
    to,
    station: at ?? null,
    for: kind === 'station' && at === 'hay-loft' ? 'pasture-rail' : null,
  }));

// The longest walk is 3 minutes (from pasture-rail's end of the loop to hay-loft, passing two), so each change takes 5.
const partyDay = (first: string, second: string, third: string): Slot[] =>
  slots([
    ['unload', 540, 545],
    ['walk', 545, 547],
    ['welcome', 547, 553],
    ['toilets', 553, 556],
    ['walk', 556, 561, first],
    ['station', 561, 571, first],
    ['walk', 571, 573],
    ['toilets', 573, 577],
    ['walk', 577, 582, second],
    ['station', 582, 592, second],
    ['walk', 592, 594],
    ['wash', 594, 600],
    ['lunch', 600, 620],
    ['walk', 620, 625, third],
    ['station', 625, 635, third],
    ['walk', 635, 637],
    ['wash', 637, 643],
    ['walk', 643, 645],
    ['load', 645, 650],
    ['wait', 650, 660],
  ]);

const DAY: DayPlan = {
  groups: [
    { id: 1, children: 8, adults: 1, party: 0, wheelchair: false },
    { id: 2, children: 7, adults: 1, party: 1, wheelchair: true },
  ],
  spare: 1,
  parties: [
    partyDay('milking-stand', 'hay-loft', 'kid-table'),
    partyDay('hay-loft', 'kid-table', 'milking-stand'),
  ],
  stations: ['milking-stand', 'hay-loft', 'kid-table'],
  roundsBefore: 2,
  manner: 'loop',
  wash_min: 6,
};

/** Fifteen children in rain with a wheelchair, two groups, three stations, one pause, food in the middle. */
export function goodDay(): Loose<Checked> {
  return structuredClone({
    day: DAY,
    notes: [{ kind: 'stand-in', station: 'pasture-rail', by: 'hay-loft', why: 'rain' }],
    wish: {
      date: '2026-05-27',
      grade: 2,
      children: 15,
      adults: 3,
      arrive: 540,
      leave: 660,
      buses: 1,
      lunch: 600,
      stations: ['milking-stand', 'pasture-rail', 'kid-table'],
      needs: ['wheelchair'],
      rain: true,
      word: 'fern',
    },
    farm: FARM,
    ground: { milkings: [{ from: 560, to: 640 }], noMilking: null, doesDue: 3, kiddingNear: false },
  } satisfies Checked) as Loose<Checked>;
}
