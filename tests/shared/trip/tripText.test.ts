// What the Trip plan says, for every kind of reason, change and note, in both languages.
import { describe, expect, it } from 'vitest';
import { dayTotals, roundStarts, stationsAt } from '../../../shared/trip/dayTotals.ts';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import {
  changeText,
  groupsText,
  slotText,
  tripNoteText,
  wayText,
  whyText,
  wishText,
} from '../../../shared/trip/tripText.ts';
import type { TripChange, TripNote, TripWhy } from '../../../shared/trip/types.ts';
import { wordsOf } from '../../../src/site/words.ts';
import { TEST_FARM, TEST_GROUND, TEST_SIGNS, testWish } from '../../support/tripFarm.ts';

const tongueOf = (lang: string) => ({ words: wordsOf(lang), stations: TEST_SIGNS });
const wish = testWish();

const WHYS: readonly TripWhy[] = [
  { kind: 'wish', field: 'leave' },
  { kind: 'wish', field: 'lunch' },
  { kind: 'wish', field: 'children' },
  { kind: 'no station' },
  { kind: 'adults', is: 5, needs: 7, most: 8 },
  { kind: 'capacity', station: 'goat-barn', is: 16, needs: 18 },
  { kind: 'time', is_min: 210, needs_min: 232 },
  { kind: 'lunch', at: 705, earliest: 735 },
  { kind: 'lunch', at: 705, earliest: null },
  { kind: 'seats', is: 60, needs: 72 },
  { kind: 'toilets', within_min: 60, longest_min: 75 },
];
const CHANGES: readonly TripChange[] = [
  { kind: 'adults', more: 2 },
  { kind: 'longer', minutes: 15, end: 'leave' },
  { kind: 'longer', minutes: 15, end: 'arrive' },
  { kind: 'lunch', at: 735 },
  { kind: 'lunch', at: null },
  { kind: 'without', station: 'pasture-rail' },
  { kind: 'fewer children', children: 40 },
  { kind: 'taps', more: 1 },
  { kind: 'toilets', more: 2 },
];
const STAND_INS = (['rain', 'no milking', 'kidding', 'wheelchair'] as const).flatMap((why): TripNote[] => [
  { kind: 'stand-in', station: 'pasture-rail', by: 'hay-loft', why },
  { kind: 'left out', station: 'pasture-rail', why },
]);
const NOTES: readonly TripNote[] = [
  ...STAND_INS,
  { kind: 'milking at another time', milkings: [{ from: 1050, to: 1100 }] },
  { kind: 'few adults', perAdult: 7.7, aim: 6 },
  { kind: 'wash by party', minutes: 14.2 },
  { kind: 'farm chose', stations: ['goat-barn', 'hay-loft'] },
];

describe.each(['en', 'es'])('in %s', (lang) => {
  const tongue = tongueOf(lang);

  it('every reason, change and note is a sentence of its own without a hole', () => {
    const said = [
      ...WHYS.map((why) => whyText(tongue, why, wish)),
      ...CHANGES.map((change) => changeText(tongue, change, wish)),
      ...NOTES.map((note) => tripNoteText(tongue, note)),
    ];
    expect(new Set(said).size).toBe(said.length);
    expect(said.filter((text) => /[{}]|undefined|NaN|\.\./.test(text) || text.length < 8)).toEqual([]);
  });
});

