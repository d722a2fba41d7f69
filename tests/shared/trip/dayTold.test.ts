// What to expect on a day, and the farm's other day where no doe is milked: for the demo farm through its whole year.
import { describe, expect, it } from 'vitest';
import { openLedger } from '../../../shared/herd/ledger.ts';
import { BANDS } from '../../../shared/quantity/grade.ts';
import { dayTold } from '../../../shared/trip/dayTold.ts';
import { expectLines, milkLines, sightText } from '../../../shared/trip/expectText.ts';
import { instead } from '../../../shared/trip/programme.ts';
import { SEASON_DAYS } from '../../../shared/trip/season.ts';
import { planTrip } from '../../../shared/trip/planTrip.ts';
import { USUAL_FARM } from '../../../shared/trip/usualRules.ts';
import { usualWish } from '../../../shared/trip/usualWish.ts';
import { tripSeason } from '../../../shared/trip/yearAhead.ts';
import { wordsOf } from '../../../src/site/words.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { day } from '../../support/bookOf.ts';
import { dateOf } from '../../support/plainHerd.ts';

function demo(asOf: string) {
  const read = readFarm('content/farm', { asOf, now_ms: 0 });
  if (!read.ok || !read.farm.trip) throw new Error('the demo farm has faults');
  const season = tripSeason(read.book, openLedger(read.book, read.asOf), read.farm);
  return { season, farm: read.farm.trip.farm };
}
const may = demo('2026-05-21');
const december = demo('2026-12-08');
const told = ({ season, farm }: typeof may, date: string) => dayTold(farm, season, day(date));
const LANGUAGES = ['en', 'es'].map(wordsOf);

describe('a day in May', () => {
  const one = told(may, '2026-05-27');
  it('has milk, does by name, kids at foot, and a milking to watch', () => {
    expect(one).toMatchObject({ when: 'ahead', kind: 'milk', likely: false, without: [] });
    expect(one.does.find(({ doe }) => doe.id === 'wren')?.state).toBe('nights apart');
    expect(one.sights.slice(0, 2)).toEqual(['milking', 'kids at foot']);
    expect(one.topics[0]).toBe('milk of the week');
  });
  it('is told in whole sentences of both languages', () => {
    const [en = [], es = []] = LANGUAGES.map((words) => expectLines(one, may.season, words));
    expect(en).toEqual([
      'The does give milk.',
      'The herd should give about 74 cups of milk that day.',
      'That fits into 10 jars of ours.',
      'Eight of ten such days should lie between 70 and 79 cups.',
      'Juniper, Hester, Tansy, Maribel, and Pepita are milked twice a day.',
      'Wren is milked in the morning and has kids at foot by day.',
      'The sheets of the day are about the milk of the week before your visit, kids and mothers, what a goat needs, and measuring.',
    ]);
    expect(es).toHaveLength(en.length);
    expect(es[4]).toBe('Juniper, Hester, Tansy, Maribel y Pepita se ordeñan dos veces al día.');
    expect(sightText('milking', one, LANGUAGES[0]!)).toMatch(
      /^From 9:45 AM to 12:00 PM, a doe being milked\.$/,
    );
  });
});

describe('a day in December', () => {
  const one = told(december, '2026-12-15');
  it('has no milk, and another day’s programme as full as the usual one', () => {
    expect(one).toMatchObject({ kind: 'rest', milk: [0, 0, 0] });
    expect(one.sights).toContain('practice');
    for (const band of BANDS) {
      expect(one.programme[band]).toHaveLength(december.farm.usual[band].length);
      for (const id of one.programme[band])
        expect(december.farm.stations.find((station) => station.id === id)?.milking).toBe(false);
      expect(one.programme[band]).not.toContain('kid-pen');
      expect(one.programme[band]).not.toContain('kitchen-window');
    }
    expect(one.programme['k-2']).toEqual(['goat-barn', 'measuring-table', 'practice-stand', 'kid-table']);
  });
  it('is planned with that programme, and the plan says what it changed', () => {
    const wish = { ...usualWish(december.season.asOf), date: '2026-12-15' };
    const plan = planTrip(wish, december.farm, one.ground);
    expect(plan.ok && plan.day.stations).toEqual(one.programme['k-2']);
    expect(plan.notes).toContainEqual({ kind: 'stand-in', station: 'milking-stand', by: 'practice-stand', why: 'no milking' });
  }); // prettier-ignore
  it('says so', () => {
    expect(milkLines(one, december.season, LANGUAGES[0]!)).toEqual(['No milk is expected that day.']);
    expect(milkLines(one, december.season, LANGUAGES[1]!)).toEqual(['Ese día no se espera leche.']);
  });
});

