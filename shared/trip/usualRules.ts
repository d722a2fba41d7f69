// What a farm that says nothing goes by: thresholds by band, the eleven stations, taps, walks. Sources stand in `ruleSources.ts`.
import type { Band } from '../quantity/grade.ts';
import type { BandRules, Station, TripFarm } from './types.ts';

const by = <T>(young: T, middle: T, older: T, oldest: T): Readonly<Record<Band, T>> =>
  Object.freeze({ 'k-2': young, '3-5': middle, '6-8': older, '9-12': oldest });

/** The usual thresholds; where each comes from and how sure it is stands in `RULE_SOURCES`. */
export const USUAL_RULES: Readonly<Record<Band, BandRules>> = by(
  {
    perAdult: { aim: 6, most: 8 },
    groupMost: 8,
    wash_s: 75,
    toilet_s: 90,
    toiletWithin_min: 60,
    bus_min: 10,
    headCount_min: 3,
    lunch_min: 30,
    welcome_min: 8,
  },
  {
    perAdult: { aim: 8, most: 10 },
    groupMost: 12,
    wash_s: 60,
    toilet_s: 75,
    toiletWithin_min: 90,
    bus_min: 8,
    headCount_min: 2,
    lunch_min: 30,
    welcome_min: 8,
  },
  {
    perAdult: { aim: 10, most: 12 },
    groupMost: 12,
    wash_s: 50,
    toilet_s: 60,
    toiletWithin_min: 90,
    bus_min: 6,
    headCount_min: 1,
    lunch_min: 25,
    welcome_min: 6,
  },
  {
    perAdult: { aim: 12, most: 15 },
    groupMost: 12,
    wash_s: 45,
    toilet_s: 60,
    toiletWithin_min: 90,
    bus_min: 6,
    headCount_min: 1,
    lunch_min: 25,
    welcome_min: 6,
  },
);

/** Minutes of a station that the farm gives none for. */
export const USUAL_MINUTES = by(15, 20, 25, 35);

type Kind = Pick<Station, 'id' | 'zone'> & Partial<Station>;
const station = (kind: Kind): Station => ({
  minutes: USUAL_MINUTES,
  capacity: 16,
  roofed: true,
  wheelchair: true,
  touch: false,
  milking: false,
  kidding: false,
  standIn: null,
  walk_min: 1,
  ...kind,
});

/** The eleven stations that Pailside has texts for, in the order of the loop. Places and capacities are invented: a farm writes its own. */
export const USUAL_STATIONS: readonly Station[] = Object.freeze([
  station({ id: 'milking-stand', zone: 'animal', milking: true, standIn: 'practice-stand' }),
  station({ id: 'goat-barn', zone: 'animal', touch: true, walk_min: 0 }),
  station({ id: 'kid-pen', zone: 'animal', touch: true, kidding: true, standIn: 'kid-table' }),
  station({ id: 'pasture-rail', zone: 'animal', roofed: false, wheelchair: false, standIn: 'hay-loft' }),
  station({ id: 'hay-loft', zone: 'between' }),
  station({ id: 'hoof-and-coat', zone: 'animal', touch: true, walk_min: 0 }),
  station({ id: 'barn-board', zone: 'between', walk_min: 0 }),
  station({ id: 'measuring-table', zone: 'clean' }),
  station({ id: 'practice-stand', zone: 'clean', walk_min: 0 }),
  station({ id: 'kid-table', zone: 'clean', walk_min: 0 }),
  station({ id: 'kitchen-window', zone: 'clean' }),
]);

/** Stations of a group that chooses none: three to five in half a day, the animals first. Common practice, no source. */
export const USUAL_CHOICE = by<readonly string[]>(
  ['milking-stand', 'goat-barn', 'kid-pen', 'measuring-table'],
  ['milking-stand', 'goat-barn', 'kid-pen', 'hay-loft', 'measuring-table'],
  ['milking-stand', 'goat-barn', 'hoof-and-coat', 'measuring-table'],
  ['milking-stand', 'hoof-and-coat', 'measuring-table', 'kitchen-window'],
);

/** A farm that says nothing about visits. */
export const USUAL_FARM: TripFarm = Object.freeze({
  stations: USUAL_STATIONS,
  usual: USUAL_CHOICE,
  taps: 4,
  toilets: 4,
  busesAtOnce: 1,
  gateWalk_min: 3,
  tapsWalk_min: 2,
  seats: 60,
  lunchSlack_min: 30,
  washTogether_min: 12,
  washSpare: 0.2,
  childrenPerSpare: 60,
  leastAdults: 2,
  busSpare_min: 5,
  kiddingDays: { before: 14, after: 21 },
  rules: USUAL_RULES,
});
