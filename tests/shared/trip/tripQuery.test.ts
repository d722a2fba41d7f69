// A trip as an address: what is written is read back whole, what is usual is left out, what cannot be is named.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import { MOST, readTrip, writeTrip } from '../../../shared/trip/tripQuery.ts';
import { NEEDS, type Station, type TripWish } from '../../../shared/trip/types.ts';
import { usualWish } from '../../../shared/trip/usualWish.ts';

const station = (id: string): Station => ({
  id,
  minutes: { 'k-2': 12, '3-5': 18, '6-8': 25, '9-12': 30 },
  capacity: 12,
  zone: 'animal',
  roofed: true,
  wheelchair: true,
  touch: false,
  milking: false,
  kidding: false,
  standIn: null,
  walk_min: 2,
});
const IDS = ['milking-stand', 'goat-barn', 'kid-pen', 'pasture-rail', 'hay-loft'];
const farm = { stations: IDS.map(station) };
const day = (iso: string) => dayNumber(iso) as number;
const usual = usualWish(day('2026-05-21'));
const read = (query: string) => readTrip(query, farm, usual);

const minute = fc.integer({ min: 0, max: 24 * 60 - 1 });
const wishes: fc.Arbitrary<TripWish> = fc.record({
  date: fc.integer({ min: day('2000-01-01'), max: day('2099-12-31') }).map(isoDate),
  grade: fc.constantFrom(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12),
  children: fc.integer({ min: 1, max: MOST.children }),
  adults: fc.integer({ min: 0, max: MOST.adults }),
  arrive: minute,
  leave: minute,
  buses: fc.integer({ min: 0, max: MOST.buses }),
  lunch: fc.option(minute),
  stations: fc.subarray(IDS),
  needs: fc.subarray([...NEEDS]),
  rain: fc.boolean(),
  word: fc.constantFrom('', 'fern', 'fern-3', 'nuez_2', 'ñandú', 'مرج'),
});

describe('usualWish', () => {
  it('is a week after the farm’s day, or the Monday after a weekend', () => {
    // 2026-05-21 is a Thursday: ISO 8601 week date 2026-W21-4 (from memory; checked with cal).
    expect(usualWish(day('2026-05-21')).date).toBe('2026-05-28');
    expect(usualWish(day('2026-05-23')).date).toBe('2026-06-01');
    expect(usualWish(day('2026-05-24')).date).toBe('2026-06-01');
    expect(usualWish(day('2026-05-25')).date).toBe('2026-06-01');
  });
});

describe('writeTrip', () => {
  it('leaves out what is usual, but never the date', () => {
    expect(writeTrip(usual, usual)).toBe('?date=2026-05-28');
  });

  it('writes a whole wish in plain words', () => {
    const wish: TripWish = {
      ...usual,
      date: '2026-05-27',
      grade: 0,
      children: 54,
      adults: 7,
      buses: 2,
      lunch: null,
      arrive: 9 * 60,
      stations: ['goat-barn', 'kid-pen'],
      needs: ['wheelchair', 'milk-allergy'],
      rain: true,
      word: 'fern',
    };
    expect(writeTrip(wish, usual)).toBe(
      '?date=2026-05-27&grade=K&children=54&adults=7&arrive=9:00&buses=2&lunch=no' +
        '&stations=goat-barn.kid-pen&needs=wheelchair.milk-allergy&rain=yes&word=fern',
    );
  });

  it('is read back whole, for any wish', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const query = writeTrip(wish, usual);
        expect(query).toMatch(/^\?[\w=&:.%-]+$/);
        expect(read(query)).toEqual({ wish, aside: [] });
      }),
      { numRuns: 2000, seed: 7 },
    );
  });

  it('means the same on a later day of the farm', () => {
    const later = usualWish(day('2026-11-02'));
    fc.assert(
      fc.property(wishes, (wish) => {
        expect(readTrip(writeTrip(wish, usual), farm, later).wish).toEqual(wish);
      }),
      { numRuns: 500, seed: 8 },
    );
  });
});

describe('readTrip', () => {
  it('takes the usual where nothing is said', () => {
    expect(read('')).toEqual({ wish: usual, aside: [] });
    expect(read('?grade=&lunch=')).toEqual({ wish: usual, aside: [] });
  });

  it('puts stations and needs in their own order, none twice', () => {
    const { wish } = read('?stations=kid-pen.goat-barn.kid-pen&needs=quiet.wheelchair.quiet');
    expect(wish.stations).toEqual(['goat-barn', 'kid-pen']);
    expect(wish.needs).toEqual(['wheelchair', 'quiet']);
  });

  it('names everything that it cannot use, and keeps the rest', () => {
    const query =
      '?date=2026-02-30&grade=14&children=0&adults=-1&arrive=25:00&leave=1300&buses=two&lunch=late&stations=moon.goat-barn' +
      '&needs=wings&rain=maybe&word=two%20words&pupil=Ann&children=7';
    const { wish, aside } = read(query);
    expect(wish).toEqual({ ...usual, stations: ['goat-barn'] });
    expect(aside.map(({ what, found }) => `${what}: ${found}`)).toMatchInlineSnapshot(`
      [
        "twice: children",
        "unknown: pupil",
        "value: lunch=late",
        "need: wings",
        "value: date=2026-02-30",
        "value: grade=14",
        "value: children=0",
        "value: adults=-1",
        "value: arrive=25:00",
        "value: leave=1300",
        "value: buses=two",
        "station: moon",
        "value: rain=maybe",
        "value: word=two words",
      ]
    `);
  });

  it('takes no name that every object has for an answer', () => {
    for (const text of ['constructor', '__proto__', 'toString'])
      expect(read(`?rain=${text}`)).toEqual({
        wish: usual,
        aside: [{ what: 'value', found: `rain=${text}` }],
      });
  });

  it('never throws, whatever stands in the address', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('', 'date=', 'stations=', 'word=', 'lunch='), (text, name) => {
        const { wish } = read(`?${name}${text}`);
        expect(read(writeTrip(wish, usual)).wish).toEqual(wish);
      }),
      { numRuns: 2000, seed: 9 },
    );
  });
});
