// The hygiene board at the taps: how hands are washed, and when.
import { hasSlot, meetsAnimals } from './applies.ts';
import type { TripCase } from './types.ts';

/** Seconds of rubbing with soap. Source: CDC, About Handwashing ("at least 20 seconds"). */
export const RUB_s = 20;

/** The steps of washing; the words stand under `trip-papers.wash.step`. */
export const WASH_STEPS = Object.freeze(['wet', 'soap', 'rub', 'rinse', 'dry'] as const);

/** When hands are washed; the words stand under `trip-papers.wash.when`. */
export type WashTime = 'after-animals' | 'before-food' | 'after-toilet' | 'before-leaving';

/** The times at which a visit washes. */
export function washTimes(trip: TripCase): WashTime[] {
  const animals = meetsAnimals(trip);
  const times: [WashTime, boolean][] = [
    ['after-animals', animals],
    ['before-food', hasSlot(trip, 'lunch')],
    ['after-toilet', hasSlot(trip, 'toilets')],
    ['before-leaving', animals],
  ];
  return times.filter(([, applies]) => applies).map(([name]) => name);
}
