// Goat and cow, per animal and per kilogram of milk: the two may point different ways, and both are told.
import { cowDryFeed_kg, goatDryFeed_kg } from './intake.ts';
import { ANIMAL_UNITS } from './land.ts';
import type { Range } from './range.ts';

/** Which animal a row is kinder to; `alike` within a tenth, or where the ranges meet. */
export type Points = 'goat' | 'cow' | 'alike';

/** One thing compared. */
export interface GoatCowRow {
  readonly what: 'methane' | 'climate' | 'dry feed' | 'land';
  readonly per: 'animal' | 'kg of milk';
  readonly unit: string;
  readonly goat: Range;
  readonly cow: Range;
  readonly less: Points;
  /** Facts in content/facts that it stands on. */
  readonly facts: readonly string[];
}

/** The whole comparison. `disagree`: one row favours the goat and another the cow, which a page must say. */
export interface GoatAndCow {
  readonly rows: readonly GoatCowRow[];
  readonly disagree: boolean;
  /** Facts that must stand beside the rows, so that nobody reads more into them. */
  readonly notes: readonly string[];
}

const ALIKE_PART = 0.1;
const point = (value: number): Range => ({ low: value, high: value });

/** A typical doe and cow in milk for the rows of feed: weight and milk of the day, kg. Examples of ours. */
export const TYPICAL = Object.freeze({
  goat: Object.freeze({ weight_kg: 60, milk_kg: 3 }),
  cow: Object.freeze({ weight_kg: 650, milk_kg: 30 }),
});

/** The animal with less, unless the two lie within a tenth of each other or their ranges meet. */
export function lessOf(goat: Range, cow: Range): Points {
  if (goat.low <= cow.high && cow.low <= goat.high) return 'alike';
  const [goatMid, cowMid] = [(goat.low + goat.high) / 2, (cow.low + cow.high) / 2];
  if (Math.abs(goatMid - cowMid) <= ALIKE_PART * Math.max(goatMid, cowMid)) return 'alike';
  return goatMid < cowMid ? 'goat' : 'cow';
}

/**
 * The comparison. Per animal a goat takes and emits far less; per kilogram of milk the world's average
 * goat stands for more, and well-fed goat and cow eat alike. Sources: the facts that each row names.
 */
export function goatAndCow(): GoatAndCow {
  const { goat, cow } = TYPICAL;
  const goatFeed_kg = goatDryFeed_kg(goat.weight_kg, goat.milk_kg);
  const cowFeed_kg = cowDryFeed_kg(cow.weight_kg, cow.milk_kg);
  const feedFacts = ['afrc-intake', 'nrc-cow-intake'];
  const rows: Omit<GoatCowRow, 'less'>[] = [
    { what: 'methane', per: 'animal', unit: 'kg a year', goat: { low: 5, high: 9 }, cow: { low: 128, high: 138 }, facts: ['methane-goat', 'methane-cow'] },
    { what: 'land', per: 'animal', unit: 'animal unit', goat: point(ANIMAL_UNITS.goat), cow: point(ANIMAL_UNITS.cow), facts: ['animal-unit', 'animal-unit-goat'] },
    { what: 'dry feed', per: 'animal', unit: 'kg a day', goat: point(goatFeed_kg), cow: point(cowFeed_kg), facts: feedFacts },
    { what: 'dry feed', per: 'kg of milk', unit: 'kg', goat: point(goatFeed_kg / goat.milk_kg), cow: point(cowFeed_kg / cow.milk_kg), facts: feedFacts },
    { what: 'climate', per: 'kg of milk', unit: 'kg CO2e', goat: point(5.2), cow: { low: 2.4, high: 2.8 }, facts: ['ghg-goat', 'ghg-cow'] },
  ]; // prettier-ignore
  const judged = rows.map((row) => ({ ...row, less: lessOf(row.goat, row.cow) }));
  const sides = new Set(judged.map((row) => row.less));
  return {
    rows: judged,
    disagree: sides.has('goat') && sides.has('cow'),
    notes: ['ghg-why', 'ghg-west-europe'],
  };
}
