// How long a day that is too short is told to take: that long it holds, and a minute less it does not.
import { describe, expect, it } from 'vitest';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import type { DayGround } from '../../../shared/trip/types.ts';
import { TEST_FARM, testWish } from '../../support/tripFarm.ts';

// A milking stand far from all else, so that the day is shorter with the stand-in; the milking begins after the school.
const [first] = TEST_FARM.stations;
if (!first) throw new Error('the farm has no station');
const FARM = {
  ...TEST_FARM,
  stations: [
    { ...first, id: 'milking-stand', milking: true, walk_min: 9, standIn: 'practice-stand' },
    { ...first, id: 'practice-stand', zone: 'clean' as const, touch: false },
  ],
};
const GROUND: DayGround = {
  milkings: [{ from: 585, to: 720 }],
  noMilking: null,
  doesDue: 5,
  kiddingNear: false,
};

describe('a day that is too short', () => {
  it.each([600, 615, 625])('is told what it takes without its milking, which makes no day fail: leaving at minute %i', (leave) => {
    const wish = testWish({ grade: 0, children: 14, adults: 3, lunch: null, leave, stations: ['milking-stand'] });
    const plan = planTrip(wish, FARM, GROUND, 'without ways');
    const why = plan.ok ? undefined : plan.whys.find(({ kind }) => kind === 'time');
    if (why?.kind !== 'time') throw new Error('the day is long enough');
    const lasting = (minutes: number) => planTrip({ ...wish, leave: wish.arrive + minutes }, FARM, GROUND).ok;
    expect([lasting(why.needs_min - 1), lasting(why.needs_min)]).toEqual([false, true]);
  }); // prettier-ignore
});
