// The answers about udder, winter, feed, insides, cans and land, against published figures.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { answerTo } from '../../../shared/board/answers.ts';
import { boardFarm } from '../../../shared/board/boardFarm.ts';
import { measuredBlood } from '../../../shared/board/grassToMilk.ts';
import { LEVELS, LEVEL_TEXTS, tell, tellLevel } from '../../../shared/board/tell.ts';
import type { QuestionName } from '../../../shared/board/topics.ts';
import type { Answer, BoardInput } from '../../../shared/board/types.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { monthText } from '../../../shared/quantity/monthText.ts';
import { flatten, type Words } from '../../../shared/words/words.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { caseArb } from '../../support/randomBook.ts';
import { TEST_FARM } from '../../support/testFarm.ts';

type Units = 'us' | 'metric';
const NAMES = ['udder', 'winter', 'eats-and-drinks', 'grass-to-milk', 'stomachs', 'cans', 'land', 'goat-and-cow', 'how-much'] as const; // prettier-ignore
const POUND_KG = 0.45359237;

function inputOf(book: Book, asOf: number, units: Units = 'us', lang = 'en'): BoardInput {
  const ledger = openLedger(book, asOf);
  return { ...boardFarm({ ...TEST_FARM, units }, book, ledger), lang, composition: [] };
}

function weighed(book: Book, weight_kg: number | null, breed = ''): Book {
  return { ...book, does: book.does.map((doe) => ({ ...doe, weight_kg, breed })) };
}

const WEEK = dates('2026-05-14', '2026-05-20');
const MAY = day('2026-05-20');
/** One doe of 100 lb who gives 8 lb of milk a day. */
const oneDoe = (weight_kg: number | null = 100 * POUND_KG) =>
  weighed(bookOf(['ash 2026-02-20 weaned 2026-04-01'], twice('ash', WEEK, '4 lb')), weight_kg);
const fed = (answer: Answer) => {
  if (answer.picture.kind !== 'food' || answer.picture.food.kind !== 'fed') throw new Error('no feed drawn');
  return answer.picture.food;
};

describe('what a goat eats and drinks', () => {
  it('counts milk that the book has of a doe without a listed birth, and shows the glasses', () => {
    const book = { ...oneDoe(), kiddings: [] };
    const { variants, proof } = answerTo('eats-and-drinks', inputOf(book, MAY));
    expect(variants['rule']).toBe('milk');
    // Sixteen cups to the gallon: NIST Handbook 44, Appendix C.
    expect(proof.steps.at(-1)).toMatchObject({ key: 'eats.glasses.us' });
    expect(proof.steps.at(-1)?.sum).toMatch(/^\d\.\d\d gal × 16 ≈ \d+\.\d$/);
  });

  it('is 4 to 5 pounds and 3 to 5 gallons for a doe of 100 lb with 8 lb of milk', () => {
    // 4 to 5 % of weight: course of the Indian Council of Agricultural Research. 1 to 3 gallons and half a gallon for
    // 2 lb of milk, so 2 more for 8 lb: J. Bentley, Iowa State University Extension 2022.
    const answer = answerTo('eats-and-drinks', inputOf(oneDoe(), MAY));
    expect([answer.number, answer.slots['water']]).toEqual(['4–5', '3–5']);
    expect(fed(answer).feed).toMatchObject({ sure: 4, perhaps: 1, each: 1, unit: 'lb' });
    expect(fed(answer).water).toMatchObject({ sure: 3, perhaps: 2, each: 1, unit: 'gal' });
    // 3 gallons are 48 cups: NIST Handbook 44, Appendix C.
    expect(answer.concrete).toBe(48);
    expect(answer.face?.name).toBe('ash');
  });

  it('is told in kilograms and liters on a metric farm', () => {
    // 1.81 to 2.27 kg, to the half; 11.4 to 18.9 L.
    const answer = answerTo('eats-and-drinks', inputOf(oneDoe(), MAY, 'metric'));
    expect([answer.number, answer.slots['water']]).toEqual(['2–2½', '11–19']);
    expect(fed(answer).water.sure + fed(answer).water.perhaps).toBeLessThanOrEqual(12);
  });

  it('is what any grown doe takes where no weight and no known breed is in the list', () => {
    // Hay of 4 to 5 lb a day: extension pages (from memory); water as above without milk.
    const answer = answerTo('eats-and-drinks', inputOf(oneDoe(null), MAY));
    expect([answer.number, answer.slots['water'], answer.face]).toEqual(['4–5', '1–3', null]);
    expect(answer.proof.facts).toContain('hay');
  });

  it('takes the weight of her breed where she was not weighed', () => {
    // A Nigerian Dwarf of 60 to 80 lb: breed pages. 4 % of 60 is 2.4, 5 % of 80 is 4.
    const answer = answerTo('eats-and-drinks', inputOf(weighed(oneDoe(), null, 'Nigerian Dwarf'), MAY));
    expect(answer.number).toBe('2–4');
  });

  it('is less in December, when she rests: 2 to 3 % of her weight', () => {
    // Source: National Research Council 2007 (from memory).
    const answer = answerTo('eats-and-drinks', inputOf(oneDoeDriedOff(), day('2026-12-08')));
    expect([answer.number, answer.slots['water'], answer.live]).toEqual(['2–3', '1–3', false]);
  });
});

