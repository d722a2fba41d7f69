// The shortest day of small groups: by hand, beside HiGHS on the same numbers as a mixed-integer model, beside the loop.
import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { planTrip } from '../../../../shared/trip/planTrip.ts';
import { shortestDay } from '../../../../shared/trip/shortest/shortestDay.ts';
import { smallDay, type SmallCase } from '../../../../shared/trip/shortest/smallDay.ts';
import type { DayPlan } from '../../../../shared/trip/types.ts';
import { smallCaseArb, tripArb } from '../../../support/randomTrip.ts';
import { goodDay } from '../../../support/tripExample.ts';
import { tripMip } from '../../../support/tripMip.ts';
import { brokenRules } from '../../../support/tripRules.ts';

const highs = await loadHighs();
const STEPS = 400_000;

/** The case of the day made by hand: two parties at three stations of ten minutes. */
function byHand(): SmallCase {
  const { wish, farm, ground, day } = goodDay();
  const stations = day.stations.map((id) => ({ id, for: id === 'hay-loft' ? 'pasture-rail' : null }));
  return { wish, farm, ground, groups: day.groups, spare: day.spare, stations };
}

/** When loading begins by HiGHS, minutes after midnight; null where the model has no solution. */
function byHighs(small: SmallCase, pauses: number): number | null {
  const day = smallDay(small);
  const solved = highs.solve(tripMip(day, pauses), { mip_rel_gap: 0, mip_abs_gap: 0.5 });
  if (solved.Status === 'Infeasible') return null;
  if (solved.Status !== 'Optimal') throw new Error(`HiGHS says ${solved.Status}.`);
  return day.arrive + Math.round(solved.ObjectiveValue);
}

function ours(small: SmallCase, pauses: number): number | null {
  const found = shortestDay(small, STEPS, pauses);
  if (found.kind === 'not proven') throw new Error('The search was cut off.');
  return found.kind === 'none' ? null : found.load;
}

describe('the shortest day by hand', () => {
  it('of two parties: all three stations and a pause go before the food, if it may be that late', () => {
    // Free at 556; three times a walk of 5 and ten minutes: 601; a pause with 2 minutes to it: 607; 2 to the taps and
    // 6 of washing: 615, just within the farm's quarter of an hour; 20 of food; 2 to the gate.
    expect(shortestDay(byHand())).toMatchObject({ kind: 'shortest', load: 637, leave: 647 });
    // A minute less, and one station is left for after food at 600: to 620, 5 + 10, 2 to the taps, 6, 2 to the gate.
    const small = byHand();
    const sooner = { ...small, farm: { ...small.farm, lunchSlack_min: 14 } };
    expect(shortestDay(sooner)).toMatchObject({ kind: 'shortest', load: 645, leave: 655 });
  });

  it('without food: three stations of 15 minutes, 2 to the taps, 6 of washing, 2 to the gate', () => {
    const small = byHand();
    const easy = { ...small.farm.rules['k-2'], toiletWithin_min: 120 };
    const rules = { ...small.farm.rules, 'k-2': easy };
    const day = { ...small, wish: { ...small.wish, lunch: null }, farm: { ...small.farm, rules } };
    expect(shortestDay(day)).toMatchObject({ kind: 'shortest', load: 556 + 45 + 10 });
    // With a chance for toilets within 45 minutes a pause is due: 2 to the taps, 4 minutes.
    const strict = { ...day, farm: small.farm };
    expect(shortestDay(strict)).toMatchObject({ kind: 'shortest', load: 556 + 45 + 10 + 2 + 4 });
  });

  it('is none where the milking is over too soon, and keeps within the milking where it is later', () => {
    const small = byHand();
    const milked = (from: number, to: number) =>
      shortestDay({
        ...small,
        wish: { ...small.wish, leave: 700 },
        ground: { ...small.ground, milkings: [{ from, to }] },
      });
    expect(milked(500, 580)).toEqual({ kind: 'none' });
    // Both parties see it after the food, one after the other: 625 to 645, then 10 minutes to the buses.
    expect(milked(615, 700)).toMatchObject({ kind: 'shortest', load: 655 });
  });

  it('says that it was not proven where the steps run out', () => {
    expect(shortestDay(byHand(), 3).kind).toBe('not proven');
  });

  it('takes no more than four parties and four stations', () => {
    const small = byHand();
    const stations = small.farm.stations.map(({ id }) => ({ id, for: null }));
    expect(() => shortestDay({ ...small, stations })).toThrow('2 parties at 5 stations');
  });
});

