// Milking by hand against a small model of a teat: milk leaves below only when the way up is shut and the way down is open.
// How a hand shuts a teat: common practice, no source.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../../../../shared/board/do/dayPlan.ts';
import {
  SQUEEZE_IN_ORDER,
  SQUEEZE_TAPS,
  squeezeSays,
  squeezeVerdict,
  type Squeeze,
} from '../../../../shared/board/do/squeeze.ts';
import { bookOf, day } from '../../../support/bookOf.ts';
import { BOTH, boardInputOf } from '../../../support/boardInput.ts';
import { caseArb } from '../../../support/randomBook.ts';

const EMPTY = dayPlan(boardInputOf(bookOf([]), day('2026-05-20')));
const [en] = BOTH;

/** Where pressing a finger sends the milk of a teat whose fingers `shut` are shut, from the top down. */
function modelFlow(shut: readonly boolean[], pressed: number): 'up' | 'out' | 'stuck' | 'ring' {
  if (shut[pressed]) return 'stuck';
  // The ring itself only parts the teat from the cistern.
  if (pressed === 0) return 'ring';
  if (!shut[0]) return 'up';
  // Milk above the finger that is pressed has no way out any more.
  return shut.slice(0, pressed).every(Boolean) ? 'out' : 'stuck';
}

describe('a squeeze', () => {
  it('brings milk where the model says, for every finger at every time', () => {
    const fingers = SQUEEZE_IN_ORDER.slice(0, 4);
    for (let done = 0; done <= 4; done += 1) {
      const shut = fingers.map((_, i) => i < done);
      fingers.forEach((finger, i) => {
        const told = squeezeVerdict(en!, EMPTY, done, finger);
        const model = modelFlow(shut, i);
        expect([done, finger, told.flow]).toEqual([
          done,
          finger,
          model === 'up' || model === 'out' ? model : 'none',
        ]);
        expect(told.right).toBe(model === 'out' || model === 'ring');
        expect(told.done).toBe(told.right ? done + 1 : done);
      });
    }
  });

  it('lets the teat fill again only from an empty hand, and never by pulling', () => {
    for (let done = 0; done <= 4; done += 1) {
      expect(squeezeVerdict(en!, EMPTY, done, 'letgo').right).toBe(done === 4);
      expect(squeezeVerdict(en!, EMPTY, done, 'pull')).toMatchObject({ right: false, done, flow: 'none' });
    }
    expect(squeezeVerdict(en!, EMPTY, 4, 'letgo')).toMatchObject({ done: 0, flow: 'refill' });
  });

  it('says nothing that is not in its list, whatever is tapped, for any book', () => {
    const taps = fc.array(fc.constantFrom<Squeeze>(...SQUEEZE_TAPS), { maxLength: 40 });
    fc.assert(
      fc.property(caseArb, taps, ({ book, asOf }, tapped) => {
        const plan = dayPlan(boardInputOf(book, asOf));
        for (const words of BOTH) {
          const says = squeezeSays(words, plan);
          let done = 0;
          for (const tap of tapped) {
            const told = squeezeVerdict(words, plan, done, tap);
            done = told.done;
            expect(says).toContain(told.text);
            if (told.more !== null) expect(says).toContain(told.more);
          }
          expect(JSON.stringify(says)).not.toMatch(/NaN|undefined|[{}]/);
        }
      }),
      { numRuns: 60 },
    );
  });
});
