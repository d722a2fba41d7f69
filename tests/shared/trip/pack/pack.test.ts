// What is in a pack: parts and their order, its address, the lessons and sheets that are nearest to a day.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BANDS } from '../../../../shared/quantity/grade.ts';
import { handoutOrder } from '../../../../shared/trip/pack/handoutOrder.ts';
import { readPack, writePack } from '../../../../shared/trip/pack/packQuery.ts';
import { partNames, partsIn, partsOf } from '../../../../shared/trip/pack/parts.ts';
import { dayTopics, handoutsFor, nearness } from '../../../../shared/trip/pack/topics.ts';
import { USUAL_FARM } from '../../../../shared/trip/usualRules.ts';
import { lessonsIn } from '../../../../src/site/lessons.ts';
import { printShelf } from '../../../../src/site/printRoom.ts';
import { GROUND } from '../../../support/tripGround.ts';

const AT_HAND = { before: 'b', after: 'a', at: ['one', 'two'], recall: 'later' };

describe('the parts of a pack', () => {
  it('come in the order of the visit, keys last; of the sheets for the day one is usual', () => {
    const parts = partsOf(['teacher', 'home'], AT_HAND);
    expect(parts.map(({ name }) => name)).toEqual(['teacher', 'home', 'lesson-before', 'sheet-one', 'sheet-two', 'lesson-after', 'sheet-later', 'keys']); // prettier-ignore
    expect(partsIn(parts, null)).toEqual(['teacher', 'home', 'lesson-before', 'sheet-one', 'lesson-after', 'sheet-later', 'keys']); // prettier-ignore
    expect(partsIn(parts, ['keys', 'sheet-two', 'nothing', 'home'])).toEqual(['home', 'sheet-two', 'keys']);
    expect(partsIn(parts, [])).toEqual([]);
  });

  it('offer neither lessons nor keys where the shelves have none', () => {
    expect(partsOf(['home'], { before: null, after: null, at: [], recall: null }).map(({ name }) => name)).toEqual(['home']); // prettier-ignore
  });

  it('print a copy for each child, sixty at most', () => {
    const parts = partsOf([], AT_HAND);
    const order = (children: number) => handoutOrder({ ...GROUND.usual, children }, 'a4', parts, GROUND.shelf, 'es'); // prettier-ignore
    expect([order(54).copies, order(60).copies, order(61).copies]).toEqual([54, 60, 60]);
    expect(order(54)).toMatchObject({ sheets: ['one', 'two', 'later'], word: GROUND.shelf.word, lang: 'es' });
  });
});

describe('the address of a pack', () => {
  it('gives the same trip and the same choice again', () => {
    const part = fc.stringMatching(/^[a-z][a-z0-9-]{0,20}$/);
    const choice = fc.record({
      parts: fc.option(fc.array(part, { maxLength: 6 }), { nil: null }),
      paper: fc.constantFrom('letter' as const, 'a4' as const),
    });
    fc.assert(
      fc.property(choice, fc.constantFrom('letter' as const, 'a4' as const), (chosen, usual) => {
        const trip = '?date=2026-05-27&arrive=9:05&stations=goat-barn.kid-pen&word=%C3%B1and%C3%BA';
        const read = readPack(writePack(trip, chosen, usual), usual, () => true);
        expect(read).toEqual({ trip, choice: chosen, aside: [] });
      }),
    );
  });

  it('names what makes no sense and takes the usual', () => {
    const isPart = (name: string) => partNames(GROUND.shelf).includes(name);
    const read = readPack('?date=2026-05-27&paper=a5&pack=home.<b>.cards.keys', 'letter', isPart);
    expect(read.choice).toEqual({ parts: ['home', 'keys'], paper: 'letter' });
    expect(read.aside).toEqual(['paper=a5', 'pack=<b>', 'pack=cards']);
    // Nothing of it is ours: the usual parts, and not an empty page.
    expect(readPack('?pack=cards', 'letter', isPart).choice.parts).toBeNull();
    expect(readPack('?pack=', 'letter', isPart).choice.parts).toEqual([]);
  });
});

describe('the handouts of a day', () => {
  const shelf = printShelf();
  const lessons = { en: lessonsIn('en'), es: lessonsIn('es') };
  const stations = (ids: readonly string[]) => USUAL_FARM.stations.filter(({ id }) => ids.includes(id));

  it.each(BANDS.flatMap((band) => (['en', 'es'] as const).map((lang) => ({ band, lang }))))(
    'for $band in $lang: a lesson before, one after, a sheet for the day and the recall sheet, whatever the day',
    ({ band, lang }) => {
      fc.assert(
        fc.property(fc.subarray(USUAL_FARM.stations.map(({ id }) => id)), fc.boolean(), (ids, dry) => {
          const weights = dayTopics(stations(ids), dry ? 'dry' : null);
          const { before, after, at, recall } = handoutsFor(lessons[lang], shelf, band, lang, weights);
          expect([before?.band, before?.place, after?.band, after?.place]).toEqual([band, 'class', band, 'after']); // prettier-ignore
          expect(at.length).toBeGreaterThan(0);
          expect(at.every((sheet) => sheet.when === 'at' && sheet.band === band)).toBe(true);
          expect(recall?.when).toBe('after');
          // No lesson of the band and place is nearer; reckoned again step by step.
          const slow = (name: string) => {
            const lesson = lessons[lang].find((one) => one.name === name);
            let [sum, minutes] = [0, 0];
            for (const step of lesson?.steps ?? []) {
              const mean = step.topics.map((topic) => weights[topic] ?? 0).reduce((a, b) => a + b, 0) / Math.max(1, step.topics.length); // prettier-ignore
              [sum, minutes] = [sum + step.minutes * mean, minutes + step.minutes];
            }
            return sum / minutes;
          };
          for (const one of lessons[lang].filter((each) => each.band === band && each.place === 'class'))
            expect(slow(one.name)).toBeLessThanOrEqual((before ? nearness(before, weights) : 0) + 1e-9);
        }),
        { numRuns: 40 },
      );
    },
  );

  it('turn to the year where no doe is milked, and to the goats themselves', () => {
    const choices = [
      ['goat-barn', 'hoof-and-coat', 'measuring-table', 'practice-stand'],
      ['goat-barn', 'measuring-table', 'practice-stand', 'kid-table'],
    ];
    for (const ids of choices)
      for (const band of ['k-2', '3-5'] as const) {
        const dry = handoutsFor(lessons.en, shelf, band, 'en', dayTopics(stations(ids), 'dry'));
        expect(dry.before?.steps.some(({ topics }) => topics.includes('year'))).toBe(true);
        if (band === 'k-2') expect(dry.at[0]?.name).toBe('eyes-and-ears');
      }
  });
});
