// What the Trip plan says: slots, groups, why a day cannot be, what would mend it, what the plan changed.
import { clockText, dateText } from '../quantity/show.ts';
import { gradeSign, type Grade } from '../tasks/grades.ts';
import { say, type Slots, type Words } from '../words/words.ts';
import { isAboard } from './dayTotals.ts';
import type { StationSign } from './tripProps.ts';
import type { DayPlan, Group, Slot, TripChange, TripNote, TripWay, TripWhy, TripWish } from './types.ts';

/** A language, and the stations' names in it. */
export interface TripTongue {
  readonly words: Words;
  readonly stations: readonly StationSign[];
}

/** A message as a sentence: an hour that ends in a point ("6:20 p.m.") takes no second one. */
function sentence(words: Words, key: string, slots: Slots = {}): string {
  return say(words, key, slots).replace('.m..', '.m.');
}

/** The name of a station; its id where the farm has written none. */
export function stationName({ stations }: TripTongue, id: string): string {
  return stations.find((one) => one.id === id)?.name ?? id;
}

/** A grade in words. */
export function tripGradeText(words: Words, grade: Grade): string {
  return grade === 0
    ? say(words, 'trip.grade.K')
    : say(words, 'trip.grade.other', { grade: gradeSign(grade) });
}

// Making a formatter takes longer than all else that is said of a day.
const listFormats = new Map<string, Intl.ListFormat>();
const weekdays = new Map<string, Intl.DateTimeFormat>();

function kept<T>(formats: Map<string, T>, lang: string, make: () => T): T {
  const known = formats.get(lang) ?? make();
  formats.set(lang, known);
  return known;
}

/** A date with its weekday: `Thursday, May 28, 2026`. */
export function weekdayText(date: string, lang: string, style: 'weekday' | 'whole' = 'whole'): string {
  const day = kept(weekdays, lang, () => new Intl.DateTimeFormat(lang, { weekday: 'long', timeZone: 'UTC' }));
  const name = day.format(new Date(`${date}T12:00:00Z`));
  return style === 'weekday' ? name : `${name}, ${dateText(date, lang)}`;
}

/** The wish in a sentence or two. */
export function wishText(words: Words, wish: TripWish): string {
  const date = weekdayText(wish.date, words.lang);
  const told = say(words, 'trip.verdict.plan', {
    date: date.charAt(0).toLocaleUpperCase(words.lang) + date.slice(1),
    grade: tripGradeText(words, wish.grade),
    children: say(words, 'trip.verdict.children', { n: wish.children }),
    adults: say(words, 'trip.verdict.adults', { n: wish.adults }),
    arrive: clockText(wish.arrive, words.lang),
    leave: clockText(wish.leave, words.lang),
  });
  return wish.rain ? `${told} · ${say(words, 'trip.verdict.rain')}` : told;
}

/** What a party does in a slot of a day. */
export function slotText(tongue: TripTongue, slot: Slot, day: Pick<DayPlan, 'parties'>): string {
  const { kind, station, for: place } = slot;
  if (isAboard(slot, day)) return say(tongue.words, 'trip.slot.aboard');
  if (kind === 'walk' && station !== null)
    return say(tongue.words, 'trip.slot.walk-to', { station: stationName(tongue, station) });
  if (kind !== 'station' || station === null) return say(tongue.words, `trip.slot.${kind}`);
  const name = stationName(tongue, station);
  if (place === null) return name;
  return say(tongue.words, 'trip.slot.in-place', { station: name, for: stationName(tongue, place) });
}

/** The groups of a party by their numbers: `Groups 1 and 2`. */
export function groupsText(words: Words, groups: readonly Pick<Group, 'id'>[]): string {
  const ids = listText(words, groups.map(({ id }) => String(id))); // prettier-ignore
  return say(words, groups.length === 1 ? 'trip.chart.group' : 'trip.chart.groups', groups.length === 1 ? { id: ids } : { ids }); // prettier-ignore
}

/** Children and adults of a group. */
export function groupPeople(words: Words, { children, adults }: Pick<Group, 'children' | 'adults'>): string {
  const parts = [
    say(words, 'trip.verdict.children', { n: children }),
    say(words, 'trip.verdict.adults', { n: adults }),
  ];
  return parts.join(', ');
}

/** A list as the language joins it. */
export function listText(words: Words, parts: readonly string[]): string {
  const list = kept(listFormats, words.lang, () => new Intl.ListFormat(words.lang, { type: 'conjunction' }));
  return list.format(parts);
}

/** A length of time in words. */
export function lengthText(words: Words, minutes: number): string {
  const hours = Math.floor(minutes / 60);
  if (hours === 0) return say(words, 'trip.why.short', { n: minutes });
  return say(words, 'trip.why.hours', { hours, n: minutes - hours * 60 });
}

