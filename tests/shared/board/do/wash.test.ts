// Washing hands, against the steps of the US Centers for Disease Control and Prevention ("About Handwashing"):
// wet, lather (backs, between fingers, under nails), scrub at least 20 seconds, rinse, dry.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DIRTY,
  HAND_PLACES,
  SECONDS_A_PLACE,
  secondsOf,
  WASH_TOOLS,
  washSays,
  washSkip,
  washTap,
  type HandPlace,
  type WashTool,
} from '../../../../shared/board/do/wash.ts';
import { BOTH } from '../../../support/boardInput.ts';

const LEAST_SECONDS = 20;
const ALL = [...WASH_TOOLS, ...HAND_PLACES];
const tapsArb = fc.array(fc.constantFrom<HandPlace | WashTool>(...ALL), { maxLength: 120 });
const [en] = BOTH;

describe('washing', () => {
  it('takes 20 seconds over five places, no fewer', () => {
    expect(HAND_PLACES.length * SECONDS_A_PLACE).toBe(LEAST_SECONDS);
    const scrubs = HAND_PLACES.flatMap((place) => Array.from({ length: SECONDS_A_PLACE }, () => place));
    const way = ['wet', 'soap', ...scrubs, 'rinse', 'dry'] as const;
    let state = DIRTY;
    for (const tap of way) {
      const after = washTap(en!, state, tap);
      expect([tap, after.told.right]).toEqual([tap, true]);
      state = after.state;
    }
    expect(state.used).toBe(4);
  });

  it('never leads on out of order, whatever is tapped', () => {
    fc.assert(
      fc.property(tapsArb, fc.constantFrom(...BOTH), (taps, words) => {
        const says = washSays(words);
        // A plain diary of what counted: water, soap, seconds, rinse, towel.
        const diary: string[] = [];
        let state = DIRTY;
        for (const tap of taps) {
          const after = washTap(words, state, tap);
          if (after.told.right) diary.push(tap);
          else expect(after.state).toBe(state);
          state = after.state;
          expect(says).toContain(after.told.text);
          if (after.told.more !== null) expect(says).toContain(after.told.more);
        }
        const scrubs = diary.filter((tap) => (HAND_PLACES as readonly string[]).includes(tap));
        expect(diary).toEqual(['wet', 'soap', ...scrubs, 'rinse', 'dry'].slice(0, diary.length));
        expect(secondsOf(state)).toBe(scrubs.length);
        if (diary.includes('rinse')) expect(scrubs).toHaveLength(LEAST_SECONDS);
        for (const place of HAND_PLACES)
          expect(scrubs.filter((one) => one === place)).toHaveLength(state.scrubbed[place]);
      }),
      { numRuns: 120 },
    );
  });

  it('can skip the count, and then goes on with rinsing', () => {
    const soapy = { ...DIRTY, used: 2 };
    const { state, told } = washSkip(en!, soapy);
    expect(secondsOf(state)).toBe(LEAST_SECONDS);
    expect(washSays(en!)).toContain(told.text);
    expect(washTap(en!, state, 'rinse').told.right).toBe(true);
    expect(washTap(en!, soapy, 'rinse').told.right).toBe(false);
  });

  it('lets nobody take gel where there is a sink', () => {
    for (let used = 0; used <= 4; used += 1)
      expect(washTap(en!, { ...DIRTY, used }, 'gel').told.right).toBe(false);
  });
});
