// What the papers say alike: station names, clock times, groups, and what a slot is called.
import { clockText, spanText } from '../../quantity/show.ts';
import { bandOfGrade, gradeSign } from '../../tasks/grades.ts';
import { say, type Slots, type Words } from '../../words/words.ts';
import type { Band } from '../../quantity/grade.ts';
import { isAboard } from '../dayTotals.ts';
import type { DayPlan, Group, Slot, Span, TripWish } from '../types.ts';
import type { StationText } from '../visitTypes.ts';
import type { PaperTongue, TripCase } from './types.ts';

/** Says a message of the papers. */
export type Tell = (key: string, slots?: Slots) => string;

/** The messages under `trip-papers` of one language. */
export function teller(words: Words): Tell {
  return (key, slots) => say(words, `trip-papers.${key}`, slots);
}

/** The texts of a station. A station without texts is a fault of ours and throws. */
export function textOf({ stations, words }: PaperTongue, id: string): StationText {
  const text = stations.find((one) => one.id === id);
  if (!text) throw new Error(`No texts for the station "${id}" in ${words.lang}.`);
  return text;
}

/** The band of a visit's grade. */
export function bandOf({ wish }: TripCase): Band {
  return bandOfGrade(wish.grade);
}

/** The grade in words. */
export function gradeText({ grade }: Pick<TripWish, 'grade'>, tell: Tell): string {
  return grade === 0 ? tell('grade.K') : tell('grade.other', { grade: gradeSign(grade) });
}

/** A date in words with its year. */
export function dayText(date: string, words: Words): string {
  return spanText(date, date, words.lang);
}

/**
 * A time of day for tables and cards, where morning and afternoon cannot be mixed up.
 * @example shortClock(785) // => '1:05'
 */
export function shortClock(minutes: number): string {
  return `${((Math.floor(minutes / 60) + 11) % 12) + 1}:${String(minutes % 60).padStart(2, '0')}`;
}

/** A span for tables and cards. */
export function shortSpan({ from, to }: Span): string {
  return `${shortClock(from)}–${shortClock(to)}`;
}

/** A span in running text, with morning and afternoon. */
export function spanOf({ from, to }: Span, words: Words): string {
  return teller(words)('from-to', { from: clockText(from, words.lang), to: clockText(to, words.lang) });
}

/** The groups of a party, in order. */
export function groupsIn({ groups }: Pick<DayPlan, 'groups'>, party: number): readonly Group[] {
  return groups.filter((group) => group.party === party);
}

/** A list in a sentence, as the language joins it. */
export function listText(parts: readonly string[], words: Words): string {
  return new Intl.ListFormat(words.lang, { type: 'conjunction' }).format(parts);
}

/** The groups of a party in words. */
export function groupsText(day: Pick<DayPlan, 'groups'>, party: number, words: Words): string {
  const ids = groupsIn(day, party).map(({ id }) => String(id));
  return teller(words)('groups', { n: ids.length, list: listText(ids, words) });
}

/** What a slot is called: the station, or what is done. */
export function slotText(slot: Slot, tongue: PaperTongue, day: Pick<DayPlan, 'parties'>): string {
  if (isAboard(slot, day)) return teller(tongue.words)('slot.aboard');
  if (slot.kind === 'station' && slot.station !== null) return textOf(tongue, slot.station).name;
  return teller(tongue.words)(`slot.${slot.kind}`);
}
