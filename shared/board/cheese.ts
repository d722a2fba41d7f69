// How is cheese made, and how much from this week's pail? By the rule of ten and the herd's kept milk.
import { nutrientOf } from '../milk/composition.ts';
import { productsOf, type Made } from '../milk/products/products.ts';
import { decimalText, mixedText, sizedText, wholeParts } from '../quantity/show.ts';
import { MILK_DENSITY_KG_PER_L, UNIT_ML } from '../quantity/units.ts';
import { GOAT_FOOD } from './goatAndCow.ts';
import { BOOK_COLUMNS, bookRow, exactText, jarAmount, sumOf_mL } from './shown.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

const FAT = '204';
const PROTEIN = '203';
/** A pound, kg. Source: NIST Handbook 44, Appendix C. */
const POUND_KG = UNIT_ML.lb.mul(MILK_DENSITY_KG_PER_L).div(1000).valueOf();
const FACTS = ['hard-cheese-ten', 'cheese-steps', 'van-slyke', 'casein-share', 'raw-milk', 'raw-cheese-60'];

/** A weight of cheese as the board tells it. */
export interface CheeseAmount {
  /** What the weight is counted in: pounds or kilograms, and ounces or grams below one of them. */
  readonly unit: 'lb' | 'oz' | 'kg' | 'g';
  readonly n: number;
  readonly text: string;
}

/**
 * A weight in whole pounds or half kilograms; below one pound in whole ounces, below half a kilogram in tens of grams.
 * @example cheeseAmount(10.5, 'us', 'en').text // => '23'
 * @example cheeseAmount(0.2, 'metric', 'en').text // => '200'
 */
export function cheeseAmount(cheese_kg: number, units: BoardInput['units'], lang: string): CheeseAmount {
  if (units === 'metric') {
    const halves = wholeParts(cheese_kg * 2);
    if (cheese_kg >= 0.5) return { unit: 'kg', n: halves === 1 ? 1 : halves / 2, text: mixedText(halves, 2, lang) };
    const grams = Math.max(10, wholeParts(cheese_kg * 100) * 10);
    return { unit: 'g', n: grams, text: decimalText(grams, 0, lang) };
  }
  const pounds = cheese_kg / POUND_KG;
  const unit = pounds >= 1 ? 'lb' : 'oz';
  const n = Math.max(1, wholeParts(unit === 'lb' ? pounds : pounds * 16));
  return { unit, n, text: decimalText(n, 0, lang) };
} // prettier-ignore

/** Hard cheese from the week's kept milk, were all of it used so; missing where none was kept. */
export function cheese(input: BoardInput): Answer {
  const { units, lang, week, figures } = input;
  const kept_L = figures.figures['herd.week.kept']?.value ?? 0;
  const jars = jarAmount(input, kept_L * 1000);
  const kinds = productsOf(kept_L, richness(input));
  const made = (product: Made['product']) =>
    kinds.ok ? (kinds.made.find((one) => one.product === product) ?? null) : null;
  const [hard, formula] = [made('hard cheese'), made('hard cheese by formula')];
  const middle_kg = hard ? (hard.low + hard.high) / 2 : 0;
  const amount = cheeseAmount(middle_kg, units, lang);
  const inUnit = (cheese_kg: number) => `${sizedText(cheese_kg / UNIT_KG[amount.unit], lang)} ${amount.unit}`;
  return {
    name: 'cheese',
    missing: hard === null,
    live: true,
    face: null,
    number: hard === null ? '' : amount.text,
    slots: {
      n: amount.n,
      jars: jars.text,
      low: inUnit(hard?.low ?? 0),
      high: inUnit(hard?.high ?? 0),
      formula: inUnit(formula?.low ?? 0),
    },
    variants: { unit: amount.unit, 'why.third': formula ? 'formula' : 'plain' },
    concrete: jars.n,
    picture: {
      kind: 'kitchen',
      kitchen: {
        of: 'cheese',
        milk_mL: kept_L * 1000,
        wheels: hard === null ? 0 : drawnWheels(amount),
        unit: units === 'us' ? 'lb' : 'kg',
      },
    },
    proof: {
      figure: 'herd.week.kept',
      steps: hard === null ? [] : sums(input, kept_L, amount, middle_kg, formula),
      columns: BOOK_COLUMNS,
      rows: week.does.flatMap((doe) =>
        doe.milkings.filter((row) => row.use === 'kept').map((row) => bookRow(input, doe.name, row)),
      ),
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: FACTS,
      table: null,
    },
  };
}

/** Kilograms in one of each unit of cheese. */
const UNIT_KG = Object.freeze({ lb: POUND_KG, oz: POUND_KG / 16, kg: 1, g: 0.001 });

/** As many cheeses as the number says: half ones and slices where it is of a smaller unit. */
function drawnWheels({ unit, text, n }: CheeseAmount): number {
  if (unit === 'oz') return n / 16;
  if (unit === 'g') return n / 1000;
  // Half a kilogram is told in the singular.
  return text === '½' ? 0.5 : n;
}

/** Fat and protein by the published table; null where it lacks a row. */
function richness({ composition }: BoardInput) {
  const fat = nutrientOf(composition, GOAT_FOOD, FAT);
  const protein = nutrientOf(composition, GOAT_FOOD, PROTEIN);
  return fat && protein ? { fat_pct: fat.per_100g, protein_pct: protein.per_100g } : null;
}

/** Kept milk doe by doe, then litres, the rule of ten, and the unit of the board. */
function sums(input: BoardInput, kept_L: number, amount: CheeseAmount, middle_kg: number, formula: Made | null): ProofStep[] {
  const { week, lang, units } = input;
  const parts = week.does.flatMap((doe) => {
    const kept = doe.milkings.filter((row) => row.use === 'kept').map((row) => row.amount_mL);
    return kept.length === 0 ? [] : [{ name: doe.name, kept, sum_mL: kept.reduce((a, b) => a + b, 0) }];
  });
  const two = (n: number) => decimalText(n, 2, lang);
  const cup_L = UNIT_ML.cup.valueOf() / 1000;
  return [
    ...parts.map(({ name, kept, sum_mL }) => ({ label: name, sum: sumOf_mL(input, kept, sum_mL) })),
    { label: '', sum: sumOf_mL(input, parts.map((one) => one.sum_mL), kept_L * 1000) },
    ...(units === 'us'
      ? [{ label: '', key: 'cheese.liters', sum: `${exactText(input, kept_L * 1000)} × ${decimalText(cup_L, 5, lang)} ≈ ${two(kept_L)}` }]
      : []),
    { label: '', key: 'cheese.rule', sum: `${two(kept_L)} ÷ 10 ≈ ${two(middle_kg)}` },
    { label: '', key: `cheese.${amount.unit}`, sum: `${two(middle_kg)} ÷ ${decimalText(UNIT_KG[amount.unit], 4, lang)} ≈ ${amount.text}` },
    ...(formula
      ? [{ label: '', key: 'cheese.formula', sum: `${two(formula.low)} ÷ ${decimalText(UNIT_KG[amount.unit], 4, lang)} ≈ ${sizedText(formula.low / UNIT_KG[amount.unit], lang)}` }]
      : []),
  ];
} // prettier-ignore
