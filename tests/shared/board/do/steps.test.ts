// The steps of a milking: their order by the reasons between them, and every tap explained.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../../../../shared/board/do/dayPlan.ts';
import {
  STEPS_IN_ORDER,
  stepsMixed,
  stepsSays,
  stepsVerdict,
  type MilkingStep,
} from '../../../../shared/board/do/steps.ts';
import { MILKING_STEPS } from '../../../../shared/tasks/milkingSteps.ts';
import { BOTH, boardInputOf } from '../../../support/boardInput.ts';
import { caseArb } from '../../../support/randomBook.ts';

// What must be done before what, one reason each. Common practice, no source; stripping before milking and dip after it
// also in Alpha Genetics, milking procedures.
const BEFORE: readonly (readonly [MilkingStep, MilkingStep])[] = [
  ['wash', 'brush'], // clean hands touch her
  ['brush', 'wipe'], // brushing throws dust on teats
  ['wipe', 'strip'], // only clean teats are squeezed
  ['strip', 'milk'], // bad milk is seen before it is in the pail
  ['milk', 'dip'], // dip would get into the milk
  ['dip', 'strain'], // her teats are open until they are dipped
  ['strain', 'chill'], // warm milk runs through the filter
];
// What a step is called on the sheets.
const ON_SHEETS: Readonly<Record<string, MilkingStep>> = {
  wash: 'wash',
  clean: 'wipe',
  milk: 'milk',
  pour: 'strain',
};

describe('the order of the steps', () => {
  it('is the only one that keeps every reason', () => {
    const left = new Set(BEFORE.flat());
    const order: MilkingStep[] = [];
    while (left.size > 0) {
      const free = [...left].filter(
        (step) => !BEFORE.some(([first, then]) => then === step && left.has(first)),
      );
      expect(free).toHaveLength(1);
      order.push(free[0]!);
      left.delete(free[0]!);
    }
    expect(STEPS_IN_ORDER).toEqual(order);
  });

  it('agrees with the shorter order of the sheets', () => {
    const places = MILKING_STEPS.map((scene) => STEPS_IN_ORDER.indexOf(ON_SHEETS[scene]!));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('is mixed by every seed, with nothing lost and never in order', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const mixed = stepsMixed(seed);
        expect(mixed.toSorted()).toEqual(STEPS_IN_ORDER.toSorted());
        expect(mixed).not.toEqual(STEPS_IN_ORDER);
        expect(stepsMixed(seed)).toEqual(mixed);
      }),
    );
  });
});

describe('a tap on a step, for any book', () => {
  it('is right when all before it is done, and is explained in both languages', () => {
    fc.assert(
      fc.property(caseArb, fc.constantFrom('us' as const, 'metric' as const), ({ book, asOf }, units) => {
        const plan = dayPlan(boardInputOf(book, asOf, units));
        for (const words of BOTH) {
          const says = stepsSays(words, plan);
          for (let done = 0; done < STEPS_IN_ORDER.length; done += 1)
            for (const tapped of STEPS_IN_ORDER.slice(done)) {
              const past = new Set(STEPS_IN_ORDER.slice(0, done));
              const isFree = BEFORE.every(([first, then]) => then !== tapped || past.has(first));
              const told = stepsVerdict(words, plan, done, tapped);
              expect(told.right).toBe(isFree);
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
