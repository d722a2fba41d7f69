// What an import would become beside the book: new, known, a correction; and twins within the file.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planImport, type BookLookup } from '../../../shared/book/importPlan.ts';
import { markOf } from '../../../shared/book/mark.ts';
import type { FoundMilking } from '../../../shared/book/importTypes.ts';
import type { MilkingRow } from '../../../shared/herd/types.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';
import { row } from '../../support/bookOf.ts';

const bookWith = (rows: MilkingRow[], treated = false): BookLookup => ({
  latest: (doe, day, milking) =>
    rows
      .filter((one) => one.doe === doe && one.day === day && one.milking === milking)
      .sort((a, b) => (b.entered_ms ?? 0) - (a.entered_ms ?? 0))[0] ?? null,
  expected: () => true,
  treated: () => treated,
});
let line = 1;
/** A milking of a file, written as a row of the book is in other tests; `used` false where the file has no use. */
function found(text: string, used = false): FoundMilking {
  const { doe, day, milking, amount, use, entered_ms } = row(text);
  line += 1;
  const written = amount && (amount.den === 1 ? String(amount.num) : `${amount.num}/${amount.den}`);
  return {
    ...{ key: `${line}:3`, line, column: 3, doe, day, milking, amount: written, read: amount },
    ...{ unit: amount?.unit ?? 'cup', use: used ? use : null, note: '', entered_ms, warnings: [] },
  };
}
const AT = '2026-05-21 am clover';

describe('planImport', () => {
  it('writes what the book does not have', () => {
    const [one] = planImport([found(`${AT} 9 cup`)], bookWith([]), []).rows;
    expect(one).toMatchObject({ kind: 'new', chosen: true, use: 'kept', before: null, saw: null });
  });

  it('leaves out what the book has, in whichever unit', () => {
    const book = bookWith([row(`${AT} 16 cup`)]);
    const { rows } = planImport([found(`${AT} 1 gal`)], book, ['*']);
    expect(rows).toMatchObject([{ kind: 'known', chosen: false }]);
  });

  it('makes another amount or use a correction that somebody has to choose, and names the row it saw', () => {
    const stands = row(`${AT} 8 cup @5000`);
    const one = found(`${AT} 9 cup @4000`);
    expect(planImport([one], bookWith([stands]), []).rows).toMatchObject([
      { kind: 'correction', chosen: false, saw: markOf(stands), warnings: [{ key: 'warn.bookNewer' }] },
    ]);
    expect(planImport([one], bookWith([stands]), [one.key]).rows[0]?.chosen).toBe(true);
    const fed = found(`${AT} 8 cup fed`, true);
    expect(planImport([fed], bookWith([stands]), []).rows[0]).toMatchObject({
      kind: 'correction',
      use: 'fed',
    });
  });

  it('does not bring back what was struck out unless somebody chooses it', () => {
    const struck = row(`${AT} - @5000`);
    expect(planImport([found(`${AT} 9 cup`)], bookWith([struck]), []).rows).toMatchObject([
      { kind: 'correction', chosen: false, before: { amount: null } },
    ]);
  });

  it('has no row for a strike of nothing', () => {
    expect(planImport([found(`${AT} -`)], bookWith([]), ['*']).rows).toEqual([]);
    expect(planImport([found(`${AT} -`)], bookWith([row(`${AT} 9 cup`)]), []).rows[0]?.kind).toBe(
      'correction',
    );
  });

  it('withholds the milk of a treated doe where the file does not say what became of it', () => {
    const book = bookWith([], true);
    expect(planImport([found(`${AT} 9 cup`)], book, []).rows[0]).toMatchObject({
      use: 'withheld',
      warnings: [{ key: 'warn.treated' }],
    });
    expect(planImport([found(`${AT} 9 cup kept`, true)], book, []).rows[0]).toMatchObject({
      use: 'kept',
      saidKept: true,
      warnings: [{ key: 'warn.treatedKept' }],
    });
    // Kept because the file says nothing is not kept because somebody said so.
    expect(planImport([found(`${AT} 9 cup`)], bookWith([]), []).rows[0]).toMatchObject({ use: 'kept', saidKept: false }); // prettier-ignore
  });

  it('takes the later of two rows by their time, and neither where no time tells them apart', () => {
    const [old, late] = [found(`${AT} 9 cup @1000`), found(`${AT} 8 cup @2000`)];
    const plan = planImport([late, old], bookWith([]), []);
    expect(plan.rows.map(({ key }) => key)).toEqual([late.key]);
    expect(plan.left).toMatchObject([
      { line: old.line, told: { key: 'left.older', slots: { line: late.line } } },
    ]);
    const [one, other] = [found(`${AT} 9 cup`), found(`${AT} 9 cup`)];
    const twins = planImport([one, other], bookWith([]), ['*']);
    expect(twins.rows).toEqual([]);
    expect(twins.twins).toMatchObject([
      { line: other.line, told: { key: 'fault.twin', slots: { line: one.line } } },
    ]);
  });

  it('written to the book, is known the second time: for any file', () => {
    const rowArb = fc.record({
      amount: fc.integer({ min: 0, max: 20 }),
      date: fc.integer({ min: 10, max: 13 }),
      milking: fc.constantFrom('am', 'pm'),
      doe: fc.constantFrom('clover', 'heather'),
    });
    fc.assert(
      fc.property(fc.array(rowArb, { maxLength: 12 }), (list) => {
        const file = list.map((one, index) =>
          found(`2026-05-${one.date} ${one.milking} ${one.doe} ${one.amount} cup @${index + 1}`),
        );
        const first = planImport(file, bookWith([]), []);
        const written = first.rows.map((one): MilkingRow => {
          const { doe, milking, use, entered_ms } = one;
          const { day, read } = file.find(({ key }) => key === one.key) as FoundMilking;
          return { ...row(`${AT} 1 cup`), doe, day, milking, use, entered_ms, amount: read };
        });
        const second = planImport(file, bookWith(written), ['*']);
        expect(second.rows.every(({ kind, chosen }) => kind === 'known' && !chosen)).toBe(true);
        expect(second.rows).toHaveLength(written.length);
        expect(written.every(({ amount }) => amount !== null && amount_mL(amount).valueOf() >= 0)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
