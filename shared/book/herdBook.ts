// What the page of the herd and the desk say to each other: does, kiddings and treatments as they are written.
import type { MilkingTime, Use } from '../herd/types.ts';
import type { DeskFault } from './deskState.ts';

/** The tables that the page of the herd writes to. */
export type HerdFile = 'does.csv' | 'kiddings.csv' | 'treatments.csv';

/** Their headings, in the order of a new file. */
export const HERD_COLUMNS = Object.freeze({
  'does.csv': ['doe', 'name', 'breed', 'born', 'weight_kg'],
  'kiddings.csv': ['doe', 'date', 'kids', 'apart', 'weaned', 'dry'],
  'treatments.csv': ['doe', 'from', 'until', 'what', 'note'],
} as const satisfies Record<HerdFile, readonly string[]>);

/** A cell holds at most so many characters. */
export const LONGEST_CELL = 200;

/** Cells by heading, as written but for spaces around them; a heading that the file lacks is empty. */
type Cells<Name extends HerdFile> = Readonly<Record<(typeof HERD_COLUMNS)[Name][number], string>>;
/** A doe as written, with her line, by which a change names the row. */
export type DoeRow = Cells<'does.csv'> & { readonly line: number };
/** A kidding as written, with its line. */
export type KiddingRow = Cells<'kiddings.csv'> & { readonly line: number };
/** A treatment as written, with its line. */
export type TreatmentRow = Cells<'treatments.csv'> & { readonly line: number };

/** A milking of a doe under treatment that somebody wrote down as kept or fed. */
export interface SpokenMilking {
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly use: Extract<Use, 'kept' | 'fed'>;
}

/** The herd as it is written: `GET desk/herd`. */
export interface HerdBook {
  /** The farm's day, ISO. */
  readonly today: string;
  readonly milkings: Readonly<Record<MilkingTime, string>>;
  readonly does: readonly DoeRow[];
  readonly kiddings: readonly KiddingRow[];
  readonly treatments: readonly TreatmentRow[];
  readonly spoken: readonly SpokenMilking[];
  /** The mark of each file as it was read; null where there is none. */
  readonly marks: Readonly<Record<HerdFile, string | null>>;
  /** What keeps the book from being read, in the coordinator's words. */
  readonly faults: readonly DeskFault[];
}

/** One change of one row. Cells that are not named stay as they are. */
export type HerdChange =
  | { readonly kind: 'add'; readonly file: HerdFile; readonly cells: Readonly<Record<string, string>> }
  | {
      readonly kind: 'change';
      readonly file: HerdFile;
      readonly line: number;
      readonly cells: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'remove'; readonly file: HerdFile; readonly line: number };

/** What the page sends: the change, and the mark of the file that it saw. */
export interface HerdPost {
  readonly change: HerdChange;
  readonly saw: string | null;
}

/** The desk's answer. Where it is not `ok` nothing was written. */
export type HerdAnswer =
  | { readonly ok: true; readonly herd: HerdBook }
  /** The file was changed meanwhile: lines that are gone and lines that have come, null where nobody can tell any more. */
  | {
      readonly ok: false;
      readonly why: 'changed';
      readonly gone: readonly string[] | null;
      readonly come: readonly string[] | null;
      readonly herd: HerdBook;
    }
  /** With this change the book could not be read. */
  | {
      readonly ok: false;
      readonly why: 'faulty';
      readonly faults: readonly DeskFault[];
      readonly herd: HerdBook;
    }
  | { readonly ok: false; readonly why: 'malformed' }
  /** The disk did not take it; `code` is the system's own word. */
  | { readonly ok: false; readonly why: 'not written'; readonly code: string };
