// The emergency sheet: whom to call and what to say, where heads are counted, what is written down.
import type { SlotKind } from '../types.ts';
import { carriesMedicine, meetsAnimals, rainMatters } from './applies.ts';
import type { TripCase } from './types.ts';

/** Minutes without thunder before anybody goes out again. Source: US National Weather Service, lightning safety. */
export const THUNDER_WAIT_min = 30;

/** A line of the sheet: what the farm has said, or an empty text, which is a line to fill in by hand. */
export interface CallLine {
  readonly id: 'emergency' | 'address' | 'gate' | 'hospital' | 'farm' | 'veterinarian';
  readonly value: string;
}

/** When heads are counted; the words stand under `trip-papers.count`. */
export type CountPoint = 'bus' | 'gate' | 'change' | 'toilets' | 'wash' | 'lunch' | 'load' | 'leave';

/** Everything that the sheet holds but words. */
export interface EmergencySheet {
  readonly calls: readonly CallLine[];
  readonly points: readonly CountPoint[];
  readonly children: number;
  /** Adults who lead, with those kept free. */
  readonly adults: number;
  /** What to do; the words stand under `trip-papers.do`. */
  readonly steps: readonly ('hurt' | 'animal' | 'allergy' | 'missing' | 'thunder' | 'fire')[];
}

const POINT_OF: Readonly<Partial<Record<SlotKind, CountPoint>>> = {
  toilets: 'toilets',
  wash: 'wash',
  lunch: 'lunch',
};

/** The emergency sheet of a visit. */
export function emergencySheet(trip: TripCase): EmergencySheet {
  const { contact, day, wish } = trip;
  const kinds = new Set(day.parties.flat().map(({ kind }) => kind));
  const between = [...kinds].flatMap((kind) => POINT_OF[kind] ?? []);
  const steps: [EmergencySheet['steps'][number], boolean][] = [
    ['hurt', true],
    ['animal', meetsAnimals(trip)],
    ['allergy', carriesMedicine(trip)],
    ['missing', true],
    ['thunder', rainMatters(trip) || kinds.has('walk')],
    ['fire', true],
  ];
  return {
    calls: [
      { id: 'emergency', value: contact.emergency },
      { id: 'address', value: contact.address },
      { id: 'gate', value: contact.gate },
      { id: 'hospital', value: contact.hospital },
      { id: 'farm', value: [contact.name, contact.phone].filter((part) => part !== '').join(', ') },
      { id: 'veterinarian', value: contact.veterinarian },
    ],
    points: [wish.buses > 0 ? 'bus' : 'gate', 'change', ...between, wish.buses > 0 ? 'load' : 'leave'],
    children: wish.children,
    adults: wish.adults,
    steps: steps.filter(([, applies]) => applies).map(([name]) => name),
  };
}
