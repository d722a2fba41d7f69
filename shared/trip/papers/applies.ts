// Which papers a visit needs, and what of its day the papers depend on.
import type { Slot, Station, TripNote } from '../types.ts';
import { PAPER_NAMES, type PaperName, type TripCase } from './types.ts';

type RainNote = Extract<TripNote, { why: string }>;

/** The stations of a visit's day as the farm describes them, in the order of the loop. */
export function stationsOfDay({ day, farm }: TripCase): readonly Station[] {
  return day.stations.flatMap((id) => farm.stations.filter((one) => one.id === id));
}

/** Whether the group sees a doe milked. */
export function seesMilking(trip: TripCase): boolean {
  return stationsOfDay(trip).some(({ milking }) => milking);
}

/** Whether the group comes to where animals are. */
export function meetsAnimals(trip: TripCase): boolean {
  return stationsOfDay(trip).some(({ zone }) => zone === 'animal');
}

/** Whether rain changes the day: a station under the open sky is part of it, or has given way for rain. */
export function rainMatters(trip: TripCase): boolean {
  if (!trip.wish.rain) return stationsOfDay(trip).some(({ roofed }) => !roofed);
  return rainNotes(trip).length > 0;
}

/** What rain alone changes: a station that a dry day has not either, say for a wheelchair, is none of it. */
export function rainNotes({ wish, notes, otherWeather, day }: TripCase): RainNote[] {
  const dry = wish.rain ? (otherWeather.ok ? otherWeather.day : null) : day;
  return (wish.rain ? notes : otherWeather.notes)
    .filter((note): note is RainNote => 'why' in note && note.why === 'rain')
    .filter(({ station }) => dry?.stations.includes(station) ?? true);
}

/** Whether medicine may have to be at hand: an allergy has an auto-injector as asthma has an inhaler. */
export function carriesMedicine({ wish }: TripCase): boolean {
  return wish.needs.some((need) => need === 'milk-allergy' || need === 'asthma' || need === 'medicine');
}

/** Every slot of the day, party after party. */
export function slotsOfDay({ day }: TripCase): readonly Slot[] {
  return day.parties.flat();
}

/** Whether a slot of this kind is part of the day. */
export function hasSlot(trip: TripCase, kind: Slot['kind']): boolean {
  return slotsOfDay(trip).some((slot) => slot.kind === kind);
}

const APPLIES: Readonly<Partial<Record<PaperName, (trip: TripCase) => boolean>>> = {
  rain: rainMatters,
  stations: ({ day }) => day.stations.length > 0,
  hygiene: (trip) => meetsAnimals(trip) || hasSlot(trip, 'wash'),
};

/** The papers that a visit needs, in the order of the pack; the others have nothing to say about it. */
export function papersFor(trip: TripCase): PaperName[] {
  return PAPER_NAMES.filter((name) => APPLIES[name]?.(trip) ?? true);
}
