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

/** What a litre takes: over the does whose need and milk are known, with those left out by name. */
export type PerLitre =
  | {
      readonly ok: true;
      readonly milk_L: number;
      readonly dryFeed_kg: Range;
      readonly water_L: Range;
      readonly does: number;
      readonly leftOut: readonly string[];
    }
  | { readonly ok: false; readonly why: 'no doe with a known need gives milk' };

/** A day of the herd. */
export interface HerdNeeds {
  readonly does: readonly DoeNeeds[];
  /** Sums over the does for which it is known, and over how many that is. */
  readonly dryFeed_kg: { readonly sum: Range; readonly does: number };
  readonly water_L: { readonly sum: Range; readonly does: number };
  readonly concentrate_kg: { readonly sum: Range; readonly does: number };
  readonly animalUnits: number;
  readonly perLitre: PerLitre;
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
 * in: they eat for the milk of another season. Every doe of `does.csv` counts; a doe whose kids drink
 * part of her milk is left out of the litre, and named.
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
  return {
    does,
    dryFeed_kg: known((one) => one.dryFeed_kg),
    water_L: known((one) => one.water_L),
    concentrate_kg: known((one) => one.concentrate_kg),
    animalUnits: does.reduce((sum, one) => sum + one.animalUnits, 0),
    perLitre: perLitre(does),
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

function perLitre(does: readonly DoeNeeds[]): PerLitre {
  const known = does.flatMap(({ milk, dryFeed_kg, water_L: water }) =>
    milk.ok && dryFeed_kg && water ? [{ milk_L: milk.milk_L, dryFeed_kg, water }] : [],
  );
  const milk_L = known.reduce((sum, one) => sum + one.milk_L, 0);
  if (!(milk_L > 0)) return { ok: false, why: 'no doe with a known need gives milk' };
  const perLitreOf = (ranges: readonly Range[]) => times(sumOf(ranges), 1 / milk_L);
  return {
    ok: true,
    milk_L,
    dryFeed_kg: perLitreOf(known.map((one) => one.dryFeed_kg)),
    water_L: perLitreOf(known.map((one) => one.water)),
    does: known.length,
    leftOut: does.filter(({ milk, dryFeed_kg }) => !milk.ok || !dryFeed_kg).map(({ doe }) => doe),
  };
}
