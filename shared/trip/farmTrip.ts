// What a farm says about visits: its thresholds and stations, the milking that it keeps for visitors, whom to ask.
import type { Span, TripFarm } from './types.ts';
import type { TripContact } from './visitTypes.ts';

/** The parts of `farm.yaml` that a trip is planned from; what the farm leaves out is the usual. */
export interface FarmTrip {
  readonly farm: TripFarm;
  /** When the farm milks for visitors, instead of early in the morning; null where it keeps to its hours. */
  readonly shownMilking: Span | null;
  readonly contact: TripContact;
}

/** The contact of a farm that has not said whom to write to. */
export const NO_CONTACT: TripContact = Object.freeze({
  name: '',
  place: '',
  email: '',
  phone: '',
  address: '',
  gate: '',
  hospital: '',
  emergency: '',
  veterinarian: '',
});
