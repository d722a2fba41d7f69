// What cannot be right in a list of stations, though each word of it is: names twice, stand-ins that lead nowhere.
import type { Station } from '../../shared/trip/types.ts';
import { USUAL_STATIONS } from '../../shared/trip/usualRules.ts';
import type { FieldWords } from './settingsRule.ts';
import type { WrittenStation } from './stationsRule.ts';

/** A slip at a field of the station with this index. */
export interface StationSlip {
  readonly index: number;
  readonly field: keyof WrittenStation;
  readonly words: FieldWords;
}

/** Every slip; `stations` are the written ones with what they leave out filled in. */
export function stationSlips(
  written: readonly WrittenStation[],
  stations: readonly Station[],
): StationSlip[] {
  const ids = stations.map(({ id }) => id);
  return stations.flatMap((station, index) => {
    const own = written[index];
    const before = ids.indexOf(station.id);
    return [
      ...(before < index ? [twice(index, station.id, before)] : []),
      ...(own?.zone === undefined && !USUAL_STATIONS.some(({ id }) => id === station.id) ? [noZone(index)] : []),
      ...touchSlips(station, index),
      ...(own?.standIn === undefined ? [] : standInSlips(station, index, stations)),
    ];
  }); // prettier-ignore
}

function twice(index: number, id: string, before: number): StationSlip {
  const expected = `a name that no other station has; "${id}" is number ${before + 1} of the list already`;
  return {
    index,
    field: 'id',
    words: { expected, todo: 'give it another name, or take one of the two out' },
  };
}

function noZone(index: number): StationSlip {
  const todo =
    'write zone: animal where the goats are, between for ways beside them, clean where people may eat; if you meant one of the usual stations, correct its id';
  return { index, field: 'zone', words: { expected: 'animal, between or clean', todo } };
}

/** People eat in the clean zone: no animal is touched or milked there. Source: NASPHV compendium, three zones. */
function touchSlips({ zone, touch, milking }: Station, index: number): StationSlip[] {
  if (zone !== 'clean' || (!touch && !milking)) return [];
  const expected = `animal, since ${touch ? 'children touch animals' : 'a doe is milked'} there; nobody meets an animal where people eat`;
  const todo = `write animal, or "${touch ? 'touch' : 'milking'}: no" if there is none`;
  return [{ index, field: 'zone', words: { expected, todo } }];
}

function standInSlips(station: Station, index: number, stations: readonly Station[]): StationSlip[] {
  const others = [...new Set(stations.map(({ id }) => id))].filter((id) => id !== station.id);
  const slip = (expected: string, todo: string, names: readonly string[] = []): StationSlip => ({
    index,
    field: 'standIn',
    words: { expected, todo, names: () => names },
  });
  if (station.standIn === null) return [];
  if (!others.includes(station.standIn)) {
    const expected =
      others.length > 0
        ? `another station of the list: ${others.join(', ')}; or none`
        : 'none, since the list has no other station';
    return [slip(expected, `write ${others.length > 0 ? 'one of them' : 'none'}, or put the missing station on the list`, others)]; // prettier-ignore
  }
  const chain = chainFrom(station, stations);
  if (chain === null)
    return [slip('stand-ins that do not lead round in a circle', 'write none at one of them')];
  return lacks(station, chain).map((lack) =>
    slip(`a station that ${lack}`, `name one that ${lack}, or none`),
  );
}

/** The stand-ins one after the other; null where they come round again. One that is not on the list ends them. */
function chainFrom(start: Station, stations: readonly Station[]): Station[] | null {
  const chain: Station[] = [];
  let next = stations.find(({ id }) => id === start.standIn);
  while (next) {
    if (next === start || chain.includes(next)) return null;
    chain.push(next);
    const { standIn } = next;
    next = stations.find(({ id }) => id === standIn);
  }
  return chain;
}

/** What a station needs a stand-in for, where none of its chain can take its place for that reason. */
function lacks(station: Station, chain: readonly Station[]): string[] {
  const all: readonly (readonly [needs: boolean, (one: Station) => boolean, string])[] = [
    [!station.roofed, ({ roofed }) => roofed, 'has a roof, for days of rain'],
    [!station.wheelchair, ({ wheelchair }) => wheelchair, 'a wheelchair can reach'],
    [station.milking, ({ milking }) => !milking, 'needs no milking, for months in which the does rest'],
    [station.kidding, ({ kidding }) => !kidding, 'is not beside the kidding pen, for weeks of births'],
  ];
  return all.flatMap(([needs, can, words]) => (needs && !chain.some(can) ? [words] : []));
}
