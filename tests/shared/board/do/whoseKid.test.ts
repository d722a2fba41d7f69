// Whose kid: only its mother has the kid's ears and coat, and herds of too few breeds have no such page.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  kidEnd,
  kidRound,
  kidVerdict,
  whoseKidPlan,
  whoseKidSays,
} from '../../../../shared/board/do/whoseKid.ts';
import { doeLook } from '../../../../shared/drawing/doeLook.ts';
import type { BoardInput } from '../../../../shared/board/types.ts';
import { bookOf, day } from '../../../support/bookOf.ts';
import { BOTH, boardInputOf } from '../../../support/boardInput.ts';
import { caseArb } from '../../../support/randomBook.ts';

const BREEDS = ['Alpine', 'Nubian', 'LaMancha', 'Saanen', 'Toggenburg', 'Nigerian Dwarf', 'Oberhasli', 'Sable', 'Golden Guernsey', '', 'cross']; // prettier-ignore
const herdArb = fc
  .uniqueArray(
    fc.record({ id: fc.string({ minLength: 1, maxLength: 6 }), breed: fc.constantFrom(...BREEDS) }),
    {
      maxLength: 9,
      selector: (doe) => doe.id,
    },
  )
  .map((does) =>
    does.map(({ id, breed }) => ({ id, name: id.toUpperCase(), breed, born: null, weight_kg: null })),
  );

const EMPTY = boardInputOf(bookOf([]), day('2026-05-20'));
const of = (does: BoardInput['does'], kiddings: BoardInput['kiddings'] = []) => ({
  ...EMPTY,
  does,
  kiddings,
});
const seen = (breed: string, id: string) => {
  const { ears, coat } = doeLook(breed, id);
  return JSON.stringify([ears, coat]);
};

describe('whose kid', () => {
  it('has one possible mother among three does who all look different', () => {
    fc.assert(
      fc.property(herdArb, fc.nat(), (does, seed) => {
        const plan = whoseKidPlan(of(does));
        if (plan === null) return;
        const round = kidRound(plan, seed);
        expect(new Set(round.choices.map(({ id }) => id)).size).toBe(3);
        const fits = round.choices.filter(
          (doe) => seen(doe.breed, doe.id) === JSON.stringify([round.kid.ears, round.kid.coat]),
        );
        expect(fits).toEqual([round.mother]);
        expect(round.kid).toMatchObject({ horns: false, beard: false, wattles: false });
        expect(kidRound(plan, seed)).toEqual(round);
        expect(kidRound(plan, seed, round.mother.id).mother.id).not.toBe(round.mother.id);
      }),
    );
  });

  it('is not asked where fewer than three breeds can be told apart', () => {
    fc.assert(
      fc.property(herdArb, (does) => {
        const known = does.filter(({ breed }) => breed !== '' && breed !== 'cross');
        const breeds = new Set(known.map(({ breed }) => breed));
        const looks = new Set(known.map(({ breed, id }) => seen(breed, id)));
        if (breeds.size < 3 || looks.size < 3) expect(whoseKidPlan(of(does))).toBeNull();
        // Alpines may be coated like Oberhasli; all other breeds have ears or coats of their own.
        const apart = new Set([...breeds].map((breed) => (breed === 'Oberhasli' ? 'Alpine' : breed)));
        if (apart.size >= 3) expect(whoseKidPlan(of(does))).not.toBeNull();
      }),
    );
  });

  it('is not asked of does whose breed nobody wrote down', () => {
    fc.assert(
      fc.property(caseArb, ({ book, asOf }) => {
        expect(whoseKidPlan(boardInputOf(book, asOf))).toBeNull();
      }),
      { numRuns: 30 },
    );
  });

  it('tells kids of the last kidding that is over', () => {
    const does = ['Alpine', 'Nubian', 'Saanen'].map((breed, i) => ({
      id: `d${i}`,
      name: `D${i}`,
      breed,
      born: null,
      weight_kg: null,
    }));
    const kidding = (date: string, kids: number | null) => ({
      doe: 'd0',
      day: day(date),
      kids,
      apart: null,
      weaned: null,
      dry: null,
    });
    const kids = [kidding('2025-03-01', 1), kidding('2026-03-01', 3), kidding('2026-06-01', 2)];
    expect(whoseKidPlan(of(does, kids))?.does.map((doe) => doe.kids)).toEqual([3, null, null]);
    expect(whoseKidPlan(of(does, [kidding('2026-03-01', null)]))?.does[0]?.kids).toBeNull();
  });

  it('explains every tap from the list, in both languages', () => {
    fc.assert(
      fc.property(herdArb, fc.nat(), (does, seed) => {
        const plan = whoseKidPlan(of(does));
        if (plan === null) return;
        const round = kidRound(plan, seed);
        for (const words of BOTH) {
          const says = whoseKidSays(words, plan);
          const end = kidEnd(words, round);
          if (end !== null) expect(says).toContain(end);
          for (const doe of round.choices) {
            const { right, text, more } = kidVerdict(words, round, doe);
            expect(right).toBe(doe.id === round.mother.id);
            expect(text).toContain(doe.name);
            expect(says).toContain(text);
            if (more !== null) expect(says).toContain(more);
          }
        }
      }),
    );
  });
});
