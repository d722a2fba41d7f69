// Pages of a sheet, picks by seed, and the style of the paper.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOf } from '../../../shared/sheet/chance.ts';
import { fillPages } from '../../../shared/sheet/layOut.ts';
import { linesOf, textWidth_em } from '../../../shared/sheet/lines.ts';
import { LIVE_WIDTH_MM, mmOfPt, PAGE_MEASURES, PAPERS } from '../../../shared/sheet/pageMeasures.ts';
import { cssText, pageStyle } from '../../../shared/sheet/pageStyle.ts';

const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);

/** Fewest pages by trying every way to part the list. */
function fewestPages(heights: readonly number[], page: number, head: number): number {
  if (heights.length === 0) return 0;
  let best = Number.POSITIVE_INFINITY;
  for (let taken = 1; taken <= heights.length; taken += 1) {
    const fill = sum(heights.slice(0, taken)) + head;
    if (taken > 1 && fill > page) break;
    best = Math.min(best, 1 + fewestPages(heights.slice(taken), page, 0));
  }
  return best;
}

describe('fillPages', () => {
  it('keeps the order, leaves nothing out, and takes the fewest pages', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 20, max: 150 }), { minLength: 1, maxLength: 8 }), (heights) => {
        const pages = fillPages(heights, 250, 40);
        expect(pages.flat()).toEqual(heights.map((_, index) => index));
        expect(pages.length).toBe(fewestPages(heights, 250, 40));
        pages.forEach((tasks, page) => {
          const fill = sum(tasks.map((index) => heights[index] ?? 0)) + (page === 0 ? 40 : 0);
          expect(tasks.length === 1 || fill <= 250.2).toBe(true);
        });
      }),
    );
  });

  it('shares tasks out instead of leaving a page near empty', () => {
    expect(fillPages([60, 60, 60, 60], 200, 0)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(fillPages([], 200, 40)).toEqual([[]]);
  });
});

describe('linesOf', () => {
  it('wraps words, never letters', () => {
    expect(linesOf('one two', textWidth_em('one two') + 0.01)).toBe(1);
    expect(linesOf('one two', textWidth_em('one two') - 0.01)).toBe(2);
    expect(linesOf('milk', 0.1)).toBe(1);
    expect(linesOf('', 10)).toBe(1);
  });
});

describe('chanceOf', () => {
  it('gives the same picks for the same word', () => {
    const picks = (word: string) => Array.from({ length: 5 }, (_, n) => chanceOf(`${word}${n}`).int(0, 1000));
    expect(picks('clover')).toEqual(picks('clover'));
    expect(picks('clover')).not.toEqual(picks('juno'));
    // Sheets that were handed out must come back from their seed: these picks may never change.
    expect(picks('clover')).toMatchInlineSnapshot(`
      [
        792,
        934,
        75,
        217,
        359,
      ]
    `);
  });

  it('shuffles without losing any', () => {
    fc.assert(
      fc.property(fc.string(), fc.array(fc.nat()), (word, list) => {
        expect([...chanceOf(word).shuffle(list)].sort()).toEqual([...list].sort());
      }),
    );
  });
});

describe('paper', () => {
  it('leaves the same written width on both', () => {
    for (const paper of PAPERS) {
      const { width_mm, side_mm } = PAGE_MEASURES[paper];
      expect(width_mm - 2 * side_mm).toBeCloseTo(LIVE_WIDTH_MM, 6);
    }
    expect(mmOfPt(72)).toBeCloseTo(25.4, 9);
  });

  it('marks the pages of the key, and counts no pages itself', () => {
    const style = pageStyle('a4', 'Answer key');
    expect(style).toContain('size: A4');
    expect(style).toMatch(/@page key .*@top-right \{ content: "Answer\\20 key"/s);
    expect(style).not.toContain('counter');
  });

  it('lets no name of a farm out of its string', () => {
    expect(cssText('"; } </style><script>')).not.toMatch(/[<>;{}]|"(?!$)(?<!^")/);
  });
}); // prettier-ignore
