// What a teacher does to a lesson on the bench, and what stays true whatever she does.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeLesson } from '../../../shared/lesson/compose.ts';
import {
  dropped,
  exchanged,
  fitted,
  isHeld,
  lengthened,
  likesOf,
  moved,
  putIn,
} from '../../../shared/lesson/edits.ts';
import { leftOut } from '../../../shared/lesson/leftOut.ts';
import { poolFor, wantingMusts, type PlannedStep, type PoolStep } from '../../../shared/lesson/pool.ts';
import type { Wish } from '../../../shared/lesson/wish.ts';
import { anyLessons, anyWish, lessonOf, wishOf } from '../../support/lessonPool.ts';

const ids = (steps: readonly PoolStep[]) => steps.map(({ step }) => step.id);
const total = (steps: readonly PlannedStep[]) => steps.reduce((sum, { minutes }) => sum + minutes, 0);

const rail = lessonOf(
  'rail',
  {
    hello: { kind: 'open', topics: ['herd'] },
    look: { kind: 'look', topics: ['body'] },
    count: { kind: 'sheet', topics: ['numbers'] },
    wash: { kind: 'close', topics: ['hands'], must: true },
  },
  { place: 'barn' },
);
const scale = lessonOf(
  'scale',
  {
    weigh: { kind: 'do', topics: ['numbers'] },
    ears: { kind: 'look', topics: ['body'] },
    wash: { kind: 'close', topics: ['hands'], must: true },
  },
  { place: 'barn' },
);
const pool = poolFor([rail, scale], 1);
const step = (id: string): PoolStep => pool.find((one) => one.step.id === id) as PoolStep;
const planned = (...names: string[]): PlannedStep[] => names.map((id) => ({ ...step(id), minutes: 10 }));

describe('moved', () => {
  it('swaps a step with its neighbour and stops at either end', () => {
    const steps = planned('rail.hello', 'rail.look', 'rail.wash');
    expect(ids(moved(steps, 'rail.look', -1))).toEqual(['rail.look', 'rail.hello', 'rail.wash']);
    expect(ids(moved(steps, 'rail.look', 1))).toEqual(['rail.hello', 'rail.wash', 'rail.look']);
    expect(ids(moved(steps, 'rail.hello', -1))).toEqual(ids(steps));
    expect(ids(moved(steps, 'rail.wash', 1))).toEqual(ids(steps));
  });
});

describe('lengthened', () => {
  it('keeps a step within its shortest and longest time', () => {
    const steps = planned('rail.look');
    expect(total(lengthened(steps, 'rail.look', 11))).toBe(11);
    expect(total(lengthened(steps, 'rail.look', 99))).toBe(15);
    expect(total(lengthened(steps, 'rail.look', 0))).toBe(5);
  });
});

describe('putIn', () => {
  it('puts a step behind those of its lesson that it follows, and brings its must along', () => {
    expect(ids(putIn(planned('rail.hello', 'rail.look', 'rail.wash'), step('rail.count')))).toEqual(['rail.hello', 'rail.look', 'rail.count', 'rail.wash']); // prettier-ignore
    expect(ids(putIn([], step('rail.look')))).toEqual(['rail.look', 'rail.wash']);
    expect(ids(putIn(planned('rail.look', 'rail.wash'), step('scale.weigh')))).toEqual(['rail.look', 'scale.weigh', 'rail.wash']); // prettier-ignore
    expect(ids(putIn(planned('rail.count', 'rail.wash'), step('rail.hello')))).toEqual(['rail.hello', 'rail.count', 'rail.wash']); // prettier-ignore
  });
});

describe('dropped', () => {
  it('holds a must as long as a step of its lesson asks for it', () => {
    const steps = planned('rail.look', 'rail.wash');
    expect(isHeld(steps, step('rail.wash'))).toBe(true);
    expect(ids(dropped(steps, 'rail.wash'))).toEqual(ids(steps));
    expect(dropped(steps, 'rail.look')).toEqual([]);
  });

  it('lets the other lesson stand in', () => {
    const steps = planned('rail.look', 'scale.weigh', 'rail.wash');
    expect(ids(dropped(steps, 'rail.look'))).toEqual(['scale.weigh', 'scale.wash']);
  });
});

