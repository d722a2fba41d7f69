// A school's day worked out by hand beside it, and what closes stations, shows a milking, divides children and washing.
import { describe, expect, it } from 'vitest';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import { usesOf } from '../../../shared/trip/visits/uses.ts';
import type { DayGround, DayPlan, TripFarm, TripNote, TripWish } from '../../../shared/trip/types.ts';
import { USUAL_FARM } from '../../../shared/trip/usualRules.ts';
import { clockText } from '../../../shared/lesson/clock.ts';
import { TEST_FARM, TEST_GROUND, testWish } from '../../support/tripFarm.ts';

const ROOMY: TripFarm = {
  ...TEST_FARM,
  seats: 64,
  stations: TEST_FARM.stations.map((station) => ({ ...station, capacity: 24 })),
};
const RAINY: Partial<TripWish> = {
  children: 54,
  adults: 7,
  buses: 2,
  stations: ['goat-barn', 'pasture-rail', 'measuring-table'],
  needs: ['wheelchair'],
  rain: true,
};

function planned(wish: TripWish, farm: TripFarm = TEST_FARM, ground: DayGround = TEST_GROUND) {
  const plan = planTrip(wish, farm, ground);
  if (!plan.ok) throw new Error(JSON.stringify(plan.whys));
  return plan;
}

const told = (day: DayPlan, party: number) =>
  day.parties[party]!.map(({ kind, from, station }) => `${clockText(from)} ${station ?? kind}`);
const kinds = (notes: readonly TripNote[]) => notes.map(({ kind }) => kind);

describe('54 second graders with 7 adults and two buses, a wheelchair and rain, food at 11:45', () => {
  const { day, notes } = planned(testWish(RAINY), ROOMY);

  it('walk in seven groups of 7 and 8, one adult each, since one adult has 8 at most and none is kept free below 60', () => {
    expect(day.groups.map(({ children }) => children)).toEqual([8, 7, 7, 8, 8, 8, 8]);
    expect(day.groups.every(({ adults }) => adults === 1)).toBe(true);
    expect(day.spare).toBe(0);
    // Seven groups at three stations: three parties, of which the one with three groups has the small ones (22 children).
    expect(day.groups.map(({ party }) => party)).toEqual([0, 0, 0, 1, 1, 2, 2]);
    expect(day.groups.filter(({ wheelchair }) => wheelchair).map(({ id }) => id)).toEqual([1]);
    expect(notes).toContainEqual({ kind: 'few adults', perAdult: 8, aim: 6 });
  });

  it('have the day that is reckoned here by hand', () => {
    // Unloading 2 × 10 min, to the gate 3, welcome 8; toilets ceil(54 / 8) × 90 s = 630 s, so 11 min; it is 10:12.
    // A change is a head count of 3 and the longest walk of 4 (barn to loft, past the rail), so 7; a station takes 15.
    // After two rounds it is 10:56. The third would end at 11:18, at the taps 11:20: more than 60 min after 10:12.
    // So a pause: 2 to walk, 630 + 75 s = 12 min for toilets. Round three ends 11:32, 2 to walk.
    // Washing ceil(61 / 8) × 75 s × 1.2 = 720 s = 12 min, just short enough to be done together. Food 11:46 to 12:16.
    // Back: 3 to walk, 20 to load, 5 to spare before 13:00.
    expect(told(day, 0)).toEqual([
      '9:30 unload',
      '9:50 walk',
      '9:53 welcome',
      '10:01 toilets',
      '10:12 goat-barn',
      '10:19 goat-barn',
      '10:34 hay-loft',
      '10:41 hay-loft',
      '10:56 walk',
      '10:58 toilets',
      '11:10 measuring-table',
      '11:17 measuring-table',
      '11:32 walk',
      '11:34 wash',
      '11:46 lunch',
      '12:16 wait',
      '12:32 walk',
      '12:35 load',
      '12:55 wait',
    ]);
    expect(told(day, 2)[4]).toBe('10:12 measuring-table');
    expect(day).toMatchObject({ roundsBefore: 3, manner: 'loop', wash_min: 12 });
    expect(day.stations).toEqual(['goat-barn', 'hay-loft', 'measuring-table']);
  });

  it('see the hay loft instead of the pasture rail, and are told so', () => {
    expect(notes).toContainEqual({ kind: 'stand-in', station: 'pasture-rail', by: 'hay-loft', why: 'rain' });
    const loft = day.parties.flat().filter(({ station }) => station === 'hay-loft');
    expect(loft.every((slot) => slot.for === 'pasture-rail')).toBe(true);
  });

  it('use places party by party, and those kept free wash and eat with the first', () => {
    const visit = {
      file: 'visits/one.yaml',
      school: '',
      state: 'agreed',
      wish: testWish(RAINY),
      note: '',
    } as const;
    const uses = usesOf({ visit, plan: { ok: true, day, notes } }, ROOMY);
    expect(uses.filter(({ kind }) => kind === 'station')).toHaveLength(9);
    expect(uses.find(({ kind }) => kind === 'toilets')).toMatchObject({
      from: 601,
      to: 612,
      children: 22,
      people: 25,
    });
    expect(uses.filter(({ kind }) => kind === 'seats').map(({ people }) => people)).toEqual([25, 18, 18]);
  });

  it('wash party by party where the farm wants no more than 11 minutes of it', () => {
    const turns = planned(testWish({ ...RAINY, leave: 14 * 60 }), { ...ROOMY, washTogether_min: 11 });
    expect(turns.notes).toContainEqual({ kind: 'wash by party', minutes: 12 });
    // 25, 18 and 18 people: ceil(25 / 8) = 4 turns of 90 s are 6 min, ceil(18 / 8) = 3 turns 4.5, so 5 min.
    const washes = turns.day.parties.map((slots) => slots.find(({ kind }) => kind === 'wash')!);
    expect(washes.map(({ from, to }) => to - from)).toEqual([6, 5, 5]);
    expect(washes[1]!.from).toBe(washes[0]!.to);
    expect(washes[2]!.from).toBe(washes[1]!.to);
    // One party alone washes after nobody.
    const alone = planned(
      testWish({ ...RAINY, leave: 15 * 60, children: 16, adults: 3, stations: ['goat-barn'] }),
      { ...ROOMY, washTogether_min: 1 },
    );
    expect(alone.day.parties).toHaveLength(1);
    expect(alone.notes.map(({ kind }) => kind)).not.toContain('wash by party');
  });
});

