// The board's answers about the goats: by example, against other ways of counting, and at the edges.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { answerTo } from '../../../shared/board/answers.ts';
import { GOAT_VIEW_DEG, PERSON_VIEW_DEG, slicesOf } from '../../../shared/board/eyes.ts';
import { LIFE_YEARS, monthsBetween } from '../../../shared/board/howOld.ts';
import { earsOf } from '../../../shared/board/whichGoat.ts';
import { doeBreed, doeLook } from '../../../shared/drawing/doeLook.ts';
import { bookOf, dates, day, twice } from '../../support/bookOf.ts';
import { doe, herd, inputOf, shows } from '../../support/goatBoard.ts';

const facts = parse(readFileSync(join('content/facts', 'animals.yaml'), 'utf8')) as Record<
  string,
  { en: string; value?: number; range?: [number, number] }
>;

describe('which goat is which', () => {
  it('counts the list, names the mark of each breed, and adds up the ears', () => {
    const book = herd(
      doe('juno', null, 'Nubian'),
      doe('lea', null, 'LaMancha'),
      doe('sol', null, 'Saanen'),
      doe('mia', null, 'Holstein'),
    );
    const answer = answerTo('which-goat', inputOf(book, '2026-05-20'));
    expect(answer.number).toBe('4');
    expect(shows(answer, 'faces').does.map(({ mark }) => mark)).toEqual([
      'nubian',
      'lamancha',
      'saanen',
      'mixed',
    ]);
    // A cow's breed tells no goat's ears: it is left open.
    expect(answer.proof.steps.map(({ key }) => key)).toEqual([
      'ears.upright',
      'ears.long',
      'ears.tiny',
      'ears.look',
      undefined,
    ]);
    expect(answer.proof.steps.at(-1)?.sum).toBe('1 + 1 + 1 + 1 = 4');
    expect(answer.variants['why.second']).toBe('several');
  });

  it('says of ears what is drawn, wherever it says anything', () => {
    for (const breed of [
      'Nubian',
      'Anglo-Nubian',
      'LaMancha',
      'Saanen',
      'Sable',
      'Toggenburg',
      'Nigerian Dwarf',
      'Oberhasli',
      'Golden Guernsey',
      'Alpine',
    ])
      // prettier-ignore
      expect(earsOf(doeBreed(breed)), breed).toBe(doeLook(breed, 'a').ears);
    expect(earsOf(doeBreed('Jersey'))).toBe('look');
  });

  it('is missing without a doe, and speaks of no breeds where the list names none', () => {
    expect(answerTo('which-goat', inputOf(herd(), '2026-05-20'))).toMatchObject({
      missing: true,
      number: '',
    });
    const answer = answerTo('which-goat', inputOf(herd(doe('a', null)), '2026-05-20'));
    expect(answer).toMatchObject({ number: '1', variants: { 'why.second': 'one' }, slots: { breeds: 0 } });
    // A cow's breeds: three are named, and no goat's ears are known of them.
    const cows = herd(doe('a', null, 'Holstein'), doe('b', null, 'Jersey'), doe('c', null, 'Ayrshire'));
    expect(answerTo('which-goat', inputOf(cows, '2026-05-20')).variants['why.second']).toBe('unknown');
  });
});

describe('how old they are', () => {
  it('counts whole months as the platform calendar of days does', () => {
    // Where the last month lacks the day, as of a birthday on 29 February, customs differ: that is held below.
    const dayArb = fc.integer({ min: day('1996-01-01'), max: day('2040-12-31') });
    fc.assert(
      fc.property(dayArb, fc.integer({ min: 0, max: 7000 }), (born, after) => {
        const from = Temporal.PlainDate.from('1970-01-01').add({ days: born });
        const to = from.add({ days: after });
        fc.pre(from.day <= to.daysInMonth);
        const { years, months } = from.until(to, { largestUnit: 'years' });
        expect(monthsBetween(born, born + after)).toBe(years * 12 + months);
      }),
      { numRuns: 2000 },
    );
  });

  it('tells the oldest, and redoes each age from two years and a birthday', () => {
    const book = herd(
      doe('old', '2019-04-06'),
      doe('young', '2024-06-02'),
      doe('none', null),
      doe('ahead', '2027-01-01'),
    );
    const answer = answerTo('how-old', inputOf(book, '2026-05-21'));
    expect(answer).toMatchObject({
      number: '7',
      face: { id: 'old' },
      slots: { youngest: 1, does: 2, middle: '4' },
    });
    expect(answer.proof.steps.map(({ sum }) => sum)).toEqual(['2026 − 2019 = 7', '2026 − 2024 − 1 = 1', '7']);
    expect(answer.proof.rows.map(({ cells }) => cells[1])).toEqual(['2019-04-06', '2024-06-02']);
    expect(shows(answer, 'ages').rows.map(({ age }) => age)).toEqual([1, 7]);
  });

  it('turns a year on the birthday and not a day sooner', () => {
    const at = (date: string) => answerTo('how-old', inputOf(herd(doe('a', '2020-03-12')), date)).number;
    expect([at('2026-03-11'), at('2026-03-12'), at('2026-12-31')]).toEqual(['5', '6', '6']);
    const leap = (date: string) => answerTo('how-old', inputOf(herd(doe('a', '2020-02-29')), date)).number;
    expect([leap('2025-02-28'), leap('2025-03-01'), leap('2024-02-29')]).toEqual(['4', '5', '4']);
  });

  it('counts months where nobody has had a birthday, and is missing where no birth is known', () => {
    const kids = answerTo(
      'how-old',
      inputOf(herd(doe('a', '2026-02-01'), doe('b', '2026-03-30')), '2026-05-21'),
    );
    expect(kids).toMatchObject({ number: '3', variants: { unit: 'months', headline: 'months' } });
    expect(answerTo('how-old', inputOf(herd(doe('a', '2026-05-21')), '2026-05-21')).number).toBe('0');
    expect(answerTo('how-old', inputOf(herd(doe('a', null)), '2026-05-21'))).toMatchObject({
      missing: true,
      number: '',
    });
    const alone = answerTo('how-old', inputOf(herd(doe('a', '2020-01-01')), '2026-05-21'));
    expect(alone.variants['unit']).toBe('yearsAlone');
  });

  it('takes the length of a life from the fact that it shows', () => {
    for (const years of Object.values(LIFE_YEARS)) expect(facts['goat-years']?.en).toContain(String(years));
  });
});

