// The parts of the udder: each is asked for once, and every tap is told what it hit.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../../../../shared/board/do/dayPlan.ts';
import {
  UDDER_PARTS,
  udderPartsAsked,
  udderPartsEnd,
  udderPartsSays,
  udderPartsVerdict,
} from '../../../../shared/board/do/udderParts.ts';
import { BOTH, boardInputOf } from '../../../support/boardInput.ts';
import { caseArb } from '../../../support/randomBook.ts';

describe('the parts of the udder', () => {
  it('are all asked for, each once, by any seed', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const asked = udderPartsAsked(seed);
        expect(new Set(asked)).toEqual(new Set(UDDER_PARTS));
        expect(asked).toHaveLength(5);
        expect(udderPartsAsked(seed)).toEqual(asked);
      }),
    );
  });

  it('are told by what was tapped: no two parts alike, and found only where asked', () => {
    for (const words of BOTH) {
      const told = UDDER_PARTS.flatMap((asked) =>
        UDDER_PARTS.map((tapped) => ({ asked, tapped, ...udderPartsVerdict(words, asked, tapped) })),
      );
      for (const one of told) expect(one.right).toBe(one.asked === one.tapped);
      // Five texts for what was found, five for what was not: the same wherever that part is tapped.
      expect(new Set(told.map(({ text }) => text)).size).toBe(10);
    }
  });

  it('are asked and told from the list, for any book', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        const plan = dayPlan(boardInputOf(book, asOf));
        for (const words of BOTH) {
          const says = udderPartsSays(words, plan);
          expect(says).toContain(udderPartsEnd(words, plan));
          for (const asked of UDDER_PARTS)
            for (const tapped of UDDER_PARTS) {
              const { text, more } = udderPartsVerdict(words, asked, tapped);
              expect(says).toContain(text);
              if (more !== null) expect(says).toContain(more);
            }
          expect(JSON.stringify(says)).not.toMatch(/NaN|undefined|[{}]/);
        }
      }),
      { numRuns: 60 },
    );
  });
});
