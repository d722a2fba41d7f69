// What there is to do with milk, months, feed and faces, by example and against published facts.
import { describe, expect, it } from 'vitest';
import { choicesAround } from '../../../../shared/board/do/choicesAround.ts';
import { cupsRound } from '../../../../shared/board/do/cups.ts';
import { cupsPlan } from '../../../../shared/board/do/cupsPlan.ts';
import { facesShown } from '../../../../shared/board/do/faces.ts';
import { facesPlan, yearsBetween } from '../../../../shared/board/do/facesPlan.ts';
import { guessShown, guessVerdict, partsText } from '../../../../shared/board/do/guess.ts';
import { guessPlan } from '../../../../shared/board/do/guessPlan.ts';
import {
  MENU,
  menuDone,
  menuPlan,
  menuRound,
  menuSays,
  menuVerdict,
} from '../../../../shared/board/do/menu.ts';
import { pourRound } from '../../../../shared/board/do/pour.ts';
import { pourPlan } from '../../../../shared/board/do/pourPlan.ts';
import {
  milkParts,
  milksVerdict,
  richerMilk,
  scaleOf,
  twoMilksSays,
} from '../../../../shared/board/do/twoMilks.ts';
import { marksTo, twoMilksPlan } from '../../../../shared/board/do/twoMilksPlan.ts';
import { monthTold } from '../../../../shared/board/do/year.ts';
import { yearLines } from '../../../../shared/board/do/yearLines.ts';
import { yearPlan } from '../../../../shared/board/do/yearPlan.ts';
import type { Book } from '../../../../shared/herd/types.ts';
import { chanceOf } from '../../../../shared/sheet/chance.ts';
import { wordsOf } from '../../../../src/site/words.ts';
import { bookOf, dates, day, twice } from '../../../support/bookOf.ts';
import { inputOf } from './doInput.ts';

const WEEK = dates('2026-05-14', '2026-05-20');
const TODAY = day('2026-05-20');
const words = wordsOf('en');

const twoDoes = (): Book =>
  bookOf(
    ['ash 2026-02-01 weaned 2026-04-01', 'bay 2026-02-01 weaned 2026-04-01'],
    [...twice('ash', WEEK, '1 L'), ...twice('bay', WEEK, '2 L')],
  );

const withDoes = (book: Book, of: Record<string, object>): Book => ({
  ...book,
  does: book.does.map((doe) => ({ ...doe, ...of[doe.id] })),
});

describe('pouring', () => {
  it('pours two litres into one jar of two litres by half litres, four of them', () => {
    // TEST_FARM's jar holds 2 L.
    const plan = pourPlan(inputOf(twoDoes(), TODAY));
    expect(plan?.rounds.map(({ doe, dips, needed }) => [doe, dips, needed])).toEqual([
      ['ash', 4, 1],
      ['bay', 8, 2],
    ]);
  });

  it('takes every doe once before it takes one again, whatever the seed', () => {
    const plan = pourPlan(inputOf(twoDoes(), TODAY));
    if (!plan) throw new Error('no plan');
    for (const seed of [0, 1, 2, 77]) {
      const does = [0, 1].map((turn) => pourRound(plan, seed, turn).round.doe);
      expect(does.toSorted()).toEqual(['ash', 'bay']);
    }
  });

  it('has nothing to pour in an empty book', () => {
    expect(pourPlan(inputOf(bookOf([]), TODAY))).toBeNull();
  });
});