// Source of the model: open shop with disjunctions by a big number, textbook, from memory. Solver: HiGHS, npm highs.
describe('the shortest day beside HiGHS', () => {
  // The same cases each time, since a solver may take long over an unlucky one.
  const cases = fc.sample(smallCaseArb(3, 3), { numRuns: 55, seed: 7 }).filter(({ groups, stations }) => groups.length * stations.length <= 6); // prettier-ignore

  it('is the same to the minute, and none exactly where the model has no solution', () => {
    const met = { days: 0, none: 0 };
    for (const small of cases) {
      if (smallDay(small).meal === 'no seats') {
        expect(ours(small, 1)).toBe(null);
        continue;
      }
      const theirs = byHighs(small, 1);
      expect(ours(small, 1), JSON.stringify(small)).toBe(theirs);
      met[theirs === null ? 'none' : 'days'] += 1;
    }
    expect(met.days).toBeGreaterThan(15);
    expect(met.none).toBeGreaterThan(5);
  });

  it('is the same for three parties at three stations and two at four', () => {
    const shapes = [[3, 3], [2, 4]] as const; // prettier-ignore
    for (const [parties, stations] of shapes) {
      const full = fc
        .sample(smallCaseArb(parties, stations), { numRuns: 300, seed: 11 })
        .filter((one) => one.groups.length === parties && one.stations.length === stations && smallDay(one).meal !== 'no seats'); // prettier-ignore
      expect(full.length).toBeGreaterThan(5);
      for (const small of full.slice(0, 3)) expect(ours(small, 1), JSON.stringify(small)).toBe(byHighs(small, 1)); // prettier-ignore
    }
  });
});

/** When loading begins: the load slot, or where no bus comes the end of the last thing that any party does. */
function loadOf(day: DayPlan): number {
  return Math.max(
    ...day.parties.map((slots) => {
      const last = slots.findLast(({ kind }) => kind !== 'wait');
      return last?.kind === 'load' ? last.from : (last?.to ?? 0);
    }),
  );
}

describe('the shortest day of random small groups', () => {
  it('keeps every rule, and the loop is never shorter', () => {
    const met = { same: 0, shorter: 0, unproven: 0 };
    fc.assert(
      fc.property(tripArb({ children: 60, stations: 4 }, true), (asked) => {
        const plan = planTrip(asked.wish, asked.farm, asked.ground, 'without ways');
        if (!plan.ok || plan.day.manner !== 'loop' || plan.day.stations.length > 4) return;
        const { day, notes } = plan;
        const fors = new Map(day.parties.flat().map((slot) => [slot.station, slot.for]));
        const stations = day.stations.map((id) => ({ id, for: fors.get(id) ?? null }));
        const found = shortestDay({ ...asked, groups: day.groups, spare: day.spare, stations }, 15_000);
        if (found.kind === 'not proven') return void (met.unproven += 1);
        // A pause after the last washing, or more than two on a side of the meal, is not among the days that it is the least of.
        if (day.parties.some(hasLatePause)) return;
        if (found.kind === 'none') throw new Error('There is none, but the loop is one.');
        expect(found.load).toBeLessThanOrEqual(loadOf(day));
        met[found.load < loadOf(day) ? 'shorter' : 'same'] += 1;
        const wish = { ...asked.wish, leave: found.leave };
        const washes = found.day.parties.flat().some(({ kind }) => kind === 'wash');
        const own = notes.filter(({ kind }) => washes || kind !== 'wash by party');
        expect(brokenRules({ ...asked, wish, day: found.day, notes: own })).toEqual([]);
      }),
      { numRuns: 400 },
    );
    expect(met.shorter).toBeGreaterThan(50);
    expect(met.unproven).toBeLessThan(20);
  });
});

function hasLatePause(slots: DayPlan['parties'][number]): boolean {
  const wash = slots.findLastIndex(({ kind }) => kind === 'wash');
  const meal = slots.findLastIndex(({ kind }) => kind === 'lunch');
  const pauses = (some: typeof slots) => some.filter(({ kind }) => kind === 'toilets').length;
  const before = pauses(slots.slice(0, Math.max(0, meal))) - 1;
  const after = pauses(slots.slice(Math.max(0, meal)));
  const isLate = wash > meal && pauses(slots.slice(wash)) > 0;
  // Without a meal the first chance counts among those after it, and there may be twice as many pauses.
  return isLate || (meal < 0 ? after > 5 : before > 2 || after > 2);
}
