// What the page of the Trip plan hands to its browser part.
import type { Words } from '../words/words.ts';
import type { TripFarm } from './types.ts';
import type { StationText, TripContact, TripSeason } from './visitTypes.ts';
import type { TakenSpan } from './visits/taken.ts';

/** A station as a teacher picks it: what its helper says stays at the farm. */
export type StationSign = Pick<StationText, 'id' | 'name' | 'does'>;

/** What the page hands over and carries to the browser, as JSON. */
export interface TripProps {
  readonly farm: TripFarm;
  readonly season: TripSeason;
  readonly stations: readonly StationSign[];
  readonly contact: TripContact;
  /** When other groups are on the farm. */
  readonly taken: readonly TakenSpan[];
  readonly words: Words;
  /** Addresses of the pack, and of the farm's calendar. */
  readonly packHref: string;
  readonly visitsHref: string;
}
