// Reads what `npm run trip` was asked for: options, a pasted link, a visit on file; what it cannot take, it names, all at once.
import { PAPERS, type Paper } from '../../shared/sheet/pageMeasures.ts';
import { PACK_FIELDS } from '../../shared/trip/pack/packQuery.ts';
import { partNames } from '../../shared/trip/pack/parts.ts';
import { MOST, readTrip, writeTrip, type Aside } from '../../shared/trip/tripQuery.ts';
import { NEEDS } from '../../shared/trip/types.ts';
import type { Visit } from '../../shared/trip/visitTypes.ts';
import { nearestName } from '../farm/nearest.ts';
import { readArguments } from './arguments.ts';
import type { TripGround } from './tripGround.ts';

/** Fields of a trip, in the order in which they are told. */
const TRIP_FIELDS = [
  'date', 'grade', 'children', 'adults', 'arrive', 'leave', 'buses', 'lunch', 'stations', 'needs', 'rain', 'word',
] as const; // prettier-ignore
const OWN_FIELDS = ['visit', 'lang', 'paper', 'pack', 'out'] as const;
type Name = (typeof TRIP_FIELDS)[number] | (typeof OWN_FIELDS)[number];
const ARGUMENTS = { names: [...TRIP_FIELDS, ...OWN_FIELDS] as readonly Name[], alone: { rain: 'yes' } };

const ALLOWED: Readonly<Record<(typeof TRIP_FIELDS)[number], string>> = {
  date: 'a day such as 2026-05-27',
  grade: 'K, 1, 2, … 12',
  children: `a whole number from 1 to ${MOST.children}`,
  adults: `a whole number from 0 to ${MOST.adults}`,
  arrive: 'a time such as 9:30',
  leave: 'a time such as 13:00',
  buses: `a whole number from 0 to ${MOST.buses}`,
  lunch: 'a time such as 11:45, or no',
  stations: 'ids of stations with points or commas between them',
  needs: 'needs with points or commas between them',
  rain: 'yes or no',
  word: 'one word of letters, digits, "-" and "_"',
};

/** What was asked for: the query of the trip and of its pack, the languages, a folder. */
export interface TripOptions {
  /** The query of the pack's page. */
  readonly query: string;
  /** Languages of the pack, one PDF and one calendar file each. */
  readonly langs: readonly string[];
  readonly out: string | null;
}

/** The options, or one line for each that is wrong. */
export type TripOptionsReading = { ok: true; options: TripOptions } | { ok: false; faults: string[] };

/**
 * Reads `--date 2026-05-27 --grade 2 --children 54 …`, or a link of the trip's page in quotes (`?date=…` alone too), or
 * `--visit FILE` for a visit of the farm folder. An option beside a link or a visit changes that one thing. Without
 * `--lang` the farm's first language is meant; several stand with commas.
 */
export function readTripOptions(
  args: readonly string[],
  ground: TripGround,
  visits: readonly Visit[],
): TripOptionsReading {
  const faults: string[] = [];
  const links: string[] = [];
  const given = new Map(
    readArguments(args, ARGUMENTS, faults, (word) => isLink(word) && links.push(word) > 0),
  );
  const fields = new URLSearchParams();
  if (links.length > 1) faults.push('There is more than one link; give one of them.');
  for (const [field, value] of queryOf(links[0] ?? '')) fields.append(field, value);
  for (const [field, value] of visitFields(given.get('visit'), ground, visits, faults))
    fields.set(field, value);
  for (const name of TRIP_FIELDS) {
    const value = given.get(name)?.trim();
    if (value !== undefined) fields.set(name, name === 'stations' || name === 'needs' ? value.replaceAll(/[, ]+/g, '.') : value); // prettier-ignore
  }
  const langs = langsOf(given.get('lang') ?? fields.get('lang'), ground, faults);
  const paper = paperOf(given.get('paper') ?? fields.get('paper'), ground, faults);
  const pack = given.get('pack')?.trim().replaceAll(/[, ]+/g, '.') ?? fields.get('pack');
  faults.push(...partFaults(pack, ground));
  for (const field of [...PACK_FIELDS, 'lang']) fields.delete(field);
  const { wish, aside } = readTrip(`?${fields.toString()}`, ground.farm, ground.usual);
  faults.push(...aside.map((one) => asideText(one, ground)));
  if ([...fields].length === 0 && faults.length === 0)
    faults.push('Nothing says which visit is meant: give --date, a link in quotes, or --visit.');
  if (faults.length > 0) return { ok: false, faults };
  const own = [...(pack === null ? [] : [`pack=${pack}`]), `paper=${paper}`];
  const query = `${writeTrip(wish, ground.usual)}&${own.join('&')}`;
  return { ok: true, options: { query, langs, out: given.get('out') ?? null } };
}

