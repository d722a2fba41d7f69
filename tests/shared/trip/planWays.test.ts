// Why a day cannot be, and the smallest changes with which it can: each reason, each kind of change, and any wish at all.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withChanges } from '../../../shared/trip/changes.ts';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import { MOST, readTrip, writeTrip } from '../../../shared/trip/tripQuery.ts';
import type { DayGround, TripChange, TripFarm, TripPlan, TripWish } from '../../../shared/trip/types.ts';
import { TEST_FARM, TEST_GROUND, testWish } from '../../support/tripFarm.ts';
import { tripArb } from '../../support/randomTrip.ts';

const ASKED = { stations: ['goat-barn', 'measuring-table'], children: 16, adults: 2, lunch: null } as const;
const plan = (change: Partial<TripWish>, farm: Partial<TripFarm> = {}, ground: Partial<DayGround> = {}) =>
  planTrip(testWish({ ...ASKED, ...change }), { ...TEST_FARM, ...farm }, { ...TEST_GROUND, ...ground });

function failed(planned: TripPlan) {
  if (planned.ok) throw new Error('The day holds.');
  return planned;
}
const single = (planned: TripPlan, kind: TripChange['kind']) =>
  failed(planned).ways.filter(({ changes }) => changes.length === 1 && changes[0]!.kind === kind);

// One bus 10, walk 3, welcome 8, toilets ceil(16 / 8) × 90 s = 3: it is 9:54. The walk from the barn to the table, past
// two stations, is 6, so a change takes 9 with its head count of 3; two rounds of 15 with their changes are 48 and end
// at 10:42. Walk 2, washing ceil(18 / 8) × 75 s × 1.2 = 4.5, so 5: 10:49. Walk 3, loading 10, spare 5: 11:07. The last
// toilets were over at 9:54; 11:07 is 73 min later, so there must be a pause. At the taps before washing nobody has to
// walk for it: ceil(3 + 75 s) = 5 min (180 + 75 s = 4.25 min). So the buses can leave at 11:12.
const SOONEST = 11 * 60 + 12;

