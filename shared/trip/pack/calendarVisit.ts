// A visit with all that its calendar file needs, for the page and the command alike.
import type { TripCase } from '../papers/types.ts';
import type { StationText } from '../visitTypes.ts';
import { say, type Words } from '../../words/words.ts';
import type { FarmZone } from './bundle.ts';
import { calendarEntries, type CalendarEntry } from './calendarEvents.ts';

/** What a calendar file is made of. */
export interface CalendarVisit {
  readonly entries: readonly CalendarEntry[];
  /** ISO date of all entries. */
  readonly date: string;
  /** The calendar's name. */
  readonly name: string;
  /** Where the farm lies; empty where it has not said. */
  readonly place: string;
  /** The page of the trip; null where it has no address that others can open. */
  readonly page: string | null;
  readonly zone: FarmZone;
  /** When the file was made, ms since 1970 UTC. */
  readonly made_ms: number;
}

/** Whether a date lies in the years whose clock changes are known. */
export function isInZone(date: string, { firstYear, lastYear }: FarmZone): boolean {
  const year = Number(date.slice(0, 4));
  return year >= firstYear && year <= lastYear;
}

/** The visit of a case for its calendar file. */
export function calendarVisit(from: {
  readonly trip: TripCase;
  /** Words under `trip-pack`. */
  readonly words: Words;
  readonly stations: readonly StationText[];
  readonly zone: FarmZone;
  readonly page: string | null;
  readonly made_ms: number;
}): CalendarVisit {
  const { trip, words, stations, zone, page, made_ms } = from;
  const { wish, day, farmName, contact } = trip;
  const names = Object.fromEntries(stations.map(({ id, name }) => [id, name]));
  return {
    entries: calendarEntries(wish, day, { words, names, farm: farmName, page }),
    date: wish.date,
    name: say(words, 'trip-pack.calendar.name', { farm: farmName }),
    place: contact.address === '' ? farmName : contact.address,
    page,
    zone,
    made_ms,
  };
}