describe('stations of a day', () => {
  const barn = TEST_FARM.stations[0]!;
  const [MILK, STAND] = ['milking-stand', 'practice-stand'];
  const farm: TripFarm = {
    ...TEST_FARM,
    stations: [
      { ...barn, id: MILK, milking: true, touch: false, standIn: STAND },
      ...TEST_FARM.stations,
      { ...barn, id: STAND, zone: 'clean', touch: false },
    ],
  };
  const wish = testWish({ children: 8, adults: 2, stations: [MILK, 'goat-barn'], leave: 840 });
  const milkedFrom = (from: number, to: number): DayGround => ({
    ...TEST_GROUND,
    milkings: [{ from, to }],
    noMilking: null,
  });

  it('show a milking where one is due while the group is here', () => {
    const { day, notes } = planned(wish, farm, milkedFrom(585, 720));
    expect(day.stations).toEqual([MILK, 'goat-barn']);
    expect(notes).toEqual([]);
    const seen = day.parties.map((slots) =>
      slots.find(({ station, kind }) => station === MILK && kind === 'station')!,
    );
    expect(seen.every(({ from, to }) => from >= 585 && to <= 720)).toBe(true);
  });

  it('wait up to half an hour for a milking', () => {
    const at = (plan: { day: DayPlan }) => plan.day.parties[0]!.find(({ station, kind }) => station === MILK && kind === 'station')!; // prettier-ignore
    const soon = at(planned(wish, farm, milkedFrom(585, 720))).from;
    expect(at(planned(wish, farm, milkedFrom(soon + 20, 720))).from).toBe(soon + 20);
    expect(planned(wish, farm, milkedFrom(soon + 31, 720)).day.stations).not.toContain(MILK);
  });

  it('show the stand-in and tell the hours where the milking is at another time, or where no doe is milked', () => {
    const other = planned(wish, farm, milkedFrom(390, 480));
    expect(kinds(other.notes).slice(0, 2)).toEqual(['milking at another time', 'stand-in']);
    expect(other.day.stations).toEqual(['goat-barn', STAND]);
    const dry = planned(wish, farm);
    expect(kinds(dry.notes)[0]).toBe('stand-in');
  });

  it('leave out what has no stand-in, or whose stand-in is taken', () => {
    const rain = { stations: ['pasture-rail', 'hay-loft', 'goat-barn'], rain: true, leave: 840 };
    const { day, notes } = planned(testWish(rain));
    expect(notes).toContainEqual({ kind: 'left out', station: 'pasture-rail', why: 'rain' });
    expect(day.stations).toEqual(['goat-barn', 'hay-loft']);
  });

  it('follow a chain of stand-ins, and do not run in a ring', () => {
    const ring = ROOMY.stations.map((one) =>
      one.id === 'hay-loft' ? { ...one, roofed: false, standIn: 'pasture-rail' } : one,
    );
    const { notes } = planned(testWish({ stations: ['pasture-rail', 'goat-barn'], rain: true, leave: 840 }), {
      ...ROOMY,
      stations: ring,
    });
    expect(notes).toContainEqual({ kind: 'left out', station: 'pasture-rail', why: 'rain' });
    const chain = ring.map((one) => (one.id === 'hay-loft' ? { ...one, standIn: 'measuring-table' } : one));
    const led = planned(testWish({ stations: ['pasture-rail', 'goat-barn'], rain: true, leave: 840 }), {
      ...ROOMY,
      stations: chain,
    });
    expect(led.notes).toContainEqual({
      kind: 'stand-in',
      station: 'pasture-rail',
      by: 'measuring-table',
      why: 'rain',
    });
  });

  it('are chosen by the farm where the group chooses none, fewer where time is short', () => {
    const long = planned(testWish({ leave: 840 }));
    expect(long.notes).toContainEqual({ kind: 'farm chose', stations: TEST_FARM.usual['k-2'] });
    const short = planned(testWish({ leave: 11 * 60 + 30, lunch: null }));
    expect(short.notes).toContainEqual({ kind: 'farm chose', stations: ['goat-barn', 'pasture-rail'] });
  });

  it('are more than the usual ones where those have no room for so many children', () => {
    // Three stations hold 48 children, 16 at each; 60 need a fourth, which is the one that is not usual.
    const { notes, day } = planned(testWish({ children: 60, adults: 11, leave: 960, lunch: null }));
    expect(notes).toContainEqual({ kind: 'farm chose', stations: [...TEST_FARM.usual['k-2'], 'hay-loft'] });
    expect(day.stations).toHaveLength(4);
    expect(planned(testWish({ children: 48, adults: 8, leave: 960, lunch: null })).day.stations).toHaveLength(
      3,
    );
  });
});

