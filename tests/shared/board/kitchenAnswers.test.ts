// The board's answers on milking, washing and the kitchen, against published facts and over thin, empty and metric books.
import { readFileSync } from 'node:fs';
import { parse as parseCsv } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { answerTo } from '../../../shared/board/answers.ts';
import { boardFarm } from '../../../shared/board/boardFarm.ts';
import { cheeseAmount } from '../../../shared/board/cheese.ts';
import { MILKING_STEPS } from '../../../shared/board/howToMilk.ts';
import type { QuestionName } from '../../../shared/board/topics.ts';
import type { BoardInput } from '../../../shared/board/types.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import type { NutrientRow } from '../../../shared/milk/composition.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { TEST_FARM } from '../../support/testFarm.ts';

const MINE = ['flavor', 'how-to-milk', 'why-clean', 'stroke', 'cheese', 'keeps', 'drink-here'] as const;
const WEEK = dates('2026-05-14', '2026-05-20');
const LAST = day('2026-05-20');
const ASH = 'ash 2026-02-01 weaned 2026-04-01';
const BAY = 'bay 2026-02-01 weaned 2026-04-01';

const table = parseCsv<Record<string, string>>(readFileSync('content/facts/milk-composition.csv', 'utf8'), {
  columns: true,
}).map((row) => ({ ...(row as unknown as NutrientRow), per_100g: Number(row['per_100g']) }));

interface Setting {
  readonly units?: 'us' | 'metric';
  readonly asOf?: number;
  readonly composition?: readonly NutrientRow[];
}

function answer(name: QuestionName, book: Book, { units = 'metric', asOf = LAST, composition = [] }: Setting = {}) {
  const farm = { ...TEST_FARM, units };
  const input: BoardInput = { ...boardFarm(farm, book, openLedger(book, asOf)), lang: 'en', composition };
  return answerTo(name, input);
} // prettier-ignore

const kept = (amount: string) => bookOf([ASH], [`2026-05-20 am ash ${amount} kept`]);
const handling = parse(readFileSync('content/facts/handling.yaml', 'utf8')) as Record<
  string,
  { value?: number }
>;

describe('cheese', () => {
  it('is a kilogram from ten litres', () => {
    // Rule of thumb of cheese science pages: ten litres of milk make about one kilogram of hard cheese (fact hard-cheese-ten).
    const week = bookOf([ASH, BAY], [...twice('ash', WEEK, '3 L'), ...twice('bay', WEEK, '2 L')]);
    expect(answer('cheese', week)).toMatchObject({
      number: '7',
      variants: { unit: 'kg', 'why.third': 'plain' },
      slots: { low: '4.9 kg', high: '9.1 kg' },
      picture: { kitchen: { milk_mL: 70_000, wheels: 7 } },
    });
  });

  it('is nearly a pound a gallon on a farm of cups and pounds', () => {
    // 1 gallon = 3.785411784 L, 1 lb = 0.45359237 kg (NIST Handbook 44, Appendix C): 30 gal -> 113.56 L -> 11.356 kg -> 25.04 lb.
    const book = bookOf([ASH], twice('ash', WEEK.slice(-5), '3 gal'));
    expect(answer('cheese', book, { units: 'us' })).toMatchObject({ number: '25', variants: { unit: 'lb' } });
  });

  it('tells a little milk in ounces or grams, and half a kilogram in the singular', () => {
    expect(answer('cheese', kept('1 L'))).toMatchObject({ number: '100', variants: { unit: 'g' } });
    // 2 cups are 0.473 L, so 0.0473 kg, which is 1.67 oz.
    expect(answer('cheese', kept('2 cup'), { units: 'us' })).toMatchObject({
      number: '2',
      variants: { unit: 'oz' },
      picture: { kitchen: { wheels: 2 / 16 } },
    });
    expect(answer('cheese', kept('5 L'))).toMatchObject({
      number: '½',
      slots: { n: 1 },
      picture: { kitchen: { wheels: 0.5 } },
    });
    expect(cheeseAmount(0.001, 'metric', 'en').text).toBe('10');
  });

  it('counts only milk that was kept, and is missing where none was', () => {
    const mixed = bookOf([ASH], ['2026-05-20 am ash 10 L kept', '2026-05-20 pm ash 8 L fed']);
    expect(answer('cheese', mixed)).toMatchObject({ number: '1', proof: { rows: { length: 1 } } });
    const none = bookOf([ASH], ['2026-05-20 am ash 5 L withheld', '2026-05-20 pm ash 5 L lost']);
    expect(answer('cheese', none)).toMatchObject({ missing: true, number: '', proof: { steps: [] } });
  });

  it('tells what the formula says where the table has fat and protein', () => {
    // By hand from Van Slyke and Price with USDA SR28, food 01106 (4.14 % fat, 3.56 % protein), casein 0.749 of it, moisture 0.37:
    // (0.93 x 4.14 + 2.66644 - 0.1) x 1.09 / 0.63 = 11.102 kg of 100 kg; 10 L weigh 10.3 kg -> 1.14 kg.
    const told = answer('cheese', kept('10 L'), { composition: table });
    expect(told).toMatchObject({ slots: { formula: '1.14 kg' }, variants: { 'why.third': 'formula' } });
    expect(told.proof.steps.at(-1)?.sum).toBe('1.14 ÷ 1.0000 ≈ 1.14');
  });
});

