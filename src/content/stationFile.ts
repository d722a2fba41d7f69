// The texts of a station: content/stations/LANG/ID.yaml, one file a station, the languages held against each other.
import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { BANDS } from '../../shared/quantity/grade.ts';
import type { StationText } from '../../shared/trip/visitTypes.ts';
import { nearestName } from '../farm/nearest.ts';
import type { ContentFault } from './contentFault.ts';
import { contentFiles } from './contentFiles.ts';
import { readFields } from './frontMatter.ts';
import { stationReading } from './stationReading.ts';

// A station's card is half a page for each band: longer texts would not be said in the minutes that there are.
const MOST = { name: 28, does: 160, sentence: 170, point: 150, sentences: 5, asks: 4, points: 6 } as const;
const written = z
  .string('write a text here, in quotes if it has a colon or begins with a sign')
  .trim()
  .min(1, 'write something here');
const short = (most: number) =>
  written.max(most, `at most ${most} letters stand here, so that it fits on a card`);
const listOf = <T extends z.ZodType>(one: T, least: number, most: number) => {
  const told = `a list of ${least} to ${most} stands here, each beginning with a dash`;
  return z.array(one, told).min(least, told).max(most, told);
};
const byBand = <T extends z.ZodType>(one: T) =>
  z.strictObject(
    { 'k-2': one, '3-5': one, '6-8': one, '9-12': one },
    'k-2, 3-5, 6-8 and 9-12 stand here, each with its list',
  );

const asked = z.strictObject(
  { ask: short(MOST.sentence), answer: short(MOST.sentence) },
  'a question and its answer stand here: { ask: …, answer: … }',
);

const shape = z.strictObject({
  name: short(MOST.name),
  does: short(MOST.does),
  words: z.array(written, 'a list of words stands here').default([]),
  facts: z.array(written, 'a list of ids of facts stands here').default([]),
  say: byBand(listOf(short(MOST.sentence), 2, MOST.sentences)),
  ask: byBand(listOf(asked, 1, MOST.asks)),
  care: listOf(short(MOST.point), 1, MOST.points),
  ready: listOf(short(MOST.point), 1, MOST.points),
});

/** A file as it was read, with the words that its helper shows or explains, the facts that it rests on, and the line of each field. */
export interface StationFile extends StationText {
  readonly file: string;
  readonly words: readonly string[];
  /** Ids in `content/facts`. */
  readonly facts: readonly string[];
  readonly lineOf: (path: readonly PropertyKey[]) => number;
}

/** The texts by language, with all that is wrong. */
export interface StationShelf {
  readonly stations: Readonly<Record<string, readonly StationText[]>>;
  readonly faults: readonly ContentFault[];
}

/**
 * Reads `dir/LANG/*.yaml` for each language. `needed` are the ids of the farm's stations: one without texts is a
 * fault that names the nearest.
 */
export function readStationFiles(
  dir: string,
  languages: readonly string[],
  needed: readonly string[] = [],
): StationShelf {
  const faults: ContentFault[] = [];
  const shelves = languages.map((lang) => {
    const there = contentFiles('station', dir, lang);
    faults.push(...there.faults);
    const read = there.files.flatMap(({ name, path, told }): StationFile[] => {
      const yaml = readFileSync(path, 'utf8').replace(/^\uFEFF/, '');
      const fields = readFields(told, yaml, shape, { above: 0, what: 'file' });
      if (fields.ok) return [{ id: name, file: told, ...fields.values, lineOf: fields.lineOf }];
      faults.push(...fields.faults.map(byCount));
      return [];
    });
    return { lang, read, names: there.files.map(({ name }) => name) };
  });
  for (const { lang, read } of shelves) for (const one of read) faults.push(...stationReading(one, lang));
  const [first, ...others] = shelves;
  for (const other of others)
    for (const one of other.read) {
      const twin = first?.read.find(({ id }) => id === one.id);
      if (twin) faults.push(...differences(twin, one));
    }
  const names = [...new Set([...needed, ...shelves.flatMap((shelf) => shelf.names)])];
  for (const shelf of shelves)
    for (const name of names.filter((one) => !shelf.names.includes(one)))
      faults.push(missing(name, shelf.lang, needed.includes(name), shelf.names));
  const stations = Object.fromEntries(shelves.map(({ lang, read }) => [lang, read.map(textOf)]));
  return { stations, faults };
}

function textOf({ id, name, does, say, ask, care, ready }: StationFile): StationText {
  return { id, name, does, say, ask, care, ready };
}

/** Nobody counts from nought: `"say.k-2.0"` is told as `"say.k-2", number 1`. */
function byCount(fault: ContentFault): ContentFault {
  const counted = fault.text.replace(
    /^"([\w-]+(?:\.[\w-]+)?)\.(\d+)(?:\.(\w+))?"/,
    (_, list: string, index: string, field?: string) =>
      `${field === undefined ? '' : `"${field}" of `}"${list}", number ${Number(index) + 1}`,
  );
  return { ...fault, text: counted };
}

function missing(name: string, lang: string, isNeeded: boolean, names: readonly string[]): ContentFault {
  const near = nearestName(name, names);
  const told = isNeeded
    ? `there is no such file, but farm.yaml has a station "${name}"; write its texts like those of the others, or correct it in farm.yaml${near ? `: did you mean "${near}"?` : '.'}`
    : `there is no such file, but other languages have the station "${name}"; all languages need the same.`;
  return { file: `content/stations/${lang}/${name}.yaml`, line: 1, column: null, text: told };
}

/** Cards in two languages lie side by side: as many sentences, questions and points in each. */
function differences(first: StationFile, other: StationFile): ContentFault[] {
  const lists: readonly (readonly PropertyKey[])[] = [
    ...BANDS.flatMap((band) => [['say', band] as const, ['ask', band] as const]),
    ['care'],
    ['ready'],
  ];
  return lists.flatMap((path) => {
    const [here, there] = [countAt(other, path), countAt(first, path)];
    if (here === there) return [];
    const told = `"${path.join('.')}" has ${here} here and ${there} in ${first.file}; all languages need the same.`;
    return [{ file: other.file, line: other.lineOf(path), column: null, text: told }];
  });
}

function countAt(file: StationFile, [field, band]: readonly PropertyKey[]): number {
  if (field === 'care' || field === 'ready') return file[field].length;
  return file[field as 'say' | 'ask'][band as (typeof BANDS)[number]].length;
}
