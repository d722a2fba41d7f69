// The board's answers about the kids: by example, at the edges, and over random books.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerTo } from '../../../shared/board/answers.ts';
import type { QuestionName } from '../../../shared/board/topics.ts';
import { LITTER_MEAN } from '../../../shared/board/twins.ts';
import type { Answer } from '../../../shared/board/types.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { births, herd, inputOf, inputOn, shows } from '../../support/goatBoard.ts';
import { caseArb } from '../../support/randomBook.ts';

const MINE: readonly QuestionName[] = [
  'which-goat',
  'how-old',
  'who-rests',
  'males',
  'eyes',
  'where-kids',
  'twins',
  'likeness',
];

describe('where the kids are', () => {
  const book = births(
    ['ash 2026-04-20 apart 2026-05-11 weaned 2026-06-30', 2],
    ['bay 2026-05-10 apart 2026-05-31 weaned 2026-07-20', 3],
    ['fir 2026-04-01', 1],
    ['elm 2026-02-01 weaned 2026-05-01 dry 2026-10-01', 2],
    ['oak 2026-02-03', null],
    ['old 2025-02-03 weaned 2025-05-01', 2],
  );

  it('follows each birth through its phases and keeps bottle kids apart', () => {
    const at = (date: string) => {
      const answer = answerTo('where-kids', inputOf(book, date));
      return { number: answer.number, kids: shows(answer, 'kids').places.map(({ kids }) => kids) };
    };
    // With mother, apart at night, bottle, weaned.
    expect(at('2026-05-20')).toEqual({ number: '8', kids: [3, 2, 1, 2] });
    expect(at('2026-12-08')).toEqual({ number: '8', kids: [0, 0, 0, 8] });
    // Bottle kids count as weaned after three and eight weeks, the longest common span; no row dates it.
    expect(at('2026-06-17').kids[2]).toBe(1);
    expect(at('2026-06-18').kids[2]).toBe(0);
    expect(at('2026-04-01')).toEqual({ number: '3', kids: [3, 0, 0, 0] });
  });

  it('is missing in a year without kids, or where nobody wrote down how many', () => {
    const missing = (one: Book) => answerTo('where-kids', inputOf(one, '2026-05-20')).missing;
    expect([missing(herd()), missing(births(['oak 2026-02-03', null])), missing(births(['oak 2025-02-03', 2]))]).toEqual([true, true, true]); // prettier-ignore
  });

  it('speaks of a place in the headline only where more than half are there', () => {
    expect(answerTo('where-kids', inputOf(book, '2026-05-20')).variants['headline']).toBe('mixed');
    expect(answerTo('where-kids', inputOf(book, '2026-12-08')).variants['headline']).toBe('weaned');
  });
});

describe('twins', () => {
  it('counts births of two among all whose kids are known', () => {
    const book = births(['ash 2025-03-01', 2], ['ash 2026-03-01', 3], ['bay 2026-03-02', 2], ['fir 2026-03-03', null], ['fir 2027-03-03', 2]); // prettier-ignore
    const answer = answerTo('twins', inputOf(book, '2026-05-20'));
    expect(answer).toMatchObject({ number: '2', concrete: 7, variants: { headline: 'most' } });
    expect(answer.slots).toMatchObject({ all: 3, kids: 7, percent: 67, mean: '2.33' });
    expect(shows(answer, 'litters').rows).toEqual([
      { kids: 1, births: 0 },
      { kids: 2, births: 2 },
      { kids: 3, births: 1 },
    ]);
    expect(answer.proof.steps.map(({ sum }) => sum)).toEqual([
      '0',
      '2',
      '1',
      '0 + 2 + 1 = 3',
      '7 ÷ 3 ≈ 2.33',
    ]);
  });

  it('has a row for litters without a living kid and for very large ones', () => {
    const book = births(['ash 2026-03-01', 0], ['bay 2026-03-02', 5]);
    const answer = answerTo('twins', inputOf(book, '2026-05-20'));
    expect(answer).toMatchObject({ number: '0', missing: false, variants: { headline: 'other' } });
    expect(shows(answer, 'litters').rows.map(({ kids }) => kids)).toEqual([0, 1, 2, 3, 5]);
  });

  it('compares with the published mean: Amoah and others 1996, Journal of Animal Science, 1.85 kids', () => {
    expect(LITTER_MEAN).toBe(1.85);
    expect(answerTo('twins', inputOf(births(['a 2026-03-01', 1]), '2026-05-20')).variants['why.second']).toBe(
      'fewer',
    );
    expect(answerTo('twins', inputOf(births(['a 2026-03-01', 2]), '2026-05-20')).variants['why.second']).toBe(
      'more',
    );
    expect(answerTo('twins', inputOf(herd(), '2026-05-20'))).toMatchObject({ missing: true, number: '' });
  });
});

describe('likeness', () => {
  it('shows mothers with the number of their kids, and nothing else about a kid', () => {
    const book = births(['ash 2026-03-01', 2], ['bay 2026-03-02', 0], ['fir 2026-03-03', 1]);
    const answer = answerTo('likeness', inputOf(book, '2026-05-20'));
    expect(answer).toMatchObject({ number: '3', concrete: 2 });
    expect(shows(answer, 'family').mothers).toEqual([
      { doe: { id: 'ash', name: 'ash', breed: '' }, kids: 2 },
      { doe: { id: 'fir', name: 'fir', breed: '' }, kids: 1 },
    ]);
    expect(answerTo('likeness', inputOf(herd(), '2026-05-20')).missing).toBe(true);
  });
});

describe('all of them, for any book', () => {
  it('show as much as they count', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const input = inputOn(book, asOf);
        const told = Object.fromEntries(MINE.map((name) => [name, answerTo(name, input)])) as Record<
          string,
          Answer
        >;
        const n = (name: QuestionName) => Number(told[name]?.number);
        const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
        expect(shows(told['which-goat']!, 'faces').does).toHaveLength(n('which-goat'));
        const rest = shows(told['who-rests']!, 'rest').places.map(({ does }) => does.length);
        expect(sum(rest.slice(1))).toBe(n('who-rests'));
        expect(sum(shows(told['where-kids']!, 'kids').places.map(({ kids }) => kids))).toBe(n('where-kids'));
        expect(sum(shows(told['likeness']!, 'family').mothers.map(({ kids }) => kids))).toBe(n('likeness'));
        expect(n('likeness')).toBe(n('where-kids'));
        const { rows } = shows(told['twins']!, 'litters');
        expect(rows.find(({ kids }) => kids === 2)?.births).toBe(n('twins'));
        expect(sum(rows.map(({ births: count }) => count))).toBe(told['twins']?.slots['all']);
      }),
      { numRuns: 150 },
    );
  });
});
