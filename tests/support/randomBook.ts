// Random books for property tests: herds, kiddings and milkings as odd as a real book can be.
import fc from 'fast-check';
import type { Book, Doe, Kidding, MilkingRow, MilkingTime, Use } from '../../shared/herd/types.ts';
import type { Amount } from '../../shared/quantity/amount.ts';
import { AMOUNT_UNITS } from '../../shared/quantity/units.ts';
import { dateOf, plainExpected } from './plainHerd.ts';

/** A book and the day to read it for. */
export interface Case {
  readonly book: Book;
  readonly asOf: number;
}

const USES: readonly Use[] = ['kept', 'kept', 'kept', 'withheld', 'fed', 'lost'];
const TIMES: readonly MilkingTime[] = ['am', 'pm'];
const IDS = ['clover', 'b-2', 'Ñandú', 'd.4', 'constructor'];
// Around new years, leap days and a century that has none; noon of a year as well.
const STARTS = [
  '2023-12-10',
  '2024-02-01',
  '2025-02-10',
  '2099-12-01',
  '2100-02-05',
  '1999-12-20',
  '2026-06-01',
];

const dayOf = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

const amountArb: fc.Arbitrary<Amount> = fc.record({
  num: fc.oneof(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 99_999_999 })),
  den: fc.oneof(fc.constantFrom(1, 2, 3, 4, 8, 10, 100, 1000), fc.integer({ min: 1, max: 9_999_999 })),
  unit: fc.constantFrom(...AMOUNT_UNITS),
});

/** The days after a kidding on which its phases start, each of them possibly not written down. */
const phasesArb = fc
  .record({
    apart: fc.option(fc.integer({ min: 0, max: 25 })),
    weaned: fc.option(fc.integer({ min: 0, max: 25 })),
    dry: fc.option(fc.integer({ min: 0, max: 40 })),
  })
  .map(({ apart, weaned, dry }) => {
    const weanedAfter = weaned === null ? null : (apart ?? 0) + weaned;
    return { apart, weaned: weanedAfter, dry: dry === null ? null : (weanedAfter ?? apart ?? 0) + dry };
  });

const kiddingsArb = fc.uniqueArray(
  fc.record({ after: fc.integer({ min: -60, max: 70 }), phases: phasesArb, kids: fc.option(fc.nat(4)) }),
  { maxLength: 3, selector: (one) => one.after },
);

const looseRowArb = fc.record({
  doe: fc.nat(4),
  after: fc.integer({ min: -20, max: 90 }),
  milking: fc.constantFrom(...TIMES),
  amount: fc.option(amountArb, { freq: 3 }),
  use: fc.constantFrom(...USES),
  entered_ms: fc.option(fc.integer({ min: 0, max: 5 })),
});

const planArb = fc.record({
  start: fc.constantFrom(...STARTS),
  herd: fc.array(kiddingsArb, { maxLength: 4 }),
  // Days on which milkings are written down in order: none at all, one day, or a long run.
  filled: fc.option(fc.record({ from: fc.integer({ min: -10, max: 40 }), days: fc.integer({ min: 1, max: 45 }) }), { freq: 6 }),
  onlyExpected: fc.boolean(),
  amounts: fc.array(amountArb, { minLength: 1, maxLength: 6 }),
  holes: fc.array(fc.nat(200), { maxLength: 6 }),
  loose: fc.array(looseRowArb, { maxLength: 25 }),
  asOf: fc.integer({ min: -70, max: 110 }),
  mix: fc.integer({ min: 1, max: 97 }),
}); // prettier-ignore

type Plan = typeof planArb extends fc.Arbitrary<infer T> ? T : never;

/** Books of up to four does, with the day to read them for; no two rows that `entered` cannot tell apart. */
export const caseArb: fc.Arbitrary<Case> = planArb.map(layOut);

function layOut(plan: Plan): Case {
  const start = dayOf(plan.start);
  const does = plan.herd.map((_, index) => doeNamed(IDS[index] ?? `doe${index}`));
  const kiddings = plan.herd.flatMap((list, index) =>
    list.map((one): Kidding => {
      const day = start + one.after;
      const from = (after: number | null) => (after === null ? null : day + after);
      const { apart, weaned, dry } = one.phases;
      return { doe: does[index]?.id ?? '', day, kids: one.kids, apart: from(apart), weaned: from(weaned), dry: from(dry) };
    }),
  ); // prettier-ignore
  const filled = filledRows(plan, start, does, kiddings);
  const loose = plan.loose.flatMap((one): Omit<MilkingRow, 'line'>[] => {
    const doe = does[one.doe];
    if (!doe) return [];
    const { milking, amount, use, entered_ms } = one;
    return [{ doe: doe.id, day: start + one.after, milking, amount, use, note: '', entered_ms, file: 'milkings/a.csv' }];
  }); // prettier-ignore
  const told = new Set<string>();
  const apart = [...filled, ...loose].filter((row) => {
    const key = [row.doe, row.day, row.milking, row.entered_ms].join();
    return told.has(key) ? false : told.add(key);
  });
  const rows = apart.map((row, index) => ({ ...row, line: index + 2 })).sort(byMix(plan.mix));
  return { book: { does, kiddings, rows }, asOf: start + plan.asOf };
}

function filledRows(plan: Plan, start: number, does: readonly Doe[], kiddings: readonly Kidding[]) {
  if (plan.filled === null) return [];
  const rows: Omit<MilkingRow, 'line'>[] = [];
  for (let day = start + plan.filled.from; day < start + plan.filled.from + plan.filled.days; day += 1) {
    for (const { id } of does) {
      for (const milking of plan.onlyExpected ? plainExpected(kiddings, id, dateOf(day)) : TIMES) {
        const amount = plan.amounts[(rows.length * 7 + day) % plan.amounts.length] ?? null;
        const use = USES[(rows.length * 5) % USES.length] ?? 'kept';
        rows.push({ doe: id, day, milking, amount, use, note: '', entered_ms: 3, file: 'milkings/a.csv' });
      }
    }
  }
  const holes = new Set(plan.holes);
  return rows.filter((_, index) => !holes.has(index));
}

const doeNamed = (id: string): Doe => ({ id, name: id, breed: '', born: null, weight_kg: null });

/** An order that has nothing to do with dates. */
const byMix = (mix: number) => (a: MilkingRow, b: MilkingRow) =>
  ((a.line * mix) % 101) - ((b.line * mix) % 101) || a.line - b.line;