describe('guessing', () => {
  const whyOf = (book: Book) =>
    guessPlan(inputOf(book, TODAY))?.rounds.find(({ does }) => does.length === 2)?.why;

  it('gives the reason that the book tells, and no other', () => {
    expect(whyOf(twoDoes())).toBe('unknown');
    // A Nigerian Dwarf weighs 27 to 36 kg, a Saanen 60 to 65: breed pages, fact "breed-size".
    const small = { breed: 'Nigerian Dwarf' };
    expect(whyOf(withDoes(twoDoes(), { ash: small, bay: { breed: 'Saanen' } }))).toBe('size');
    expect(whyOf(withDoes(twoDoes(), { bay: small, ash: { breed: 'Saanen' } }))).toBe('surprise');
    expect(whyOf(withDoes(twoDoes(), { ash: { weight_kg: 40 }, bay: { weight_kg: 70 } }))).toBe('size');
    expect(whyOf(withDoes(twoDoes(), { ash: { born: '2024-03-01' }, bay: { born: '2020-03-01' } }))).toBe(
      'young',
    );
  });

  it('says whose kids were born later', () => {
    const book = twoDoes();
    const kiddings = book.kiddings.map((one) =>
      one.doe === 'ash' ? { ...one, day: day('2025-12-01') } : one,
    );
    expect(whyOf({ ...book, kiddings })).toBe('later');
  });

  it('does not ask about pails that are shown alike', () => {
    const alike = bookOf(
      ['ash 2026-02-01 weaned 2026-04-01', 'bay 2026-02-01 weaned 2026-04-01'],
      [...twice('ash', WEEK, '2 L'), ...twice('bay', WEEK, '2.1 L')],
    );
    expect(whyOf(alike)).toBeUndefined();
  });

  it('tells halves as halves', () => {
    const plan = guessPlan(inputOf(twoDoes(), TODAY));
    if (!plan) throw new Error('no plan');
    expect([1, 2, 3].map((parts) => partsText(words, plan, parts))).toEqual([
      '½ liter',
      '1 liter',
      '1½ liters',
    ]);
    const shown = guessShown(plan, 3, 0);
    expect(guessVerdict(words, plan, shown, shown.right).right).toBe(true);
  });
});

describe('cups', () => {
  it('gives a gallon to sixteen', () => {
    // 1 US gallon is 16 cups of 8 fl oz: NIST Handbook 44, Appendix C.
    const book = bookOf(['ash 2026-02-01 weaned 2026-04-01'], twice('ash', WEEK, '2 qt'));
    const plan = cupsPlan(inputOf(book, TODAY, { units: 'us' }));
    expect(plan?.rounds.map(({ name, children, each }) => [name, children, each])).toEqual([['ash', 16, 1]]);
    if (!plan) throw new Error('no plan');
    for (let seed = 0; seed < 40; seed += 1) {
      const { choices } = cupsRound(plan, seed, 0);
      expect(choices).toHaveLength(4);
      for (const [place, choice] of choices.entries())
        if (place > 0) expect(choice).toBe(2 * (choices[place - 1] ?? 0));
    }
  });
});

describe('the year', () => {
  const season = () =>
    bookOf(
      ['ash 2025-03-01 weaned 2025-05-01 dry 2025-08-10', 'ash 2026-03-01 weaned 2026-05-01'],
      [
        ...twice('ash', dates('2025-05-01', '2025-05-31'), '1 L'),
        ...twice('ash', dates('2025-06-01', '2025-06-30'), '2 L'),
        ...twice('ash', dates('2025-07-01', '2025-07-31'), '1 L'),
        ...twice('ash', dates('2025-08-01', '2025-08-09'), '1 L'),
        ...twice('ash', dates('2026-05-01', '2026-05-20'), '1 L'),
      ],
    );

  it('tells births, the most, the rest and a month that is not over', () => {
    const plan = yearPlan(inputOf(season(), TODAY));
    const why = Object.fromEntries(
      plan?.months.map(({ id, why: one, open }) => [id, open ? `${one} open` : one]) ?? [],
    );
    expect(why).toMatchObject({
      '2025-06': 'mostWeaned',
      '2025-07': 'down',
      '2025-08': 'dry',
      '2025-12': 'rest',
      '2026-03': 'born',
      '2026-05': 'some open',
    });
    expect(plan?.best).toBe(1);
    // 30 days of 4 L are 120 L: 60 jars of 2 L.
    expect(plan?.months[1]?.jarsText).toBe('60');
    if (plan) expect(monthTold(words, plan, 1).text).toContain('60 jars');
  });

  it('breaks the line at a month that nothing is known of', () => {
    const month = (share: number, why: 'up' | 'blank') => ({ share, why, open: false }) as const;
    const lines = yearLines([
      month(0, 'up'),
      month(1, 'up'),
      month(0, 'blank'),
      month(1, 'up'),
      month(0.5, 'up'),
    ]);
    expect(lines).toHaveLength(2);
  });

  it('asks nothing where there is only one month', () => {
    expect(yearPlan(inputOf(twoDoes(), TODAY))).toBeNull();
  });
});

