// What the papers of a trip's pack are made from, and the order of them that is put on the page.
import type { Paper } from '../../sheet/pageMeasures.ts';
import type { Words } from '../../words/words.ts';
import type { DayGround, DayPlan, TripFarm, TripNote, TripPlan, TripWish } from '../types.ts';
import type { StationText, TripContact } from '../visitTypes.ts';

/** The papers, in the order in which a pack holds them. */
export const PAPER_NAMES = Object.freeze([
  'teacher',
  'home',
  'timetable',
  'leaders',
  'rain',
  'stations',
  'hygiene',
  'emergency',
] as const);
/** One of them. */
export type PaperName = (typeof PAPER_NAMES)[number];

/** One visit with its day, as every paper reads it. */
export interface TripCase {
  readonly wish: TripWish;
  readonly farm: TripFarm;
  readonly ground: DayGround;
  readonly day: DayPlan;
  readonly notes: readonly TripNote[];
  /** The same wish planned again with `rain` the other way round. */
  readonly otherWeather: TripPlan;
  readonly contact: TripContact;
  readonly farmName: string;
  /** The school, or a code for it; empty leaves a line to write it on. */
  readonly school: string;
}

/** A language that papers are printed in. */
export interface PaperTongue {
  /** The words under `trip-papers`. */
  readonly words: Words;
  readonly stations: readonly StationText[];
  /** What to expect of the farm that day, in whole sentences; empty where nothing is told. */
  readonly expect: readonly string[];
}

/** A QR code as one path of dark squares on a grid of `side` by `side` units, its white border included. */
export interface QrCut {
  readonly side: number;
  readonly path: string;
}

/** What the pack hands to the papers. */
export interface PapersProps {
  /** Which papers, in order; `papersFor` gives those that apply. */
  readonly papers: readonly PaperName[];
  readonly trip: TripCase;
  /** The language of the page comes first. The hygiene board is printed in each. */
  readonly tongues: readonly PaperTongue[];
  /** Words of each language that the letter home is printed in, in order; `homeWords` gives them. */
  readonly home: readonly Words[];
  readonly paper: Paper;
  /** The address of this plan, with its code; null where the page has none that others can open. */
  readonly link: { readonly address: string; readonly qr: QrCut | null } | null;
}

/** A heading with what stands under it. */
export interface Passage {
  /** Names it for styles and tests. */
  readonly id: string;
  readonly title: string;
  /** Sentences in running text. */
  readonly text: readonly string[];
  /** Points of a list below the text. */
  readonly points: readonly string[];
}
