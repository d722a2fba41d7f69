// What does a goat eat and drink in a day? Told by a doe of the herd in the middle of those whose need is known.
import { DRY_FEED_PART, dryFeed_kg, HAY_KG, WATER_BASE_L, WATER_PER_MILK_LPERKG } from '../feed/intake.ts';
import type { DoeNeeds } from '../feed/needs.ts';
import type { Range } from '../feed/range.ts';
import { MILK_DENSITY_KG_PER_L, UNIT_ML } from '../quantity/units.ts';
import { decimalText, mixedText, trimmedText, wholeParts } from '../quantity/show.ts';
import type { Portions } from './foodPicture.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

const POUND_KG = 0.45359237;
const GALLON_L = UNIT_ML.gal.valueOf() / 1000;
const KG_PER_L = MILK_DENSITY_KG_PER_L.valueOf();
// Portions of one kind that stand in a drawing at most.
const MOST_PORTIONS = 12;
/** A drinking glass where cups are not the farm's measure, mL. */
const GLASS_ML = 250;
const CUPS_IN_GALLON = 16;

const FACTS = Object.freeze({
  typical: ['hay', 'water-base'],
  rests: ['dry-matter-dry', 'water-base'],
  milk: ['dry-matter-milking', 'water-base', 'water-milk', 'concentrate'],
});

/** A day's need of one doe as the board tells it. Water for milk is null where her milk is not known or none. */
interface Day {
  readonly doe: { readonly id: string; readonly name: string; readonly breed: string } | null;
  readonly state: 'milk' | 'rests' | 'typical';
  readonly weight_kg: Range | null;
  readonly milk_L: number;
  readonly feed_kg: Range;
  readonly water_L: Range;
}

/** Feed and water of the doe in the middle; of a grown doe by published figures where no weight is known. */
export function eatsAndDrinks(input: BoardInput): Answer {
  const day = dayOf(input);
  const us = input.units === 'us';
  const feed = portions(day.feed_kg, us ? POUND_KG : 1, us ? 'lb' : 'kg', us ? 1 : 2, input.lang);
  const water = portions(day.water_L, us ? GALLON_L : 1, us ? 'gal' : 'L', 1, input.lang);
  const glass_L = (us ? UNIT_ML.cup.valueOf() : GLASS_ML) / 1000;
  const glasses = Math.floor(day.water_L.low / glass_L);
  return {
    name: 'eats-and-drinks',
    missing: false,
    live: day.state === 'milk',
    face: day.doe,
    number: feed.text,
    slots: {
      n: feed.sure * feed.each,
      feed: feed.text,
      water: water.text,
      name: day.doe?.name ?? '',
      glasses,
      ...figuresSaid(input.lang),
    },
    variants: {
      unit: input.units,
      headline: input.units,
      'why.third': day.state,
      concrete: day.doe ? 'doe' : 'typical',
      rule: day.state,
    },
    concrete: glasses,
    picture: { kind: 'food', food: { kind: 'fed', feed, water } },
    proof: {
      figure: null,
      steps: stepsOf(day, input),
      columns: ['doe', 'weight'],
      rows: day.doe && day.weight_kg ? [weightRow(day, input)] : [],
      missing: 0,
      facts: [...FACTS[day.state], 'not-for-goats'],
      table: null,
    },
  };
}

/** The doe in the middle by what she eats; of an even number the lower of the two. Those whose water is known go first. */
function dayOf(input: BoardInput): Day {
  const resting = input.week.state === 'resting' && !input.week.expectedNow;
  const fed = input.needs.filter((one) => one.dryFeed_kg !== null);
  const whole = fed.filter((one) => one.water_L !== null);
  const order = (whole.length > 0 && !resting ? whole : fed).toSorted((a, b) => mid(a) - mid(b));
  const needs = order[Math.floor((order.length - 1) / 2)];
  if (!needs?.weight.ok || !needs.dryFeed_kg) return TYPICAL;
  const named = input.does.find((doe) => doe.id === needs.doe);
  const inBook_L = milkInBook_L(input, needs.doe);
  const dry = resting || needs.phase === 'dry' || (needs.phase === 'none' && inBook_L === 0);
  const told = needs.milk.ok && needs.phase !== 'none';
  const milk_L = dry ? 0 : told ? needs.milk.milk_L : inBook_L;
  const forMilk_L = milk_L * KG_PER_L * WATER_PER_MILK_LPERKG;
  return {
    doe: { id: needs.doe, name: named?.name ?? needs.doe, breed: named?.breed ?? '' },
    state: dry ? 'rests' : 'milk',
    weight_kg: needs.weight.weight_kg,
    milk_L,
    feed_kg: dryFeed_kg(needs.weight.weight_kg, dry ? 'dry' : 'milking'),
    water_L: { low: WATER_BASE_L.low + forMilk_L, high: WATER_BASE_L.high + forMilk_L },
  };
}

/** Her milk of a day by the rows of the week: the least that she makes, where kids drink too or no birth is listed. */
function milkInBook_L({ week }: BoardInput, id: string): number {
  const doe = week.does.find((one) => one.id === id);
  const days = new Set(doe?.milkings.map(({ date }) => date)).size;
  return days === 0 ? 0 : (doe?.total_mL ?? 0) / days / 1000;
}

