// A trip's wish as the query of an address, so that a link shares it; and such a query read back.
import { dayNumber } from '../calendar/day.ts';
import { clockText, readClock } from '../lesson/clock.ts';
import { isClassWord } from '../pack/classWord.ts';
import { gradeOf, gradeSign } from '../tasks/grades.ts';
import { NEEDS, type TripFarm, type TripWish } from './types.ts';

/** The most that can be wished for, more than one farm visit could carry; `minute` is the last one of a day that a clock shows. */
export const MOST = Object.freeze({ children: 400, adults: 100, buses: 12, minute: 24 * 60 - 1 });

/** A part of an address that could not be used. */
export interface Aside {
  /**
   * `unknown`: the query has a name that is none of ours. `twice`: a name stands more than once, and the first
   * holds. `value`: a value that cannot be. `station`: a station that the farm does not have. `need`: a need that
   * the plan does not know.
   */
  readonly what: 'unknown' | 'twice' | 'value' | 'station' | 'need';
  /** What was found. */
  readonly found: string;
}

const NAMES = [
  'date', 'grade', 'children', 'adults', 'arrive', 'leave', 'buses', 'lunch', 'stations', 'needs', 'rain', 'word',
]; // prettier-ignore

/**
 * The query of a wish, with its question mark. What is usual is left out, but never the date, since the usual date
 * moves on with the farm's day.
 */
export function writeTrip(wish: TripWish, usual: TripWish): string {
  const parts = [`date=${wish.date}`];
  const put = (name: keyof TripWish, text: string) => {
    if (JSON.stringify(wish[name]) !== JSON.stringify(usual[name])) parts.push(`${name}=${text}`);
  };
  put('grade', gradeSign(wish.grade));
  put('children', String(wish.children));
  put('adults', String(wish.adults));
  put('arrive', clockText(wish.arrive));
  put('leave', clockText(wish.leave));
  put('buses', String(wish.buses));
  put('lunch', wish.lunch === null ? 'no' : clockText(wish.lunch));
  put('stations', wish.stations.join('.'));
  put('needs', wish.needs.join('.'));
  put('rain', wish.rain ? 'yes' : 'no');
  put('word', encodeURIComponent(wish.word));
  return `?${parts.join('&')}`;
}

/**
 * Reads a query against the farm's stations. What cannot be used is left aside and named, and the usual stands in
 * its place; the rest holds. Stations come in the order of the farm's loop, none twice.
 */
export function readTrip(
  query: string,
  farm: Pick<TripFarm, 'stations'>,
  usual: TripWish,
): { wish: TripWish; aside: readonly Aside[] } {
  const asked = new URLSearchParams(query);
  const aside: Aside[] = oddNames(asked);
  const read = <T>(name: keyof TripWish, reading: (text: string) => T | null): T | null => {
    const text = asked.get(name);
    if (text === null || text === '') return null;
    const value = reading(text);
    if (value === null) aside.push({ what: 'value', found: `${name}=${text}` });
    return value;
  };
  const number = (least: number, most: number) => (text: string) => {
    const value = /^\d{1,4}$/.test(text) ? Number(text) : -1;
    return value >= least && value <= most ? value : null;
  };
  const list = (name: 'stations' | 'needs', known: readonly string[]): string[] => {
    const named = (asked.get(name) ?? '').split('.').filter((one) => one !== '');
    const what = name === 'stations' ? 'station' : 'need';
    for (const one of named) if (!known.includes(one)) aside.push({ what, found: one });
    return known.filter((one) => named.includes(one));
  };
  const lunch = read('lunch', (text) => (text === 'no' ? text : readClock(text)));
  const needs = list('needs', NEEDS);
  const wish: TripWish = {
    date: read('date', (text) => (dayNumber(text) === null ? null : text)) ?? usual.date,
    grade: read('grade', gradeOf) ?? usual.grade,
    children: read('children', number(1, MOST.children)) ?? usual.children,
    adults: read('adults', number(0, MOST.adults)) ?? usual.adults,
    arrive: read('arrive', readClock) ?? usual.arrive,
    leave: read('leave', readClock) ?? usual.leave,
    buses: read('buses', number(0, MOST.buses)) ?? usual.buses,
    lunch: lunch === 'no' ? null : (lunch ?? usual.lunch),
    stations: list(
      'stations',
      farm.stations.map(({ id }) => id),
    ),
    needs: NEEDS.filter((need) => needs.includes(need)),
    rain: read('rain', (text) => (text === 'yes' ? true : text === 'no' ? false : null)) ?? usual.rain,
    word: read('word', (text) => (isClassWord(text) ? text : null)) ?? usual.word,
  };
  return { wish, aside };
}

/** Names that are none of ours, or stand twice. */
function oddNames(asked: URLSearchParams): Aside[] {
  const names = [...asked.keys()];
  return [...new Set(names)].flatMap((name): Aside[] => {
    if (!NAMES.includes(name)) return [{ what: 'unknown', found: name }];
    return names.indexOf(name) === names.lastIndexOf(name) ? [] : [{ what: 'twice', found: name }];
  });
}
