// A day as entries of a calendar: the visit as a whole, and what each group does when.
import { seedOf } from '../../drawing/wobble.ts';
import { clockText } from '../../lesson/clock.ts';
import { gradeSign } from '../../tasks/grades.ts';
import { say, type Words } from '../../words/words.ts';
import type { DayPlan, Slot, TripWish } from '../types.ts';

/** An entry of a calendar. Times are minutes after midnight on the farm's clock, on the day of the visit. */
export interface CalendarEntry {
  /** Stays the same for the same visit and the same thing, so that a file read again changes what is there. Names nobody. */
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly title: string;
  readonly text: string;
}

/** What the entries say besides numbers. */
export interface EntryWords {
  /** Words under `trip-pack`. */
  readonly words: Words;
  /** Names of stations by id. */
  readonly names: Readonly<Record<string, string>>;
  readonly farm: string;
  /** The address of the trip's page; null where it has none that others can open. */
  readonly page: string | null;
}

// Nobody needs to be told of these: they are what lies between.
const UNTOLD: readonly Slot['kind'][] = ['walk', 'wait'];

/**
 * The visit first, then every slot of every group in order of time. A slot that several groups share stands once and names
 * them all.
 */
export function calendarEntries(wish: TripWish, day: DayPlan, tell: EntryWords): CalendarEntry[] {
  const of = idOf(wish);
  const shared = sharedSlots(day);
  const lines = shared.map((one) => `${clockText(one.slot.from)}-${clockText(one.slot.to)} ${titleOf(one, day, tell)}`); // prettier-ignore
  const visit: CalendarEntry = {
    id: `${of}-visit`,
    from: wish.arrive,
    to: wish.leave,
    title: say(tell.words, 'trip-pack.calendar.visit', {
      farm: tell.farm,
      grade: gradeName(wish, tell.words),
    }),
    text: [
      say(tell.words, 'trip-pack.calendar.people', {
        children: say(tell.words, 'trip-pack.children', { n: wish.children }),
        adults: say(tell.words, 'trip-pack.adults', { n: wish.adults }),
      }),
      ...lines,
      ...closing(tell),
    ].join('\n'),
  };
  return [
    visit,
    ...shared.map((one) => ({
      id: `${of}-${one.key}`,
      from: one.slot.from,
      to: one.slot.to,
      title: titleOf(one, day, tell),
      text: closing(tell).join('\n'),
    })),
  ];
}

/** A visit without a name: of its day, grade, class word, size and arrival. */
function idOf({ date, grade, word, children, arrive }: TripWish): string {
  const text = [date, gradeSign(grade), word, children, arrive].join(' ');
  // Twice, since one hash of 32 bits would meet another's among some ten thousand visits.
  const hash = [text, `${text} again`].map((one) => seedOf(one).toString(36).padStart(7, '0')).join('');
  return `${date.replaceAll('-', '')}-${hash}`;
}

interface SharedSlot {
  readonly key: string;
  readonly slot: Slot;
  readonly parties: readonly number[];
}

/** Slots that are told, those at the same time for the same thing together. */
function sharedSlots({ parties }: DayPlan): SharedSlot[] {
  const found: { key: string; slot: Slot; parties: number[] }[] = [];
  parties.forEach((slots, party) => {
    const count = new Map<string, number>();
    for (const slot of slots.filter(({ kind }) => !UNTOLD.includes(kind))) {
      const what = slot.station ?? slot.kind;
      const nth = (count.get(what) ?? 0) + 1;
      count.set(what, nth);
      const same = found.find((one) => isSame(one.slot, slot));
      if (same) same.parties.push(party);
      else found.push({ key: `${what}-${nth}-${party + 1}`, slot, parties: [party] });
    }
  });
  return found.sort((a, b) => a.slot.from - b.slot.from || (a.parties[0] ?? 0) - (b.parties[0] ?? 0));
}

const isSame = (a: Slot, b: Slot): boolean =>
  a.kind === b.kind && a.station === b.station && a.from === b.from && a.to === b.to;

function titleOf({ slot, parties }: SharedSlot, day: DayPlan, { words, names }: EntryWords): string {
  const groups = day.groups.filter(({ party }) => parties.includes(party)).map(({ id }) => id);
  const who =
    groups.length === day.groups.length
      ? say(words, 'trip-pack.calendar.all')
      : say(words, 'trip-pack.calendar.groups', { n: groups.length, groups: groups.join(', ') });
  const what =
    slot.station === null ? say(words, `trip-pack.slot.${slot.kind}`) : (names[slot.station] ?? slot.station);
  return say(words, 'trip-pack.calendar.entry', { who, what });
}

function closing({ words, page }: EntryWords): string[] {
  const rules = say(words, 'trip-pack.calendar.rules');
  return page === null ? [rules] : [rules, say(words, 'trip-pack.calendar.page', { page })];
}

const gradeName = ({ grade }: TripWish, words: Words): string =>
  say(words, grade === 0 ? 'trip-pack.grade.K' : 'trip-pack.grade.other', { grade: gradeSign(grade) });
