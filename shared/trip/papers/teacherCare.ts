// The letter to the teacher: what to bring, adults, hygiene, health, access, rain, and whom to ask.
import { clockText } from '../../quantity/show.ts';
import { THUNDER_WAIT_min } from './emergency.ts';
import { carriesMedicine, hasSlot, meetsAnimals, rainMatters, stationsOfDay } from './applies.ts';
import { rainCalls } from './rainCalls.ts';
import { bandOf, dayText, listText, teller, textOf } from './tell.ts';
import { longestWalk } from '../stationsOn.ts';
import type { Need } from '../types.ts';
import type { Passage, PaperTongue, TripCase } from './types.ts';

/** A point of a passage: its key, its slots, and whether it applies. */
type Point = readonly [key: string, applies: boolean, slots?: Readonly<Record<string, string | number>>];

/** Everything from "what to bring" on. */
export function carePassages(trip: TripCase, tongue: PaperTongue): Passage[] {
  return [bring, adults, hygiene, health, access, rain].map((passage) => passage(trip, tongue));
}

function passageOf(id: string, { words }: PaperTongue, points: readonly Point[]): Passage {
  const tell = teller(words);
  return {
    id,
    title: tell(`${id}.title`),
    text: [],
    points: points.filter(([, applies]) => applies).map(([key, , slots]) => tell(`${id}.${key}`, slots)),
  };
}

function bring(trip: TripCase, tongue: PaperTongue): Passage {
  const eats = hasSlot(trip, 'lunch');
  return passageOf('bring', tongue, [
    ['shoes', true],
    ['coat', true],
    ['lunch', eats],
    ['no-lunch', !eats],
    ['tags', trip.day.groups.length > 1],
    ['cards', true],
    ['medicine', carriesMedicine(trip)],
    ['pencils', true],
    ['leave', meetsAnimals(trip)],
  ]);
}

function adults(trip: TripCase, tongue: PaperTongue): Passage {
  const { day, farm } = trip;
  const rules = farm.rules[bandOf(trip)];
  const grown = day.groups.map((group) => group.adults);
  const each = { n: Math.min(...grown), aim: rules.perAdult.aim, most: rules.perAdult.most };
  return passageOf('adults', tongue, [
    ['each', true, each],
    ['with', true],
    ['counted', true],
    ['spare', day.spare > 0, { n: day.spare }],
    ['count', true],
  ]);
}

function hygiene(trip: TripCase, tongue: PaperTongue): Passage {
  const animals = meetsAnimals(trip);
  const minutes = Math.ceil(trip.day.wash_min);
  return passageOf('hygiene', tongue, [
    ['wash', animals],
    ['time', hasSlot(trip, 'wash'), { n: minutes, taps: trip.farm.taps }],
    ['gel', animals || hasSlot(trip, 'wash')],
    ['food', animals],
    ['eat', hasSlot(trip, 'lunch')],
    ['raw', true],
    ['cuts', animals],
  ]);
}

function health(trip: TripCase, tongue: PaperTongue): Passage {
  const has = (need: Need): boolean => trip.wish.needs.includes(need);
  return passageOf('health', tongue, [
    ['milk-allergy', has('milk-allergy')],
    ['asthma', has('asthma')],
    ['medicine', has('medicine')],
    ['pregnant', has('pregnant')],
    ['immune', has('immune')],
    ['kidding', trip.ground.kiddingNear],
    ['young', trip.wish.grade === 0 && meetsAnimals(trip)],
    ['tell', meetsAnimals(trip)],
  ]);
}

/** The questions about access that the farm's own figures answer, and those that they do not. */
function access(trip: TripCase, tongue: PaperTongue): Passage {
  const { farm, wish, day } = trip;
  const stations = stationsOfDay(trip);
  const blocked = stations.filter(({ wheelchair }) => !wheelchair);
  const wheels = wish.needs.includes('wheelchair');
  const group = day.groups.find(({ wheelchair }) => wheelchair)?.id ?? 1;
  const names = blocked.map(({ id }) => textOf(tongue, id).name);
  // As the plan walks them: past the stations that this group does not visit.
  const walk = longestWalk(
    stations.map((station) => ({ station, for: null })),
    farm,
  );
  return passageOf('access', tongue, [
    ['wheelchair', wheels, { group }],
    ['all', blocked.length === 0 && !wheels],
    ['some', blocked.length > 0, { n: names.length, list: listText(names, tongue.words) }],
    ['walk', true, { n: Math.max(farm.gateWalk_min, farm.tapsWalk_min, walk) }],
    ['toilets', true, { n: farm.toilets }],
    ['seats', hasSlot(trip, 'lunch'), { n: farm.seats }],
    ['quiet', wish.needs.includes('quiet')],
    ['service', meetsAnimals(trip)],
    ['ask', true],
  ]);
}

function rain(trip: TripCase, tongue: PaperTongue): Passage {
  const { words } = tongue;
  const [first, second] = rainCalls(trip.wish).map(({ date, at }) =>
    teller(words)('rain.call', { date: dayText(date, words), at: clockText(at, words.lang) }),
  );
  const matters = rainMatters(trip);
  return passageOf('rain', tongue, [
    ['roofed', !matters && trip.day.stations.length > 0],
    ['written', trip.wish.rain && matters],
    ['plan', matters && trip.otherWeather.ok && !trip.wish.rain],
    ['none', matters && !trip.otherWeather.ok && !trip.wish.rain],
    ['calls', true, { first: first ?? '', second: second ?? '' }],
    ['who', true],
    ['thunder', true, { n: THUNDER_WAIT_min }],
  ]);
}