describe('days that cannot be told', () => {
  it('are said to be past, or too far ahead, without milk', () => {
    expect(told(may, '2026-05-20')).toMatchObject({ when: 'past', milk: null });
    expect(told(may, '2026-05-21')).toMatchObject({ when: 'today', milk: null });
    const beyond = told(may, dateOf(may.season.asOf + SEASON_DAYS + 1));
    expect(beyond).toMatchObject({ when: 'beyond', kind: 'unknown', milk: null });
    expect(beyond.does.every(({ state }) => state === 'unknown')).toBe(true);
    expect(expectLines(beyond, may.season, LANGUAGES[0]!)[0]).toMatch(/further ahead than the farm's book/);
  });
  it('of a herd whose kiddings are reckoned say so, and send to the farm', () => {
    const spring = told(december, '2027-05-27');
    expect(spring).toMatchObject({ kind: 'milk', likely: true });
    expect(expectLines(spring, december.season, LANGUAGES[0]!).join(' ')).toMatch(/^(?=.*Most likely: [^.]* milked twice a day\.).*does not say yet.*Ask the farm again/); // prettier-ignore
  });
  it('of a farm without a doe are still a day with stations', () => {
    const empty = { does: [], kiddings: [], rows: [] };
    const settings = { milkings: { am: '06:30', pm: '17:30' }, units: 'metric', jar: { size: 1, unit: 'L' } } as const;
    const season = tripSeason(empty, openLedger(empty, day('2026-05-21')), settings);
    const one = dayTold(USUAL_FARM, season, day('2026-05-27'));
    expect(one).toMatchObject({ kind: 'empty', milk: null, does: [], sights: ['practice', 'measuring'] });
    expect(one.programme['k-2']).toContain('practice-stand');
    // Nothing is promised that the farm has no station for.
    const barn = { ...USUAL_FARM, stations: USUAL_FARM.stations.filter(({ id }) => id === 'goat-barn') };
    expect(dayTold(barn, season, day('2026-05-27')).sights).toEqual([]);
    expect(dayTold({ ...may.farm, stations: barn.stations }, may.season, day('2026-05-27')).sights).not.toContain('milking');
    expect(expectLines(one, season, LANGUAGES[1]!)).toEqual(['En el libro de la granja todavía no hay ninguna cabra.']);
  }); // prettier-ignore
});

describe('through a whole year', () => {
  it('every day is told in both languages, with stations that are the farm’s, open, and none twice', () => {
    const kinds = new Set<string>();
    for (const of of [may, december])
      for (let at = of.season.asOf - 3; at <= of.season.asOf + SEASON_DAYS + 3; at += 1) {
        const one = dayTold(of.farm, of.season, at);
        kinds.add(one.kind);
        for (const words of LANGUAGES) {
          const lines = expectLines(one, of.season, words);
          expect(lines.length).toBeGreaterThan(0);
          for (const line of lines) expect(line, dateOf(at)).toMatch(/^[\p{Lu}¿][^{}]*\.$/u);
        }
        for (const band of BANDS) {
          const ids = one.programme[band];
          expect(new Set(ids).size).toBe(ids.length);
          expect(ids.length, dateOf(at)).toBe(of.farm.usual[band].length);
          const stations = ids.map((id) => of.farm.stations.findIndex((station) => station.id === id));
          expect(stations).toEqual([...stations].sort((a, b) => a - b));
          expect(stations[0]).toBeGreaterThanOrEqual(0);
          if (one.ground.kiddingNear) expect(ids).not.toContain('kid-pen');
          if (one.ground.milkings.length === 0) expect(ids).not.toContain('milking-stand');
        }
      }
    expect([...kinds].sort()).toEqual(['births', 'milk', 'rest', 'unknown']);
  });
});

describe('instead', () => {
  it('takes the stand-in, then its stand-in, then what is there in every season; never one twice', () => {
    const empty = (...ids: string[]) => (id: string) => ids.includes(id);
    expect(instead(USUAL_FARM, ['milking-stand', 'goat-barn'], empty('milking-stand'))).toEqual(['goat-barn', 'practice-stand']);
    expect(instead(USUAL_FARM, ['milking-stand', 'practice-stand'], empty('milking-stand'))).toEqual(['hay-loft', 'practice-stand']);
    expect(instead(USUAL_FARM, ['kitchen-window'], empty('kitchen-window', 'hay-loft'))).toEqual(['hoof-and-coat']);
    expect(instead({ stations: [] }, ['kid-pen'], empty('kid-pen'))).toEqual([]);
  }); // prettier-ignore
});
