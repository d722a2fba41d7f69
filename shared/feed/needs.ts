// What a doe, the herd and a litre of milk take in a day.
import { phaseOn, type Phase } from '../herd/expected.ts';
import { findLastDay } from '../herd/lastDay.ts';
import { isWhole, litres, type Ledger } from '../herd/ledger.ts';
import type { Book, Doe } from '../herd/types.ts';
import { MILK_DENSITY_KG_PER_L } from '../quantity/units.ts';
import { bodyWeight, type BodyWeight } from './bodyWeight.ts';
import { CONCENTRATE_PER_MILK, dryFeed_kg, water_L } from './intake.ts';
import { ANIMAL_UNITS } from './land.ts';
import { sumOf, times, type Range } from './range.ts';

/** Ids of the facts that the needs stand on. */
export const NEEDS_FACTS = Object.freeze([
  'dry-matter-milking',
  'dry-matter-dry',
  'water-base',
  'water-milk',
  'concentrate',
  'animal-unit-goat',
] as const);

/** Milk of a doe a day, or why it is not known; a dry doe gives 0. */
export type DailyMilk =
  | { ok: true; milk_L: number; days: number }
  | { ok: false; why: 'her kids drink part of it' | 'no whole day of hers is in the week' };

/** A day of one doe. Feed is null where her weight is not known, water and concentrate where her milk is not. */
export interface DoeNeeds {
  readonly doe: string;
  readonly phase: Phase;
  readonly weight: BodyWeight;
  readonly milk: DailyMilk;
  readonly dryFeed_kg: Range | null;
  readonly concentrate_kg: Range | null;
  readonly water_L: Range | null;
  readonly animalUnits: number;
}

/** A day of the herd. */
export interface HerdNeeds {
  readonly does: readonly DoeNeeds[];
  /** Sums over the does for which it is known, and over how many that is. */
  readonly dryFeed_kg: { readonly sum: Range; readonly does: number };
  readonly water_L: { readonly sum: Range; readonly does: number };
  readonly concentrate_kg: { readonly sum: Range; readonly does: number };
  readonly animalUnits: number;
  readonly perLitre:
    | { readonly ok: true; readonly milk_L: number; readonly dryFeed_kg: Range; readonly water_L: Range }
    | {
        readonly ok: false;
        readonly why: 'the herd gives no milk' | 'not every doe has a known need and milk';
      };
}

const KG_PER_L = MILK_DENSITY_KG_PER_L.valueOf();

/** What one doe takes in a day, by her weight, phase and milk. */
export function doeNeeds(doe: Doe, phase: Phase, milk: DailyMilk): DoeNeeds {
  const weight = bodyWeight(doe);
  const resting = phase === 'dry' || phase === 'none';
  const milk_kg = milk.ok ? milk.milk_L * KG_PER_L : null;
  return {
    doe: doe.id,
    phase,
    weight,
    milk,
    dryFeed_kg: weight.ok ? dryFeed_kg(weight.weight_kg, resting ? 'dry' : 'milking') : null,
    concentrate_kg: milk_kg === null ? null : times(CONCENTRATE_PER_MILK, milk_kg),
    water_L: milk_kg === null ? null : water_L(milk_kg),
    animalUnits: ANIMAL_UNITS.goat,
  };
}

/**
 * What the herd takes in a day of the window, and a litre of its milk with the does that rest counted
 * in: they eat for the milk of another season. Every doe of `does.csv` counts.
 */
export function herdNeeds(book: Book, ledger: Ledger): HerdNeeds {
  const does = book.does.map((doe) => {
    const phase = phaseOn(ledger.phases.get(doe.id) ?? [], findLastDay(ledger).day ?? ledger.asOf);
    return doeNeeds(doe, phase, dailyMilk(ledger, doe.id, phase));
  });
  const known = (of: (one: DoeNeeds) => Range | null) => {
    const ranges = does.flatMap((one) => of(one) ?? []);
    return { sum: sumOf(ranges), does: ranges.length };
  };
  const dryFeed = known((one) => one.dryFeed_kg);
  const water = known((one) => one.water_L);
  return {
    does,
    dryFeed_kg: dryFeed,
    water_L: water,
    concentrate_kg: known((one) => one.concentrate_kg),
    animalUnits: does.reduce((sum, one) => sum + one.animalUnits, 0),
    perLitre: perLitre(does, dryFeed, water),
  };
}

function dailyMilk(ledger: Ledger, doe: string, phase: Phase): DailyMilk {
  if (phase === 'dry' || phase === 'none') return { ok: true, milk_L: 0, days: 0 };
  if (phase !== 'twice a day') return { ok: false, why: 'her kids drink part of it' };
  const { window } = findLastDay(ledger);
  const spans = ledger.phases.get(doe) ?? [];
  const whole = [...(ledger.doeDays.get(doe) ?? [])].filter(
    ([day, sum]) =>
      window !== null &&
      window.from <= day &&
      day <= window.to &&
      phaseOn(spans, day) === 'twice a day' &&
      isWhole(sum),
  );
  if (whole.length === 0) return { ok: false, why: 'no whole day of hers is in the week' };
  const grains = whole.reduce((sum, [, day]) => sum + day.grains, 0n);
  return { ok: true, milk_L: litres(ledger, grains) / whole.length, days: whole.length };
}

function perLitre(
  does: readonly DoeNeeds[],
  dryFeed: HerdNeeds['dryFeed_kg'],
  water: HerdNeeds['water_L'],
): HerdNeeds['perLitre'] {
  const milk_L = does.reduce((sum, { milk }) => sum + (milk.ok ? milk.milk_L : 0), 0);
  const isKnown = [dryFeed, water].every((one) => one.does === does.length);
  if (!isKnown) return { ok: false, why: 'not every doe has a known need and milk' };
  if (!(milk_L > 0)) return { ok: false, why: 'the herd gives no milk' };
  return {
    ok: true,
    milk_L,
    dryFeed_kg: times(dryFeed.sum, 1 / milk_L),
    water_L: times(water.sum, 1 / milk_L),
  };
}
