// Which takes more land, a goat or a cow? Per animal the cow, per milk about alike: both are told.
import { goatAndCow as compared, TYPICAL, type GoatCowRow } from '../feed/goatAndCow.ts';
import { ANIMAL_UNIT_LB, ANIMAL_UNITS } from '../feed/land.ts';
import { decimalText, rangeText, wholeParts } from '../quantity/show.ts';
import type { Answer, BoardInput, ProofStep } from './types.ts';

/**
 * Goats that graze like one cow, by three tables: a former federal rule, the handbook behind `ANIMAL_UNITS`, and a
 * county of Texas (Travis Central Appraisal District).
 */
export const GOATS_FOR_A_COW = Object.freeze({
  federal: 5,
  handbook: ANIMAL_UNITS.cow / ANIMAL_UNITS.goat,
  county: 7,
});

/** Goats on the land of one cow, from the least to the most of the tables. */
export function land(input: BoardInput): Answer {
  const { lang, does } = input;
  const tables = Object.values(GOATS_FOR_A_COW);
  const [least, most] = [Math.floor(Math.min(...tables)), Math.floor(Math.max(...tables))];
  const units = does.length * ANIMAL_UNITS.goat;
  const cows = wholeParts(units);
  const { rows } = compared();
  const feed = rowOf(rows, 'dry feed', 'kg of milk');
  const climate = rowOf(rows, 'climate', 'kg of milk');
  const fixed = (value: number) => decimalText(value, 2, lang);
  return {
    name: 'land',
    missing: false,
    live: false,
    face: null,
    number: `${least}–${most}`,
    slots: {
      n: most,
      least,
      federal: GOATS_FOR_A_COW.federal,
      handbook: fixed(GOATS_FOR_A_COW.handbook),
      county: GOATS_FOR_A_COW.county,
      does: does.length,
      cows,
      units: fixed(units),
      goatKg: TYPICAL.goat.weight_kg,
      goatMilk: TYPICAL.goat.milk_kg,
      cowKg: TYPICAL.cow.weight_kg,
      cowMilk: TYPICAL.cow.milk_kg,
      goatFeed: fixed(feed.goat.high),
      cowFeed: fixed(feed.cow.high),
      goatClimate: rangeText(climate.goat.low, climate.goat.high, lang),
      cowClimate: rangeText(climate.cow.low, climate.cow.high, lang),
    },
    variants: { concrete: herdAs(does.length, cows) },
    concrete: does.length,
    picture: { kind: 'food', food: { kind: 'land', least, most } },
    proof: {
      figure: null,
      steps: stepsOf(lang, does.length, feed),
      columns: [],
      rows: [],
      missing: 0,
      facts: [...new Set(['goats-for-a-cow', 'animal-unit', 'animal-unit-goat', ...feed.facts, ...climate.facts, 'ghg-why', 'ghg-west-europe'])], // prettier-ignore
      table: null,
    },
  };
}

/** The tables side by side, the herd by the handbook, and the feed of a day shared over its milk. */
function stepsOf(lang: string, does: number, feed: GoatCowRow): ProofStep[] {
  const fixed = (value: number) => decimalText(value, 2, lang);
  const perKg = (feed_kg: number, milk_kg: number) =>
    `${fixed(feed_kg * milk_kg)} kg ÷ ${milk_kg} ≈ ${fixed(feed_kg)} kg`;
  const { cow, goat } = ANIMAL_UNITS;
  return [
    { label: '', key: 'land.federal', sum: String(GOATS_FOR_A_COW.federal) },
    { label: '', key: 'land.handbook', sum: `${cow} ÷ ${goat} ≈ ${fixed(GOATS_FOR_A_COW.handbook)}` },
    { label: '', key: 'land.county', sum: String(GOATS_FOR_A_COW.county) },
    { label: '', key: 'land.unit', sum: `${ANIMAL_UNIT_LB} lb` },
    { label: '', key: 'land.herd', sum: `${does} × ${goat} = ${fixed(does * goat)}` },
    { label: '', key: 'land.goatFeed', sum: perKg(feed.goat.high, TYPICAL.goat.milk_kg) },
    { label: '', key: 'land.cowFeed', sum: perKg(feed.cow.high, TYPICAL.cow.milk_kg) },
  ];
}

function rowOf(rows: readonly GoatCowRow[], what: GoatCowRow['what'], per: GoatCowRow['per']): GoatCowRow {
  const row = rows.find((one) => one.what === what && one.per === per);
  if (!row) throw new Error(`No row compares ${what} per ${per}.`);
  return row;
}

/** How the herd's need of land is told: as less than a cow's, as one cow's, as several cows', or not at all. */
function herdAs(does: number, cows: number): 'none' | 'less' | 'one' | 'more' {
  if (does === 0) return 'none';
  if (cows === 0) return 'less';
  return cows === 1 ? 'one' : 'more';
}
