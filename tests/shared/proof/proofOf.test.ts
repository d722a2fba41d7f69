// The proofs of figures: their sums end in the figure, and a pocket calculator agrees.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../../shared/herd/figures.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { openProofs } from '../../../shared/proof/openProofs.ts';
import { kindOf, proofOf } from '../../../shared/proof/proofOf.ts';
import type { FigureProof, ProofInput } from '../../../shared/proof/types.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';

const WEEK = dates('2026-05-14', '2026-05-20');

function inputOf(book: Book, asOf: number): ProofInput {
  const ledger = openLedger(book, asOf);
  return openProofs({ lang: 'en', units: 'metric', book, ledger, figures: figuresOf(book, ledger) });
}

const herd = () =>
  inputOf(
    bookOf(
      ['ash 2026-03-01 weaned 2026-04-01', 'bay 2026-02-01 apart 2026-05-01'],
      [
        ...twice('ash', WEEK, '1 1/2 L').filter((row) => !row.startsWith('2026-05-16 pm')),
        ...WEEK.map((date) => `${date} am bay 1 L`),
      ],
    ),
    day('2026-05-20'),
  );

const lastSum = (proof: FigureProof) => proof.steps.at(-1)?.sum;
/** Recomputes `a + b + … = c` and `a ÷ b = c` as a pocket calculator would. */
function calculatorAgrees(sum: string, slack: number): boolean {
  const [left = '', right] = sum.replaceAll(',', '').split(/ [=≈] /);
  if (right === undefined || !/^[\d.]/.test(right)) return true;
  const value = left.includes('÷')
    ? left
        .split(' ÷ ')
        .map(Number)
        .reduce((a, b) => a / b)
    : left
        .split(' + ')
        .map(Number)
        .reduce((a, b) => a + b, 0);
  return left.includes('−') || Math.abs(value - Number(right)) <= slack;
}

describe('the proof of a figure', () => {
  it('adds the week up day by day', () => {
    const proof = proofOf('herd.week.total', herd());
    expect(proof.steps).toHaveLength(8);
    expect(proof.steps[2]).toEqual({ label: 'Sat, May 16', sum: '1.50 + 1.00 = 2.50' });
    expect(lastSum(proof)).toBe('4.00 + 4.00 + 2.50 + 4.00 + 4.00 + 4.00 + 4.00 = 26.50');
    expect(proof.shown).toBe('26.5');
    expect(proof.gaps).toMatchObject([{ date: '2026-05-16', milking: 'pm', doe: 'ash' }]);
    // Every other milking of hers is 1.5 L, so the estimate is, too; it stands in no sum.
    expect(proof.gaps[0]?.estimate?.middle).toBe('1.50');
    expect(proof.gaps[0]?.why).toBeNull();
  });

  it('leaves the day with a gap out of the mean, in the sums and in the rows', () => {
    const proof = proofOf('herd.week.dailyMean', herd());
    expect(lastSum(proof)).toBe('24.00 ÷ 6 = 4.00');
    expect(proof.groups).toHaveLength(6);
  });

  it('says why a missed milking cannot be estimated', () => {
    const lone = inputOf(
      bookOf(['ash 2026-03-01 weaned 2026-04-01'], ['2026-05-20 am ash 1 L']),
      day('2026-05-20'),
    );
    const { gaps } = proofOf('herd.week.missing', lone);
    expect(gaps).toHaveLength(13);
    for (const { estimate, why } of gaps)
      expect([estimate, why]).toEqual([null, expect.stringMatching(/^(noMilkBeside|tooFewDays)$/)]);
  });

  it('counts the days since kidding month by month', () => {
    const proof = proofOf('doe.ash.daysInMilk', herd());
    // March 1 to May 20: 30 days of March after the 1st, 30 of April, 20 of May.
    expect(proof.steps.map(({ sum }) => sum)).toEqual(['30', '30', '20', '30 + 30 + 20 = 80']);
  });

  it('subtracts entered from expected', () => {
    const proof = proofOf('herd.week.missing', herd());
    expect(proof.steps[2]).toEqual({ label: 'Sat, May 16', sum: '3 − 2 = 1' });
    expect(lastSum(proof)).toBe('1');
  });

  it('has no sums where the figure has no value', () => {
    expect(proofOf('herd.week.total', inputOf(bookOf([]), 0))).toMatchObject({
      shown: '',
      steps: [],
      groups: [],
    });
  });

  it('reads the doe out of an id, dots and all', () => {
    expect(kindOf('doe.d.4.week.best')).toEqual({ kind: 'doe.week.best', doe: 'd.4' });
    expect(() => kindOf('herd.week.nothing')).toThrow(
      'No proof is known for the figure "herd.week.nothing".',
    );
  });
});

describe('every proof, for any book', () => {
  it('ends in the figure, and a pocket calculator agrees with each line', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const input = inputOf(book, asOf);
        for (const [id, figure] of Object.entries(input.figures.figures)) {
          const proof = proofOf(id, input);
          expect(proof.shown === '').toBe(figure.value === null);
          // Each number of a line is rounded to half a hundredth.
          for (const { sum } of proof.steps) {
            expect(calculatorAgrees(sum, 0.005 * (sum.split(' + ').length + 1)), `${id}: ${sum}`).toBe(true);
          }
          const rows = proof.groups.flatMap((group) => group.rows).length;
          const counted = !['herd.year.total', 'herd.week.missing'].includes(proof.kind);
          if (counted && figure.value !== null) expect(rows, id).toBe(figure.rows);
        }
      }),
      { numRuns: 120 },
    );
  });
});
