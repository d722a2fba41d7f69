// A lesson on the bench as an address: whatever is written is read again, and nonsense is named and left aside.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeLesson } from '../../../shared/lesson/compose.ts';
import { putIn, withMusts } from '../../../shared/lesson/edits.ts';
import { readPlan, writePlan, type Plan } from '../../../shared/lesson/planQuery.ts';
import { poolFor } from '../../../shared/lesson/pool.ts';
import { anyLessons, anyWish, lessonOf, wishOf } from '../../support/lessonPool.ts';

const milk = lessonOf('why-milk', {
  talk: { minutes: 10, least: 8, most: 15 },
  wash: { kind: 'close', topics: ['hands'], must: true, minutes: 5, least: 4, most: 8 },
});
const read = (query: string) => readPlan(query, [milk], 2);
const told = (query: string) => read(query).aside.map(({ what, found }) => `${what}: ${found}`);

describe('writePlan', () => {
  it('is short, and leaves out what is usual', () => {
    expect(writePlan({ wish: wishOf(), start: null, steps: null })).toBe('?grade=2&min=45');
    const wish = wishOf({ grade: 0, minutes: 30, place: 'barn', topics: ['milk', 'kids'], children: 18 });
    expect(writePlan({ wish, start: 570, steps: null })).toBe('?grade=K&min=30&place=barn&topics=milk.kids&children=18&start=9:30'); // prettier-ignore
  });

  it('writes the steps once they are changed, without any escapes', () => {
    const [first] = poolFor([milk], 2);
    const steps = putIn([], first!);
    const query = writePlan({ wish: wishOf(), start: null, steps });
    expect(query).toBe('?grade=2&min=45&steps=why-milk.talk.10~why-milk.wash.5');
    expect(new URL(query, 'https://farm.example/bench/').search).toBe(query);
  });
});

describe('readPlan', () => {
  it('reads what is usual from an empty query', () => {
    expect(read('')).toEqual({ plan: { wish: wishOf(), start: null, steps: null }, aside: [] });
  });

  it('names what it leaves aside, and goes on', () => {
    expect(told('?grade=13&min=many&place=moon&topics=milk.cheese&children=0&start=25:00&colour=red')).toEqual([
      'unknown: colour',
      'value: grade=13',
      'value: min=many',
      'value: place=moon',
      'value: topics=cheese',
      'value: children=0',
      'value: start=25:00',
    ]); // prettier-ignore
    expect(read('?min=many&topics=milk.cheese&children=12').plan.wish).toEqual(wishOf({ topics: ['milk'], children: 12 })); // prettier-ignore
  });

  it('leaves unknown and doubled steps aside, mends times, and puts a wanting must in', () => {
    const query = '?steps=why-milk.talk.99~gone.step.5~why-milk.talk.10~~';
    expect(told(query)).toEqual(['minutes: why-milk.talk.99', 'step: gone.step.5', 'step: why-milk.talk.10', 'must: Title of why-milk.wash']); // prettier-ignore
    expect(read(query).plan.steps?.map(({ step, minutes }) => `${step.id} ${minutes}`)).toEqual(['why-milk.talk 15', 'why-milk.wash 5']); // prettier-ignore
  });

  it('lays out a lesson that is named, as it is written', () => {
    const barn = lessonOf('rail', { look: {}, wash: { topics: ['hands'], must: true } }, { place: 'barn', band: '3-5' }); // prettier-ignore
    const { plan, aside } = readPlan('?lesson=rail', [milk, barn], 2);
    expect(aside).toEqual([]);
    expect(plan.wish).toEqual(wishOf({ grade: 5, minutes: 20, place: 'barn' }));
    expect(plan.steps?.map(({ step }) => step)).toEqual(barn.steps);
    expect(told('?lesson=gone')).toEqual(['value: lesson=gone']);
  });

  it('takes an emptied lesson for one, not for the usual', () => {
    expect(read('?steps=').plan.steps).toEqual([]);
    expect(writePlan({ wish: wishOf(), start: null, steps: [] })).toBe('?grade=2&min=45&steps=');
  });

  it('survives any text', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.webQueryParameters().map((one) => `?steps=${one}`),
        ),
        (query) => {
          const { plan } = read(query);
          expect(readPlan(writePlan(plan), [milk], 2).plan).toEqual(plan);
        },
      ),
    );
  });
});

describe('any plan', () => {
  it('is read as it was written, with nothing left aside', () => {
    const start = fc.option(fc.integer({ min: 0, max: 24 * 60 - 1 }));
    fc.assert(
      fc.property(anyLessons({ lessons: 4, steps: 5 }), anyWish, start, fc.array(fc.nat(19)), (lessons, wish, begin, more) => {
        const pool = poolFor(lessons, wish.grade);
        const picked = more.flatMap((at) => pool[at] ?? []).reduce(putIn, composeLesson(pool, wish));
        const plan: Plan = { wish, start: begin, steps: more.length === 0 ? null : withMusts(picked) };
        expect(readPlan(writePlan(plan), lessons, 9)).toEqual({ plan, aside: [] });
      }),
      { numRuns: 300 },
    ); // prettier-ignore
  });
});
