// The shape of `stations` in farm.yaml: what a group can do on the farm, in the order of its one-way loop.
import * as z from 'zod';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import type { Station, Zone } from '../../shared/trip/types.ts';
import { USUAL_CHOICE, USUAL_MINUTES, USUAL_STATIONS } from '../../shared/trip/usualRules.ts';
import type { FieldWords } from './settingsRule.ts';
import { stationSlips } from './stationSlips.ts';
import { yesOrNo } from './yesOrNo.ts';

const ZONES: readonly Zone[] = ['animal', 'between', 'clean'];
// Longer stations are two; a longer walk is a hike.
const MOST = Object.freeze({ minutes: 120, capacity: 200, walk: 30, stations: 24 });
const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const minute = z.number().int().min(1).max(MOST.minutes);
const minutes = z.union([
  minute.transform((one): Readonly<Record<Band, number>> => ({ 'k-2': one, '3-5': one, '6-8': one, '9-12': one })),
  z.strictObject({ 'k-2': minute, '3-5': minute, '6-8': minute, '9-12': minute }),
]); // prettier-ignore

const station = z.strictObject({
  id: z.string().regex(ID),
  minutes: minutes.optional(),
  capacity: z.number().int().min(1).max(MOST.capacity).optional(),
  zone: z.enum(ZONES as [Zone, ...Zone[]]).optional(),
  roofed: yesOrNo.optional(),
  wheelchair: yesOrNo.optional(),
  touch: yesOrNo.optional(),
  milking: yesOrNo.optional(),
  kidding: yesOrNo.optional(),
  standIn: z.string().optional(),
  walk: z.number().int().min(0).max(MOST.walk).optional(),
  chosenFor: z.array(z.enum(BANDS as [Band, ...Band[]])).optional(),
});

/** A station as farm.yaml writes it. */
export type WrittenStation = z.output<typeof station>;

/** What a farm's list says: its loop, and the stations of a group that chooses none. */
export interface StationList {
  readonly stations: readonly Station[];
  readonly usual: Readonly<Record<Band, readonly string[]>>;
}

/** What farm.yaml may say about stations. */
export const stationsRule = z
  .array(station)
  .min(1)
  .max(MOST.stations)
  .superRefine((written, context) => {
    for (const { index, field, words } of stationSlips(written, written.map((one) => filledIn(one, written))))
      context.addIssue({ code: 'custom', path: [index, field], input: written[index]?.[field], params: { words } });
  })
  .transform((written): StationList => {
    const stations = written.map((one) => filledIn(one, written));
    return { stations, usual: choiceOf(written, stations) };
  }); // prettier-ignore

/** A station with what the farm leaves out: as Pailside's of that name, else roofed, reachable and without animals to touch. */
function filledIn(written: WrittenStation, all: readonly WrittenStation[]): Station {
  const known = USUAL_STATIONS.find(({ id }) => id === written.id);
  const { id, standIn, walk, ...own } = written;
  const usualStandIn = all.some((one) => one.id === known?.standIn) ? (known?.standIn ?? null) : null;
  return {
    id,
    minutes: own.minutes ?? known?.minutes ?? USUAL_MINUTES,
    capacity: own.capacity ?? known?.capacity ?? 16,
    zone: own.zone ?? known?.zone ?? 'animal',
    roofed: own.roofed ?? known?.roofed ?? true,
    wheelchair: own.wheelchair ?? known?.wheelchair ?? true,
    touch: own.touch ?? known?.touch ?? false,
    milking: own.milking ?? known?.milking ?? false,
    kidding: own.kidding ?? known?.kidding ?? false,
    standIn: standIn === undefined ? usualStandIn : standIn === 'none' ? null : standIn,
    walk_min: walk ?? known?.walk_min ?? 1,
  };
}

// A farm that chooses nothing for a band gets the first stations of its loop that are not only stand-ins.
const FIRST_OF_LOOP = 4;

function choiceOf(written: readonly WrittenStation[], stations: readonly Station[]): StationList['usual'] {
  const standIns = new Set(stations.map(({ standIn }) => standIn));
  const first = stations.filter(({ id }) => !standIns.has(id)).slice(0, FIRST_OF_LOOP);
  const chosen = (band: Band) => {
    const own = written.filter(({ id, chosenFor }) => (chosenFor ? chosenFor.includes(band) : USUAL_CHOICE[band].includes(id)));
    return (own.length > 0 ? own : first.length > 0 ? first : stations).map(({ id }) => id);
  }; // prettier-ignore
  return { 'k-2': chosen('k-2'), '3-5': chosen('3-5'), '6-8': chosen('6-8'), '9-12': chosen('9-12') };
}

const yesNoWords: FieldWords = {
  expected: 'yes or no',
  todo: 'write one of the two',
  names: () => ['yes', 'no'],
};
const minuteWords: FieldWords = {
  expected: `whole minutes from 1 to ${MOST.minutes}: one number, or one for each of ${BANDS.join(', ')}`,
  todo: 'write for instance 20, or { k-2: 15, 3-5: 20, 6-8: 25, 9-12: 30 }',
};

/** The words for each of its fields. */
export const STATION_WORDS: Readonly<Record<string, FieldWords>> = {
  stations: {
    expected: `a list of 1 to ${MOST.stations} stations, each beginning with a dash, for instance "- { id: goat-barn, capacity: 16 }"`,
    todo: 'write them in the order of your loop, or take the word out: the pages then take the usual eleven',
  },
  'stations.id': {
    expected: 'the name of a station, in small letters a to z, numbers and "-", for instance goat-barn',
    todo: 'write the name of its file in content/stations',
    names: () => USUAL_STATIONS.map(({ id }) => id),
  },
  'stations.minutes': minuteWords,
  ...Object.fromEntries(BANDS.map((band) => [`stations.minutes.${band}`, minuteWords])),
  'stations.capacity': {
    expected: `children who have room at a time, a whole number from 1 to ${MOST.capacity}`,
    todo: 'count the places at the rail or the table',
  },
  'stations.zone': {
    expected: 'animal, between or clean',
    todo: 'write animal where the goats are, between for barns and ways beside them, clean where people may eat',
    names: () => ZONES,
  },
  'stations.roofed': yesNoWords,
  'stations.wheelchair': yesNoWords,
  'stations.touch': yesNoWords,
  'stations.milking': yesNoWords,
  'stations.kidding': yesNoWords,
  'stations.standIn': {
    expected: 'the id of the station that takes its place, or none',
    todo: 'write one of the list',
  },
  'stations.walk': {
    expected: `whole minutes from 0 to ${MOST.walk} to walk here from the station before it`,
    todo: 'walk it with a watch, at a child’s pace',
  },
  'stations.chosenFor': {
    expected: `a list of ${BANDS.join(', ')} in square brackets, or [] for none`,
    todo: 'name the grades whose groups go there when they choose nothing',
    names: () => BANDS,
  },
};
