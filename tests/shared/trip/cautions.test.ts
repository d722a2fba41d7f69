// The cautions of a group: only its own, and always those that published guidance asks for.
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../shared/calendar/day.ts';
import { cautionsFor, oddDate } from '../../../shared/trip/cautions.ts';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import { NEEDS, type DayGround, type TripWish } from '../../../shared/trip/types.ts';
import { wordsOf } from '../../../src/site/words.ts';
import { say } from '../../../shared/words/words.ts';
import { TEST_FARM, TEST_GROUND, testWish } from '../../support/tripFarm.ts';

const cautions = (change: Partial<TripWish> = {}, ground: DayGround = TEST_GROUND) => {
  const wish = testWish(change);
  return cautionsFor(wish, TEST_FARM, ground, planTrip(wish, TEST_FARM, ground));
};
const text = (lang: string, one: string) => say(wordsOf(lang), `trip.care.${one}`);

describe('cautionsFor', () => {
  it('tells a group without needs what everybody hears, and no more', () => {
    expect(cautions()).toEqual(['wash', 'food', 'raw', 'shoes']);
  });

  it('tells of raw milk and washing whatever is wished for, even where the day does not work', () => {
    for (const change of [{}, { lunch: null }, { children: 300 }, { stations: ['measuring-table'] }])
      expect(cautions(change)).toEqual(expect.arrayContaining(['wash', 'raw']));
  });

  it.each(NEEDS)('tells a group with the need "%s" its own caution first, and nobody else', (need) => {
    expect(cautions({ needs: [need] })[0]).toBe(need);
    expect(cautions()).not.toContain(need);
  });

  it('tells of rain, of kindergarten and of a kidding near where they apply', () => {
    expect(cautions({ rain: true })).toContain('rain');
    expect(cautions({ grade: 0 })).toContain('young');
    expect(cautions({ grade: 1 })).not.toContain('young');
    expect(cautions({}, { ...TEST_GROUND, kiddingNear: true })).toContain('kidding');
  });

  // Soap and running water, gel no substitute; no food near animals; higher risk under five: CDC, "Compendium of
  // Measures to Prevent Disease Associated with Animals in Public Settings". Pregnancy and kidding at any time of the
  // year: gov.uk, "Pregnant women: avoid animals that are giving birth". Half an hour after thunder: US National
  // Weather Service (from memory). Goat's milk and cow's milk allergy: allergy literature (from memory).
  it.each([
    ['en', 'wash', [/soap/, /running water/, /before food/, /gel/i]],
    ['en', 'food', [/food/i, /animals/]],
    ['en', 'raw', [/raw milk/]],
    ['en', 'young', [/under five/]],
    ['en', 'pregnant', [/kidding pen/, /any time of the year/, /doctor/]],
    ['en', 'immune', [/doctor/, /kidding pen/]],
    ['en', 'milk-allergy', [/no tasting/, /cow's milk/]],
    ['en', 'asthma', [/inhalers/, /child's group/, /never on the bus/]],
    ['en', 'rain', [/thunder/, /30 minutes/]],
    ['en', 'kidding', [/closed/]],
    ['es', 'wash', [/jabón/, /agua corriente/, /antes de comer/, /gel/i]],
    ['es', 'raw', [/leche cruda/]],
    ['es', 'pregnant', [/corral de partos/, /cualquier época del año/, /médico/]],
    ['es', 'milk-allergy', [/no prueba nada/]],
    ['es', 'asthma', [/inhaladores/, /con el grupo/, /nunca en el autobús/]],
    ['es', 'rain', [/trueno/, /30 minutos/]],
  ] as [string, string, RegExp[]][])('says in %s of "%s" what the guidance says', (lang, one, signs) => {
    for (const sign of signs) expect(text(lang, one)).toMatch(sign);
  });
});

describe('oddDate', () => {
  const today = dayNumber('2026-05-21') as number;
  it.each([
    ['2026-05-20', 'past'],
    ['2026-05-21', null],
    ['2026-05-23', 'weekend'],
    ['2026-05-24', 'weekend'],
    ['2026-05-25', null],
    ['2027-05-20', null],
    ['2027-06-08', 'far'],
    ['2026-02-30', null],
  ])('of %s is %s', (date, odd) => {
    expect(oddDate(date, today)).toBe(odd);
  });
});