/** Why a day cannot be, in a sentence. */
export function whyText(tongue: TripTongue, why: TripWhy, wish: TripWish): string {
  const { words } = tongue;
  const clock = (minutes: number) => clockText(minutes, words.lang);
  const told = (key: string, slots: Slots = {}) => sentence(words, `trip.why.${key}`, slots);
  switch (why.kind) {
    case 'wish':
      if (why.field === 'leave' || why.field === 'arrive') return told('leave');
      if (why.field === 'lunch' && wish.lunch !== null) return told('lunch-field', { at: clock(wish.lunch) });
      return told('field', { field: fieldName(words, why.field) });
    case 'no station':
      return told('no-station');
    case 'adults':
      return told(adultsKey(why, wish), { n: why.needs, is: why.is, most: why.most });
    case 'capacity': {
      const full = told('capacity', {
        station: stationName(tongue, why.station),
        is: why.is,
        needs: why.needs,
      });
      // There are no more parties than stations, and those that are chosen were too few.
      const chosen = wish.stations.length;
      const fewest = Math.max(chosen + 1, Math.ceil(wish.children / why.is));
      const isShort = chosen > 0 && fewest <= tongue.stations.length;
      return isShort ? `${full} ${told('capacity-more', { n: fewest })}` : full;
    }
    case 'time':
      return told('time', { is: lengthText(words, why.is_min), needs: lengthText(words, why.needs_min) });
    case 'lunch':
      if (why.earliest === null) return told('lunch-never', { at: clock(why.at) });
      return told('lunch', { at: clock(why.at), earliest: clock(why.earliest) });
    case 'seats':
      return told('seats', { is: why.is, needs: why.needs });
    case 'toilets':
      return told('toilets', { within: why.within_min, longest: why.longest_min });
  }
}

/** Why so many adults: few children ask for the fewest of any visit, many for some who lead no group. */
function adultsKey({ needs, most }: Extract<TripWhy, { kind: 'adults' }>, { children }: TripWish): string {
  if (needs <= Math.ceil(children / most)) return 'adults';
  return children <= most ? 'adults-least' : 'adults-free';
}

function fieldName(words: Words, field: keyof TripWish): string {
  if (field === 'rain') return say(words, 'trip.form.weather');
  return say(words, field === 'word' ? 'trip.take.word' : `trip.form.${field}`);
}

/** A change as a button says it. */
export function changeText(tongue: TripTongue, change: TripChange, wish: TripWish): string {
  const { words } = tongue;
  const told = (key: string, slots: Slots = {}) => say(words, `trip.way.${key}`, slots);
  switch (change.kind) {
    case 'adults':
      return told('adults', { n: change.more });
    case 'longer': {
      const minutes = lengthText(words, change.minutes);
      const at = change.end === 'leave' ? wish.leave + change.minutes : wish.arrive - change.minutes;
      return told(change.end, { minutes, at: clockText(at, words.lang) });
    }
    case 'lunch':
      return change.at === null ? told('no-lunch') : told('lunch', { at: clockText(change.at, words.lang) });
    case 'without':
      return told('without', { station: stationName(tongue, change.station) });
    case 'fewer children':
      return told('fewer-children', { n: change.children });
    case 'taps':
    case 'toilets':
      return told(change.kind, { n: change.more });
  }
}

/** A way as a button says it: its changes one after the other. */
export function wayText(tongue: TripTongue, way: TripWay, wish: TripWish): string {
  const parts = way.changes.map((change) => changeText(tongue, change, wish));
  return parts.slice(1).reduce((first, part) => {
    const second = part.charAt(0).toLocaleLowerCase(tongue.words.lang) + part.slice(1);
    return say(tongue.words, 'trip.way.and', { first, second });
  }, parts[0] ?? '');
}

/** What the plan changed by itself, in a sentence. */
export function tripNoteText(tongue: TripTongue, note: TripNote): string {
  const { words } = tongue;
  const told = (key: string, slots: Slots = {}) => sentence(words, `trip.note.${key}`, slots);
  const name = (id: string) => stationName(tongue, id);
  switch (note.kind) {
    case 'stand-in':
      return told(`stand-in.${note.why.replace(' ', '-')}`, {
        station: name(note.station),
        by: name(note.by),
      });
    case 'left out':
      return told(`left-out.${note.why.replace(' ', '-')}`, { station: name(note.station) });
    case 'milking at another time': {
      const spans = note.milkings.map(({ from, to }) =>
        told('span', { from: clockText(from, words.lang), to: clockText(to, words.lang) }),
      );
      return told('other-time', { spans: listText(words, spans) });
    }
    case 'few adults':
      return told('few-adults', { n: Math.ceil(note.perAdult), aim: note.aim });
    case 'wash by party':
      return told('wash-by-party', { n: Math.ceil(note.minutes) });
    case 'farm chose':
      return told('farm-chose', { stations: listText(words, note.stations.map(name)) });
  }
}
