// The shape of `taps`, `visits` and `contact` in farm.yaml: thresholds of a visit day, and whom a teacher writes to.
import * as z from 'zod';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { readClock } from '../../shared/lesson/clock.ts';
import type { FieldWords } from './settingsRule.ts';

/** The least and the most of a number, and how it is counted. */
interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly of: string;
  readonly todo: string;
  /** Whole where it is not said. */
  readonly decimals?: true;
}

const minutes = (least: number, most: number, of: string): Bounds => ({
  least,
  most,
  of: `minutes ${of}`,
  todo: 'write the minutes alone, or take the line out: the pages then take the usual',
});
const heads = (least: number, most: number, of: string, todo: string): Bounds => ({ least, most, of, todo });

// What a band may have of its own.
const OF_BAND = {
  aim: heads(1, 60, 'children for one adult, as is aimed at', 'write how many'),
  most: heads(1, 60, 'children for one adult at most', 'write how many'),
  group: heads(1, 60, 'children in a group at most', 'write how many one leader card is for'),
  wash: heads(10, 600, 'seconds of one person at a tap, drying included', 'time a few children with a watch'),
  toilet: heads(10, 600, 'seconds of one child at a toilet', 'time a few children with a watch'),
  toiletWithin: minutes(15, 300, 'between two chances to go to the toilet'),
  bus: minutes(1, 60, 'to unload or load one bus'),
  headCount: minutes(0, 30, 'of head count at each change, without the walk'),
  lunch: minutes(5, 120, 'of lunch'),
  welcome: minutes(0, 60, 'of welcome and rules'),
} as const satisfies Record<string, Bounds>;

const OF_VISITS = {
  toilets: heads(1, 200, 'toilets for visitors', 'count them'),
  seats: heads(1, 2000, 'places to sit and eat', 'count them, adults’ places too'),
  buses: heads(1, 20, 'buses that unload side by side', 'count the places at the gate'),
  lunchSlack: minutes(0, 180, 'that food may begin later than wished'),
  busSpare: minutes(0, 60, 'left before the buses go'),
} as const satisfies Record<string, Bounds>;

const PARTS = {
  walks: {
    gate: minutes(0, 60, 'to walk from the buses to the first place'),
    taps: minutes(0, 30, 'to walk from any station to the taps'),
  },
  kiddingPen: {
    before: heads(0, 120, 'days before a kidding on which its pen is closed', 'ask your veterinarian'),
    after: heads(0, 120, 'days after a kidding on which its pen is closed', 'ask your veterinarian'),
  },
  adults: {
    least: heads(1, 50, 'adults of a visit at least', 'write how many'),
    childrenPerSpare: heads(1, 500, 'children for each adult who is kept free', 'write how many'),
  },
  washing: {
    spare: { least: 0, most: 2, of: 'added for queues: 0.2 is a fifth', todo: 'write a number, with a point for decimals', decimals: true },
    together: minutes(1, 120, 'of washing after which groups wash one after the other'),
  },
} as const satisfies Record<string, Record<string, Bounds>>; // prettier-ignore

function numberIn({ least, most, decimals }: Bounds) {
  const number = z.number().min(least).max(most);
  return (decimals ? number : number.int()).optional();
}
type Numbers<T> = { [Name in keyof T]: ReturnType<typeof numberIn> };
const numbers = <T extends Record<string, Bounds>>(all: T): Numbers<T> =>
  Object.fromEntries(Object.entries(all).map(([name, bounds]) => [name, numberIn(bounds)])) as Numbers<T>;

const clock = z.string().transform((text, context) => {
  const read = readClock(text);
  if (read !== null) return read;
  context.issues.push({ code: 'custom', input: text, message: 'no time' });
  return z.NEVER;
});
const ofBand = z
  .strictObject(numbers(OF_BAND))
  .refine(({ aim, most }) => aim === undefined || most === undefined || aim <= most)
  .optional();
const ofPart = <T extends Record<string, Bounds>>(part: T) => z.strictObject(numbers(part)).optional();

/** What farm.yaml may say about visits; all of it may be left out. */
export const visitsRule = z.strictObject({
  ...numbers(OF_VISITS),
  walks: ofPart(PARTS.walks),
  kiddingPen: ofPart(PARTS.kiddingPen),
  adults: ofPart(PARTS.adults),
  washing: ofPart(PARTS.washing),
  shownMilking: z
    .strictObject({ from: clock, to: clock })
    .refine(({ from, to }) => from < to)
    .optional(),
  'k-2': ofBand,
  '3-5': ofBand,
  '6-8': ofBand,
  '9-12': ofBand,
} satisfies Record<Band, unknown> & Record<string, unknown>);

