// The board's input for tests of what there is to do: any book, with breeds, births and weights that books may have.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { boardFarm } from '../../../../shared/board/boardFarm.ts';
import type { BoardInput } from '../../../../shared/board/types.ts';
import { openLedger } from '../../../../shared/herd/ledger.ts';
import type { Book, UnitSystem } from '../../../../shared/herd/types.ts';
import type { NutrientRow } from '../../../../shared/milk/composition.ts';
import { caseArb } from '../../../support/randomBook.ts';
import { TEST_FARM } from '../../../support/testFarm.ts';

/** The published table as the site reads it; its rows hold one quoted cell, the food. */
export const COMPOSITION: readonly NutrientRow[] = readFileSync('content/facts/milk-composition.csv', 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const cells = line.match(/"[^"]*"|[^,]+/g) ?? [];
    const [source = '', food_id = '', food = '', nutrient_no = '', nutrient = '', unit = '', value] = cells;
    return { source, food_id, food, nutrient_no, nutrient, unit, per_100g: Number(value) };
  });

/** The input of a book on a day. */
export function inputOf(
  book: Book,
  asOf: number,
  { units = 'metric', lang = 'en' }: { units?: UnitSystem; lang?: string } = {},
): BoardInput {
  const farm = { ...TEST_FARM, units };
  return { ...boardFarm(farm, book, openLedger(book, asOf)), lang, composition: COMPOSITION };
}

const BREEDS = ['', 'Alpine', 'Saanen', 'Nubian', 'Nigerian Dwarf', 'LaMancha', 'Toggenburg', 'barn goat'];

/** Any book's input: its does get breeds, days of birth and weights, some of them unknown. */
export const inputArb: fc.Arbitrary<BoardInput> = fc
  .record({
    one: caseArb,
    units: fc.constantFrom<UnitSystem>('us', 'metric'),
    lang: fc.constantFrom('en', 'es'),
    does: fc.array(
      fc.record({
        breed: fc.constantFrom(...BREEDS),
        born: fc.option(
          fc.constantFrom('1995-03-01', '2022-02-28', '2023-12-31', '2096-02-29', '2101-01-01'),
        ),
        weight_kg: fc.option(fc.integer({ min: 20, max: 90 })),
      }),
      { minLength: 4, maxLength: 4 },
    ),
  })
  .map(({ one, units, lang, does }) => {
    const named = one.book.does.map((doe, place) => ({ ...doe, ...does[place] }));
    return inputOf({ ...one.book, does: named }, one.asOf, { units, lang });
  });
