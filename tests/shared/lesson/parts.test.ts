// The small parts of the bench: minutes shared out, the clock, materials by class size, and what a lesson claims.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allot } from '../../../shared/lesson/allot.ts';
import { clockText, readClock, spansOf } from '../../../shared/lesson/clock.ts';
import { materialsFor } from '../../../shared/lesson/materials.ts';
import { planHead } from '../../../shared/lesson/planHead.ts';
import { poolFor } from '../../../shared/lesson/pool.ts';
import type { Material } from '../../../shared/lesson/types.ts';
import { lessonOf } from '../../support/lessonPool.ts';

describe('allot', () => {
  it('gives every step what it can, and the sum what was asked, wherever that can be', () => {
    const step = fc
      .tuple(fc.integer({ min: 1, max: 20 }), fc.nat(20), fc.nat(20))
      .map(([least, more, most]) => ({ least, minutes: least + more, most: least + more + most }));
    fc.assert(
      fc.property(fc.array(step), fc.nat(300), (steps, minutes) => {
        const times = allot(steps, minutes);
        const sum = (all: readonly number[]) => all.reduce((so, one) => so + one, 0);
        const least = sum(steps.map((one) => one.least));
        const most = sum(steps.map((one) => one.most));
        expect(sum(times)).toBe(Math.min(most, Math.max(least, minutes)));
        steps.forEach((one, index) => {
          expect(times[index]).toBeGreaterThanOrEqual(one.least);
          expect(times[index]).toBeLessThanOrEqual(one.most);
        });
      }),
    );
  });
});

describe('the clock', () => {
  it('follows the steps, over midnight too', () => {
    expect(spansOf([5, 10], 570)).toEqual([
      { from: 570, to: 575 },
      { from: 575, to: 585 },
    ]);
    expect(clockText(24 * 60 + 5)).toBe('0:05');
  });

  it('reads what it writes, and no nonsense', () => {
    for (let minutes = 0; minutes < 24 * 60; minutes += 7)
      expect(readClock(clockText(minutes))).toBe(minutes);
    for (const text of ['', '24:00', '9:60', '9', 'noon', '-1:00', '9:5']) expect(readClock(text)).toBeNull();
  });
});

describe('materialsFor', () => {
  const cup: Material = { what: 'paper cup', count: 2, per: 'child', groupOf: null };
  const cards: Material = { what: 'set of cards', count: 1, per: 'group', groupOf: 4 };
  const pail: Material = { what: 'clean pail', count: 1, per: 'class', groupOf: null };

  it('counts by child, by group with a group for the rest, and by class', () => {
    expect(materialsFor([cup, cards, pail], 23).map(({ count }) => count)).toEqual([46, 6, 1]);
    expect(materialsFor([cards], 24)[0]?.count).toBe(6);
    expect(materialsFor([cup, cards], 1).map(({ count }) => count)).toEqual([2, 1]);
  });

  it('needs a thing of two lessons once, the larger number of it', () => {
    const more: Material = { ...pail, what: 'Clean pail', count: 3 };
    expect(materialsFor([pail, cup, more], 5)).toEqual([
      { material: more, count: 3 },
      { material: cup, count: 10 },
    ]);
  });
});

describe('planHead', () => {
  const one = lessonOf('one', { a: {}, b: {} }, { standards: ['1-LS1-2'], cautions: ['allergy'] });
  const two = lessonOf('two', { a: {}, b: {}, c: {} }, { standards: ['K.CC.B.5'], cautions: ['tools', 'allergy'] }); // prettier-ignore
  const at = (...ids: string[]) =>
    poolFor([one, two], 0)
      .filter(({ step }) => ids.includes(step.id))
      .map((step) => ({ ...step, minutes: step.step.minutes }));

  it('claims aims and standards of lessons that are at least half in, and warns for all', () => {
    const head = planHead(at('one.a', 'two.a'), 20, 'class');
    expect(head.standards).toEqual(['1-LS1-2']);
    expect(head.aims).toEqual(['Aim of one.']);
    expect(head.cautions).toEqual(['allergy', 'tools']);
    expect(planHead(at('two.a'), 20, 'class').standards).toEqual(['K.CC.B.5']);
    expect(planHead(at('one.a', 'two.a', 'two.b'), 20, 'class').standards).toEqual(['1-LS1-2', 'K.CC.B.5']);
  });

  it('never leaves washed hands out in the barn', () => {
    expect(planHead(at('one.a'), 20, 'barn').cautions).toEqual(['wash', 'allergy']);
  });
});