describe('reasons', () => {
  it('tell the time that is wanting to the minute', () => {
    expect(plan({ leave: SOONEST }).ok).toBe(true);
    const { whys, ways } = failed(plan({ leave: SOONEST - 1 }));
    expect(whys).toEqual([{ kind: 'time', is_min: 101, needs_min: 102 }]);
    expect(ways[0]).toEqual({ changes: [{ kind: 'longer', minutes: 1, end: 'leave' }] });
    expect(ways[1]).toEqual({ changes: [{ kind: 'longer', minutes: 1, end: 'arrive' }] });
  });

  it('count the adults who are kept free', () => {
    // 60 children: ceil(60 / 8) = 8 leaders, and one adult of 60 children is kept free.
    const stations = TEST_FARM.stations.map((one) => ({ ...one, capacity: 60 }));
    const { whys, ways } = failed(plan({ children: 60, adults: 8, leave: 900 }, { stations }));
    expect(whys).toEqual([{ kind: 'adults', is: 8, needs: 9, most: 8 }]);
    expect(ways).toEqual([
      { changes: [{ kind: 'adults', more: 1 }] },
      { changes: [{ kind: 'fewer children', children: 59 }] },
    ]);
  });

  it('tell of no adult who leads more children than the largest group has', () => {
    // Grade 10: 15 children for one adult at most, but 12 in a group; 30 children are three groups.
    const stations = TEST_FARM.stations.map((one) => ({ ...one, capacity: 60 }));
    const { whys } = failed(plan({ grade: 10, children: 30, adults: 2, leave: 900 }, { stations }));
    expect(whys).toEqual([{ kind: 'adults', is: 2, needs: 3, most: 12 }]);
  });

  it('say nothing of how many children an adult has while adults are wanting', () => {
    const notes = (adults: number) =>
      plan({ children: 30, adults, leave: 900 }).notes.map(({ kind }) => kind);
    expect(notes(4)).toContain('few adults');
    expect(notes(2)).not.toContain('few adults');
  });

  it('name each station that is too small for the largest party', () => {
    // 40 children in two parties: 20 each, and a station has room for 16.
    const { whys, ways } = failed(plan({ children: 40, adults: 6, leave: 900 }));
    expect(whys).toEqual(ASKED.stations.map((station) => ({ kind: 'capacity', station, is: 16, needs: 20 })));
    expect(single({ ok: false, whys, ways, notes: [] }, 'fewer children')).toHaveLength(1);
  });

  it('tell when food could start, or that it is wished too late', () => {
    // At the taps at 9:54 + 2, washed at 10:01: food that may start up to half an hour after 9:00 is too soon by 31 min.
    const soon = failed(plan({ lunch: 9 * 60, leave: 900 }));
    expect(soon.whys).toEqual([{ kind: 'lunch', at: 540, earliest: 601 }]);
    expect(single(soon, 'lunch')).toEqual([{ changes: [{ kind: 'lunch', at: 571 }] }]);
    const late = failed(plan({ lunch: 13 * 60, leave: 13 * 60 + 47 }));
    // Food from 13:00 takes 30 min, the way back 18: 13:48.
    expect(late.whys).toContainEqual({ kind: 'lunch', at: 780, earliest: null });
    expect(single(late, 'lunch')).toEqual([{ changes: [{ kind: 'lunch', at: 779 }] }]);
  });

  it('tell the seats that are wanting', () => {
    const few = failed(plan({ lunch: 660, leave: 900 }, { seats: 17 }));
    expect(few.whys).toEqual([{ kind: 'seats', is: 17, needs: 18 }]);
    expect(few.ways).toContainEqual({ changes: [{ kind: 'lunch', at: null }] });
    expect(few.ways).toContainEqual({ changes: [{ kind: 'fewer children', children: 15 }] });
  });

  it('tell the longest time without a toilet that no pause can shorten', () => {
    const stations = TEST_FARM.stations.map((one) => ({ ...one, minutes: { ...one.minutes, 'k-2': 50 } }));
    // From the taps to a station 9, 50 there, 2 back.
    expect(failed(plan({ leave: 900 }, { stations })).whys).toEqual([
      { kind: 'toilets', within_min: 60, longest_min: 61 },
    ]);
  });

  it('say that no station is left, and offer no change then', () => {
    const stations = TEST_FARM.stations.map((one) => ({ ...one, standIn: null }));
    const { whys, ways } = failed(plan({ stations: ['pasture-rail'], rain: true }, { stations }));
    expect(whys).toEqual([{ kind: 'no station' }]);
    expect(ways).toEqual([]);
  });

  it('come all at once', () => {
    const { whys } = failed(plan({ children: 40, adults: 2, lunch: 540, leave: 640 }));
    expect(new Set(whys.map(({ kind }) => kind))).toEqual(new Set(['adults', 'capacity', 'time', 'lunch']));
  });

  it('name every field of a wish that cannot be', () => {
    const wrong: [keyof TripWish, unknown][] = [
      ['date', '2026-02-30'],
      ['grade', 13],
      ['children', 0],
      ['children', MOST.children + 1],
      ['adults', MOST.adults + 1],
      ['buses', MOST.buses + 1],
      // No clock shows 24:00, so that no address could tell it.
      ['leave', 1440],
      ['lunch', 1440],
      ['adults', -1],
      ['leave', 570],
      ['buses', 0.5],
      ['lunch', Number.NaN],
      ['stations', ['goat-barn', 'no-such-place']],
      ['needs', ['a chair']],
    ];
    for (const [field, value] of wrong)
      expect(failed(plan({ [field]: value })).whys, field).toEqual([{ kind: 'wish', field }]);
    expect(failed(plan({ children: 0, adults: -1 })).whys).toHaveLength(2);
  });
});

