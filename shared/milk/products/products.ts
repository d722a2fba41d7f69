// What the week's kept milk could become: each as if all of it went there.
import { MILK_DENSITY_KG_PER_L } from '../../quantity/units.ts';
import { HAND_OVERRUN, MIX_PER_MILK } from './iceCream.ts';
import { LIQUID_PER_OIL, LYE_CAUTIONS } from './soap.ts';
import { CASEIN_PART, CHEDDAR_MOISTURE, vanSlyke } from './vanSlyke.ts';

/** What milk becomes, in the order that pages list it. */
export const PRODUCTS = [
  'fresh milk',
  'yogurt',
  'soft cheese',
  'hard cheese',
  'hard cheese by formula',
  'ice cream',
  'caramel',
  'soap',
] as const;
/** One of those. */
export type Product = (typeof PRODUCTS)[number];

/** How much of a product the milk gives: least and most, which are equal where the rule gives one number. */
export interface Made {
  readonly product: Product;
  readonly low: number;
  readonly high: number;
  readonly unit: 'L' | 'kg';
  /** The rule in one English sentence; the words of a page are the page's business. */
  readonly method: string;
  /** Ids of the facts it stands on, and of the cautions that must stand beside it. */
  readonly facts: readonly string[];
  readonly cautions: readonly string[];
}

/** Fat and protein of the milk, from the farm's tests or a table. */
export interface MilkRichness {
  readonly fat_pct: number;
  readonly protein_pct: number;
}

/** Why nothing is made. */
export type ProductGap = 'no milk was kept';

const SOFT = { low: 0.12, high: 0.17 };
const HARD_L_PER_KG = 10;
const HARD_PART = { low: 0.7, high: 1.3 };
const CARAMEL = { low: 0.25, high: 0.3 };
const KG_PER_L = MILK_DENSITY_KG_PER_L.valueOf();
const PASTEURIZE = ['raw-milk', 'pasteurizing-table'];

/**
 * What kept milk gives of each product, were all of it used for that one. Without the milk's richness
 * the formula for hard cheese has no row. Milk is weighed at 1.03 kg/L.
 */
export function productsOf(
  kept_L: number,
  richness: MilkRichness | null,
): { ok: true; made: Made[] } | { ok: false; why: ProductGap } {
  if (!(kept_L > 0)) return { ok: false, why: 'no milk was kept' };
  return {
    ok: true,
    made: [...drinks(kept_L), ...cheeses(kept_L, richness), ...sweets(kept_L), soap(kept_L)],
  };
}

function drinks(kept_L: number): Made[] {
  const all = { low: kept_L, high: kept_L, unit: 'L' } as const;
  return [
    { product: 'fresh milk', ...all, method: 'All of the milk, pasteurized.', facts: ['milk-keeps'], cautions: PASTEURIZE },
    { product: 'yogurt', ...all, method: 'A litre of yogurt from a litre of milk.', facts: ['yogurt-step'], cautions: PASTEURIZE },
  ]; // prettier-ignore
}

function cheeses(kept_L: number, richness: MilkRichness | null): Made[] {
  const milk_kg = kept_L * KG_PER_L;
  const hard_kg = kept_L / HARD_L_PER_KG;
  const soft: Made = {
    product: 'soft cheese',
    low: milk_kg * SOFT.low,
    high: milk_kg * SOFT.high,
    unit: 'kg',
    method: '12 to 17 parts in 100 of the weight of the milk.',
    facts: ['soft-cheese-share'],
    cautions: [...PASTEURIZE, 'raw-cheese-60'],
  };
  const hard: Made = {
    product: 'hard cheese',
    low: hard_kg * HARD_PART.low,
    high: hard_kg * HARD_PART.high,
    unit: 'kg',
    method: 'A kilogram from ten litres, three tenths more or less.',
    facts: ['hard-cheese-ten'],
    cautions: [...PASTEURIZE, 'raw-cheese-60'],
  };
  const byFormula = richness === null ? [] : formulaCheese(milk_kg, richness, hard.cautions);
  return [soft, hard, ...byFormula];
}

function formulaCheese(milk_kg: number, richness: MilkRichness, cautions: readonly string[]): Made[] {
  const casein_pct = richness.protein_pct * CASEIN_PART.goat;
  const found = vanSlyke(richness.fat_pct, casein_pct, CHEDDAR_MOISTURE);
  if (!found.ok) return [];
  const cheese_kg = (milk_kg * found.yield_kgPer100kg) / 100;
  return [
    {
      product: 'hard cheese by formula',
      low: cheese_kg,
      high: cheese_kg,
      unit: 'kg',
      method:
        'Weight of the milk × (0.93 × fat % + casein % − 0.1) × 1.09 ÷ (1 − 0.37) ÷ 100; casein is 0.749 of the protein.',
      facts: ['van-slyke', 'casein-share'],
      cautions,
    },
  ];
}

function sweets(kept_L: number): Made[] {
  return [
    {
      product: 'ice cream',
      low: kept_L * MIX_PER_MILK * (1 + HAND_OVERRUN.low),
      high: kept_L * MIX_PER_MILK * (1 + HAND_OVERRUN.high),
      unit: 'L',
      method: 'A litre of milk makes 1.2 L of mix; the machine adds 20 to 50 parts of air to 100 of mix.',
      facts: ['ice-cream-mix', 'ice-cream-air', 'ice-cream-name'],
      cautions: ['raw-milk', 'pasteurizing-rich', 'egg-heat'],
    },
    {
      product: 'caramel',
      low: kept_L * CARAMEL.low,
      high: kept_L * CARAMEL.high,
      unit: 'L',
      method: '25 to 30 parts in 100 of the volume of the milk are left after simmering.',
      facts: ['cajeta'],
      cautions: ['hot-syrup'],
    },
  ];
}

// Weighed when it is cast; it dries by up to the weight of the milk while it cures.
function soap(kept_L: number): Made {
  const milk_kg = kept_L * KG_PER_L;
  const oil_kg = milk_kg / LIQUID_PER_OIL;
  return {
    product: 'soap',
    low: oil_kg,
    high: oil_kg + milk_kg,
    unit: 'kg',
    method: 'Milk is 6 parts to 16 of oil; the soap weighs at least its oil and at most oil and milk.',
    facts: ['soap-liquid'],
    cautions: LYE_CAUTIONS,
  };
}
