// The way of the grass, against a map of which place leads to which.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../../../../shared/board/do/dayPlan.ts';
import {
  GRASS_PLACES,
  GRASS_WAY,
  grassSays,
  grassVerdict,
  type GrassPlace,
} from '../../../../shared/board/do/grass.ts';
import { bookOf, dates, day, twice } from '../../../support/bookOf.ts';
import { BOTH, boardInputOf } from '../../../support/boardInput.ts';
import { caseArb } from '../../../support/randomBook.ts';

// Textbook anatomy of ruminants (from memory): the cud goes up from the rumen and down again; net and leaves lie
// between rumen and abomasum; what the gut takes in goes by the blood.
const LEADS_TO: Readonly<Record<GrassPlace, readonly GrassPlace[]>> = {
  mouth: ['rumen'],
  rumen: ['mouth', 'abomasum'],
  abomasum: ['gut'],
  gut: ['blood'],
  blood: ['udder'],
  udder: ['pail'],
  pail: [],
};

describe('the way of the grass', () => {
  it('is the shortest from mouth to pail that chews the cud', () => {
    const ways: GrassPlace[][] = [];
    const walk = (way: GrassPlace[]) => {
      const here = way.at(-1)!;
      const chewed = way.filter((place) => place === 'mouth').length;
      if (here === 'pail' && chewed === 2) ways.push(way);
      if (way.length < 12) for (const next of LEADS_TO[here]) walk([...way, next]);
    };
    walk(['mouth']);
    expect(ways.toSorted((a, b) => a.length - b.length)[0]).toEqual(GRASS_WAY);
  });

  it('goes on only where the map leads on, and explains each tap, for any book', () => {
    fc.assert(
      fc.property(
        caseArb,
        fc.array(fc.constantFrom(...GRASS_PLACES), { maxLength: 60 }),
        ({ book, asOf }, taps) => {
          const plan = dayPlan(boardInputOf(book, asOf));
          for (const words of BOTH) {
            const says = grassSays(words, plan);
            const been: GrassPlace[] = [];
            for (const tapped of taps) {
              if (been.length === GRASS_WAY.length) break;
              const told = grassVerdict(words, plan, been.length, tapped);
              const here = been.at(-1);
              if (told.right) {
                if (here) expect(LEADS_TO[here]).toContain(tapped);
                been.push(tapped);
              } else {
                // Nothing else leads on, but the rumen's two ways.
                const open = here ? LEADS_TO[here] : ['mouth'];
                if (open.length === 1) expect(open).not.toContain(tapped);
              }
              expect(says).toContain(told.text);
              if (told.more !== null) expect(says).toContain(told.more);
            }
            expect(JSON.stringify(says)).not.toMatch(/NaN|undefined|[{}]/);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("ends with a doe's own day where the book has one", () => {
    const week = dates('2026-05-14', '2026-05-20');
    const book = bookOf(['ash 2026-02-01 weaned 2026-04-01'], twice('ash', week, '1.5 L'));
    const plan = dayPlan(boardInputOf(book, day('2026-05-20')));
    const [en, es] = BOTH;
    expect(grassVerdict(en!, plan, 8, 'pail').text).toBe('Yes! ash gave 3 liters a day.');
    expect(grassVerdict(es!, plan, 8, 'pail').text).toBe('¡Sí! ash dio 3 litros al día.');
    expect(grassVerdict(en!, { day: null }, 8, 'pail').text).toBe('Yes! Grass has become milk.');
  });
});
