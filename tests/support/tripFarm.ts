// A farm and a day to plan trips on in tests: three stations with animals, two clean ones; two languages of words.
import type { DayGround, Station, TripFarm, TripWish } from '../../shared/trip/types.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import { usualWish } from '../../shared/trip/usualWish.ts';

const station = (id: string, kind: Partial<Station>): Station => ({
  id,
  minutes: { 'k-2': 15, '3-5': 20, '6-8': 25, '9-12': 35 },
  capacity: 16,
  zone: 'animal',
  roofed: true,
  wheelchair: true,
  touch: false,
  milking: false,
  kidding: false,
  standIn: null,
  walk_min: 2,
  ...kind,
});

/** The farm: `pasture-rail` is outdoors and gives way to `hay-loft`. */
export const TEST_FARM: TripFarm = {
  ...USUAL_FARM,
  stations: [
    station('goat-barn', { touch: true }),
    station('pasture-rail', { roofed: false, wheelchair: false, standIn: 'hay-loft' }),
    station('hay-loft', { zone: 'between' }),
    station('measuring-table', { zone: 'clean' }),
  ],
  usual: {
    'k-2': ['goat-barn', 'pasture-rail', 'measuring-table'],
    '3-5': ['goat-barn', 'pasture-rail', 'measuring-table'],
    '6-8': ['goat-barn', 'pasture-rail', 'measuring-table'],
    '9-12': ['goat-barn', 'pasture-rail', 'measuring-table'],
  },
  taps: 8,
  toilets: 8,
};

/** Names of its stations. */
export const TEST_SIGNS = TEST_FARM.stations.map(({ id }) => ({ id, name: `The ${id}`, does: `At ${id}.` }));

/** A day without milking or kidding. */
export const TEST_GROUND: DayGround = { milkings: [], noMilking: 'dry', doesDue: 0, kiddingNear: false };

/** The usual wish from Thursday, 2026-05-21 (day 20594), with changes. */
export const testWish = (change: Partial<TripWish> = {}): TripWish => ({ ...usualWish(20594), ...change });