describe('exchanged', () => {
  it('offers steps of the same kind, first those that do the same, and keeps the time', () => {
    const steps = lengthened(planned('rail.look', 'rail.wash'), 'rail.look', 13);
    expect(ids(likesOf(pool, steps, step('rail.look')))).toEqual(['scale.ears']);
    const other = exchanged(steps, 'rail.look', step('scale.ears'));
    expect(other.map((one) => `${one.step.id} ${one.minutes}`)).toEqual(['scale.ears 13', 'scale.wash 10']);
  });
});

describe('fitted', () => {
  it('brings a changed lesson back to its time', () => {
    expect(total(fitted(planned('rail.look', 'rail.count', 'rail.wash'), 40))).toBe(40);
    expect(total(fitted(planned('rail.look', 'rail.wash'), 45))).toBe(30);
  });
});

describe('leftOut after changes', () => {
  it('tells that there is room, how much is wanting, and what comes along', () => {
    const wish = wishOf({ place: 'barn', minutes: 30 });
    const out = leftOut(pool, planned('rail.look', 'rail.wash'), wish);
    const told = out.map(({ step: { id }, why, needs_min, along }) => [id, why.is, needs_min, along.length]);
    expect(told).toEqual([
      ['rail.hello', 'room', 0, 0],
      ['rail.count', 'room', 0, 0],
      ['scale.weigh', 'room', 0, 0],
      ['scale.ears', 'like', 0, 0],
      ['scale.wash', 'like', 0, 0],
    ]);
    const full = leftOut(pool, [], { ...wish, minutes: 15 });
    expect(full.find((one) => one.step.id === 'rail.look')).toMatchObject({
      why: { is: 'time' },
      needs_min: 5,
    });
  });
});

type Edit = (steps: readonly PlannedStep[], all: readonly PoolStep[], wish: Wish, pick: number) => PlannedStep[]; // prettier-ignore
const pickOf = <T>(all: readonly T[], pick: number): T | undefined => all[pick % Math.max(1, all.length)];
const EDITS: Readonly<Record<string, Edit>> = {
  up: (steps, _, __, pick) => moved(steps, pickOf(ids(steps), pick) ?? '', -1),
  down: (steps, _, __, pick) => moved(steps, pickOf(ids(steps), pick) ?? '', 1),
  longer: (steps, _, __, pick) => {
    const one = pickOf(steps, pick);
    return lengthened(steps, one?.step.id ?? '', (one?.minutes ?? 0) + 1);
  },
  drop: (steps, _, __, pick) => dropped(steps, pickOf(ids(steps), pick) ?? ''),
  put: (steps, all, wish, pick) => {
    const one = pickOf(leftOut(all, steps, wish), pick);
    return one ? putIn(steps, one) : [...steps];
  },
  exchange: (steps, all, _, pick) => {
    const one = pickOf(steps, pick);
    const other = one && pickOf(likesOf(all, steps, one), pick);
    return one && other ? exchanged(steps, one.step.id, other) : [...steps];
  },
  fit: (steps, _, wish) => fitted(steps, wish.minutes),
};

describe('any row of changes', () => {
  it('keeps every must, every step once, and each within its own time', () => {
    const edit = fc.tuple(fc.constantFrom(...Object.keys(EDITS)), fc.nat(30));
    fc.assert(
      fc.property(anyLessons({ lessons: 4, steps: 5 }), anyWish, fc.array(edit, { size: 'max', maxLength: 20 }), (lessons, wish, edits) => {
        const all = poolFor(lessons, wish.grade);
        let steps = composeLesson(all, wish);
        for (const [name, pick] of edits) {
          steps = (EDITS[name] as Edit)(steps, all, wish, pick);
          expect(wantingMusts(steps)).toEqual([]);
          expect(new Set(ids(steps)).size).toBe(steps.length);
          for (const one of steps) {
            expect(one.minutes).toBeGreaterThanOrEqual(one.step.least);
            expect(one.minutes).toBeLessThanOrEqual(one.step.most);
          }
          expect(ids([...steps, ...leftOut(all, steps, wish)]).sort()).toEqual(ids(all).sort());
        }
      }),
      { numRuns: 300 },
    ); // prettier-ignore
  });
});