describe('few parties', () => {
  it('keep their own time where the loop does not fit', () => {
    // Two parties, four stations of 10, 10, 10 and 30 min: in step the rounds take 10 + 10 + 30 + 30 = 80, apart 60.
    const stations = TEST_FARM.stations.map((one, at) => ({
      ...one,
      minutes: { ...one.minutes, '6-8': at === 3 ? 30 : 10 },
    }));
    // Two hours and a half without a toilet are allowed here, so that no pause is in the sum.
    const rules = { ...TEST_FARM.rules, '6-8': { ...TEST_FARM.rules['6-8'], toiletWithin_min: 150 } };
    const farm = { ...TEST_FARM, stations, rules };
    // Grade 6: one bus of 6 min, walk 3, welcome 6, toilets ceil(16 / 8) × 60 s = 2; it is 9:47. Four changes of a head
    // count of 1 and the longest walk of 2 are 12. After the animals 2 to the taps, washing ceil(18 / 8) × 50 s × 1.2
    // = 3; then 3 to walk, 6 to load, 5 to spare: 17 + 12 + 2 + 3 + 14 = 48 beside the stations.
    const asked = { children: 16, adults: 2, grade: 6, lunch: null, stations: stations.map(({ id }) => id) } as const;
    const until = (minutes: number) => planTrip(testWish({ ...asked, leave: 570 + minutes }), farm, TEST_GROUND);
    const inStep = until(48 + 80);
    expect(inStep.ok && inStep.day.manner).toBe('loop');
    const apart = until(48 + 79);
    expect(apart.ok && apart.day.manner).toBe('own');
    expect(until(48 + 59).ok).toBe(false);
  });
}); // prettier-ignore

describe('an address that asks for a night on the farm', () => {
  it('is answered soon, however many pauses there could be before its food', () => {
    const wish = testWish({
      grade: 7,
      children: 3,
      adults: 2,
      arrive: 0,
      leave: 1439,
      buses: 12,
      lunch: 1439,
      stations: [],
    });
    const start_ms = performance.now();
    const plan = planTrip(
      wish,
      USUAL_FARM,
      { ...TEST_GROUND, milkings: [{ from: 1066, to: 1210 }] },
      'without ways',
    );
    // It was once a second and more, and is some tens of milliseconds; a busy machine has its time.
    expect(performance.now() - start_ms).toBeLessThan(400);
    expect(plan.ok ? [] : plan.whys.map(({ kind }) => kind)).toEqual(['time', 'lunch']);
  });
});
