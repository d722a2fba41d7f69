// How a figure is known: its sums with the numbers put in, and the rows beneath.
import type { ProofRow, ProofStep } from '../board/types.ts';
import type { FiguresFile } from '../herd/figures.ts';
import type { Entry, Ledger } from '../herd/ledger.ts';
import type { DayMilkings } from '../lactation/missedMilking.ts';
import type { Book, MilkingTime, UnitSystem } from '../herd/types.ts';

/** What proofs are made from. */
export interface ProofInput {
  readonly lang: string;
  readonly units: UnitSystem;
  readonly book: Book;
  readonly ledger: Ledger;
  readonly figures: FiguresFile;
  /** The ledger's entries by day, each day's in order of doe and milking. */
  readonly entriesByDay: ReadonlyMap<number, readonly Entry[]>;
  /** Each doe's milkings by day, L. */
  readonly milkings: ReadonlyMap<string, ReadonlyMap<number, DayMilkings>>;
}

/** The kinds of figure that have a proof, by the contract's ids; `doe` stands for any doe. */
export type FigureKind =
  | 'herd.day.total'
  | 'herd.week.total'
  | 'herd.week.kept'
  | 'herd.week.missing'
  | 'herd.week.dailyMean'
  | 'herd.week.does'
  | 'herd.year.total'
  | 'herd.best.day'
  | 'doe.week.total'
  | 'doe.week.best'
  | 'doe.week.dailyMean'
  | 'doe.daysInMilk';

/** Rows under one heading, such as a day or a month. */
export interface RowGroup {
  readonly label: string;
  readonly rows: readonly ProofRow[];
}

/** A milking that was expected and is not in the book. */
export interface Gap {
  readonly date: string;
  readonly milking: MilkingTime;
  readonly doe: string;
  /** What it likely was, in the farm's unit: an estimate that enters no total. Null where there is none. */
  readonly estimate: { readonly middle: string; readonly low: string; readonly high: string } | null;
  /** Why there is no estimate: a key under `lactation.missed`; null where there is one. */
  readonly why: string | null;
}

/** The proof of one figure. */
export interface FigureProof {
  readonly id: string;
  readonly kind: FigureKind;
  /** Name of the doe, where it is a doe's figure. */
  readonly doe: string;
  /** The value as shown, in the farm's unit; empty where there is none. */
  readonly shown: string;
  readonly steps: readonly ProofStep[];
  readonly columns: readonly string[];
  readonly groups: readonly RowGroup[];
  readonly gaps: readonly Gap[];
}
