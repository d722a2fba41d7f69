// Many thousand random school days: each plan keeps every rule, each no is true, and each way out holds.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import type { DayPlan, TripChange, TripPlan } from '../../../shared/trip/types.ts';
import { loopExists } from '../../support/loopByForce.ts';
import { tripArb, type Asked } from '../../support/randomTrip.ts';
import { brokenRules } from '../../support/tripRules.ts';

const plan = ({ wish, farm, ground }: Asked): TripPlan => planTrip(wish, farm, ground);

// Ways out are looked for on the loop alone: that parties at their own time would do with less is not asked.
const onLoop = (planned: TripPlan): boolean => planned.ok && planned.day.manner === 'loop';

function mustKeepRules(asked: Asked, planned: TripPlan): void {
  if (!planned.ok) throw new Error(`There is no plan: ${JSON.stringify(planned.whys)}`);
  expect(brokenRules({ ...asked, day: planned.day, notes: planned.notes })).toEqual([]);
}

/** What is asked for with one change in it; written here once more, so that the planner is not asked about itself. */
function changed({ wish, farm, ground }: Asked, change: TripChange): Asked {
  if (change.kind === 'adults') return { wish: { ...wish, adults: wish.adults + change.more }, farm, ground };
  if (change.kind === 'fewer children') return { wish: { ...wish, children: change.children }, farm, ground };
  if (change.kind === 'lunch') return { wish: { ...wish, lunch: change.at }, farm, ground };
  if (change.kind === 'taps') return { wish, farm: { ...farm, taps: farm.taps + change.more }, ground };
  if (change.kind === 'toilets') return { wish, farm: { ...farm, toilets: farm.toilets + change.more }, ground }; // prettier-ignore
  if (change.kind === 'without')
    return { wish: { ...wish, stations: wish.stations.filter((id) => id !== change.station) }, farm, ground };
  const arrive = change.end === 'arrive' ? wish.arrive - change.minutes : wish.arrive;
  const leave = change.end === 'leave' ? wish.leave + change.minutes : wish.leave;
  return { wish: { ...wish, arrive, leave }, farm, ground };
}

/** The same change by one step less, where it is an amount; null where less is nothing or no amount. */
function less(change: TripChange, asked: Asked): TripChange | null {
  if (change.kind === 'fewer children')
    return change.children + 1 < asked.wish.children ? { ...change, children: change.children + 1 } : null;
  if (change.kind === 'longer') return change.minutes > 1 ? { ...change, minutes: change.minutes - 1 } : null;
  if (change.kind === 'lunch' || change.kind === 'without') return null;
  return change.more > 1 ? { ...change, more: change.more - 1 } : null;
}

describe('random school days', () => {
  it('keep every rule wherever there is a plan', () => {
    const plans = { loop: 0, own: 0 };
    fc.assert(
      fc.property(tripArb({ children: 120, stations: 6 }, true), (asked) => {
        const planned = plan(asked);
        if (!planned.ok) return;
        plans[planned.day.manner] += 1;
        mustKeepRules(asked, planned);
      }),
      { numRuns: 7_000 },
    );
    expect(plans.loop).toBeGreaterThan(3_000);
  });

  it('have reasons wherever there is none, and every way out holds and could not be smaller', () => {
    let ways = 0;
    fc.assert(
      fc.property(tripArb({ children: 90, stations: 5 }, false), (asked) => {
        const planned = plan(asked);
        if (planned.ok) return mustKeepRules(asked, planned);
        expect(planned.whys.length).toBeGreaterThan(0);
        for (const { changes } of planned.ways) {
          ways += 1;
          const better = changes.reduce(changed, asked);
          mustKeepRules(better, plan(better));
          const [only] = changes;
          const smaller = changes.length === 1 && only ? less(only, asked) : null;
          if (smaller) expect(onLoop(plan(changed(asked, smaller))), JSON.stringify(smaller)).toBe(false);
        }
      }),
      { numRuns: 1_500 },
    );
    expect(ways).toBeGreaterThan(500);
  });
});

// Groups and stations of a case do not depend on its clock: an endless day without food shows them.
function onAnEndlessDay({ wish, farm, ground }: Asked): DayPlan | null {
  const rules = Object.fromEntries(
    Object.entries(farm.rules).map(([band, one]) => [band, { ...one, toiletWithin_min: 10_000 }]),
  ) as typeof farm.rules;
  const endless = planTrip({ ...wish, arrive: 0, leave: 1439, lunch: null }, { ...farm, rules }, ground);
  return endless.ok ? endless.day : null;
}

/** A case where nothing is closed or milked and the group chose, so that its stations are what it chose. */
function plainly({ wish, farm, ground }: Asked): Asked {
  const stations = farm.stations.map((one) => ({ ...one, milking: false, roofed: true }));
  const chosen = wish.stations.length > 0 ? wish.stations : stations.slice(0, 2).map(({ id }) => id);
  return {
    wish: { ...wish, needs: [], stations: chosen.slice(0, 3) },
    farm: { ...farm, stations, seats: 200 },
    ground: { ...ground, kiddingNear: false },
  };
}

describe('a no', () => {
  it('is true for small groups: trying every order of rounds, pauses and food finds no day on the loop either, and a yes wherever there is one', () => {
    const met = { yes: 0, no: 0 };
    fc.assert(
      fc.property(tripArb({ children: 40, stations: 3 }, false).map(plainly), (asked) => {
        const free = onAnEndlessDay(asked);
        if (free === null) return;
        const exists = loopExists({ ...asked, groups: free.groups, spare: free.spare, stations: free.stations.map((id) => ({ id, for: null })) }); // prettier-ignore
        expect(onLoop(plan(asked))).toBe(exists);
        met[exists ? 'yes' : 'no'] += 1;
      }),
      { numRuns: 800 },
    );
    expect(Math.min(met.yes, met.no)).toBeGreaterThan(150);
  });
});
