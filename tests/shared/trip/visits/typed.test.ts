// Numbers as people type and paste them, and what the page keeps of them in its address.
import { describe, expect, it } from 'vitest';
import { guessesTyped } from '../../../../shared/trip/visits/after/guesses.ts';
import { readAfter, writeAfter, type AfterWish } from '../../../../shared/trip/visits/after/afterQuery.ts';
import { numberOf, readCounts, readOfDoes } from '../../../../shared/trip/visits/after/typed.ts';

const DOES = [{ id: 'fern-2', name: 'Fern 2', breed: 'Nubian' }, { id: 'fern', name: 'Fern', breed: 'Alpine' }, { id: 'niña', name: 'Niña', breed: 'Alpine' }]; // prettier-ignore
const counted = (text: string) => readCounts(text).rows.map(({ value, times }) => [value.valueOf(), times]);

describe('readCounts', () => {
  it.each([
    ['a pasted column', '5\r\n6\n5\n', [[5, 2], [6, 1]]],
    ['two pasted columns', '4\t3\n5\t7', [[4, 3], [5, 7]]],
    ['the forms that people write', '5 x 7\n6×2\n4:1\n3, 2\n2 = 4', [[2, 4], [3, 2], [4, 1], [5, 7], [6, 2]]],
    ['halves and quarters', '4½\n4 1/2 x 2\n2.25\n3/4', [[0.75, 1], [2.25, 1], [4.5, 3]]],
    ['a count of none', '5 x 0\n6', [[6, 1]]],
  ])('reads %s', (_, text, rows) => expect(counted(text)).toEqual(rows)); // prettier-ignore

  it('leaves aside what is no number, and more than a school', () => {
    expect(readCounts('five\n-3\n1/0\n5 x\n2000\n1 x 300\n2 x 300').wrong).toEqual(['five', '-3', '1/0', '5 x', '2000', '2 x 300']); // prettier-ignore
  });

  it('leaves aside at once what is longer than any number, so that no link keeps a browser busy', () => {
    const long = [
      `1${' '.repeat(40_000)}a`,
      `1.${'3'.repeat(40_000)}`,
      `${'1'.repeat(40_000)}/${'7'.repeat(40_001)}`,
    ];
    const start_ms = performance.now();
    expect(readCounts(long.join('\n')).wrong).toEqual(long);
    expect(readOfDoes(`Fern ${long[1]}`, DOES).wrong).toHaveLength(1);
    expect(performance.now() - start_ms).toBeLessThan(500);
  });

  it('reads no number of two lands two ways: 4,5 is not four and a half', () => {
    expect(numberOf('4,5')).toBeNull();
    expect(counted('4,5')).toEqual([[4, 5]]);
  });
});

it('readOfDoes knows a name with a number in it, and letters with marks', () => {
  const { rows, wrong } = readOfDoes('Fern 2 7\nFern 6\nNIN\u0303A: 4 1/2\nAna 3', DOES);
  expect(rows.map(({ doe, value }) => [doe, value.valueOf()])).toEqual([['fern-2', 7], ['fern', 6], ['niña', 4.5]]); // prettier-ignore
  expect(wrong).toEqual(['Ana 3']);
});

describe('guesses', () => {
  it('are whole cups, or half liters, as the board has them', () => {
    expect(guessesTyped('5 x 2\n5.5', '6.25', 'cup')).toMatchObject({
      guesses: [5, 5],
      truth: 6.25,
      wrong: ['5.5'],
    });
    expect(guessesTyped('1.5 x 2\n1.25', '', 'half-L')).toMatchObject({ guesses: [3, 3], truth: null, wrong: ['1.25'] }); // prettier-ignore
  });
});

describe('the address', () => {
  const usual: AfterWish = { grade: 2, paper: 'letter', date: '', doe: 'fern', guesses: '', gave: '', measure: 'milk', numbers: '' }; // prettier-ignore
  it('takes no measure that the grade does not have', () => {
    // Ears want a ruler, which comes in grade 2 (2.MD.A.1).
    expect(readAfter('?grade=2&measure=ears', DOES, usual).measure).toBe('ears');
    expect(readAfter('?grade=1&measure=ears', DOES, usual)).toMatchObject({ grade: 1, measure: 'milk' });
  });

  it('keeps what was understood, and no line that was not', () => {
    const wish: AfterWish = { ...usual, grade: 0, paper: 'a4', date: '2026-05-27', guesses: '5 x 7\nAna\n6 1/2', gave: '6½', numbers: 'Fern 2 7\nAna 3' }; // prettier-ignore
    const query = writeAfter(wish, DOES);
    expect(query).not.toContain('Ana');
    expect(readAfter(query, DOES, usual)).toEqual({ ...wish, guesses: '5 x 7\n6 1/2', gave: '6 1/2', numbers: 'Fern 2 7' }); // prettier-ignore
  });

  it('takes the usual for what cannot be', () => {
    const query =
      '?grade=13&paper=b5&date=2026-02-30&doe=ana&guesses=x_y&gave=no&measure=drunk&numbers=ana:3';
    expect(readAfter(query, DOES, usual)).toEqual(usual);
  });
});
