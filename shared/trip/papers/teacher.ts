// The letter to the teacher: the day in short, what there is to see, what the plan changed.
import { clockText } from '../../quantity/show.ts';
import { hasSlot, seesMilking, stationsOfDay } from './applies.ts';
import { isTogether, wholeSpan } from './keyTimes.ts';
import { isOfMilking, noMilkingText, noteText } from './noteText.ts';
import { teller, textOf } from './tell.ts';
import { carePassages } from './teacherCare.ts';
import type { Span } from '../types.ts';
import type { Passage, PaperTongue, TripCase } from './types.ts';

/** A time of the day with its name. */
export interface DayFact {
  readonly id: string;
  readonly label: string;
  readonly value: string;
}

/** The day in a few lines. */
export function dayFacts(trip: TripCase, { words }: PaperTongue): DayFact[] {
  const tell = teller(words);
  const { day, wish } = trip;
  const fact = (id: string, value: string): DayFact => ({ id, label: tell(`fact.${id}`), value });
  const stations = wholeSpan(day, 'station');
  const lunch = wholeSpan(day, 'lunch');
  const load = wholeSpan(day, 'load');
  const lunchText = lunch && clockSpan(lunch, words);
  return [
    fact('arrive', tell('fact.buses', { n: wish.buses, at: clockText(wish.arrive, words.lang) })),
    ...(stations ? [fact('stations', tell('fact.stations-of', { n: day.stations.length, times: clockSpan(stations, words) }))] : []), // prettier-ignore
    ...(lunchText ? [fact('lunch', isTogether(day, 'lunch') ? lunchText : tell('fact.in-turn', { times: lunchText }))] : []), // prettier-ignore
    ...(load && load.to > load.from ? [fact('load', clockSpan(load, words))] : []),
    fact('leave', clockText(wish.leave, words.lang)),
    fact('groups', groupsFact(trip, words)),
  ];
}

const clockSpan = ({ from, to }: Span, { lang }: PaperTongue['words']): string =>
  `${clockText(from, lang)} – ${clockText(to, lang)}`;

function groupsFact({ day, wish }: TripCase, words: PaperTongue['words']): string {
  const tell = teller(words);
  const sizes = day.groups.map(({ children }) => children);
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  const of = least === most ? tell('children', { n: most }) : tell('range', { least, most });
  const groups = tell('fact.groups-of', { n: day.groups.length, of });
  return `${groups} ${tell('fact.adults-of', { n: wish.adults - day.spare })} ${tell('fact.spare', { n: day.spare })}`;
}

/** The passages of the letter, in order; each only where it applies. */
export function teacherPassages(trip: TripCase, tongue: PaperTongue): Passage[] {
  return [expect(trip, tongue), instead(trip, tongue), stations(trip, tongue), changes(trip, tongue)]
    .concat(carePassages(trip, tongue))
    .filter(({ text, points }) => text.length + points.length > 0);
}

function expect(trip: TripCase, { words, expect: told }: PaperTongue): Passage {
  const tell = teller(words);
  const milked = seesMilking(trip) ? [tell('expect.milked')] : [];
  return { id: 'expect', title: tell('expect.title'), text: [...told, ...milked], points: [] };
}

/** What is seen where no doe is milked, and why. */
function instead(trip: TripCase, tongue: PaperTongue): Passage {
  const tell = teller(tongue.words);
  const notes = trip.notes.filter(isOfMilking);
  const why = seesMilking(trip) ? null : noMilkingText(trip, tongue);
  const inPlace = notes.flatMap((note) => (note.kind === 'stand-in' ? [note.by] : []));
  const shown = inPlace.length > 0 || why === null ? inPlace : trip.day.stations;
  return {
    id: 'instead',
    title: tell('instead.title'),
    text: [...(why === null ? [] : [why]), ...notes.map((note) => noteText(note, tongue))],
    points: shown.map((id) => `${textOf(tongue, id).name}: ${textOf(tongue, id).does}`),
  };
}

function stations(trip: TripCase, tongue: PaperTongue): Passage {
  const tell = teller(tongue.words);
  return {
    id: 'stations',
    title: tell('stations.title'),
    text: hasSlot(trip, 'station') ? [tell('stations.each', { n: trip.day.stations.length })] : [],
    points: stationsOfDay(trip).map(({ id }) => `${textOf(tongue, id).name}: ${textOf(tongue, id).does}`),
  };
}

function changes(trip: TripCase, tongue: PaperTongue): Passage {
  const notes = trip.notes.filter((note) => !isOfMilking(note));
  return {
    id: 'changes',
    title: teller(tongue.words)('changes.title'),
    text: [],
    points: notes.map((note) => noteText(note, tongue)),
  };
}