describe('who rests', () => {
  const year = ['ash 2026-03-01 apart 2026-03-22 weaned 2026-05-11 dry 2026-11-14', 'bay 2026-05-10 apart 2026-05-31 weaned 2026-07-20 dry 2026-10-19']; // prettier-ignore

  it('counts does that nobody milks on the day, with their kids or dry', () => {
    const at = (date: string) => answerTo('who-rests', inputOf(bookOf(year), date));
    // In May one is milked and one has her kids all day; in July both are milked; in December both are dry.
    expect(at('2026-05-20')).toMatchObject({ number: '1', concrete: 1, variants: { headline: 'some' } });
    expect(at('2026-07-25')).toMatchObject({ number: '0', missing: false, variants: { headline: 'none' } });
    expect(at('2026-12-08')).toMatchObject({ number: '2', concrete: 0, variants: { headline: 'all' } });
    const places = shows(at('2026-05-20'), 'rest').places;
    expect(places.map(({ does }) => does.map(({ id }) => id))).toEqual([['ash'], ['bay'], []]);
    expect(at('2026-05-20').proof.steps.at(-1)?.sum).toBe('1 + 0 = 1');
  });

  it('names the first who will rest, or the day when milk is expected, or neither', () => {
    expect(answerTo('who-rests', inputOf(bookOf(year), '2026-07-25'))).toMatchObject({
      variants: { 'why.third': 'firstToRest' },
      slots: { name: 'bay', date: 'October 19, 2026' },
    });
    expect(answerTo('who-rests', inputOf(bookOf(year), '2026-12-08')).variants['why.third']).toBe('back');
    const open = bookOf(['ash 2026-03-01 weaned 2026-05-11']);
    expect(answerTo('who-rests', inputOf(open, '2026-07-25')).variants['why.third']).toBe('untold');
    // While kids are with their mother all day, the list says from when she is milked.
    const nursing = bookOf(['ash 2026-05-01 apart 2026-05-22 weaned 2026-07-10 dry 2026-12-20']);
    expect(answerTo('who-rests', inputOf(nursing, '2026-05-10')).slots['date']).toBe('May 22, 2026');
  });

  it('leaves out a doe whose births are not in the list, and is missing where all are such', () => {
    const book = { ...bookOf(year), does: [doe('ash', null), doe('new', null)] };
    expect(answerTo('who-rests', inputOf(book, '2026-12-08')).number).toBe('1');
    expect(answerTo('who-rests', inputOf(herd(doe('new', null)), '2026-12-08'))).toMatchObject({
      missing: true,
    });
  });
});

describe('males', () => {
  const week = dates('2026-05-14', '2026-05-20');

  it('give nothing, and each doe with milk is looked up among the births', () => {
    const book = bookOf(['ash 2026-02-01 weaned 2026-04-01'], [...twice('ash', week), ...twice('odd', week)]);
    const answer = answerTo('males', inputOf(book, '2026-05-20'));
    expect(answer).toMatchObject({
      number: '0',
      missing: false,
      concrete: 1,
      variants: { concrete: 'part' },
    });
    expect(answer.slots).toMatchObject({ all: 2, mothers: 1 });
    expect(shows(answer, 'males').milk_mL).toBe(4000);
  });

  it('are answered in an empty book too, with no doe beside them', () => {
    const answer = answerTo('males', inputOf(herd(), '2026-05-20'));
    expect(answer).toMatchObject({ number: '0', concrete: 0 });
    expect(shows(answer, 'males').milk_mL).toBeNull();
  });
});

describe('eyes', () => {
  it('see what the facts say, in twelfths of a circle', () => {
    expect(facts['slit-pupil']?.range).toEqual([GOAT_VIEW_DEG.least, GOAT_VIEW_DEG.most]);
    expect(facts['person-view']?.value).toBe(PERSON_VIEW_DEG);
    // A clock's hour is a twelfth of 360 degrees: 330 degrees are 11 hours, 200 are 6 hours and two thirds.
    expect([slicesOf(330), slicesOf(200), slicesOf(360), slicesOf(0)]).toEqual([11, 7, 12, 0]);
    expect(answerTo('eyes', inputOf(herd(), '2026-05-20'))).toMatchObject({ number: '11', concrete: 7 });
  });
});