const isLink = (word: string): boolean => /^\?|^https?:\/\/[^?]*\?/.test(word);

/** The fields of a link, without what stands before its `?` and behind a `#`. */
const queryOf = (link: string): URLSearchParams =>
  new URLSearchParams(link.replace(/^[^?]*/, '').replace(/#.*$/s, ''));

/** The wish of a visit on file, as fields of an address. */
function visitFields(
  name: string | undefined,
  { usual }: TripGround,
  visits: readonly Visit[],
  faults: string[],
): Iterable<[string, string]> {
  if (name === undefined) return [];
  const plain = (file: string): string => file.replace(/^visits\//, '').replace(/\.ya?ml$/, '');
  const visit = visits.find(({ file }) => plain(file) === plain(name));
  if (visit) return new URLSearchParams(writeTrip(visit.wish, usual));
  const files = visits.map(({ file }) => plain(file));
  const there = files.length === 0 ? 'The farm has no visits on file.' : `There are: ${files.join(', ')}.`;
  faults.push(`--visit "${name}": there is no such visit. ${there}${meant(plain(name), files)}`);
  return [];
}

function langsOf(text: string | null | undefined, { tongues }: TripGround, faults: string[]): string[] {
  const known = tongues.map(({ lang }) => lang);
  const named = text?.split(',').map((one) => one.trim().toLowerCase()) ?? known.slice(0, 1);
  for (const one of named)
    if (!known.includes(one)) faults.push(`--lang "${one}": allowed is ${known.join(', ')}.${meant(one, known)}`); // prettier-ignore
  return known.filter((one) => named.includes(one));
}

/** One line for each name that is no part of any pack. */
function partFaults(pack: string | null, { shelf }: TripGround): string[] {
  const names = partNames(shelf);
  const own = names.filter((name) => !name.startsWith('sheet-')).join(', ');
  return (pack?.split('.') ?? [])
    .filter((one) => one !== '' && !names.includes(one))
    .map((one) => `--pack "${one}": there is no such part. There are: ${own}, and sheet-NAME for a sheet.${meant(one, names)}`); // prettier-ignore
}

function paperOf(text: string | null | undefined, { shelf }: TripGround, faults: string[]): Paper {
  if (text === null || text === undefined) return shelf.paper;
  const paper = PAPERS.find((one) => one === text.trim().toLowerCase());
  if (paper === undefined) faults.push(`--paper "${text}": allowed is ${PAPERS.join(', ')}.${meant(text, PAPERS)}`); // prettier-ignore
  return paper ?? shelf.paper;
}

function asideText({ what, found }: Aside, { farm }: TripGround): string {
  const stations = farm.stations.map(({ id }) => id);
  switch (what) {
    case 'unknown':
      return `"${found}": a trip has no such field. There are: ${TRIP_FIELDS.join(', ')}.${meant(found, TRIP_FIELDS)}`;
    case 'twice':
      return `"${found}" stands more than once; give it once.`;
    case 'station':
      return `--stations "${found}": the farm has no such station. There are: ${stations.join(', ')}.${meant(found, stations)}`;
    case 'need':
      return `--needs "${found}": there is no such need. There are: ${NEEDS.join(', ')}.${meant(found, NEEDS)}`;
    case 'value': {
      const [field = '', ...rest] = found.split('=');
      const allowed = TRIP_FIELDS.find((one) => one === field);
      return `--${field} "${rest.join('=')}": allowed is ${allowed ? ALLOWED[allowed] : 'something else'}.`;
    }
  }
}

function meant(text: string, names: readonly string[]): string {
  const name = nearestName(text, names);
  return name === null ? '' : ` Did you mean "${name}"?`;
}