describe('in words', () => {
  it('a reason has its numbers, and a change the clock that it leads to', () => {
    const tongue = tongueOf('en');
    const asked = { ...wish, children: 54 };
    expect(WHYS.map((why) => whyText(tongue, why, asked))).toMatchInlineSnapshot(`
      [
        "The buses leave before they have arrived, or at the same minute.",
        "The food is wished for at 11:45 AM, when the group is not on the farm.",
        "The field “Children” cannot be as it is.",
        "None of these stations can be visited on this day.",
        "7 adults are needed to lead the groups; you have 5. No adult leads more than 8 children of this grade.",
        "The goat-barn has room for 16 children at a time; 18 would come at once.",
        "All that you wish for takes 3 h 52 min; you are here for 3 h 30 min.",
        "Food was to begin at 11:45 AM. With clean hands it can begin at 12:15 PM at the earliest.",
        "Food was to begin at 11:45 AM. That cannot be done within this day.",
        "There are seats for 60 who eat at once; 72 would have to.",
        "Once, 75 minutes would pass between two chances for the toilet. For this grade it should be 60 at most.",
      ]
    `);
    expect(CHANGES.map((change) => changeText(tongue, change, wish))).toMatchInlineSnapshot(`
      [
        "2 adults more",
        "Leave 15 minutes later, at 1:15 PM",
        "Arrive 15 minutes earlier, at 9:15 AM",
        "Food not before 12:15 PM",
        "Eat somewhere else, before or after",
        "Leave out: The pasture-rail",
        "Come with 40 children",
        "1 tap more",
        "2 toilets more",
      ]
    `);
  });

  it('the adults are asked for by what truly asks for them', () => {
    const tongue = tongueOf('en');
    const told = (children: number, adults: number) => {
      const asked = testWish({ children, adults });
      const plan = planTrip(asked, TEST_FARM, TEST_GROUND);
      const why = plan.ok ? undefined : plan.whys.find(({ kind }) => kind === 'adults');
      return why && whyText(tongue, why, asked);
    };
    // Two adults on any visit, one free from sixty children on, eight second-graders an adult: the farm's rules.
    expect(told(1, 1)).toBe('However small the group, 2 adults come along; you have 1.');
    expect(told(24, 2)).toMatch(/^3 adults are needed to lead the groups; you have 2\./);
    expect(told(64, 8)).toMatch(/^9 adults are needed, with those who lead no group .*; you have 8\./);
  });

  it('a station that is too small asks for more stations than are chosen, and no fewer than give each party room', () => {
    const told = (stations: readonly string[], children: number, adults: number) => {
      const asked = testWish({ stations, children, adults, leave: 900 });
      const plan = planTrip(asked, TEST_FARM, TEST_GROUND);
      return plan.ok ? 'works' : plan.whys.map((why) => whyText(tongueOf('en'), why, asked)).join(' ');
    };
    // Sixteen have room: 40 children are three parties.
    expect(told(['goat-barn'], 40, 6)).toContain('Choose 3 stations or more');
    expect(told(['goat-barn', 'hay-loft'], 40, 6)).toContain('Choose 3 stations or more');
    expect(told(['goat-barn', 'hay-loft', 'measuring-table'], 40, 6)).toBe('works');
    // Seven groups at three stations are three groups at one of them: 22 or 23 children.
    expect(told(['goat-barn', 'hay-loft', 'measuring-table'], 54, 7)).toContain('Choose 4 stations or more');
  });

  it('a change of more than an hour is told in hours', () => {
    const later = (minutes: number) =>
      changeText(tongueOf('en'), { kind: 'longer', minutes, end: 'leave' }, wish);
    expect(later(108)).toBe('Leave 1 h 48 min later, at 2:48 PM');
    expect(later(60)).toBe('Leave 1 h later, at 2:00 PM');
  });

  it('two changes are one sentence', () => {
    expect(
      wayText(tongueOf('en'), { changes: [CHANGES[0] as TripChange, CHANGES[1] as TripChange] }, wish),
    ).toBe('2 adults more, and leave 15 minutes later, at 1:15 PM');
  });

  it('a wish names its weekday', () => {
    expect(wishText(wordsOf('en'), wish)).toBe(
      'Thursday, May 28, 2026 · Grade 2 · 24 children · 4 adults · 9:30 AM to 1:00 PM',
    );
    expect(wishText(wordsOf('es'), { ...wish, rain: true })).toMatch(
      /^Jueves, 28 de mayo de 2026 · .* · planeado para lluvia$/,
    );
  });

  it('groups are named alone and together', () => {
    expect(groupsText(wordsOf('en'), [{ id: 3 }])).toBe('Group 3');
    expect(groupsText(wordsOf('es'), [{ id: 1 }, { id: 2 }])).toBe('Grupos 1 y 2');
  });
});

