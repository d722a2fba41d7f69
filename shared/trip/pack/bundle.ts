// What the pack's page carries to the browser, and what it fetches: plain JSON made by the build.
import type { Lesson } from '../../lesson/types.ts';
import type { Shelf } from '../../pack/order.ts';
import type { SheetFront } from '../../sheet/plan.ts';
import type { SheetSource } from '../../tasks/context.ts';
import type { Words } from '../../words/words.ts';
import type { TripFarm, TripWish } from '../types.ts';
import type { StationText, TripContact, TripSeason } from '../visitTypes.ts';

/** The farm's clock for calendar files. */
export interface FarmZone {
  /** IANA name. */
  readonly name: string;
  /** Its VTIMEZONE for the years from the first to the last. */
  readonly text: string;
  readonly firstYear: number;
  readonly lastYear: number;
}

/** What plans a trip, apart from words: for the page, the desk and the command alike. */
export interface PackGround {
  readonly farmName: string;
  readonly farm: TripFarm;
  readonly season: TripSeason;
  readonly usual: TripWish;
  readonly contact: TripContact;
  readonly shelf: Shelf;
  readonly zone: FarmZone;
}

/** A language of the pack: its words under `trip-papers` and `trip-pack`, and what stations are called and say. */
export interface PackTongue {
  readonly lang: string;
  readonly name: string;
  readonly words: Words;
  readonly stations: readonly StationText[];
}

/** Everything that the pack's page carries. */
export interface PackProps extends PackGround {
  readonly lang: string;
  /** All languages of the farm, that of the page first. */
  readonly tongues: readonly PackTongue[];
  /** Words of the letter home in languages that the farm has not. */
  readonly otherHome: readonly Words[];
  /** The same page in each language, by language. */
  readonly pages: Readonly<Record<string, string>>;
  /** Addresses of the front page and of the trip's page. */
  readonly front: string;
  readonly trip: string;
  /** The same below the base path of the site. */
  readonly tripBelow: string;
  /** Where the handouts of a band lie; `BAND` stands for its name. */
  readonly bundle: string;
  /** Where the farm's own machine prints, if the page is served by it. */
  readonly pdf: string;
  readonly pdfState: string;
}

/** The lessons and sheets of a band in one language. */
export interface PackBundle {
  readonly words: Words;
  readonly lessons: readonly Lesson[];
  readonly fronts: Readonly<Record<string, SheetFront>>;
  /** Names of the kinds of tasks of each sheet. */
  readonly tasks: Readonly<Record<string, readonly string[]>>;
  readonly source: SheetSource;
}
