// Changes of a trip put on what was asked for: the wish, and for taps and toilets the farm.
import type { TripChange, TripFarm, TripWish } from './types.ts';

/** A wish and the farm that it is planned on. */
export interface Asked {
  readonly wish: TripWish;
  readonly farm: TripFarm;
}

/** What was asked for with the changes of a way in it. */
export function withChanges(asked: Asked, changes: readonly TripChange[]): Asked {
  return changes.reduce(withChange, asked);
}

function withChange({ wish, farm }: Asked, change: TripChange): Asked {
  switch (change.kind) {
    case 'adults':
      return { wish: { ...wish, adults: wish.adults + change.more }, farm };
    case 'longer':
      return {
        wish:
          change.end === 'arrive'
            ? { ...wish, arrive: wish.arrive - change.minutes }
            : { ...wish, leave: wish.leave + change.minutes },
        farm,
      };
    case 'lunch':
      return { wish: { ...wish, lunch: change.at }, farm };
    case 'without':
      return { wish: { ...wish, stations: wish.stations.filter((id) => id !== change.station) }, farm };
    case 'fewer children':
      return { wish: { ...wish, children: change.children }, farm };
    case 'taps':
      return { wish, farm: { ...farm, taps: farm.taps + change.more } };
    case 'toilets':
      return { wish, farm: { ...farm, toilets: farm.toilets + change.more } };
  }
}
