// What a farm writes about itself, once its shape has been checked.
import type { Amount } from '../quantity/amount.ts';
import type { LabelSheet, SingleLabel } from '../labels/labelSheet.ts';
import type { AmountUnit, VolumeUnit } from '../quantity/units.ts';
import type { FarmTrip } from '../trip/farmTrip.ts';

/** The two milkings of a day. */
export type MilkingTime = 'am' | 'pm';
/** What became of a milking: only kept milk reaches the kitchen. */
export type Use = 'kept' | 'withheld' | 'fed' | 'lost';
/** Units that pages show. */
export type UnitSystem = 'us' | 'metric';

/** All uses, in the order that pages list them. */
export const USES: readonly Use[] = Object.freeze(['kept', 'withheld', 'fed', 'lost']);

/** The farm's own settings, from `farm.yaml`. */
export interface Farm {
  readonly name: string;
  /** IANA name of the farm's time zone. */
  readonly timeZone: string;
  readonly units: UnitSystem;
  /** The unit of an amount that names none. */
  readonly recordUnit: AmountUnit;
  /** Languages of the site, the first one first. */
  readonly languages: readonly string[];
  /** Clock times of the milkings, `HH:MM`. */
  readonly milkings: Readonly<Record<MilkingTime, string>>;
  readonly jar: { readonly size: number; readonly unit: VolumeUnit };
  /** A larger single milking is an error that says "check". */
  readonly largestMilking: { readonly amount: number; readonly unit: AmountUnit };
  /** Diagonal of the barn's screen, mm. */
  readonly screen_mm: number;
  /** The farm's own labels, where it says their measures. */
  readonly labels?: FarmLabels;
  /** What the farm says about visits, the usual filled in; absent where it says nothing. */
  readonly trip?: FarmTrip;
}

/** A farm's own labels by their measures; null where it has none of the kind. */
export interface FarmLabels {
  readonly sheet: LabelSheet | null;
  readonly single: SingleLabel | null;
}

/** A doe of the herd, from `does.csv`. */
export interface Doe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  /** ISO date, or null where the farm does not say. */
  readonly born: string | null;
  readonly weight_kg: number | null;
}

/** A kidding and the phases that follow it, from `kiddings.csv`. Days are day numbers. */
export interface Kidding {
  readonly doe: string;
  readonly day: number;
  readonly kids: number | null;
  /** First morning after a night away from her kids. */
  readonly apart: number | null;
  /** From this day she is milked twice. */
  readonly weaned: number | null;
  /** From this day she is milked no more. */
  readonly dry: number | null;
}

/** A row of the milk book. */
export interface MilkingRow {
  readonly doe: string;
  /** Day number of the milking's date. */
  readonly day: number;
  readonly milking: MilkingTime;
  /** Null strikes out what was entered before. */
  readonly amount: Amount | null;
  readonly use: Use;
  /** Set where the file says nothing under `use`, so that treatments, later ones too, say what `use` is. */
  readonly unsaid?: true;
  readonly note: string;
  /** When the row was written, ms since 1970-01-01T00:00Z; null counts as oldest. */
  readonly entered_ms: number | null;
  /** File, relative to the farm folder, and line: so that a page can name the row it stands on. */
  readonly file: string;
  readonly line: number;
}

/** A laboratory's test of one doe's milk, from `milk-tests.csv`. Null is "not tested", never nothing. */
export interface MilkTest {
  readonly doe: string;
  /** Day number of the milk that was tested. */
  readonly day: number;
  /** Grams in 100 g of milk. */
  readonly fat_pct: number | null;
  readonly protein_pct: number | null;
  readonly lactose_pct: number | null;
  /** Body cells in a millilitre; the file counts them in thousands, as laboratories print them. */
  readonly cells_perML: number | null;
  readonly file: string;
  readonly line: number;
}

/** A treatment after which a doe's milk is kept apart, from `treatments.csv`. Days are day numbers. */
export interface Treatment {
  readonly doe: string;
  /** First day whose milk is withheld. */
  readonly from: number;
  /** First day whose milk may be kept again, as the veterinarian or the label says; null while nobody has set one. */
  readonly until: number | null;
  /** What was given, in the farm's words. */
  readonly what: string;
  readonly note: string;
  readonly file: string;
  readonly line: number;
}

/** The farm's records: everything that figures are computed from. */
export interface Book {
  readonly does: readonly Doe[];
  readonly kiddings: readonly Kidding[];
  /** A row's `use` has treatments reckoned in: whoever reads the files does that (`countedUse` in treated.ts). */
  readonly rows: readonly MilkingRow[];
  /** Absent where the farm has no `treatments.csv`. */
  readonly treatments?: readonly Treatment[];
  /** Absent where the farm has no `milk-tests.csv`. */
  readonly milkTests?: readonly MilkTest[];
}

/** A span of whole days, both ends included. */
export interface Window {
  readonly from: number;
  readonly to: number;
}
