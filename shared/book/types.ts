// What the Milk book's pages and the desk say to each other: an entry, its answer, the book as a phone holds it.
import type { Amount } from '../quantity/amount.ts';
import type { AmountUnit, VolumeUnit } from '../quantity/units.ts';
import type { PhaseSpan } from '../herd/expected.ts';
import type { MilkingTime, UnitSystem, Use } from '../herd/types.ts';

/** One amount as a person entered it; the phone keeps it until the desk has answered. */
export interface BookEntry {
  /** 22 characters of base64url: 16 random bytes, made where it was entered. The same id is never a second row. */
  readonly id: string;
  readonly doe: string;
  /** Date of the milking, ISO. */
  readonly date: string;
  readonly milking: MilkingTime;
  /** As written: `9 1/2`, `9.5`. Null strikes out what stands. */
  readonly amount: string | null;
  readonly unit: AmountUnit;
  readonly use: Use;
  /** At most 200 characters, on one line. */
  readonly note: string;
  /** Somebody knew that she is under treatment, and said that this milk is kept all the same. Of an amount it says nothing. */
  readonly sure: boolean;
  /** The mark of the row that stood when it was entered, as far as the phone knew; null where none did. */
  readonly saw: string | null;
  /** When it was entered, by the phone's own clock, ms. */
  readonly entered_ms: number;
}

/** What a phone sends: its clock at the moment of sending tells how old each entry is, however wrong the clock. */
export interface EntryPost {
  readonly sent_ms: number;
  readonly entries: readonly BookEntry[];
}

/** Why an entry was not taken. None of these gets better by sending it again. */
export type Refusal =
  | 'malformed' // not an entry at all
  | 'unknown doe'
  | 'no date' // no such day
  | 'still to come' // a milking after today
  | 'no amount' // the amount cannot be read
  | 'too much' // above largestMilking of farm.yaml
  | 'treated'; // kept milk of a doe under treatment, and nobody said "I know"

/** The desk's answer to one entry; `kept` means that it is on disk. */
export type EntryAnswer =
  | { readonly id: string; readonly kept: true; readonly mark: string }
  | { readonly id: string; readonly kept: false; readonly why: Refusal };

/** A row that stands, as the pages show it. */
export interface BookRow {
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly amount: Amount;
  readonly use: Use;
  readonly note: string;
  /** Tells one standing row from the one before it; the next entry for the same milking names it in `saw`. */
  readonly mark: string;
  /** How many older rows it stands over. */
  readonly corrects: number;
}

/** Milk that must not be drunk: a doe under treatment, from `treatments.csv`. */
export interface Treatment {
  readonly doe: string;
  /** First day whose milk is withheld, a day number. */
  readonly from: number;
  /** First day whose milk may be kept again, a day number; null while nobody has set one. */
  readonly until: number | null;
  /** What was given, in the farm's words. */
  readonly what: string;
}

/** Two amounts for one milking, entered by two people of whom neither saw the other's. */
export interface BookClash {
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  /** Both amounts, the one that stands last; each in its own unit. */
  readonly amounts: readonly { readonly amount: Amount | null; readonly use: Use; readonly mark: string }[];
}

/** A doe as the Milk book shows her. */
export interface BookDoe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly spans: readonly PhaseSpan[];
}

/** The farm as the Milk book needs it. */
export interface BookFarm {
  readonly name: string;
  readonly timeZone: string;
  readonly units: UnitSystem;
  readonly recordUnit: AmountUnit;
  readonly milkings: Readonly<Record<MilkingTime, string>>;
  readonly jar: { readonly size: number; readonly unit: VolumeUnit };
  readonly largestMilking: { readonly amount: number; readonly unit: AmountUnit };
  /** The day that `asOf` or `AS_OF` sets, ISO; null where the clock does. */
  readonly fixedDay: string | null;
}

/** All that a phone needs to go on without a network: `GET desk/book`. */
export interface BookState {
  readonly farm: BookFarm;
  /** The farm's day when this was made, ISO. */
  readonly today: string;
  readonly does: readonly BookDoe[];
  /** The standing rows of the last 21 days up to today. */
  readonly rows: readonly BookRow[];
  readonly treatments: readonly Treatment[];
  readonly clashes: readonly BookClash[];
  /** Why the files cannot be read just now, in the coordinator's words; entries are taken all the same. */
  readonly faults: string | null;
  /** Changes whenever anything above does. */
  readonly fingerprint: string;
}

/** The event `entry` of the desk's stream: a row that has just been written. Anyone on the network may hear it. */
export interface EntryEvent {
  readonly doe: string;
  readonly name: string;
  readonly date: string;
  readonly milking: MilkingTime;
  /** Null where an entry was struck out. */
  readonly amount: Amount | null;
  readonly use: Use;
  /** `herd.day.total` and `herd.week.total` of the contract, L, once this row counts. */
  readonly dayTotal_L: number | null;
  readonly weekTotal_L: number | null;
  /** The days of that week total, ISO; null where there is none. An entry of a later day joins once its day is whole. */
  readonly window: { readonly from: string; readonly to: string } | null;
  /** The farm's day, ISO, so that a page can say "this morning"; null where the book cannot be read just now. */
  readonly today: string | null;
}