const TAPS = heads(1, 200, 'taps that visitors wash their hands at', 'count them');
/** How many taps there are. */
export const tapsRule = numberIn(TAPS).unwrap();

const line = z
  .union([z.string(), z.number(), z.null()])
  .transform((text) => (text === null ? '' : String(text).trim()))
  .optional();
const CONTACT = {
  name: ['the name of the person who answers teachers', 'Your name'],
  place: ['the town and state', 'Your town'],
  email: ['an address for mail, for instance visits@your-farm.example', 'visits@your-farm.example'],
  phone: ['a telephone number, in quotes', "'555-0100'"],
  address: ['the address that an ambulance is told', '100 Example Road, Your town'],
  gate: ['how to find the gate', 'second gate past the creek'],
  hospital: ['the nearest hospital with an emergency room', 'its name, town and telephone'],
  emergency: ["the emergency number of your country, in quotes, for instance '911'", "'911'"],
  veterinarian: ["the veterinarian's name and telephone", 'name and telephone'],
  site: [
    'the address at which others open these pages, with https:// before it',
    'https://your-farm.example/',
  ],
} as const;

/** Whom a teacher writes to, and what an emergency sheet needs; all of it may be left out. */
export const contactRule = z.strictObject({
  name: line,
  place: line,
  email: line,
  phone: line,
  address: line,
  gate: line,
  hospital: line,
  emergency: line,
  veterinarian: line,
  // It is printed as a link and a code, so it must be an address and nothing more.
  site: line.refine((text) => !text || /^https?:\/\/[^\s?#"<>]+$/.test(text)),
} satisfies Record<keyof typeof CONTACT, unknown>);

const numberWords = ({ least, most, of, todo, decimals }: Bounds): FieldWords => ({
  expected: `${decimals ? 'a number' : 'a whole number'} from ${least} to ${most}: ${of}`,
  todo,
});
const wordsUnder = (prefix: string, all: Record<string, Bounds>) =>
  Object.fromEntries(Object.entries(all).map(([name, bounds]) => [`${prefix}.${name}`, numberWords(bounds)]));
const clockWords: FieldWords = {
  expected: "a clock time from '00:00' to '23:59'",
  todo: "write hours and minutes, for instance '09:45'",
};

/** The words for each of their fields. */
export const TRIP_WORDS: Readonly<Record<string, FieldWords>> = {
  taps: numberWords(TAPS),
  visits: {
    expected: 'what visits need, one line each, for instance "toilets: 4"',
    todo: 'write it so, or take the word out: the pages then take the usual',
  },
  ...wordsUnder('visits', OF_VISITS),
  ...Object.fromEntries(
    Object.entries(PARTS).flatMap(([part, all]) => [
      [`visits.${part}`, { expected: `${Object.keys(all).join(' and ')}, for instance { ${Object.keys(all).map((name) => `${name}: 2`).join(', ')} }`, todo: 'write one or both' }],
      ...Object.entries(wordsUnder(`visits.${part}`, all)),
    ]),
  ), // prettier-ignore
  'visits.shownMilking': {
    expected: "two clock times, the first before the second, for instance { from: '09:45', to: '11:30' }",
    todo: 'write both, or take the line out: visitors then see a milking at its hour alone',
  },
  'visits.shownMilking.from': clockWords,
  'visits.shownMilking.to': clockWords,
  ...Object.fromEntries(
    BANDS.flatMap((band) => [
      [`visits.${band}`, { expected: 'numbers for these grades, for instance { aim: 6, most: 8, wash: 75 }; aim is no more than most', todo: 'write those that differ from the usual' }],
      ...Object.entries(wordsUnder(`visits.${band}`, OF_BAND)),
    ]),
  ), // prettier-ignore
  contact: {
    expected: 'name, place, email and so on, one line each',
    todo: 'write only what everybody may read',
  },
  ...Object.fromEntries(
    Object.entries(CONTACT).map(([name, [expected, example]]) => [
      `contact.${name}`,
      { expected, todo: `write it after the colon: ${example}` },
    ]),
  ),
};
