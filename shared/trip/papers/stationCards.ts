// The card of each station for the farm's helper there: who comes when, what to say and ask, what lies ready.
import type { Slot, Span, Station } from '../types.ts';
import type { StationAsk, StationText } from '../visitTypes.ts';
import { rainMatters, stationsOfDay } from './applies.ts';
import type { CardWeather } from './leaderCards.ts';
import { inOtherWeather } from './rainPlan.ts';
import { bandOf, groupsIn, textOf } from './tell.ts';
import type { PaperTongue, TripCase } from './types.ts';

/** One coming of a party. */
export interface Coming extends Span {
  readonly party: number;
  readonly children: number;
  readonly adults: number;
  readonly wheelchair: boolean;
}

/** The card of one station. */
export interface StationCard {
  readonly station: Station;
  readonly text: StationText;
  readonly comings: readonly Coming[];
  readonly say: readonly string[];
  readonly ask: readonly StationAsk[];
  /** The station whose place it takes; null where it stands for itself. */
  readonly for: string | null;
  /** What takes its place in rain: a station, null where it is left out; undefined where it stays. */
  readonly inRain: string | null | undefined;
}

/** The cards of a visit's stations, in the order of the loop. */
export function stationCards(trip: TripCase, tongue: PaperTongue): StationCard[] {
  const band = bandOf(trip);
  return stationsOfDay(trip).map((station) => {
    const text = textOf(tongue, station.id);
    const slots = trip.day.parties.flatMap((party) => party.filter((slot) => isAt(slot, station)));
    return {
      station,
      text,
      comings: comingsAt(trip, station),
      say: text.say[band],
      ask: text.ask[band],
      for: slots.find((slot) => slot.for !== null)?.for ?? null,
      inRain: trip.wish.rain ? undefined : inRain(trip, station.id),
    };
  });
}

/**
 * The cards that hold in the other weather: of stations that this day has not, or to which others come or at other times.
 * None where no such day holds.
 */
export function otherStationCards(
  trip: TripCase,
  tongue: PaperTongue,
): { trip: TripCase; cards: StationCard[] } {
  const other = inOtherWeather(trip);
  if (other === null || !rainMatters(trip)) return { trip, cards: [] };
  const cards = stationCards(other, tongue).filter(({ station }) => differs(trip, other, station));
  return { trip: other, cards };
}

/** The weather that a station's card is for; null where it holds in any, or says itself what rain does with the station. */
export function stationWeather(trip: TripCase, { station, inRain }: StationCard): CardWeather | null {
  const other = inOtherWeather(trip);
  if (other === null || !rainMatters(trip) || inRain !== undefined || !differs(trip, other, station))
    return null;
  return trip.wish.rain ? 'rain-day' : 'dry-day';
}

function differs(trip: TripCase, other: TripCase, station: Station): boolean {
  return JSON.stringify(comingsAt(trip, station)) !== JSON.stringify(comingsAt(other, station));
}

const isAt = (slot: Slot, { id }: Station): boolean => slot.kind === 'station' && slot.station === id;

function comingsAt({ day }: TripCase, station: Station): Coming[] {
  const comings = day.parties.flatMap((slots, party) => {
    const groups = groupsIn(day, party);
    const sum = (of: 'children' | 'adults'): number => groups.reduce((all, group) => all + group[of], 0);
    const wheelchair = groups.some((group) => group.wheelchair);
    return slots
      .filter((slot) => isAt(slot, station))
      .map(({ from, to }) => ({ from, to, party, children: sum('children'), adults: sum('adults'), wheelchair })); // prettier-ignore
  });
  return comings.sort((a, b) => a.from - b.from);
}

/** What the rain plan does with a station of the fine day: another one, null where it is left out, undefined where it stays. */
export function inRain({ otherWeather, wish }: TripCase, id: string): string | null | undefined {
  if (wish.rain) return undefined;
  const note = otherWeather.notes.find((one) => 'why' in one && one.why === 'rain' && one.station === id);
  if (note?.kind === 'stand-in') return note.by;
  const stays = !note && (!otherWeather.ok || otherWeather.day.stations.includes(id));
  return stays ? undefined : null;
}

/** A caution on a station's card; the words stand under `trip-papers.station`. */
export type StationCaution = 'touch' | 'sores' | 'kidding' | 'raw' | 'wash';

/** What the helper at a station must mind beside the station's own texts. */
export function stationCautions({ ground }: TripCase, station: Station): StationCaution[] {
  const animals = station.zone === 'animal';
  const cautions: [StationCaution, boolean][] = [
    ['touch', station.touch],
    ['sores', station.touch],
    ['kidding', animals && ground.kiddingNear],
    ['raw', station.milking],
    ['wash', station.zone !== 'clean'],
  ];
  return cautions.filter(([, applies]) => applies).map(([name]) => name);
}
