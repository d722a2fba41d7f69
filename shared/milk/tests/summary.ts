// What a set of milk tests says together: a herd's test day, or a doe's tests.
import { isoDate } from '../../calendar/day.ts';
import { judgeCells, type CellVerdict } from './cells.ts';
import { ecm_kg, fcm_kg } from './correctedMilk.ts';
import type { TestedDay } from './testedDays.ts';
import { weightedMean, type WeightedMean } from './weightedMean.ts';

/** Means weighed by milk, and what they make of it. */
export interface TestSummary {
  readonly tests: number;
  readonly milk_kg: number;
  /** The most milk of one tested day; null without a test. */
  readonly most_kg: number | null;
  readonly fat_pct: WeightedMean;
  readonly protein_pct: WeightedMean;
  readonly lactose_pct: WeightedMean;
  /** Cells of the pooled milk, as a tank would show them. */
  readonly cells_perML: WeightedMean;
  readonly cells: CellVerdict | null;
  /** Corrected milk of the tests with fat (and, for `ecm_kg`, protein); null where there is none. */
  readonly fcm4_kg: number | null;
  readonly ecm_kg: number | null;
}

/** Sums up tests. Corrected milk is the sum over the single tests, not over their means. */
export function summaryOf(days: readonly TestedDay[]): TestSummary {
  const mean = (of: (test: TestedDay['test']) => number | null) =>
    weightedMean(days.map(({ test, milk_kg }) => ({ milk_kg, value: of(test) })));
  const cells_perML = mean((test) => test.cells_perML);
  const withFat = days.flatMap(({ test: { fat_pct, protein_pct }, milk_kg }) =>
    fat_pct === null ? [] : [{ milk_kg, fat_pct, protein_pct }],
  );
  const whole = withFat.flatMap(({ milk_kg, fat_pct, protein_pct }) =>
    protein_pct === null ? [] : [{ milk_kg, fat_pct, protein_pct }],
  );
  const sum = (parts: readonly number[]) =>
    parts.length === 0 ? null : parts.reduce((all, one) => all + one, 0);
  return {
    tests: days.length,
    milk_kg: sum(days.map(({ milk_kg }) => milk_kg)) ?? 0,
    most_kg: days.length === 0 ? null : Math.max(...days.map((one) => one.milk_kg)),
    fat_pct: mean((test) => test.fat_pct),
    protein_pct: mean((test) => test.protein_pct),
    lactose_pct: mean((test) => test.lactose_pct),
    cells_perML,
    cells: cells_perML.ok ? judgeCells(cells_perML.mean) : null,
    fcm4_kg: sum(withFat.map(({ milk_kg, fat_pct }) => fcm_kg(milk_kg, fat_pct))),
    ecm_kg: sum(whole.map(ecm_kg)),
  };
}

/** A day on which milk of the herd was tested. */
export interface HerdTestDay extends TestSummary {
  readonly date: string;
  readonly does: readonly string[];
}

/** The herd's test days, oldest first. */
export function herdTestDays(days: readonly TestedDay[]): HerdTestDay[] {
  const byDay = Map.groupBy(days, ({ test }) => test.day);
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([day, own]) => ({
      date: isoDate(day),
      does: own.map(({ test }) => test.doe),
      ...summaryOf(own),
    }));
}

/** One doe's tests between two days, both included. */
export function doeTests(days: readonly TestedDay[], doe: string, from: number, to: number): TestSummary {
  return summaryOf(days.filter(({ test }) => test.doe === doe && from <= test.day && test.day <= to));
}
