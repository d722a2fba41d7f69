// What the page of needs shows: bars of feed, pasture for the herd, goat and cow as pairs of bars.
import type { UnitSystem } from '../herd/types.ts';
import { inFarmUnits, type Goods } from '../quantity/farmUnits.ts';
import { goatAndCow, type GoatCowRow } from './goatAndCow.ts';
import { pasture_acres } from './land.ts';
import type { DoeNeeds, HerdNeeds } from './needs.ts';
import { sumOf, times, type Range } from './range.ts';

/** One doe's day in the farm's units, with the bar of her dry feed: sure up to `low_pct`, maybe to `high_pct`. */
export interface NeedsRow {
  readonly needs: DoeNeeds;
  readonly weight: Goods | null;
  readonly feed: Goods | null;
  readonly concentrate: Goods | null;
  readonly water: Goods | null;
  readonly low_pct: number;
  readonly high_pct: number;
}

/** Pasture that the herd grazes in the days told, by what an acre gives; an example where a farm knows better. */
export interface PastureRow {
  readonly forage: number;
  readonly area: Range;
}

const POUND_KG = 0.45359237;
const ACRE_HA = 0.40468564224;
/** Days that the pasture table is reckoned for. */
export const GRAZED_DAYS = 30;
// Examples of what land gives in those days: thin, middling and thick grass. Common practice, no source.
const FORAGE_LBPERACRE = [500, 1000, 2000];

/** Each doe's day; the longest bar is the most that any doe may eat. */
export function needsRows(does: readonly DoeNeeds[], units: UnitSystem): NeedsRow[] {
  const most = Math.max(0, ...does.map(({ dryFeed_kg }) => dryFeed_kg?.high ?? 0));
  const part = (amount: number) => (most > 0 ? (amount / most) * 100 : 0);
  const told = (range: Range | null, unit: 'kg' | 'L') => range && inFarmUnits(range, unit, units);
  return does.map((needs) => ({
    needs,
    weight: needs.weight.ok ? told(needs.weight.weight_kg, 'kg') : null,
    feed: told(needs.dryFeed_kg, 'kg'),
    concentrate: told(needs.concentrate_kg, 'kg'),
    water: told(needs.water_L, 'L'),
    low_pct: part(needs.dryFeed_kg?.low ?? 0),
    high_pct: part(needs.dryFeed_kg?.high ?? 0),
  }));
}

/** What a quart takes, or a litre: the same range for the farm's own measure of milk. */
export function perMeasure(range: Range, unit: 'kg' | 'L', units: UnitSystem): Goods {
  const measure_L = units === 'metric' ? 1 : 1 / inFarmUnits({ low: 1, high: 1 }, 'L', 'us').low;
  return inFarmUnits(times(range, measure_L), unit, units);
}

/** Pasture for does of known weight, for 30 days; empty where no weight is known. Acres and lb an acre, or ha and kg a ha. */
export function pastureRows({ does }: HerdNeeds, units: UnitSystem): PastureRow[] {
  const weights = does.flatMap(({ weight }) => (weight.ok ? [weight.weight_kg] : []));
  if (weights.length === 0) return [];
  const all = times(sumOf(weights), 1 / POUND_KG);
  const acres = (weight_lb: number, forage_lbPerAcre: number) =>
    pasture_acres({ head: 1, weight_lb, days: GRAZED_DAYS, forage_lbPerAcre }) ?? 0;
  return FORAGE_LBPERACRE.map((forage) => {
    const area = { low: acres(all.low, forage), high: acres(all.high, forage) };
    if (units === 'us') return { forage, area };
    return { forage: (forage * POUND_KG) / ACRE_HA, area: times(area, ACRE_HA) };
  });
}

/** A comparison with its bars. */
export interface ComparedRow extends GoatCowRow {
  readonly goat_pct: Range;
  readonly cow_pct: Range;
}

/** Goat and cow, each row with bars to its own scale. */
export function comparedRows(): { rows: ComparedRow[]; disagree: boolean; notes: readonly string[] } {
  const { rows, disagree, notes } = goatAndCow();
  const judged = rows.map((row) => {
    const scale = 100 / Math.max(row.goat.high, row.cow.high);
    return { ...row, goat_pct: times(row.goat, scale), cow_pct: times(row.cow, scale) };
  });
  return { rows: judged, disagree, notes };
}
