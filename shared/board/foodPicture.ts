// What is drawn with the answers about udder, year, feed, insides and land.

/** A month of the herd's year as a jar. */
export interface MonthJar {
  /** `YYYY-MM`. */
  readonly month: string;
  readonly name: string;
  /** Its milk as a share of the fullest month, 0..1. */
  readonly fill: number;
  /** Its milk in the farm's jars, as shown; empty where nothing is written down. */
  readonly jars: string;
}

/** Something eaten or drunk, drawn in portions: so many for sure, and some more perhaps. */
export interface Portions {
  readonly sure: number;
  readonly perhaps: number;
  /** What one drawn portion stands for. */
  readonly each: number;
  readonly unit: 'lb' | 'kg' | 'gal' | 'L';
  /** Least and most as shown, such as `5–7`. */
  readonly text: string;
}

/** What is drawn with an answer of this kind. */
export type FoodPicture =
  | { readonly kind: 'udder' }
  | { readonly kind: 'stomach' }
  | { readonly kind: 'cans' }
  | {
      readonly kind: 'months';
      readonly months: readonly MonthJar[];
      /** Name of the month in which the running season likely stops, and in which the next one likely starts. */
      readonly stops: string | null;
      readonly returns: string | null;
    }
  | { readonly kind: 'fed'; readonly feed: Portions; readonly water: Portions }
  /** Cups or litres of blood for one of milk, drawn one by one. */
  | {
      readonly kind: 'grass';
      readonly blood: number;
      readonly unit: 'cup' | 'L';
      /** Hours a day of chewing cud. */
      readonly cud_h: number;
    }
  /** Goats on the land of one cow: by the least of the tables, and by the most. */
  | { readonly kind: 'land'; readonly least: number; readonly most: number };