function oneDoeDriedOff(): Book {
  const rows = twice('ash', dates('2026-10-20', '2026-10-31'), '4 lb');
  return weighed(bookOf(['ash 2026-02-20 weaned 2026-04-01 dry 2026-11-01'], rows), 100 * POUND_KG);
}

describe('why there is less milk in winter', () => {
  it('counts the days until milk comes back while the herd rests', () => {
    // New kids a year after February 20, three weeks later milk: common practice, no source. From December 8 to March 13
    // are 23 + 31 + 28 + 13 days.
    const answer = answerTo('winter', inputOf(oneDoeDriedOff(), day('2026-12-08')));
    expect([answer.number, answer.variants['unit'], answer.variants['headline']]).toEqual([
      '95',
      'until',
      'rests',
    ]);
    expect(answer.slots).toMatchObject({ returns: 'March', returnsDay: 'March 13, 2027' });
    expect(answer.concrete).toBe(11);
    expect(answer.proof.steps.at(-1)?.sum).toBe('2027-03-13 − 2026-12-08 = 95');
  });

  it('counts the months with milk while there is milk', () => {
    const answer = answerTo('winter', inputOf(oneDoe(), MAY));
    expect([answer.number, answer.variants['unit'], answer.variants['headline']]).toEqual([
      '1',
      'months',
      'gives',
    ]);
    expect(answer.concrete).toBe(11);
  });

  it('draws twelve months, the fullest as a full jar, and writes nothing where nothing was written', () => {
    const rows = [...twice('ash', ['2026-04-01'], '1 L'), ...twice('ash', ['2026-05-01'], '4 L')];
    const answer = answerTo('winter', inputOf(bookOf(['ash 2026-03-01'], rows), MAY));
    if (answer.picture.kind !== 'food' || answer.picture.food.kind !== 'months') throw new Error('no months');
    const { months } = answer.picture.food;
    expect(months.map(({ fill }) => fill)).toEqual([...Array<number>(10).fill(0), 0.25, 1]);
    expect(months.filter(({ jars }) => jars === '')).toHaveLength(10);
    expect([months[0]?.name, months[11]?.name]).toEqual(['Jun', 'May']);
  });

  it('is missing in an empty book', () => {
    expect(answerTo('winter', inputOf(bookOf([]), MAY))).toMatchObject({ missing: true, number: '' });
  });
});

describe('how grass becomes milk', () => {
  it('measures 286 or 572 of blood for one of milk, with the told 400 and the cow between', () => {
    // 675 mL a minute in one milk vein of a goat of 3.4 L a day: Christensen and others 1989, Comparative Biochemistry
    // and Physiology. 507 in three cows: Journal of Animal Science 1979.
    const { oneVein, bothVeins } = measuredBlood();
    expect([Math.round(oneVein), Math.round(bothVeins)]).toEqual([286, 572]);
    for (const told of [400, 500, 507]) expect(told > oneVein && told < bothVeins).toBe(true);
  });

  it("multiplies the day's milk of the doe in the middle, in the farm's measure", () => {
    const book = bookOf(['ash 2026-02-20 weaned 2026-04-01'], twice('ash', WEEK, '8 cup'));
    const us = answerTo('grass-to-milk', inputOf(book, MAY));
    // 16 cups a day times 400.
    expect([us.number, us.concrete, us.slots['blood'], us.variants['concrete']]).toEqual([
      '400',
      6400,
      '6,400',
      'us',
    ]);
    const metric = answerTo('grass-to-milk', inputOf(bookOf(['ash 2026-02-20 weaned 2026-04-01'], twice('ash', WEEK, '2 L')), MAY, 'metric')); // prettier-ignore
    expect([metric.concrete, metric.variants['unit']]).toEqual([1600, 'metric']);
  });

  it('has no doe to tell it by in an empty book, and still stands', () => {
    const answer = answerTo('grass-to-milk', inputOf(bookOf([]), MAY));
    expect([answer.missing, answer.number, answer.variants['concrete']]).toEqual([false, '400', 'none']);
  });
});

