// What the desk says of itself on its own page: whether the site is as the book, and what needs a hand.
import type { MilkingTime } from '../herd/types.ts';
import type { BackupState } from './backupState.ts';
import type { BookClash } from './types.ts';

/** One thing that keeps a site from being made, at its place; a whole file, or no file, where line or file is null. */
export interface DeskFault {
  readonly file: string | null;
  /** Line and column count from 1. */
  readonly line: number | null;
  readonly column: number | null;
  /** What is wrong and what to do, in the coordinator's words. */
  readonly text: string;
}

/**
 * Why a rebuild came to nothing: the farm's own files, the sheets and lessons, the making of the pages, another build
 * that went on for too long, or an end that nobody can explain.
 */
export type RebuildLack = 'book' | 'content' | 'pages' | 'busy' | 'broken';

/** A rebuild that failed, and all that it found. */
export interface RebuildFailure {
  readonly at_ms: number;
  readonly why: RebuildLack;
  readonly faults: readonly DeskFault[];
}

/** How the rebuilding of the site stands. */
export interface RebuildState {
  /** `waiting` for a quiet moment. */
  readonly phase: 'still' | 'waiting' | 'building' | 'printing';
  /** Since when files have changed that the site does not show, ms; null while it shows them all. */
  readonly behind_ms: number | null;
  /** When the site that stands was put in place, ms; null where none stands. */
  readonly stands_ms: number | null;
  /** How long the last rebuild took, ms; null before the first. */
  readonly took_ms: number | null;
  /** The last rebuild, where it failed and none has gone well since. */
  readonly failed: RebuildFailure | null;
  /** Why the week's sheets could not be printed again, in the coordinator's words. */
  readonly unprinted: string | null;
}

/** A row that was gone from its file and was put back. */
export interface RowPutBack {
  readonly file: string;
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly at_ms: number;
}

/** What the page needs of the Milk book. */
export interface DeskBookState {
  /** The farm's time zone, in which the page tells times of day. */
  readonly timeZone: string;
  /** Names of does by their short ids. */
  readonly names: Readonly<Record<string, string>>;
  /** Why the files cannot be read just now, in the coordinator's words. */
  readonly faults: string | null;
  readonly putBack: readonly RowPutBack[];
  readonly clashes: readonly BookClash[];
}

/** `GET desk/state`. */
export interface DeskState {
  /** The desk's clock, ms, so that a page tells how long ago something was, whatever its own clock says. */
  readonly now_ms: number;
  /** Null where this desk does not rebuild. */
  readonly rebuild: RebuildState | null;
  /** Null where this desk takes no entries. */
  readonly book: DeskBookState | null;
  /** Null where this desk makes no copies. */
  readonly backups: BackupState | null;
  /** How many pages listen to the desk just now. */
  readonly listeners: number;
}
