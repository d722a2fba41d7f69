// The lesson that the bench puts together: it fits, nothing that must be in is missing, and no other choice is better.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeLesson, MOST_LESSONS } from '../../../shared/lesson/compose.ts';
import { leftOut } from '../../../shared/lesson/leftOut.ts';
import { poolFor, type PlannedStep, type PoolStep } from '../../../shared/lesson/pool.ts';
import { scoreOf } from '../../../shared/lesson/score.ts';
import type { Lesson } from '../../../shared/lesson/types.ts';
import type { Wish } from '../../../shared/lesson/wish.ts';
import { anyLessons, anyWish, lessonOf, wishOf } from '../../support/lessonPool.ts';

const ids = (steps: readonly PoolStep[]) => steps.map(({ step }) => step.id);
const put = (lessons: readonly Lesson[], wish: Wish) => composeLesson(poolFor(lessons, wish.grade), wish);
const clocked = (steps: readonly PlannedStep[]) => steps.map(({ step, minutes }) => `${step.id} ${minutes}`);
const total = (steps: readonly PlannedStep[]) => steps.reduce((sum, { minutes }) => sum + minutes, 0);

/** The score once more, from its description, the slow way and with nothing of ours but the types. */
function plainScore(steps: readonly PoolStep[], wish: Wish): number[] {
  const own = steps.map(({ step }) => step);
  const doing = (one: PoolStep) => {
    if (one.step.kind === 'open') return 'open';
    return one.step.topics.length > 0 ? `${one.step.kind}+${one.step.topics[0]}` : one.step.id;
  };
  const on = (one: PoolStep) => wish.topics.some((topic) => one.step.topics.includes(topic));
  const middle = steps.filter(({ step }) => !['open', 'close'].includes(step.kind));
  const heart = middle.length === 0 ? 0 : wish.topics.length === 0 || middle.some(on) ? 2 : 1;
  const frame = ['open', 'close'].filter((kind) => own.some((step) => step.kind === kind)).length;
  let onTopic = 0;
  let repeats = 0;
  for (const one of new Set(steps.map(doing))) {
    const same = steps.filter((step) => doing(step) === one);
    const lessons = [...new Set(same.map(({ lesson }) => lesson.name))];
    repeats += lessons.length - 1;
    onTopic += Math.max(
      ...lessons.map((name) =>
        same
          .filter((step) => step.lesson.name === name && on(step))
          .reduce((sum, { step }) => sum + step.minutes, 0),
      ),
    );
  }
  const filled = Math.min(wish.minutes, own.reduce((sum, { most }) => sum + most, 0)); // prettier-ignore
  const usual = own.reduce((sum, { minutes }) => sum + minutes, 0);
  const lessons = new Set(steps.map(({ lesson }) => lesson.name)).size;
  const strain = Math.abs(usual - filled) + 8 * Math.max(0, lessons - 1);
  let bare = 0;
  for (const { lesson, step } of steps) {
    const before = lesson.steps.slice(0, lesson.steps.indexOf(step));
    const leads = before.filter(({ kind }) => ['talk', 'look', 'do'].includes(kind));
    if (step.kind === 'sheet' && leads.length > 0 && leads.every((one) => !own.includes(one))) bare += 1;
  }
  return [heart, frame, Math.min(onTopic, wish.minutes), filled, -repeats, -bare, -strain];
}

/** Whether a choice keeps the rules, the slow way. */
function isAllowed(steps: readonly PoolStep[], wish: Wish): boolean {
  const lessons = [...new Set(steps.map(({ lesson }) => lesson))];
  const same = (a: PoolStep, b: PoolStep) =>
    a.step.kind === 'open' ? b.step.kind === 'open' : a.step.kind === b.step.kind && a.step.topics.length > 0 && a.step.topics[0] === b.step.topics[0]; // prettier-ignore
  const musts = lessons.every((lesson) =>
    lesson.steps
      .filter(({ must }) => must)
      .every(
        (step) =>
        steps.some((one) => one.step.id === step.id || (one.step.must && one.lesson !== lesson && same({ lesson, step }, one))), // prettier-ignore
      ),
  );
  const least = steps.reduce((sum, { step }) => sum + step.least, 0);
  const isEmpty = steps.length === 0;
  const hasHeart = steps.some(({ step }) => step.kind !== 'open' && step.kind !== 'close');
  return (isEmpty || hasHeart) && musts && least <= wish.minutes && lessons.length <= 3 && lessons.every(({ place }) => place === wish.place); // prettier-ignore
}

const better = (a: readonly number[], b: readonly number[]) => {
  const at = a.findIndex((one, index) => one !== b[index]);
  return at >= 0 && (a[at] ?? 0) > (b[at] ?? 0);
};