describe('ways', () => {
  it('leave out a station where that is enough, what children touch last', () => {
    const stations = ['goat-barn', 'hay-loft', 'measuring-table'];
    const [way] = single(plan({ children: 8, stations, leave: SOONEST }), 'without');
    expect(way?.changes).toEqual([{ kind: 'without', station: 'measuring-table' }]);
  });

  it('are a tap or a toilet more where waiting for them takes the time', () => {
    const slow = { taps: 1, toilets: 1, washTogether_min: 40 };
    const asked = plan({ leave: 800, children: 12 }, slow);
    const soonest = failed(plan({ leave: 600, children: 12 }, slow)).whys.find(({ kind }) => kind === 'time');
    expect(asked.ok).toBe(true);
    const leave = 570 + (soonest?.kind === 'time' ? soonest.needs_min : 0) - 1;
    expect(single(plan({ leave, children: 12 }, slow), 'taps')).toEqual([{ changes: [{ kind: 'taps', more: 1 }] }]);
    expect(single(plan({ leave, children: 12 }, slow), 'toilets')).toEqual([{ changes: [{ kind: 'toilets', more: 1 }] }]);
  });

  it('are of two kinds where no single one helps', () => {
    const stations = TEST_FARM.stations.map((one) => ({ ...one, capacity: 60 }));
    // Half the children would need no third adult, but save two minutes of washing and none at the toilets.
    const { ways } = failed(plan({ children: 24, adults: 2, leave: SOONEST - 10 }, { stations }));
    expect(ways.length).toBeGreaterThan(0);
    expect(ways.every(({ changes }) => new Set(changes.map(({ kind }) => kind)).size === 2)).toBe(true);
    expect(ways[0]!.changes[0]).toEqual({ kind: 'adults', more: 1 });
  });

  it('ask for as many adults as it takes, however few there are', () => {
    const roomy = { stations: TEST_FARM.stations.map((one) => ({ ...one, capacity: 60 })) };
    // 48 children: ceil(48 / 8) = 6 leaders, none kept free below 60 children.
    const { ways } = failed(plan({ children: 48, adults: 1, leave: 900 }, roomy));
    expect(ways).toEqual([{ changes: [{ kind: 'adults', more: 5 }] }]);
  });

  it('are all such that an address can tell them: none ends at midnight, none brings more adults than a link may', () => {
    const roomy = { stations: TEST_FARM.stations.map((one) => ({ ...one, capacity: 400 })), seats: 500, leastAdults: 1 };
    const late = { ...ASKED, arrive: 1440 - (SOONEST - 570), leave: 1439 };
    // 400 children: ceil(400 / 8) = 50 leaders and 400 / 4 = 100 who are kept free.
    const many = { ...ASKED, children: 400, adults: 95, leave: 1300 };
    const crowded = { ...roomy, childrenPerSpare: 4, taps: 60, toilets: 60 };
    for (const [wish, farm] of [[late, {}], [many, crowded]] as const) {
      const { whys, ways } = failed(plan(wish, farm));
      expect(whys.length).toBeGreaterThan(0);
      expect(ways.length).toBeGreaterThan(0);
      for (const { changes } of ways) {
        const asked = withChanges({ wish: testWish(wish), farm: TEST_FARM }, changes).wish;
        expect(readTrip(writeTrip(asked, testWish({})), TEST_FARM, testWish({}))).toEqual({ wish: asked, aside: [] });
      }
    }
  });

  it('are longer than schools like only where nothing shorter helps', () => {
    // Four buses off and on, 80; walk 3, welcome 8, toilets 3; change 3 + 8 once around, station 15; walk 2, washing 5,
    // walk 3: 130 at least, and 10 are given.
    const { whys, ways } = failed(plan({ stations: ['goat-barn'], buses: 4, leave: 580 }));
    const needs_min = whys.flatMap((why) => (why.kind === 'time' ? [why.needs_min] : []))[0]!;
    expect(needs_min).toBeGreaterThanOrEqual(130);
    for (const end of ['leave', 'arrive'] as const)
      expect(ways).toContainEqual({ changes: [{ kind: 'longer', minutes: needs_min - 10, end }] });
  });

  it('are never absurd, and the day that they lead to is planned', () => {
    let offered = 0;
    fc.assert(
      fc.property(tripArb({ children: 80, stations: 5 }, false), ({ wish, farm, ground }) => {
        const planned = planTrip(wish, farm, ground);
        if (planned.ok) return;
        const far = planned.ways.map(({ changes }) => {
          offered++;
          const asked = withChanges({ wish, farm }, changes);
          expect(planTrip(asked.wish, asked.farm, ground, 'without ways').ok).toBe(true);
          const { arrive, leave, children, stations, adults } = asked.wish;
          expect(arrive).toBeGreaterThanOrEqual(Math.min(wish.arrive, Math.max(0, Math.min(360, wish.arrive - 90))));
          expect(leave).toBeLessThanOrEqual(Math.max(wish.leave, 1200, wish.leave + 90));
          expect(adults).toBeLessThanOrEqual(Math.max(2 * wish.adults, wish.adults + farm.leastAdults, wish.children + farm.leastAdults));
          expect(stations.length).toBeGreaterThanOrEqual(wish.stations.length / 2);
          return wish.arrive - arrive > 90 || leave - wish.leave > 90 || children < wish.children / 2;
        });
        // More than schools do gladly is offered only where nothing less helps.
        if (far.includes(true)) expect(far.every(Boolean)).toBe(true);
      }),
      { numRuns: 300 },
    );
    expect(offered).toBeGreaterThan(100);
  });
}); // prettier-ignore

