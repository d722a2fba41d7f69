// What an answer in the barn consists of: numbers and places, no words of any language.
import type { DoeNeeds } from '../feed/needs.ts';
import type { FiguresFile } from '../herd/figures.ts';
import type { Doe, Kidding, UnitSystem, Use } from '../herd/types.ts';
import type { WeekView } from '../herd/week.ts';
import type { NutrientRow } from '../milk/composition.ts';
import type { Slots } from '../words/words.ts';
import type { BoardYear } from './boardYear.ts';
import type { FoodPicture } from './foodPicture.ts';
import type { GoatPicture } from './goatPicture.ts';
import type { PailBook } from './pail/pailBook.ts';
import type { KitchenPicture } from './kitchenPicture.ts';
import type { QuestionName } from './topics.ts';

/** What the farm's own records give to the board: plain JSON, so that the desk can send it to an open page. */
export interface BoardFarm {
  readonly units: UnitSystem;
  /** The farm's jar, mL. */
  readonly jar_mL: number;
  readonly figures: FiguresFile;
  readonly week: WeekView;
  readonly does: readonly Doe[];
  readonly kiddings: readonly Kidding[];
  /** Ids of does whose milk is kept apart on the day of the figures, since they take medicine. */
  readonly treated: readonly string[];
  readonly year: BoardYear;
  /** What each doe takes in a day. */
  readonly needs: readonly DoeNeeds[];
  /** The milkings to guess. */
  readonly pail: PailBook;
}

/** Everything that the answers are computed from. */
export interface BoardInput extends BoardFarm {
  readonly lang: string;
  readonly composition: readonly NutrientRow[];
}

/** A step of the proof: a label and the numbers put in, ready to be redone with a pocket calculator. */
export interface ProofStep {
  /** A name or a date as it stands; empty where `key` says it, or where the line needs none. */
  readonly label: string;
  /** Key under `barn.step`, for a label that each language has its own word for. */
  readonly key?: string;
  readonly sum: string;
}

/** A row of the book, or of another table, that the number stands on. */
export interface ProofRow {
  readonly cells: readonly string[];
  /** File and line, where the row is the farm's own. */
  readonly place: string | null;
}

/** How we know. */
export interface Proof {
  /** Id in `figures.json`, where the number is one of its figures. */
  readonly figure: string | null;
  readonly steps: readonly ProofStep[];
  /** Keys of the headings of `rows`, under `barn.proof.column`. */
  readonly columns: readonly string[];
  readonly rows: readonly ProofRow[];
  /** Milkings that were expected and are not in the book. */
  readonly missing: number;
  /** Ids of the facts it leans on, in `content/facts`. */
  readonly facts: readonly string[];
  /** The published table it was computed from, if any. */
  readonly table: string | null;
}

/** One doe's milk as the board draws it. */
export interface DoeJars {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly milk_mL: number | null;
  readonly amount: string;
  /** Key under `barn.doe` that says where she is in her year. */
  readonly standing: 'treated' | 'twice' | 'morning' | 'withKids' | 'dry' | 'noEntry' | 'unknown';
}

/** Two amounts of one nutrient, side by side. */
export interface Pair {
  readonly key: string;
  readonly unit: string;
  readonly goat: number;
  readonly cow: number;
  readonly goatText: string;
  readonly cowText: string;
}

/** What is drawn with an answer. */
export type Picture =
  | { readonly kind: 'nursing'; readonly kids: number }
  | { readonly kind: 'jars'; readonly milk_mL: number; readonly children: number }
  | { readonly kind: 'does'; readonly does: readonly DoeJars[] }
  | { readonly kind: 'two-milks'; readonly pairs: readonly Pair[] }
  | { readonly kind: 'hands' }
  | { readonly kind: 'kitchen'; readonly kitchen: KitchenPicture }
  | { readonly kind: 'food'; readonly food: FoodPicture }
  | { readonly kind: 'goats'; readonly goats: GoatPicture }
  | { readonly kind: 'road'; readonly parts: readonly { id: Use; share: number; amount: string }[] };

/** An answer, or `missing` where the book cannot give it. */
export interface Answer {
  readonly name: QuestionName;
  readonly missing: boolean;
  /** Whether the number is of the window's week. */
  readonly live: boolean;
  /** The doe that the answer is told by, if it is told by one. */
  readonly face: { readonly id: string; readonly name: string; readonly breed: string } | null;
  /** The big number as shown; empty where it is missing. */
  readonly number: string;
  /** Fills the slots of the question's words. */
  readonly slots: Slots;
  /** Which variant of a text applies, by the text's key: `unit: 'metric'` means the key `unit.metric`. */
  readonly variants: Readonly<Record<string, string>>;
  /** The count that the `concrete` text speaks of. */
  readonly concrete: number;
  readonly picture: Picture;
  readonly proof: Proof;
}