describe('how long milk keeps', () => {
  it('is a week in the cold for pasteurized milk, three days for raw milk that waits', () => {
    // US food storage guidance, the careful figure; the Pasteurized Milk Ordinance empties farm tanks every 72 hours (both from memory).
    const { number, slots } = answer('keeps', bookOf([]));
    expect(number).toBe('7');
    expect(slots).toMatchObject({ raw: 3, cheese: 21, frozen: 90, hours: 2 });
    expect(handling['milk-keeps']?.value).toBe(7);
  });

  it('names a date seven days after the last day with milk, across the end of a month', () => {
    const book = bookOf([ASH], twice('ash', ['2026-05-28']));
    const { slots, variants } = answer('keeps', book, { asOf: day('2026-05-29') });
    expect(slots).toMatchObject({ made: 'Thu, May 28', until: 'Thu, Jun 4' });
    expect(variants).toEqual({ concrete: 'dated' });
    // Three weeks later that milk is past its date, and none is named.
    expect(answer('keeps', book, { asOf: day('2026-06-18') }).variants).toEqual({ concrete: 'plain' });
  });

  it('names no date in an empty book, and the cold in the farm’s scale', () => {
    expect(answer('keeps', bookOf([]))).toMatchObject({ variants: { concrete: 'plain' }, slots: { fridge: '4\u00a0°C', made: '' } });
    // The printed pair of the US Food and Drug Administration: 40 °F, 4 °C.
    expect(answer('keeps', bookOf([]), { units: 'us' }).slots['fridge']).toBe('40\u00a0°F');
  }); // prettier-ignore
});

describe('drinking here', () => {
  it('waits for half an hour at 145 °F or 63 °C, or 15 seconds at 161 °F or 72 °C', () => {
    // Code of Federal Regulations, title 21, sections 131.3 and 1240.61.
    expect(answer('drink-here', bookOf([]), { units: 'us' })).toMatchObject({
      number: '30',
      slots: { hot: '145\u00a0°F', hotter: '161\u00a0°F', seconds: 15 },
      picture: { kitchen: { minutes: 30 } },
    });
    expect(answer('drink-here', bookOf([])).slots).toMatchObject({ hot: '63\u00a0°C', hotter: '72\u00a0°C' });
  });

  it('and every page of milk leans on the fact that raw milk makes people ill', () => {
    for (const name of ['drink-here', 'cheese'] as const)
      expect(answer(name, kept('10 L')).proof.facts).toContain('raw-milk');
  });
});

describe('petting', () => {
  it('asks for twenty seconds of washing, whatever the book', () => {
    // US Centers for Disease Control and Prevention: at least 20 seconds with soap and running water; extra care under 5 years.
    expect(answer('stroke', bookOf([]))).toMatchObject({ number: '20', slots: { years: 5 }, missing: false });
    expect(handling['wash-20']?.value).toBe(20);
    expect(handling['extra-care']?.value).toBe(5);
  });
});

