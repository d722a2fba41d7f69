// The card of each group's leader: where the group is, minute by minute, and what to watch.
import type { Group, Slot } from '../types.ts';
import { carriesMedicine, hasSlot, meetsAnimals, rainMatters } from './applies.ts';
import type { TripCase } from './types.ts';

/** A line of a card: what is done, and when to set out for it where it is reached by walking. */
export interface CardLine {
  readonly go: number | null;
  readonly slot: Slot;
  /** The station that takes its place in rain; null where rain changes nothing. */
  readonly inRain: string | null;
}

/** What a leader watches for; the words stand under `trip-papers.watch`. */
export type WatchName =
  'stay' | 'count' | 'wash' | 'no-food' | 'wheelchair' | 'medicine' | 'share' | 'quiet' | 'spare';

/** The card of one group. */
export interface LeaderCard {
  readonly group: Group;
  readonly lines: readonly CardLine[];
  readonly watch: readonly WatchName[];
  /** Whether rain moves the group's times, so that the lines cannot tell of it. */
  readonly otherTimes: boolean;
}

/** The cards of a visit, in the order of its groups. */
export function leaderCards(trip: TripCase): LeaderCard[] {
  return trip.day.groups.map((group) => {
    const slots = trip.day.parties[group.party] ?? [];
    const wet = wetSlots(trip, group.party);
    const otherTimes = wet !== null && !isInStep(slots, wet);
    const rain = otherTimes ? null : wet;
    return { group, lines: linesOf(slots, rain), watch: watchOf(trip, group), otherTimes };
  });
}

/** A party's slots by the rain plan; null where the day is planned for rain already, or no rain plan holds. */
function wetSlots({ wish, otherWeather, day }: TripCase, party: number): readonly Slot[] | null {
  if (wish.rain || !otherWeather.ok) return null;
  // Where rain leaves other groups or parties, no line of this card holds.
  if (otherWeather.day.groups.length !== day.groups.length) return [];
  return otherWeather.day.parties[party] ?? [];
}

/** Whether two lists of slots are the same but for the stations. */
function isInStep(slots: readonly Slot[], others: readonly Slot[]): boolean {
  return (
    slots.length === others.length &&
    slots.every(({ kind, from, to }, index) => {
      const other = others[index];
      return other?.kind === kind && other.from === from && other.to === to;
    })
  );
}

/** Folds each walk into what it leads to; a walk that leads to another walk keeps a line of its own. */
function linesOf(slots: readonly Slot[], wet: readonly Slot[] | null): CardLine[] {
  return slots.flatMap((slot, index) => {
    const [before, after] = [slots[index - 1], slots[index + 1]];
    if (slot.kind === 'walk' && after && after.kind !== 'walk') return [];
    const go = before?.kind === 'walk' && slot.kind !== 'walk' ? before.from : null;
    const other = wet?.[index]?.station ?? null;
    return [{ go, slot, inRain: slot.kind === 'station' && other !== slot.station ? other : null }];
  });
}

function watchOf(trip: TripCase, group: Group): WatchName[] {
  const { needs } = trip.wish;
  const names: [WatchName, boolean][] = [
    ['stay', true],
    ['count', true],
    ['wheelchair', group.wheelchair],
    ['wash', hasSlot(trip, 'wash')],
    ['no-food', meetsAnimals(trip)],
    ['medicine', carriesMedicine(trip)],
    ['share', needs.includes('milk-allergy') && hasSlot(trip, 'lunch')],
    ['quiet', needs.includes('quiet')],
    ['spare', trip.day.spare > 0],
  ];
  return names.filter(([, applies]) => applies).map(([name]) => name);
}

/** The weather that cards are for; the words stand under `trip-papers.card`. */
export type CardWeather = 'rain-day' | 'dry-day';

/** Which weather cards are for; null where they hold in any, since rain changes nothing or the station in rain stands on them. */
export function cardWeather(trip: TripCase, cards: readonly LeaderCard[]): CardWeather | null {
  if (trip.wish.rain) return rainMatters(trip) ? 'rain-day' : null;
  return cards.some(({ otherTimes }) => otherTimes) ? 'dry-day' : null;
}

/** Cards on a page. */
export type CardsAPage = 4 | 2 | 1;

// Heights as they come out on Letter, the lower of both papers, mm: what is left of a card for its lines and for what is to be
// watched, a line, a station (whose name may take two), what rain adds, a thing to watch. A card of half a page has its lines in
// two columns.
const LINE_mm = 5;
const STATION_mm = 7.6;
const RAIN_mm = 3.4;
const WATCH_mm = 5.2;
const QUARTER_mm = 94;
const HALF_mm = 76;

/** How many cards go on a page: all are of one size, so that they stack. */
export function cardsAPage(cards: readonly LeaderCard[]): CardsAPage {
  if (cards.every((card) => linesHeight(card.lines) + pointsOf(card) * WATCH_mm <= QUARTER_mm)) return 4;
  return cards.every(({ lines }) => columnHeight(lines) <= HALF_mm) ? 2 : 1;
}

const pointsOf = ({ watch, otherTimes }: LeaderCard): number => watch.length + (otherTimes ? 1 : 0);

function linesHeight(lines: readonly CardLine[]): number {
  const heights = lines.map(
    ({ slot, inRain }) => (isMain(slot) ? STATION_mm : LINE_mm) + (inRain === null ? 0 : RAIN_mm),
  );
  return heights.reduce((sum, height) => sum + height, 0);
}

/** The taller of both columns. */
function columnHeight(lines: readonly CardLine[]): number {
  const half = Math.ceil(lines.length / 2);
  return Math.max(linesHeight(lines.slice(0, half)), linesHeight(lines.slice(half)));
}

const isMain = ({ kind }: Slot): boolean => ['station', 'welcome', 'wash', 'lunch', 'load'].includes(kind);
