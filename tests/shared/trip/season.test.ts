// The coming year of a herd for visits: what is milked, when a kidding is near, and what nobody can tell yet.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Book } from '../../../shared/herd/types.ts';
import { openOutlook } from '../../../shared/outlook/outlook.ts';
import { stateOn } from '../../../shared/trip/doeOn.ts';
import { kidsOn } from '../../../shared/trip/programme.ts';
import { groundOn, isKiddingNear, SEASON_DAYS } from '../../../shared/trip/season.ts';
import { USUAL_FARM } from '../../../shared/trip/usualRules.ts';
import type { Span } from '../../../shared/trip/types.ts';
import { tripSeason } from '../../../shared/trip/yearAhead.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { bookOf, dates, day, kidding, twice } from '../../support/bookOf.ts';
import { dateOf, plainExpected } from '../../support/plainHerd.ts';
import { caseArb } from '../../support/randomBook.ts';

const SETTINGS = {
  milkings: { am: '06:30', pm: '17:30' },
  units: 'us',
  jar: { size: 64, unit: 'fl oz' },
} as const;
const yearOf = (book: Book, asOf: string | number, shownMilking: Span | null = null) => {
  const today = typeof asOf === 'string' ? day(asOf) : asOf;
  const contact = { name: '', place: '', email: '', phone: '', address: '', gate: '', hospital: '', emergency: '', veterinarian: '' };
  return tripSeason(book, openLedger(book, today), { ...SETTINGS, trip: { farm: USUAL_FARM, shownMilking, contact } });
}; // prettier-ignore
const on = (book: Book, asOf: string, date: string) => groundOn(USUAL_FARM, yearOf(book, asOf), day(date));

function demo(asOf: string) {
  const read = readFarm('content/farm', { asOf, now_ms: 0 });
  if (!read.ok) throw new Error('the demo farm has faults');
  const { book, farm } = read;
  return { book, season: tripSeason(book, openLedger(book, read.asOf), farm), farm: farm.trip?.farm ?? USUAL_FARM };
} // prettier-ignore

describe('milkings to watch', () => {
  it('are those that the contract of the farm folder expects, for any book and any day that is on record', () => {
    let compared = 0;
    fc.assert(
      fc.property(caseArb, fc.integer({ min: -40, max: 90 }), ({ book, asOf }, after) => {
        const season = yearOf(book, asOf);
        const at = asOf + after;
        const told = season.does.filter(({ quiet }) => !quiet);
        // After the eve of a kidding to come, and where the rest before it begins, a day rests on more than the record.
        if (told.some(({ due }) => due && at >= due.from - 61) || told.length < season.does.length) return;
        const plain = told.map(({ id }) => plainExpected(book.kiddings, id, dateOf(at)));
        const [am, pm] = (['am', 'pm'] as const).map(
          (time) => plain.filter((all) => all.includes(time)).length,
        );
        const ground = groundOn(USUAL_FARM, season, at);
        const spans = [am ? 390 : null, pm ? 1050 : null].filter((from) => from !== null);
        expect(ground.milkings.map(({ from }) => from)).toEqual(spans);
        expect(ground.doesDue).toBe(Math.max(am ?? 0, pm ?? 0));
        compared += 1;
      }),
      { numRuns: 500, seed: 7 },
    );
    expect(compared).toBeGreaterThan(150);
  });

  it('last ten minutes for each doe, or as long as the farm says, in place of the early morning', () => {
    const book = bookOf(['a 2026-03-01', 'b 2026-03-02', 'c 2026-03-01 apart 2026-03-22 weaned 2026-05-10']);
    expect(on(book, '2026-03-05', '2026-04-10').milkings).toEqual([
      { from: 390, to: 420 },
      { from: 1050, to: 1070 },
    ]);
    const shown = yearOf(book, '2026-03-05', { from: 600, to: 660 });
    expect(groundOn(USUAL_FARM, shown, day('2026-04-10')).milkings).toEqual([
      { from: 600, to: 660 },
      { from: 1050, to: 1070 },
    ]);
  });

  it('are those of does under treatment, too: they are milked, and nobody drinks it', () => {
    const book = bookOf(['a 2026-03-01']);
    const treatment = { doe: 'a', from: day('2026-03-04'), until: day('2026-04-20'), what: 'x', note: '', file: '', line: 2 };
    const treated = { ...book, treatments: [treatment] };
    expect(on(treated, '2026-03-05', '2026-04-10')).toEqual(on(book, '2026-03-05', '2026-04-10'));
    expect(on(treated, '2026-03-05', '2026-04-10').doesDue).toBe(1);
  }); // prettier-ignore

  it('say why there is none', () => {
    expect(on({ does: [], kiddings: [], rows: [] }, '2026-05-01', '2026-05-10').noMilking).toBe('no does');
    expect(on(bookOf(['a 2026-03-01 apart 2026-04-01']), '2026-03-02', '2026-03-10').noMilking).toBe('with kids'); // prettier-ignore
    expect(on(bookOf(['a 2026-03-01 dry 2026-10-20']), '2026-10-01', '2026-11-20').noMilking).toBe('dry');
    const milked = bookOf(['a 2026-03-01 dry 2026-10-20']);
    expect(on(milked, '2026-03-05', '2026-10-10').noMilking).toBeNull();
    expect(on(milked, '2025-01-01', '2026-05-10').noMilking).toBe('unknown'); // beyond the year
  });

  it('are not told of a doe of whom nothing was written down for weeks, nor of one with milk and no kidding', () => {
    const silent = bookOf(['a 2026-03-01'], twice('a', dates('2026-03-05', '2026-03-20')));
    expect(on(silent, '2026-05-01', '2026-05-10')).toMatchObject({ milkings: [], noMilking: 'unknown' });
    const noKidding = bookOf([], twice('a', dates('2026-04-05', '2026-04-20')));
    expect(on(noKidding, '2026-04-21', '2026-05-10')).toMatchObject({ milkings: [], noMilking: 'unknown' });
  });
});

