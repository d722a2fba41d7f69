// Visits with their day as the papers read them, and texts for whatever stations a farm has.
import { planTrip } from '../../shared/trip/planTrip.ts';
import type { PaperTongue, TripCase } from '../../shared/trip/papers/types.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import type { DayGround, TripFarm, TripWish } from '../../shared/trip/types.ts';
import type { StationText, TripContact } from '../../shared/trip/visitTypes.ts';
import { wordsOf } from '../../src/site/words.ts';
import type { Asked } from './randomTrip.ts';

/** A contact that has said everything. */
export const CONTACT: TripContact = {
  name: 'Una Fairweather',
  place: 'Alder Bend',
  email: 'visits@alderbend.example',
  phone: '608-555-0111',
  address: '12 Mill Lane',
  gate: 'the green gate',
  hospital: 'Alder Hospital',
  emergency: '911',
  veterinarian: '608-555-0112',
};

const ROOMY = { taps: 10, toilets: 10, busesAtOnce: 2, seats: 140 };
/** A farm whose stations lie so far apart that a stand-in moves all times. */
export const FAR_FARM: TripFarm = { ...USUAL_FARM, ...ROOMY };
/** The same, all in one place. */
const FARM: TripFarm = {
  ...FAR_FARM,
  stations: FAR_FARM.stations.map((station) => ({ ...station, walk_min: 0 })),
};
const WISH: TripWish = {
  date: '2026-05-27',
  grade: 2,
  children: 40,
  adults: 8,
  arrive: 570,
  leave: 900,
  buses: 1,
  lunch: 720,
  stations: ['goat-barn', 'pasture-rail', 'barn-board', 'measuring-table'],
  needs: [],
  rain: false,
  word: 'fern',
};
const GROUND: DayGround = {
  milkings: [{ from: 570, to: 760 }],
  noMilking: null,
  doesDue: 6,
  kiddingNear: false,
};

/** The case of a wish; null where there is no such day. */
export function caseOf({ wish, farm, ground }: Asked, contact: TripContact = CONTACT): TripCase | null {
  const plan = planTrip(wish, farm, ground);
  if (!plan.ok) return null;
  const otherWeather = planTrip({ ...wish, rain: !wish.rain }, farm, ground);
  return { wish, farm, ground, day: plan.day, notes: plan.notes, otherWeather, contact, farmName: 'Alder Bend Dairy', school: '' }; // prettier-ignore
}

/** A day of four stations that can be, with changes. Throws where the changes make it impossible. */
export function paperCase(
  wish: Partial<TripWish> = {},
  ground: Partial<DayGround> = {},
  contact: TripContact = CONTACT,
  farm: TripFarm = FARM,
): TripCase {
  const made = caseOf({ wish: { ...WISH, ...wish }, farm, ground: { ...GROUND, ...ground } }, contact);
  if (!made) throw new Error('There is no such day.');
  return made;
}

const by = <T>(value: T) => ({ 'k-2': value, '3-5': value, '6-8': value, '9-12': value });

/** The language with texts for every station of a farm, each of them told apart by its id. */
export function tongueOf(lang: string, farm: TripFarm): PaperTongue {
  const stations = farm.stations.map(({ id }): StationText => ({
    id,
    name: `<${id}>`,
    does: `does ${id}`,
    say: by([`say ${id}`]),
    ask: by([{ ask: `ask ${id}`, answer: `answer ${id}` }]),
    care: [`care ${id}`],
    ready: [`ready ${id}`],
  }));
  return { words: wordsOf(lang), stations, expect: [] };
}