const mid = ({ dryFeed_kg: feed }: DoeNeeds) => (feed ? feed.low + feed.high : 0);
const TYPICAL: Day = Object.freeze({
  doe: null,
  state: 'typical',
  weight_kg: null,
  milk_L: 0,
  feed_kg: HAY_KG,
  water_L: WATER_BASE_L,
});

/** The published figures that the words say: percents of weight, gallons, litres and hay. */
function figuresSaid(lang: string): Record<string, string> {
  const pct = (part: number) => String(wholeParts(part * 100));
  const { milking, dry } = DRY_FEED_PART;
  const told = ({ low, high }: Range, unit: number, places: number) =>
    `${decimalText(low / unit, places, lang)}–${decimalText(high / unit, places, lang)}`;
  return {
    low: pct(milking.low),
    high: pct(milking.high),
    dryLow: pct(dry.low),
    dryHigh: pct(dry.high),
    perKg: decimalText(WATER_PER_MILK_LPERKG, 1, lang),
    gal: told(WATER_BASE_L, GALLON_L, 0),
    liters: told(WATER_BASE_L, 1, 1),
    hayLb: told(HAY_KG, POUND_KG, 0),
    hayKg: told(HAY_KG, 1, 1),
  };
}

/** A range in parts of a unit, each end rounded, as a least and a most. */
function rangeOf(range: Range, unit: number, partsPerUnit: 1 | 2, lang: string): string {
  const [low, high] = [range.low, range.high].map((end) => wholeParts((end / unit) * partsPerUnit));
  const text = (parts: number | undefined) => mixedText(parts ?? 0, partsPerUnit, lang);
  return low === high ? text(high) : `${text(low)}–${text(high)}`;
}

function portions(
  range: Range,
  size: number,
  unit: Portions['unit'],
  partsPerUnit: 1 | 2,
  lang: string,
): Portions {
  let each = 1 / partsPerUnit;
  while (range.high / size / each > MOST_PORTIONS)
    each = each < 1 ? 1 : each === 1 ? 2 : each === 2 ? 5 : each * 2;
  const sure = Math.max(1, wholeParts(range.low / size / each));
  const all = Math.max(sure, wholeParts(range.high / size / each));
  return { sure, perhaps: all - sure, each, unit, text: rangeOf(range, size, partsPerUnit, lang) };
}

function stepsOf(day: Day, { units, lang }: BoardInput): ProofStep[] {
  const us = units === 'us';
  const [weightUnit, waterUnit] = us ? (['lb', 'gal'] as const) : (['kg', 'L'] as const);
  const two = (value: number) => decimalText(value, 2, lang);
  const weight = (kg: number) => `${two(us ? kg / POUND_KG : kg)} ${weightUnit}`;
  const volume = (L: number) => `${two(us ? L / GALLON_L : L)} ${waterUnit}`;
  const { low, high } = day.feed_kg;
  if (!day.weight_kg || day.state === 'typical')
    return [
      { label: '', key: 'eats.hay', sum: `${weight(low)} – ${weight(high)}` },
      { label: '', key: 'eats.water', sum: `${volume(day.water_L.low)} – ${volume(day.water_L.high)}` },
      glassStep(day, us, lang),
    ];
  const { low: least, high: most } = DRY_FEED_PART[day.state === 'rests' ? 'dry' : 'milking'];
  const milk_kg = day.milk_L * KG_PER_L;
  const forMilk_L = day.water_L.low - WATER_BASE_L.low;
  return [
    { label: '', key: 'eats.least', sum: `${weight(day.weight_kg.low)} × ${least} ≈ ${weight(low)}` },
    { label: '', key: 'eats.most', sum: `${weight(day.weight_kg.high)} × ${most} ≈ ${weight(high)}` },
    ...(milk_kg > 0 || day.state === 'rests'
      ? [
          { label: '', key: 'eats.milk', sum: weight(milk_kg) },
          { label: '', key: 'eats.forMilk', sum: volume(forMilk_L) },
        ]
      : []),
    { label: '', key: 'eats.water', sum: `${volume(WATER_BASE_L.low)} + ${volume(forMilk_L)} ≈ ${volume(day.water_L.low)}` }, // prettier-ignore
    { label: '', key: 'eats.waterMost', sum: `${volume(WATER_BASE_L.high)} + ${volume(forMilk_L)} ≈ ${volume(day.water_L.high)}` }, // prettier-ignore
    glassStep(day, us, lang),
  ];
}

/** The least water in glasses: sixteen cups to the gallon, or four glasses to the litre. */
function glassStep({ water_L: { low } }: Day, us: boolean, lang: string): ProofStep {
  const water = us ? low / GALLON_L : low;
  const each = us ? CUPS_IN_GALLON : 1000 / GLASS_ML;
  const sum = `${decimalText(water, 2, lang)} ${us ? 'gal' : 'L'} × ${each} ≈ ${decimalText(water * each, 1, lang)}`;
  return { label: '', key: `eats.glasses.${us ? 'us' : 'metric'}`, sum };
}

function weightRow({ doe, weight_kg }: Day, { units, lang }: BoardInput) {
  const told = (kg: number) => trimmedText(units === 'us' ? kg / POUND_KG : kg, lang);
  const { low, high } = weight_kg ?? { low: 0, high: 0 };
  const weight = low === high ? told(low) : `${told(low)}–${told(high)}`;
  return { cells: [doe?.name ?? '', `${weight} ${units === 'us' ? 'lb' : 'kg'}`], place: 'does.csv' };
}
