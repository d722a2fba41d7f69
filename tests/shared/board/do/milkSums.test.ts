// Sums that a child can redo: what poured jars hold, and the day of all does.
import { describe, expect, it } from 'vitest';
import { cupsPlan } from '../../../../shared/board/do/cupsPlan.ts';
import { facesVerdict } from '../../../../shared/board/do/faces.ts';
import { facesPlan } from '../../../../shared/board/do/facesPlan.ts';
import { pourVerdict } from '../../../../shared/board/do/pour.ts';
import { pourPlan } from '../../../../shared/board/do/pourPlan.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { bookOf, dates, day, twice } from '../../../support/bookOf.ts';
import { boardInputOf } from '../../../support/boardInput.ts';
import { doe, herd } from '../../../support/goatBoard.ts';

const WEEK = dates('2026-05-14', '2026-05-20');
const TODAY = day('2026-05-20');
const words = wordsOf('en');

describe('pouring', () => {
  it('tells what the jars hold to the quarter, as near where it is not so, and shows the division', () => {
    // A half gallon is 8 cups: NIST Handbook 44, Appendix C.
    const poured = (amount: string) => {
      const book = bookOf(['ash 2026-02-01 weaned 2026-04-01'], twice('ash', WEEK, amount));
      const plan = pourPlan({ ...boardInputOf(book, TODAY, 'us'), jar_mL: 8 * 236.5882365 });
      if (!plan?.rounds[0]) throw new Error('no plan');
      return pourVerdict(words, plan, plan.rounds[0], 1);
    };
    expect(poured('3 cup').text).toContain('They fill ¾.');
    expect(poured('3 cup').more).toContain('6 ÷ 8 = 0.75.');
    expect(poured('4 1/2 cup').text).toContain('They fill about 1¼.');
    expect(poured('4 1/2 cup').more).toContain('9 ÷ 8 = 1.125.');
  });
});

describe('cups of all does', () => {
  it('come from the newest day on which all were milked, so that one doe never has more than all', () => {
    const book = bookOf(
      ['ash 2026-02-01 weaned 2026-04-01', 'bay 2026-02-01 weaned 2026-04-01 dry 2026-05-20'],
      [...twice('ash', WEEK, '2 cup'), ...twice('bay', WEEK.slice(0, -1), '3 cup')],
    );
    const plan = cupsPlan(boardInputOf(book, TODAY, 'us'));
    expect(plan?.rounds.map(({ name, children }) => [name, children])).toContainEqual(['', 10]);
  });
});

describe('the breed of a face', () => {
  it('is told where her drawing goes by it, and not where it does not', () => {
    const told = (breed: string) => {
      const plan = facesPlan(boardInputOf(herd(doe('ash', null, breed), doe('bay', null, 'Nubian')), TODAY));
      const round = plan?.rounds.find((one) => one.doe === 'ash');
      if (!plan || !round) throw new Error('no plan');
      const [first] = plan.does.filter(({ id }) => id === 'ash');
      if (!first) throw new Error('no doe');
      return facesVerdict(words, plan, { kind: 'who', doe: first, right: 'ash' }, 'ash').more;
    };
    expect(told('Alpine')).toContain('Breed of ash: Alpine.');
    // A breed of cows: no drawing of a goat goes by it.
    expect(told('Holstein')).toMatch(/^We draw each doe in our own way/);
  });
});