describe('the numbers of a day', () => {
  const plan = planTrip(testWish({ children: 48, adults: 9, leave: 840 }), TEST_FARM, TEST_GROUND);
  if (!plan.ok) throw new Error(JSON.stringify(plan.whys));
  const { day } = plan;

  it('count everybody, the first food, and the least of the waits', () => {
    const totals = dayTotals(day, TEST_FARM.busSpare_min);
    expect(totals.children).toBe(48);
    expect(totals.leaders + day.spare).toBe(9);
    const food = day.parties.map((slots) => slots.find(({ kind }) => kind === 'lunch')?.from ?? Infinity);
    expect(totals.food).toBe(Math.min(...food));
    expect(totals.wash_min).toBeGreaterThanOrEqual(day.wash_min);
    expect(totals.wash_min).toBeLessThan(day.wash_min + 1);
    for (const slots of day.parties) {
      const waits = slots
        .filter(({ kind }) => kind === 'wait')
        .reduce((sum, { from, to }) => sum + to - from, 0);
      expect(totals.spare_min).toBeLessThanOrEqual(waits - TEST_FARM.busSpare_min);
    }
  });

  it('tell no food where nobody eats', () => {
    const other = planTrip(testWish({ lunch: null }), TEST_FARM, TEST_GROUND);
    expect(other.ok && dayTotals(other.day, TEST_FARM.busSpare_min).food).toBeNull();
  });

  it('have no minute to spare on the shortest day, and each minute more on a longer one', () => {
    const until = (leave: number) => planTrip(testWish({ lunch: null, leave }), TEST_FARM, TEST_GROUND);
    const stationsAll = until(780);
    if (!stationsAll.ok) throw new Error(JSON.stringify(stationsAll.whys));
    const { stations } = stationsAll.day;
    const chosen = (leave: number) =>
      planTrip(testWish({ lunch: null, leave, stations }), TEST_FARM, TEST_GROUND);
    let shortest = 780;
    while (chosen(shortest - 1).ok) shortest--;
    for (const more of [0, 1, 7]) {
      const plan = chosen(shortest + more);
      expect(plan.ok && dayTotals(plan.day, TEST_FARM.busSpare_min).spare_min).toBe(more);
    }
  });

  it('call the last minutes by what they are: nobody is free while seated on the bus', () => {
    const tongue = tongueOf('en');
    for (const slots of day.parties) {
      const texts = slots.map((slot) => slotText(tongue, slot, day));
      expect(texts.indexOf('Seated until the bus leaves')).toBe(slots.length - 1);
    }
    const afoot = planTrip(testWish({ buses: 0 }), TEST_FARM, TEST_GROUND);
    if (!afoot.ok) throw new Error(JSON.stringify(afoot.whys));
    const last = afoot.day.parties[0]!.at(-1)!;
    expect(slotText(tongue, last, afoot.day)).toBe('Time to spare');
  });

  it('tell no washing where nobody washes', () => {
    const clean = testWish({ children: 12, adults: 2, lunch: null, stations: ['measuring-table'] });
    const plan = planTrip(clean, TEST_FARM, TEST_GROUND);
    expect(plan.ok && dayTotals(plan.day, TEST_FARM.busSpare_min).wash_min).toBe(0);
  });

  it('find every party at another station at each round', () => {
    const starts = roundStarts(day);
    expect(starts).toHaveLength(day.stations.length);
    for (const start of starts) {
      const places = stationsAt(day, start);
      expect(new Set(places).size).toBe(day.parties.length);
      expect(places).not.toContain(null);
    }
  });
});
