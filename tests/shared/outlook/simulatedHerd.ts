// Herds whose milk is drawn by rules that we know: several shapes of curve, steady and moody does, holes in the book.
import type { Book, Kidding, MilkingRow } from '../../../shared/herd/types.ts';
import { chanceOf } from '../../../shared/sheet/chance.ts';

/** Shapes of a lactation: Wood's, a straight fall, Wilmink's, no fall at all, two tops. */
export const SHAPES = ['wood', 'line', 'wilmink', 'flat', 'two tops'] as const;
export type Shape = (typeof SHAPES)[number];

interface Chances {
  between(low: number, high: number): number;
  normal(): number;
  pick<T>(from: readonly T[]): T;
}

function chances(seed: string): Chances {
  const chance = chanceOf(seed);
  const unit = () => (chance.int(0, 2 ** 30) + 0.5) / (2 ** 30 + 1);
  return {
    between: (low, high) => low + (high - low) * unit(),
    // Box and Muller's rule.
    normal: () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit()),
    pick: (from) => chance.pick(from),
  };
}

/** Litres a day over a lactation, the highest day at 1. */
export function curveOf(shape: Shape, days: number, { between }: Pick<Chances, 'between'>): number[] {
  const at = ((): ((t: number) => number) => {
    if (shape === 'wood') {
      const [b, top] = [between(0.05, 0.4), between(20, 80)];
      return (t) => t ** b * Math.exp((-b / top) * t);
    }
    const fall = between(0.001, 0.0028);
    if (shape === 'line') return (t) => 1 - fall * t;
    const start = between(0.2, 0.6);
    if (shape === 'wilmink') return (t) => 1 - fall * t - start * Math.exp(-0.05 * t);
    if (shape === 'flat') return () => 1;
    return (t) => 0.6 / (1 + ((t - 30) / 60) ** 2) + 0.7 / (1 + ((t - 150) / 90) ** 2);
  })();
  const values = Array.from({ length: days }, (_, index) => Math.max(at(index + 1), 0.05));
  const top = Math.max(...values);
  return values.map((value) => value / top);
}

/** A doe's days in milk and litres; days that were not written down are left out. */
function daysOf(shape: Shape, c: Chances, shared: readonly number[], start: number): Map<number, number> {
  const length = Math.round(c.between(150, 305));
  const top_L = c.between(0.8, 4);
  const [kept, drift, noise, holes] = [c.pick([0.5, 0.8, 0.95, 0.98]), c.pick([0.03, 0.06, 0.12]), c.pick([0.03, 0.06, 0.12]), c.pick([0, 0.05, 0.2])]; // prettier-ignore
  let away = drift * c.normal();
  const days = new Map<number, number>();
  for (const [index, level] of curveOf(shape, length, c).entries()) {
    away = kept * away + drift * Math.sqrt(1 - kept * kept) * c.normal();
    const day = start + index + 1;
    const kicked = c.between(0, 1) < 0.01 ? c.between(0.2, 0.8) : 1;
    const milk = top_L * level * Math.exp(away + (shared[day] ?? 0)) * Math.max(0, 1 + noise * c.normal()) * kicked; // prettier-ignore
    if (c.between(0, 1) >= holes) days.set(day, milk);
  }
  return days;
}

/**
 * A herd of six on one shape, kidding within a month, milked twice a day, amounts in whole mL. `alike` is
 * the spread of a day's effect that all share. The same seed gives the same book.
 */
export function simulatedHerd(seed: string, shape: Shape, alike: number): Book {
  const c = chances(`${seed} ${shape}`);
  const shared: number[] = [];
  for (let day = 0; day < 400; day += 1) shared.push(0.8 * (shared[day - 1] ?? 0) + 0.6 * alike * c.normal());
  const kiddings: Kidding[] = [];
  const rows: MilkingRow[] = [];
  for (let number = 1; number <= 6; number += 1) {
    const doe = `doe${number}`;
    const start = Math.round(c.between(0, 30));
    kiddings.push({ doe, day: start, kids: 2, apart: null, weaned: null, dry: null });
    const morning = c.between(0.5, 0.62);
    for (const [day, milk] of daysOf(shape, c, shared, start)) {
      for (const [milking, part] of [
        ['am', morning],
        ['pm', 1 - morning],
      ] as const) {
        const amount = { num: Math.round(milk * part * 1000), den: 1, unit: 'mL' as const };
        rows.push({ doe, day, milking, amount, use: 'kept', note: '', entered_ms: null, file: 'milkings/a.csv', line: rows.length + 2 }); // prettier-ignore
      }
    }
  }
  const does = kiddings.map(({ doe }) => ({ id: doe, name: doe, breed: '', born: null, weight_kg: null }));
  return { does, kiddings, rows };
}