describe('udder, stomachs, cans and land', () => {
  const three = bookOf(['ash 2026-02-20', 'bay 2026-02-20', 'fir 2026-02-20']);

  it('count two teats a doe and four a cow, one stomach and four chambers', () => {
    // Teats: textbook anatomy (from memory). Chambers: Cornell University, 4-H dairy goat pages.
    expect(answerTo('udder', inputOf(three, MAY))).toMatchObject({
      number: '2',
      slots: { teats: 6, cow: 4, cows: 12 },
    });
    expect(answerTo('stomachs', inputOf(three, MAY))).toMatchObject({
      number: '1',
      slots: { does: 3, chambers: 12 },
    });
    expect(answerTo('udder', inputOf(bookOf([]), MAY)).concrete).toBe(0);
  });

  it('know of no goat that ate a can', () => {
    expect(answerTo('cans', inputOf(three, MAY))).toMatchObject({ number: '0', missing: false });
  });

  it('put 5 to 7 goats on the land of a cow, and nearly the same feed into a kilogram of milk', () => {
    // 0.15 units a goat: USDA-NRCS through a stocking table; 5 goats a unit: former federal rule; 7: Travis Central
    // Appraisal District. Feed: 0.062 × 60^0.75 + 0.305 × 3 = 2.25 kg (AFRC 1998), 0.372 × 30 + 0.0968 × 650^0.75 =
    // 23.62 kg (NRC 2001), both from memory; a third of the one, a thirtieth of the other.
    const { number, slots, proof } = answerTo('land', inputOf(three, MAY));
    expect([number, slots['handbook']]).toEqual(['5–7', '6.67']);
    expect([slots['goatFeed'], slots['cowFeed']]).toEqual(['0.75', '0.79']);
    expect(proof.facts).toEqual(expect.arrayContaining(['goats-for-a-cow', 'ghg-goat', 'ghg-why']));
  });

  it('tell what land the herd takes without a fraction of a cow', () => {
    const herd = (count: number) => bookOf(Array.from({ length: count }, (_, i) => `doe${i} 2026-02-20`));
    const shape = (count: number) => answerTo('land', inputOf(herd(count), MAY)).variants['concrete'];
    // Six goats at 0.15 are 0.9 of a cow, ten are 1.5.
    expect([0, 3, 6, 9, 10].map(shape)).toEqual(['none', 'less', 'one', 'one', 'more']);
  });
});

describe('the words of these questions', () => {
  const wordsOf = (lang: string, name: QuestionName): Words => {
    const text = readFileSync(`content/questions/${lang}/${name}.mdx`, 'utf8');
    const head = parse(text.split('\n---\n')[0]?.replace(/^---\n/, '') ?? '') as {
      words: Record<string, unknown>;
    };
    return { lang, entries: flatten(head.words) };
  };
  const own = new Map(['en', 'es'].flatMap((lang) => NAMES.map((name) => [`${lang} ${name}`, wordsOf(lang, name)] as const))); // prettier-ignore

  it('can be told at both levels for any book, with every slot filled', () => {
    fc.assert(
      fc.property(
        caseArb,
        fc.constantFrom<Units>('us', 'metric'),
        fc.constantFrom('en', 'es'),
        ({ book, asOf }, units, lang) => {
          const input = inputOf(book, asOf, units, lang);
          for (const name of NAMES) {
            const answer = answerTo(name, input);
            const words = own.get(`${lang} ${name}`)!;
            const texts = (['unit', 'rule', 'change', 'missing'] as const).map((text) =>
              tell(words, answer, text),
            );
            if (!answer.missing)
              for (const level of LEVELS)
                for (const text of LEVEL_TEXTS) texts.push(tellLevel(words, answer, level, text) ?? '-');
            for (const text of texts) expect(text, `${lang} ${name}`).toMatch(/^[^{}]+$/);
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('keep to eight words a sentence, without decimals or percent, at the younger level', () => {
    const long: string[] = [];
    for (const [book, asOf] of [
      [oneDoe(), MAY],
      [oneDoeDriedOff(), day('2026-12-08')],
    ] as const)
      // prettier-ignore
      for (const units of ['us', 'metric'] as const)
        for (const [key, words] of own) {
          const [lang = '', name] = key.split(' ') as [string, QuestionName];
          const answer = answerTo(name, inputOf(book, asOf, units, lang));
          for (const part of answer.missing ? [] : LEVEL_TEXTS) {
            const text = tellLevel(words, answer, 'younger', part) ?? '';
            const sentences = text.split(/[.!?:]\s+|[.!?]$/).filter((sentence) => sentence !== '');
            if (sentences.some((one) => one.split(/\s+/).length > 8) || /\d\.\d|%|percent|por ciento/.test(text))
              long.push(`${key} ${part}: ${text}`);
          }
        }
    expect(long).toEqual([]);
  });
});

describe('monthText()', () => {
  it('names a month in both languages', () => {
    expect(monthText('2026-02', 'en', 'long')).toBe('February');
    expect(monthText('2026-02-20', 'es', 'long')).toBe('febrero');
  });
});