describe('two milks', () => {
  const plan = twoMilksPlan(inputOf(bookOf([]), TODAY));

  it('says what the published table says', () => {
    if (!plan) throw new Error('no plan');
    // USDA SR28, 01106 against 01077, per 100 g: protein 3.56 / 3.15, fat 4.14 / 3.25, carbohydrate 4.45 / 4.80,
    // calcium 134 / 113, vitamin A 57 / 46, folate 1 / 5; a cup is 244 g.
    const richer = Object.fromEntries(plan.scales.map((scale) => [scale.part, richerMilk(scale)]));
    expect(richer).toEqual({
      protein: 'goat',
      fat: 'goat',
      sugar: 'cow',
      calcium: 'goat',
      vitaminA: 'goat',
      folate: 'cow',
    });
    const fat = scaleOf(plan, 'fat');
    expect(fat.bars.map(({ milk, whole }) => [milk, whole])).toEqual([
      ['goat', '10'],
      ['cow', '8'],
      ['sheep', '17'],
      ['human', '11'],
    ]);
    expect(fat.bars[0]?.value).toBeCloseTo(10.1016, 4);
  });

  it('has every bar within its marks, and every text foreseen', () => {
    if (!plan) throw new Error('no plan');
    const says = new Set(twoMilksSays(words, plan));
    for (const part of milkParts(plan, 5)) {
      const scale = scaleOf(plan, part);
      expect(Math.max(...scale.bars.map(({ value }) => value))).toBeLessThanOrEqual(scale.marks.at(-1) ?? 0);
      for (const milk of ['goat', 'cow'] as const) {
        const told = milksVerdict(words, scale, milk);
        expect(says.has(told.text)).toBe(true);
        expect(told.right).toBe(milk === richerMilk(scale));
      }
    }
  });

  it('marks scales in round steps', () => {
    expect(marksTo(17.1)).toEqual([0, 5, 10, 15, 20]);
    expect(marksTo(327)).toEqual([0, 100, 200, 300, 400]);
    expect(marksTo(0.4)).toHaveLength(5);
  });

  it('is missing where the table lacks the milks', () => {
    expect(twoMilksPlan({ ...inputOf(bookOf([]), TODAY), composition: [] })).toBeNull();
  });
});

describe('the menu', () => {
  it('mixes as much of what is good as of what is not, and foresees every text', () => {
    const plan = menuPlan();
    const says = new Set(menuSays(words, plan));
    for (let seed = 0; seed < 30; seed += 1) {
      const things = menuRound(plan, seed);
      expect(things.filter((thing) => MENU[thing])).toHaveLength(4);
      expect(new Set(things).size).toBe(8);
    }
    for (const thing of plan.things) expect(says.has(menuVerdict(words, thing).text)).toBe(true);
    expect(says.has(menuDone(words).text)).toBe(true);
  });

  it('calls nothing food that handbooks call poison', () => {
    // Veterinary handbooks on poisonous plants (from memory): yew and rhododendron; fact "choosy-browser" for cans.
    expect([MENU.yew, MENU.rhododendron, MENU.can, MENU.bag, MENU.bread]).toEqual([
      false,
      false,
      false,
      false,
      false,
    ]);
    expect([MENU.hay, MENU.leaves, MENU.water]).toEqual([true, true, true]);
  });
});

describe('faces', () => {
  it('counts birthdays', () => {
    expect(yearsBetween('2020-05-20', '2026-05-20')).toBe(6);
    expect(yearsBetween('2020-05-21', '2026-05-20')).toBe(5);
    expect(yearsBetween('2024-02-29', '2026-02-28')).toBe(1);
  });

  it('asks a single doe for her age only, and asks nothing where nothing is known', () => {
    const one = bookOf(['ash 2026-02-01']);
    expect(facesPlan(inputOf(one, TODAY))).toBeNull();
    const plan = facesPlan(inputOf(withDoes(one, { ash: { born: '2022-02-01' } }), TODAY));
    expect(plan?.rounds).toEqual([{ kind: 'age', doe: 'ash' }]);
    if (plan) expect(facesShown(plan, 1, 0).right).toBe(4);
  });

  it('takes five of sixty does', () => {
    const many = bookOf(Array.from({ length: 60 }, (_, index) => `doe${index} 2026-02-01`));
    expect(facesPlan(inputOf(many, TODAY))?.does).toHaveLength(5);
  });
});

describe('numbers to guess from', () => {
  it('hold the right one at any place and nothing below the least', () => {
    const rows = Array.from({ length: 60 }, (_, seed) => choicesAround(chanceOf(`t${seed}`), 5, 1));
    for (const row of rows) expect(row).toContain(5);
    expect(new Set(rows.map((row) => row.indexOf(5))).size).toBe(4);
    expect(choicesAround(chanceOf('x'), 1, 1)).toEqual([1, 2, 3, 4]);
  });
});
