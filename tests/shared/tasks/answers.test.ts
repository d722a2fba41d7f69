// Every answer of every kind of task, recomputed from what the sheet prints, over random weeks and seeds.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { kindsOf, TASK_KINDS } from '../../../shared/tasks/kinds.ts';
import { makeSheet, type Sheet } from '../../../shared/sheet/sheet.ts';
import { CHECKS_68, CHECKS_912 } from './checksOlder.ts';
import { CHECKS_912_LATER } from './checksOlderHigh.ts';
import { CHECKS_68_MILK } from './checksOlderMilk.ts';
import { CHECKS_68_PLAIN } from './checksOlderPlain.ts';
import { CHECKS_35, CHECKS_K2 } from './checksYoung.ts';
import { requestArb } from './randomWeek.ts';
import { answers, wrongNumber } from './slots.ts';

const CHECKS = {
  ...CHECKS_K2,
  ...CHECKS_35,
  ...CHECKS_68,
  ...CHECKS_912,
  ...CHECKS_68_PLAIN,
  ...CHECKS_68_MILK,
  ...CHECKS_912_LATER,
};
const RUNS = 2500;
// Here the boxes hold the addends first, and the sum last.
const SUMS = ['join-milkings', 'add-days'];
// Which question the common mistake is about, where it is not the first.
const MISTAKEN: Readonly<Record<string, number>> = {
  'block-graph': 1,
  'more-or-less': 1,
  'two-days': 1,
  'equal-jars': 2,
  'larger-to-smaller': 1,
  'rate-ahead': 1,
  'am-pm-ratio': 1,
  'line-of-fit': 1,
  'residual-table': 1,
  'mean-and-sd': 1,
  'share-of-week': 1,
  'error-bound': 1,
  'weighing-error': 1,
  'energy-yield': 2,
};

describe('answers', () => {
  it('has a second way for every kind of task', () => {
    expect(Object.keys(CHECKS).sort()).toEqual(TASK_KINDS.map(({ name }) => name).sort());
  });

  it('agree with a second way, over random weeks, seeds, bands and units', () => {
    const met = new Map<string, number>();
    fc.assert(
      fc.property(requestArb, (request) => {
        const sheet: Sheet = makeSheet(request);
        for (const task of sheet.tasks) {
          met.set(task.kind, (met.get(task.kind) ?? 0) + 1);
          try {
            CHECKS[task.kind]?.(task);
            const wrong = wrongNumber(task);
            if (wrong !== null) expect(answers(task, MISTAKEN[task.kind] ?? 0).at(SUMS.includes(task.kind) ? -1 : 0)).not.toBe(wrong);
          } catch (fault) {
            throw new Error(`${task.kind} (${request.units}): ${(fault as Error).message}\n${JSON.stringify(task)}`, { cause: fault });
          }
        }
      }),
      { numRuns: RUNS },
    );
    // Each kind came up often enough for the property to mean something.
    const seldom = BANDS.flatMap((band) => kindsOf(band)).filter(({ name }) => (met.get(name) ?? 0) < 20);
    expect(seldom.map(({ name }) => `${name} ${met.get(name) ?? 0}`)).toEqual([]);
  });
}); // prettier-ignore
