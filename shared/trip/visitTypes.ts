// What else a trip is made from: the herd over the coming year, the texts of stations, the farm's contact, visits on file.
import type { PhaseSpan } from '../herd/expected.ts';
import type { MilkingTime } from '../herd/types.ts';
import type { Band } from '../quantity/grade.ts';
import type { Basis } from '../year/nextKidding.ts';
import type { Span, TripWish } from './types.ts';

/** A doe as a trip sees her. Days are day numbers. */
export interface SeasonDoe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly spans: readonly PhaseSpan[];
  /** Days of her kiddings on record, also those dated ahead, in order. */
  readonly kiddings: readonly number[];
  /** Her next kidding, and what that day rests on; null where none can be told. */
  readonly due: {
    readonly day: number;
    readonly from: number;
    readonly to: number;
    readonly basis: Basis;
  } | null;
  /** Set where the book tells too little: milk but no kidding, or milkings expected and nothing written down for weeks. */
  readonly quiet?: boolean;
}

/** Milk of the whole herd on a day, L: the middle of what is expected and its 80 % range. */
export type SeasonMilk = readonly [middle_L: number, low_L: number, high_L: number];

/** The herd over the coming year, as plain JSON that a page can carry. */
export interface TripSeason {
  /** Day number that the book speaks from. */
  readonly asOf: number;
  /** The unit in which the farm's pages tell milk, and what its jar holds. */
  readonly unit: 'cup' | 'L';
  readonly jar_mL: number;
  /** The clock spans in which does are milked and may be watched, where they are due. */
  readonly milkings: Readonly<Record<MilkingTime, Span>>;
  /** The span in which the farm does its morning milking where visitors come to see it; absent where it keeps to its hours. */
  readonly shownMilking?: Span;
  readonly does: readonly SeasonDoe[];
  /** By days after `asOf`, the first for the day after it; null where the outlook tells none. */
  readonly milk: readonly (SeasonMilk | null)[];
}

/** A question that a station's card tells its helper to ask, and what to answer. */
export interface StationAsk {
  readonly ask: string;
  readonly answer: string;
}

/** The texts of a station in one language, from `content/stations`. */
export interface StationText {
  readonly id: string;
  readonly name: string;
  /** One sentence for the teacher: what a group does there. */
  readonly does: string;
  /** What the helper says, by band, two to five sentences each. */
  readonly say: Readonly<Record<Band, readonly string[]>>;
  readonly ask: Readonly<Record<Band, readonly StationAsk[]>>;
  /** What to look out for there: animals, hands, steps. */
  readonly care: readonly string[];
  /** What lies ready there. */
  readonly ready: readonly string[];
}

/** Whom a teacher writes to, and what an emergency sheet needs; empty where the farm has not said. */
export interface TripContact {
  readonly name: string;
  readonly place: string;
  readonly email: string;
  readonly phone: string;
  /** The address that an ambulance is told, and the gate. */
  readonly address: string;
  readonly gate: string;
  readonly hospital: string;
  /** Emergency number of the country. */
  readonly emergency: string;
  readonly veterinarian: string;
  /** Where others open these pages, `https://…/`; for links on paper that is printed on the farm's own machine. */
  readonly site?: string;
}

/** How far a visit has come. */
export const VISIT_STATES = Object.freeze(['asked', 'agreed', 'held', 'called off'] as const);
/** One of them. */
export type VisitState = (typeof VISIT_STATES)[number];

/** A visit on file, from `visits/` in the farm folder. */
export interface Visit {
  /** File below `visits/`. */
  readonly file: string;
  /** The school, or a code for it. */
  readonly school: string;
  readonly state: VisitState;
  readonly wish: TripWish;
  readonly note: string;
}