describe('any wish', () => {
  it('is answered in whole minutes, even where washing takes weeks', () => {
    // 500 people at one tap, ten minutes each and twice as long again for queues: 15000 min; one toilet: 4000; twelve buses,
    // an hour each, twice: 1440. That is more than the fortnight of 20160 min that the plan looks ahead.
    const rules = { ...TEST_FARM.rules['k-2'], wash_s: 600, toilet_s: 600, bus_min: 60 };
    const stations = TEST_FARM.stations.map((one) => ({ ...one, capacity: 400 }));
    const farm = { taps: 1, toilets: 1, washSpare: 2, stations, rules: { ...TEST_FARM.rules, 'k-2': rules } };
    const { whys } = failed(plan({ children: 400, adults: 100, buses: 12 }, farm));
    expect(whys.map(({ kind }) => kind)).toContain('time');
    const numbers = whys.flatMap((why) => Object.values(why).filter((one) => typeof one === 'number'));
    expect(numbers.every(Number.isInteger)).toBe(true);
  });

  it('is answered, with reasons in whole numbers', () => {
    const wild = fc.record({
      grade: fc.integer({ min: -1, max: 13 }),
      children: fc.oneof(fc.integer({ min: -1, max: 60 }), fc.integer({ min: 0, max: 3000 })),
      adults: fc.integer({ min: -1, max: 400 }),
      arrive: fc.integer({ min: -10, max: 1450 }),
      leave: fc.integer({ min: -10, max: 1450 }),
      buses: fc.integer({ min: 0, max: 60 }),
      lunch: fc.option(fc.integer({ min: -10, max: 1450 })),
      stations: fc.subarray(['goat-barn', 'pasture-rail', 'hay-loft', 'measuring-table', 'nowhere']),
      rain: fc.boolean(),
    });
    fc.assert(
      fc.property(wild, fc.integer({ min: 1, max: 8 }), (wish, taps) => {
        const planned = plan(wish as Partial<TripWish>, { taps, toilets: taps, seats: taps * 8 });
        if (planned.ok) return;
        expect(planned.whys.length).toBeGreaterThan(0);
        const numbers = planned.whys.flatMap((why) => Object.values(why).filter((one) => typeof one === 'number'));
        expect(numbers.every(Number.isInteger)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
}); // prettier-ignore