describe('a kidding that is near', () => {
  const farm = { kiddingDays: { before: 14, after: 21 } };
  const near = (book: Book, asOf: string) => {
    const [doe] = yearOf(book, asOf).does;
    if (!doe) throw new Error('no doe');
    return dates('2026-01-01', '2026-06-30').filter((date) => isKiddingNear(farm, doe, day(date)));
  };
  const ends = (all: readonly string[]) => [all[0], all.at(-1), all.length];

  it('is one on record, with the farm’s days before and after', () => {
    expect(ends(near(bookOf(['a 2026-03-01']), '2026-03-05'))).toEqual(['2026-02-15', '2026-03-22', 36]);
  });
  // Amoah and others 1996: births fall within five days of the day that is reckoned.
  it('is one that the book dates ahead, five days sooner or later', () => {
    expect(ends(near(bookOf(['a 2026-03-01']), '2026-01-05'))).toEqual(['2026-02-10', '2026-03-27', 46]);
  });
  // Common practice, no source: about a year after the last, with a week before and after for the guess.
  it('is one about a year after the last, the middle third of its three weeks either way', () => {
    expect(ends(near(bookOf(['a 2025-03-01 dry 2025-12-01']), '2026-01-05'))).toEqual(['2026-02-08', '2026-03-29', 50]); // prettier-ignore
  });
  it('is none of a doe who is milked when she should rest before it', () => {
    const milked = bookOf(['a 2025-03-01'], twice('a', dates('2026-01-20', '2026-02-10')));
    expect(near(milked, '2026-02-10').filter((date) => date > '2026-01-25')).toEqual([]);
  });
});

