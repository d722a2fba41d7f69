// Random weeks for sheets: herds of none to six does, thin books and full ones, in any unit a book may use.
import fc from 'fast-check';
import type { LactationWeeks } from '../../../shared/lactation/lactationWeeks.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book, Doe, MilkingRow, MilkingTime } from '../../../shared/herd/types.ts';
import { weekView, type WeekView } from '../../../shared/herd/week.ts';
import type { AmountUnit } from '../../../shared/quantity/units.ts';
import { BANDS, type Band } from '../../../shared/quantity/grade.ts';
import { kindsOf } from '../../../shared/tasks/kinds.ts';
import type { SheetRequest } from '../../../shared/sheet/sheet.ts';

const NAMES = ['Clover', 'Iris', 'Ñata', 'Clover', 'Mary-Ann of the Long Meadow', 'O'];
const LAST = 20_594; // 2026-05-21
// What a doe gives at a milking, and the finest step that she is read to, by the unit of the book.
const MOST: Readonly<Partial<Record<AmountUnit, number>>> = {
  cup: 14,
  L: 3.5,
  lb: 8,
  kg: 3.5,
  'fl oz': 110,
  mL: 3500,
  qt: 3.5,
};

const doeArb = fc.record({
  breed: fc.constantFrom('Alpine', 'Nubian', '', 'LaMancha'),
  kids: fc.option(fc.integer({ min: 0, max: 3 })),
  phase: fc.constantFrom('twice', 'twice', 'morning', 'not yet'),
  share: fc.integer({ min: 3, max: 100 }),
  unit: fc.constantFrom<AmountUnit>('cup', 'cup', 'cup', 'L', 'lb', 'kg', 'fl oz', 'mL', 'qt'),
  den: fc.constantFrom(1, 2, 4, 4, 10, 100, 3),
  wobbles: fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 9 }),
  slope: fc.integer({ min: -3, max: 3 }),
});

const weekArb = fc
  .record({
    does: fc.array(doeArb, { maxLength: 6 }),
    days: fc.constantFrom(0, 1, 2, 5, 8, 12, 26),
    holes: fc.array(fc.nat(200), { maxLength: 12 }),
    rest_days: fc.constantFrom(0, 0, 0, 3, 20, 200),
    mixed: fc.boolean(),
  })
  .map((plan) => {
    const book = bookOf(plan);
    return weekView(book, openLedger(book, LAST + plan.rest_days));
  });

interface Plan {
  readonly does: readonly (typeof doeArb extends fc.Arbitrary<infer T> ? T : never)[];
  readonly days: number;
  readonly holes: readonly number[];
  readonly mixed: boolean;
}

function bookOf(plan: Plan): Book {
  const does = plan.does.map(({ breed }, index): Doe => ({ id: `doe${index}`, name: NAMES[index] ?? `Doe ${index}`, breed, born: null, weight_kg: null }));
  const kiddings = plan.does.map(({ kids, phase }, index) => {
    const day = LAST - 60;
    return { doe: `doe${index}`, day, kids, apart: phase === 'not yet' ? LAST + 5 : day + 5, weaned: phase === 'twice' ? day + 6 : LAST + 30, dry: null };
  });
  const rows: MilkingRow[] = [];
  for (let day = LAST - plan.days + 1; day <= LAST; day += 1)
    plan.does.forEach((one, index) => {
      const times: MilkingTime[] = one.phase === 'twice' ? ['am', 'pm'] : one.phase === 'morning' ? ['am'] : [];
      for (const milking of times) {
        const wobble = one.wobbles[rows.length % one.wobbles.length] ?? 0;
        const unit = plan.mixed && rows.length % 11 === 0 ? 'mL' : one.unit;
        const most = MOST[unit] ?? 1;
        const amount = Math.max(0, (most * one.share * (0.8 + wobble / 500)) / 100 + (one.slope * most * (day - LAST)) / 800);
        const use = rows.length % 13 === 5 ? 'withheld' : 'kept';
        rows.push({ doe: `doe${index}`, day, milking, amount: { num: Math.round(amount * one.den), den: one.den, unit }, use, note: '', entered_ms: null, file: 'milkings/a.csv', line: rows.length + 2 });
      }
    });
  const holes = new Set(plan.holes);
  return { does, kiddings, rows: rows.filter((_, index) => !holes.has(index)) };
} // prettier-ignore

/** Lactations in weeks: a rise, a top and a fall with noise; some with Wood's curve, some short or flat. */
const curvesArb: fc.Arbitrary<readonly LactationWeeks[]> = fc.array(
  fc
    .record({
      a_mL: fc.integer({ min: 300, max: 2600 }),
      b: fc.integer({ min: 1, max: 400 }),
      c: fc.integer({ min: 4, max: 120 }),
      first: fc.integer({ min: 1, max: 8 }),
      weeks: fc.integer({ min: 8, max: 42 }),
      gap: fc.integer({ min: 2, max: 9 }),
      noise: fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 3, maxLength: 9 }),
      told: fc.boolean(),
    })
    .map(({ a_mL, b, c, first, weeks, gap, noise, told }): LactationWeeks => {
      const wood = { a: a_mL, b: b / 1000, c: c / 10_000 };
      const all = Array.from({ length: weeks }, (_, index) => first + index).filter((week) => week % gap !== 1 || gap > 6);
      const at = (t: number) => wood.a * t ** wood.b * Math.exp(-wood.c * t);
      const numbers = all.map((week, index) => ({ week, mean_mL: Math.max(1, Math.round(at(week * 7 - 3) + (noise[index % noise.length] ?? 0))) }));
      return { doe: 'doe0', name: 'Clover', weeks: numbers, wood: told ? wood : null };
    }),
  { maxLength: 2 },
).map((all) => all.map((one, index) => ({ ...one, doe: `doe${index}`, name: NAMES[index] ?? 'Doe' }))); // prettier-ignore

/** A week, plain: for tests that make their own requests. */
export const randomWeek: fc.Arbitrary<WeekView> = weekArb;

/** A request for a sheet of twelve kinds of task of its band, or of all where it has fewer. */
export const requestArb: fc.Arbitrary<SheetRequest> = fc
  .record({
    week: weekArb,
    band: fc.constantFrom<Band>(...BANDS),
    units: fc.constantFrom<'us' | 'metric'>('us', 'metric'),
    jar_mL: fc.constantFrom(946.352946, 1892.705892, 1000, 473.176473, 700),
    seed: fc.string({ minLength: 1, maxLength: 12 }),
    curves: fc.option(curvesArb, { nil: undefined }),
    milkings: fc.constantFrom(undefined, { am: '06:30', pm: '17:30' }, { am: '07:15', pm: '18:00' }, { am: '06:00', pm: '18:00' }),
    order: fc.array(fc.nat(9999), { minLength: 12, maxLength: 12 }),
  })
  .map(({ order, ...request }): SheetRequest => {
    const names = kindsOf(request.band).map(({ name }) => name);
    // Each number takes one of the names that are left.
    const tasks = order.flatMap((place) => names.splice(place % Math.max(1, names.length), 1));
    return { ...request, name: 'a-sheet', tasks };
  }); // prettier-ignore