describe('composeLesson', () => {
  const milk = lessonOf('milk', {
    hello: { kind: 'open', minutes: 5, least: 3, most: 8 },
    talk: { minutes: 10, least: 8, most: 15 },
    cups: { kind: 'sheet', minutes: 15, least: 10, most: 20, topics: ['numbers'] },
    end: { kind: 'close', minutes: 5, least: 4, most: 8 },
  });
  const kids = lessonOf('kids', {
    hello: { kind: 'open', minutes: 5, least: 3, most: 8, topics: ['kids'] },
    game: { kind: 'do', minutes: 10, least: 8, most: 15, topics: ['kids'] },
    end: { kind: 'close', minutes: 5, least: 4, most: 8, topics: ['kids'] },
  });

  it('takes one whole lesson at its usual times where that fits', () => {
    expect(clocked(put([milk, kids], wishOf({ minutes: 35 })))).toEqual(['milk.hello 5', 'milk.talk 10', 'milk.cups 15', 'milk.end 5']); // prettier-ignore
  });

  it('stretches and shortens to meet the minutes', () => {
    expect(clocked(put([milk], wishOf({ minutes: 40 })))).toEqual(['milk.hello 6', 'milk.talk 12', 'milk.cups 16', 'milk.end 6']); // prettier-ignore
    expect(total(put([milk], wishOf({ minutes: 29 })))).toBe(29);
  });

  it('chooses by topic, and then fills the time', () => {
    const steps = put([milk, kids], wishOf({ minutes: 22, topics: ['kids'] }));
    expect(clocked(steps)).toEqual(['kids.hello 6', 'kids.game 11', 'kids.end 5']);
    expect(ids(put([milk, kids], wishOf({ minutes: 45, topics: ['kids'] })))).toContain('milk.cups');
  });

  it('hands no sheet out without what leads to it, rather shortens all of it', () => {
    const long = lessonOf('long', {
      hello: { kind: 'open', minutes: 5, least: 4, most: 8 },
      talk: { minutes: 20, least: 10, most: 25 },
      sheet: { kind: 'sheet', minutes: 40, least: 25, most: 45 },
      end: { kind: 'close', minutes: 5, least: 4, most: 8 },
    });
    expect(ids(put([long], wishOf({ minutes: 50 })))).toEqual(ids(poolFor([long], 2)));
  });

  it('brings a second opening in only where the time cannot be filled without', () => {
    expect(ids(put([milk, kids], wishOf({ minutes: 45 }))).filter((id) => id.endsWith('hello'))).toHaveLength(
      1,
    );
    const long = put([milk, kids], wishOf({ minutes: 82 }));
    expect(ids(long)).toEqual([...ids(poolFor([milk], 2)).slice(0, 1), 'kids.hello', 'milk.talk', 'milk.cups', 'kids.game', 'milk.end', 'kids.end']); // prettier-ignore
    expect(total(long)).toBe(82);
  });

  it('asks for one washing of hands, not for two', () => {
    const wash = {
      wash: { kind: 'close' as const, topics: ['hands'], must: true, minutes: 5, least: 5, most: 5 },
    };
    const rail = lessonOf('rail', { look: { kind: 'look', minutes: 10, least: 10, most: 10 }, ...wash }, { place: 'barn' }); // prettier-ignore
    const scale = lessonOf('scale', { weigh: { kind: 'do', minutes: 10, least: 10, most: 10 }, ...wash }, { place: 'barn' }); // prettier-ignore
    const steps = put([rail, scale], wishOf({ minutes: 25, place: 'barn' }));
    expect(ids(steps)).toEqual(['rail.look', 'scale.weigh', 'rail.wash']);
    expect(put([rail, scale], wishOf({ minutes: 14, place: 'barn' }))).toEqual([]);
  });

  it('is empty where nothing fits, and where nobody has written a lesson', () => {
    expect(put([lessonOf('long', { talk: { least: 10 } })], wishOf({ minutes: 5 }))).toEqual([]);
    expect(put([], wishOf())).toEqual([]);
    expect(put([milk], wishOf({ grade: 7 }))).toEqual([]);
  });
});