describe('after a kidding that is only reckoned', () => {
  // The last kidding 2025-03-01, so the next about 2026-03-01, three weeks sooner or later.
  const book = bookOf(['a 2025-03-01 apart 2025-03-22 weaned 2025-05-10 dry 2025-11-15']);
  const told = (date: string) => {
    const season = yearOf(book, '2025-12-01');
    const [doe] = season.does;
    return { ...stateOn(doe!, day(date)), ...groundOn(USUAL_FARM, season, day(date)) };
  };
  it('a doe is told as is likely, and milked only where she is whenever it was', () => {
    expect(told('2026-01-10')).toMatchObject({ state: 'dry', likely: false, noMilking: 'dry' });
    expect(told('2026-03-10')).toMatchObject({ state: 'with kids', likely: true, milkings: [] });
    // Three weeks with her kids: milked from 22 March, or 12 April where she kidded late.
    expect(told('2026-04-05')).toMatchObject({ state: 'nights apart', likely: true, noMilking: 'unknown' });
    expect(told('2026-04-13').milkings).toEqual([{ from: 390, to: 400 }]);
    expect(told('2026-07-01').milkings).toHaveLength(2);
    // Dried off after as many days as the last time, 259; surely milked for 240 after the earliest day, 8 February.
    expect(told('2026-10-04').milkings).toHaveLength(2);
    expect(told('2026-10-06')).toMatchObject({ milkings: [], noMilking: 'unknown' });
    expect(told('2026-11-20')).toMatchObject({ state: 'dry', likely: true });
  });
  it('kids are with their mother, then weaned, then no more told', () => {
    const season = yearOf(book, '2025-12-01');
    expect(['2026-02-01', '2026-03-20', '2026-06-01', '2026-07-10'].map((date) => kidsOn(season, day(date)))).toEqual(['none', 'kids at foot', 'young kids', 'none']);
    const bottle = yearOf(bookOf(['a 2026-03-01']), '2026-03-05');
    expect(['2026-03-10', '2026-04-26', '2026-04-27', '2026-07-01'].map((date) => kidsOn(bottle, day(date)))).toEqual(['kids on bottles', 'kids on bottles', 'young kids', 'none']);
  }); // prettier-ignore
});

describe('the milk of the year', () => {
  it('is the outlook’s where no kidding is reckoned, and never outside its own range', () => {
    const { book, season } = demo('2026-05-21');
    const outlook = openOutlook(book, openLedger(book, season.asOf));
    const first = Math.min(...season.does.map(({ due }) => due?.from ?? Infinity));
    expect(season.milk).toHaveLength(SEASON_DAYS);
    for (const [index, milk] of season.milk.entries()) {
      const at = season.asOf + index + 1;
      if (!milk) throw new Error(`no milk on ${dateOf(at)}`);
      const [middle, low, high] = milk;
      expect(low).toBeLessThanOrEqual(middle);
      expect(middle).toBeLessThanOrEqual(high);
      if (at >= first) continue;
      const { herd } = outlook.on(at);
      if (!herd.ok) throw new Error('no outlook');
      expect(middle).toBeCloseTo(herd.middle_L, 1);
      expect(low).toBeCloseTo(herd.low_L, 1);
      expect(high).toBeCloseTo(herd.high_L, 1);
    }
  });

  it('is nought in the months of rest, and wider the less is known', () => {
    const winter = demo('2026-12-08').season;
    const at = (date: string) => winter.milk[day(date) - winter.asOf - 1];
    expect(at('2026-12-20')).toEqual([0, 0, 0]);
    const [, low, high] = at('2027-05-27') ?? [0, 0, 0];
    const spring = demo('2026-05-21').season;
    const [, nearLow, nearHigh] = spring.milk[day('2026-05-27') - spring.asOf - 1] ?? [0, 0, 0];
    expect(high / low).toBeGreaterThan(nearHigh / nearLow);
  });

  it('is not told where nobody can say anything of the does in milk', () => {
    const silent = bookOf(['a 2026-03-01', 'b 2026-03-01 dry 2026-04-01'], twice('a', dates('2026-03-05', '2026-03-20'))); // prettier-ignore
    expect(yearOf(silent, '2026-05-01').milk[3]).toBeNull();
    expect(yearOf({ does: [], kiddings: [], rows: [] }, '2026-05-01').milk.every((one) => one === null)).toBe(true); // prettier-ignore
  });

  it('goes into a page as it is: plain JSON, and not long', () => {
    const { season } = demo('2026-12-08');
    const text = JSON.stringify(season);
    expect(JSON.parse(text)).toEqual(season);
    expect(text.length).toBeLessThan(12_000);
  });
});

describe('what is not told twice', () => {
  it('a row ahead goes before what is reckoned', () => {
    const book = bookOf(['a 2025-03-01 dry 2025-11-15', 'a 2026-02-10']);
    const [doe] = yearOf(book, '2025-12-01').does;
    expect(doe?.due).toMatchObject({ day: kidding('a 2026-02-10').day, basis: 'book' });
    expect(stateOn(doe!, day('2026-02-20'))).toEqual({ state: 'twice a day', likely: false });
  });
});