describe('milking, step by step', () => {
  it('has ten steps, six for each doe, six that clean', () => {
    // Common practice, no source: the farm's own order.
    const { number, slots } = answer('how-to-milk', bookOf([]));
    expect([number, slots['each'], slots['shared']]).toEqual(['10', 6, 4]);
    expect(answer('why-clean', bookOf([])).number).toBe('6');
    const order = MILKING_STEPS.map((step) => step.name);
    for (const [before, after] of [['hands', 'wipe'], ['wipe', 'strip'], ['strip', 'milk'], ['milk', 'dip'], ['strain', 'chill']] as const)
      expect(order.indexOf(before)).toBeLessThan(order.indexOf(after));
  }); // prettier-ignore

  it('counts the steps of the week: each doe at each milking, and the milkings themselves', () => {
    const book = bookOf([ASH, BAY], [...twice('ash', WEEK), ...twice('bay', WEEK.slice(-2))]);
    const told = answer('how-to-milk', book);
    // 14 + 4 milkings of a doe at six steps, 14 comings of the milkers at four: 108 + 56.
    expect(told).toMatchObject({ concrete: 164, live: true, slots: { milkings: 18, taken: '164' } });
    expect(told.proof.steps.map((step) => step.sum)).toEqual(['6 + 4 = 10', '6 × 18 = 108', '4 × 14 = 56', '108 + 56 = 164']); // prettier-ignore
    expect(answer('why-clean', book).concrete).toBe(18);
  });

  it('names no week and no cloths where the book has none', () => {
    for (const name of ['how-to-milk', 'why-clean'] as const)
      expect(answer(name, bookOf([]))).toMatchObject({ live: false, concrete: 0, missing: false });
  });
});

describe('flavor', () => {
  it('counts the short fats of both milks by one table', () => {
    // By hand from USDA SR28. 01106: (0.094 + 0.096 + 0.26) / 4.14 = 10.87 of 100; 01077: 3 x 0.075 / 3.25 = 6.92 of 100.
    const told = answer('flavor', bookOf([]), { composition: table });
    expect(told).toMatchObject({
      number: '11',
      slots: { cow: 7 },
      picture: { kitchen: { goat: 11, cow: 7 } },
    });
    expect(told.proof.rows).toHaveLength(8);
    expect(told.proof.table).toMatch(/SR28/);
  });

  it('stays within what other tables say of their fatty acids', () => {
    // Goat 11 to 14, cow 6 to 8 of 100 fatty acids: Posati and Orr 1976 and USDA SR28 (fact short-fat-goat).
    const { slots } = answer('flavor', bookOf([]), { composition: table });
    expect([slots['n'], slots['cow']]).toEqual([expect.toSatisfy((n: number) => n >= 10 && n <= 14), expect.toSatisfy((n: number) => n >= 6 && n <= 8)]); // prettier-ignore
  });

  it('is missing where the table lacks an acid, and speaks of a mix only where does are mixed', () => {
    const thin = table.filter((row) => row.nutrient_no !== '609');
    expect(answer('flavor', bookOf([]), { composition: thin })).toMatchObject({ missing: true, number: '' });
    expect(answer('flavor', kept('1 L'), { composition: table }).variants['why.third']).toBe('few');
    const two = bookOf([ASH, BAY], [...twice('ash', WEEK), ...twice('bay', WEEK)]);
    expect(answer('flavor', two, { composition: table })).toMatchObject({ variants: { 'why.third': 'mixed' }, slots: { does: 2 } }); // prettier-ignore
  });
});

describe('where the milk goes, and whether milking hurts', () => {
  it('tells a share in percent that is neither none nor all where it is not', () => {
    const share = (rows: string[]) => answer('where-it-goes', bookOf([ASH], rows)).slots['percent'];
    expect(share(['2026-05-20 am ash 1 mL kept', '2026-05-20 pm ash 9 L fed'])).toBe(1);
    expect(share(['2026-05-20 am ash 9 L kept', '2026-05-20 pm ash 1 mL lost'])).toBe(99);
    expect(share(['2026-05-20 am ash 3 L kept', '2026-05-20 pm ash 1 L lost'])).toBe(75);
    expect(share(['2026-05-20 am ash 3 L kept'])).toBe(100);
  });

  it('tells how much milk waits above the teat as the sources have it', () => {
    // Salama and others 2004; Pfeilsticker and others 1996.
    const facts = parse(readFileSync('content/facts/animals.yaml', 'utf8')) as Record<string, { range?: number[] }>;
    const { slots } = answer('does-it-hurt', kept('3 L'));
    expect([slots['least'], slots['most']]).toEqual(facts['milk-in-cistern']?.range);
  }); // prettier-ignore
});

describe('every one of these answers', () => {
  it('stands in an empty book, in winter and with one doe, with a picture of its kind', () => {
    const books: [Book, number][] = [[bookOf([]), LAST], [bookOf([ASH], twice('ash', WEEK)), day('2026-12-20')], [kept('3 L'), LAST]]; // prettier-ignore
    for (const [book, asOf] of books)
      for (const name of MINE) {
        const told = answer(name, book, { asOf, composition: table });
        expect(told.number === '', name).toBe(told.missing);
        expect(told.picture.kind, name).toBe('kitchen');
        expect(told.missing && name !== 'cheese', name).toBe(false);
      }
  });
});
