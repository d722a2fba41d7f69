// What the milk page shows: contents, calcium, products, days of keeping, heat and cold.
import { dayNumber, isoDate } from '../calendar/day.ts';
import type { FiguresFile } from '../herd/figures.ts';
import type { Farm, MilkingTime } from '../herd/types.ts';
import { calciumOfPail, type CalciumServed } from './calcium.ts';
import { cupContents, pailContents, type Content } from './contents.ts';
import { coolingDeadlines, type CoolingDeadline } from './cooling.ts';
import { FREEZER_C, FRIDGE_C, KEPT_KINDS, useBy, type KeptKind } from './keeping.ts';
import type { MilkName, MilkTable, NutrientName } from './milkTable.ts';
import { productsOf, type Made, type MilkRichness, type ProductGap } from './products/products.ts';

/** Milks that stand side by side, the goat first. */
export const COMPARED_MILKS: readonly MilkName[] = Object.freeze([
  'goat',
  'cow',
  'sheep',
  'human',
  'buffalo',
]);

/** Nutrients that pages show before anybody asks for all of them. */
export const MAIN_NUTRIENTS: readonly NutrientName[] = Object.freeze([
  'energy', 'protein', 'fat', 'carbohydrate', 'lactose', 'calcium', 'potassium', 'vitaminA', 'folate', 'vitaminB12',
]); // prettier-ignore

/** A nutrient of a cup and of the pail; the pail is null without milk in the week. */
export interface CupAndPail {
  readonly nutrient: NutrientName;
  readonly cup: Content;
  readonly pail: Content | null;
}

/** One kind with its last day; `cold` is the cold it is kept in. */
export interface KeptRow {
  readonly kind: KeptKind;
  readonly cold: 'fridge' | 'freezer';
  readonly what: 'use by' | 'pasteurize by';
  readonly days: number;
  /** ISO date. */
  readonly by: string;
  readonly facts: readonly string[];
}

/** One milking with its deadlines. `ends_min` is a stand-in: the book has no end of milking. */
export interface CoolingRow {
  readonly milking: MilkingTime;
  readonly starts_min: number;
  readonly ends_min: number;
  readonly deadlines: readonly CoolingDeadline[];
}

/** Where the richness that the cheese formula takes is from. */
export type RichnessFrom = 'tests' | 'table';

/** The page's numbers. */
export interface MilkPage {
  /** Mean whole day of the week, L; null where there is none. */
  readonly pail_L: number | null;
  readonly kept_L: number | null;
  readonly contents: readonly CupAndPail[];
  /** Null without a pail, or where the table has no calcium of goat's milk. */
  readonly calcium: { readonly calcium_mg: number; readonly served: readonly CalciumServed[] } | null;
  readonly made: { ok: true; made: readonly Made[] } | { ok: false; why: ProductGap };
  readonly richness: { readonly from: RichnessFrom; readonly of: MilkRichness } | null;
  readonly kept: readonly KeptRow[];
  readonly cooling: readonly CoolingRow[];
}

/** What it is computed from. */
export interface MilkPageInput {
  readonly farm: Farm;
  readonly figures: FiguresFile;
  /** The table that contents and calcium are computed from. */
  readonly table: MilkTable;
  /** From the farm's own tests, or null. */
  readonly tested: MilkRichness | null;
}

/** A milking is drawn as one hour long, since the book says when it starts and not when it ends. */
export const DRAWN_MILKING_MIN = 60;

/** Computes the page. */
export function milkPage({ farm, figures, table, tested }: MilkPageInput): MilkPage {
  const pail_L = figures.figures['herd.week.dailyMean']?.value ?? null;
  const kept_L = figures.figures['herd.week.kept']?.value ?? null;
  const richness = richnessOf(table, tested);
  const calcium = pail_L === null ? null : calciumOfPail(table, pail_L * 1000);
  return {
    pail_L,
    kept_L,
    contents: contentsTable(table, pail_L),
    calcium: calcium?.ok ? { calcium_mg: calcium.calcium_mg, served: calcium.served } : null,
    made: productsOf(kept_L ?? 0, richness?.of ?? null),
    richness,
    kept: keptRows(dayNumber(figures.asOf) ?? 0),
    cooling: (['am', 'pm'] as const).flatMap((milking) => coolingRow(farm, milking) ?? []),
  };
}

function richnessOf(table: MilkTable, tested: MilkRichness | null): MilkPage['richness'] {
  if (tested) return { from: 'tests', of: tested };
  const { fat, protein } = table.milks.goat?.values ?? {};
  return fat && protein
    ? { from: 'table', of: { fat_pct: fat.per_100g, protein_pct: protein.per_100g } }
    : null;
}

function contentsTable(table: MilkTable, pail_L: number | null): CupAndPail[] {
  const pail = pail_L === null ? [] : pailContents(table, pail_L * 1000);
  return cupContents(table, 'goat').map((cup, index) => ({
    nutrient: cup.nutrient,
    cup,
    pail: pail[index] ?? null,
  }));
}

function keptRows(day: number): KeptRow[] {
  return KEPT_KINDS.flatMap((kind) => {
    const inFridge = useBy(kind, day, FRIDGE_C);
    const kept = inFridge.ok ? inFridge : useBy(kind, day, FREEZER_C);
    if (!kept.ok) return [];
    const { what, days, facts } = kept;
    return [{ kind, cold: inFridge.ok ? 'fridge' : 'freezer', what, days, by: isoDate(kept.day), facts }];
  });
}

function coolingRow(farm: Farm, milking: MilkingTime): CoolingRow | null {
  const [hours, minutes] = farm.milkings[milking].split(':').map(Number);
  if (hours === undefined || minutes === undefined) return null;
  const starts_min = hours * 60 + minutes;
  const ends_min = starts_min + DRAWN_MILKING_MIN;
  const read = coolingDeadlines(starts_min, ends_min);
  return read.ok ? { milking, starts_min, ends_min, deadlines: read.deadlines } : null;
}