describe('composeLesson on any pool', () => {
  it('is never longer than the time, meets it where its steps can, and keeps each within its own', () => {
    fc.assert(
      fc.property(anyLessons({ lessons: 6, steps: 6 }), anyWish, (lessons, wish) => {
        const steps = put(lessons, wish);
        const most = steps.reduce((sum, { step }) => sum + step.most, 0);
        expect(total(steps)).toBe(Math.min(wish.minutes, most));
        for (const { step, minutes } of steps) {
          expect(minutes).toBeGreaterThanOrEqual(step.least);
          expect(minutes).toBeLessThanOrEqual(step.most);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('keeps place, musts, the number of lessons and the order of opening, middle and closing', () => {
    fc.assert(
      fc.property(anyLessons({ lessons: 6, steps: 6 }), anyWish, (lessons, wish) => {
        const steps = put(lessons, wish);
        expect(isAllowed(steps, wish)).toBe(true);
        expect(new Set(ids(steps)).size).toBe(steps.length);
        expect(new Set(steps.map(({ lesson }) => lesson)).size).toBeLessThanOrEqual(MOST_LESSONS);
        const parts = steps.map(({ step }) => ['open', 'close'].indexOf(step.kind)).map((at) => (at === 0 ? 0 : at === 1 ? 2 : 1)); // prettier-ignore
        expect(parts).toEqual([...parts].sort());
        for (const lesson of lessons) {
          const own = steps.filter(
            (one) => one.lesson === lesson && !['open', 'close'].includes(one.step.kind),
          );
          const places = own.map(({ step }) => lesson.steps.indexOf(step));
          expect(places).toEqual([...places].sort((a, b) => a - b));
        }
      }),
      { numRuns: 400 },
    );
  });

  it('scores as well as the best of all choices there are', () => {
    let choices = 0;
    fc.assert(
      fc.property(anyLessons({ lessons: 4, steps: 4 }), anyWish, (lessons, wish) => {
        const pool = poolFor(lessons, wish.grade);
        let best = plainScore([], wish);
        for (let mask = 0; mask < 2 ** pool.length; mask += 1) {
          const steps = pool.filter((_, index) => (mask >> index) & 1);
          if (!isAllowed(steps, wish)) continue;
          choices += 1;
          const score = plainScore(steps, wish);
          if (better(score, best)) best = score;
        }
        const steps = composeLesson(pool, wish);
        expect(isAllowed(steps, wish)).toBe(true);
        expect(scoreOf(steps, wish)).toEqual(plainScore(steps, wish));
        expect(plainScore(steps, wish)).toEqual(best);
      }),
      { numRuns: 300 },
    );
    expect(choices).toBeGreaterThan(10_000);
  });

  it('gives the same lesson for the same wish', () => {
    fc.assert(
      fc.property(anyLessons({ lessons: 4, steps: 5 }), anyWish, (lessons, wish) => {
        expect(clocked(put(structuredClone(lessons), wish))).toEqual(clocked(put(lessons, wish)));
      }),
    );
  });

  it('chooses from ninety steps in well under a second', () => {
    const lessons = fc.sample(anyLessons({ lessons: 15, steps: 6 }), { seed: 7, numRuns: 30 });
    const wishes = fc.sample(anyWish, { seed: 8, numRuns: 30 });
    for (const [index, some] of lessons.entries()) {
      const before = performance.now();
      put(some, wishes[index] as Wish);
      expect(performance.now() - before).toBeLessThan(1500);
    }
  });
});

describe('what composeLesson leaves out', () => {
  it('has a reason that is true for every step, and room for none', () => {
    const found = new Set<string>();
    fc.assert(
      fc.property(anyLessons({ lessons: 5, steps: 5 }), anyWish, (lessons, wish) => {
        const pool = poolFor(lessons, wish.grade);
        const steps = composeLesson(pool, wish);
        const out = leftOut(pool, steps, wish);
        expect([...ids(steps), ...ids(out)].sort()).toEqual(ids(pool).sort());
        for (const one of out) {
          found.add(one.why.is);
          const { why, step, lesson, needs_min, along } = one;
          const more = along.reduce((sum, other) => sum + other.step.minutes, step.minutes);
          expect(needs_min).toBe(Math.max(0, total(steps) + more - wish.minutes));
          // What is held here would break the time, at its usual length and those that it brings along.
          const isMiddle = step.kind !== 'open' && step.kind !== 'close';
          if (
            lesson.place === wish.place &&
            (isMiddle || steps.length > 0) &&
            new Set(steps.map((other) => other.lesson)).size < MOST_LESSONS
          )
            // prettier-ignore
            expect(needs_min).toBeGreaterThan(0);
          if (why.is === 'place') expect(lesson.place).not.toBe(wish.place);
          if (why.is === 'topic')
            expect(step.topics.some((topic) => wish.topics.includes(topic))).toBe(false);
          if (why.is === 'like') expect([why.like.step.kind, why.like.lesson === lesson]).toEqual([step.kind, false]); // prettier-ignore
        }
      }),
      { numRuns: 400 },
    );
    expect([...found].sort()).toEqual(expect.arrayContaining(['like', 'place', 'time', 'topic']));
  });
});
