// What the outlook answers: milk with its range, or why there is none, as kinds and numbers that a page puts into words.

/** How a doe is milked on a day: the morning after a night away from her kids, or twice. */
export type Way = 'am' | 'both';

/** What happens to a doe on a coming day. Days are day numbers. */
export type DoeEvent =
  | { readonly kind: 'twice a day'; readonly daysInMilk: number }
  | { readonly kind: 'nights apart'; readonly daysInMilk: number }
  /** The kids take it all; `until` is the day before her milkings begin, null where nothing on record says. */
  | { readonly kind: 'with kids'; readonly since: number; readonly until: number | null }
  | { readonly kind: 'dry'; readonly since: number }
  /** No day of drying off is on record, but the next kidding is: the usual rest before it is taken as kept. */
  | { readonly kind: 'rest before kidding'; readonly kidding: number; readonly rest_days: number }
  /** She has not kidded yet; `first` is the day of her first kidding on record, if any. */
  | { readonly kind: 'not kidded'; readonly first: number | null };

/** Why there is no outlook for a doe. */
export type NoOutlook =
  /** The day is not after the day the book is read for. */
  | { readonly kind: 'not coming'; readonly asOf: number }
  /** Milk in the book but no kidding: what is expected of her is unknown. */
  | { readonly kind: 'no kidding'; readonly rows: number }
  /** Milkings were expected on this many days since her newest whole day (null: none in this lactation). */
  | { readonly kind: 'silent'; readonly newest: number | null; readonly expected_days: number }
  /** No whole day of her own in any lactation, and no figure for her breed. */
  | { readonly kind: 'no figures'; readonly breed: string };

/** What the middle stands on. `own`: whole days of this lactation; `last`: of an earlier one. */
export type Basis =
  | { readonly kind: 'own'; readonly whole_days: number; readonly newest: number }
  | { readonly kind: 'last'; readonly whole_days: number; readonly newest: number }
  | {
      readonly kind: 'breed';
      readonly breed: string;
      readonly year_L: number;
      readonly source: string;
      readonly sure: 'seen' | 'memory';
    };

/** The parts of a middle, so that a reader can redo it: `middle_L` = `level_LPerDay` x `curve` x `change`. */
export interface Parts {
  /** Her level on day `level_daysInMilk` of the lactation, as she was milked then (`level_way`). */
  readonly level_LPerDay: number;
  readonly level_daysInMilk: number;
  readonly level_way: Way;
  /** How many times that level her curve stands at on the day asked for. */
  readonly curve: number;
  /** 1, or her morning's share of a full day (below 1 for a change to nights apart, above 1 away from them). */
  readonly change: number;
}

/** Where the range comes from. */
interface Spread {
  /** Spread of the day's milk about the middle, as a standard deviation of its natural logarithm. */
  readonly model_ln: number;
  /** By how much her own past errors at such a distance widen (above 1) or narrow it. */
  readonly factor: number;
  /** Own past errors that the factor stands on. */
  readonly errors: number;
}

/** What may make an outlook worse than its range says. */
export type Caution =
  /** No dry date, and further from kidding than a usual lactation. */
  { readonly kind: 'long lactation'; readonly daysInMilk: number; readonly usual_days: number };

/** The milk to expect from a doe on a day, L. Zero without a range where nothing is milked. */
interface DoeMilk {
  readonly ok: true;
  readonly doe: string;
  readonly middle_L: number;
  /** 80 of 100 such days should lie between `low_L` and `high_L`. */
  readonly low_L: number;
  readonly high_L: number;
  readonly event: DoeEvent;
  /** Null on days without milking, as are `parts` and `spread`. */
  readonly basis: Basis | null;
  readonly parts: Parts | null;
  readonly spread: Spread | null;
  readonly cautions: readonly Caution[];
}

/** A doe's outlook for a day. */
export type DoeOutlook = DoeMilk | { readonly ok: false; readonly doe: string; readonly why: NoOutlook };

/** The herd's outlook for a day: the does that have one, together. */
export type HerdOutlook =
  | {
      readonly ok: true;
      readonly middle_L: number;
      readonly low_L: number;
      readonly high_L: number;
      /** Does with milk in it, and those left out because they have no outlook. */
      readonly does: readonly string[];
      readonly without: readonly string[];
      /** How alike two does' misses are on one day, 0 (not at all) to 1. */
      readonly alike: number;
      /** By how much the herd's own past errors at such a distance widen its range, and their number. */
      readonly factor: number;
      readonly errors: number;
    }
  | { readonly ok: false; readonly why: 'no does' | 'no doe has an outlook' | 'not coming' };

/** What to expect on a coming day. */
export interface DayOutlook {
  readonly day: number;
  readonly does: readonly DoeOutlook[];
  readonly herd: HerdOutlook;
}
