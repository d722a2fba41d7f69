// Reads a farm folder: either the whole book, or the complete list of what keeps it from being read.
import { statSync } from 'node:fs';
import { isoDate } from '../../shared/calendar/day.ts';
import { standingRows } from '../../shared/herd/standing.ts';
import type { Book, Doe, Farm, Kidding, MilkingRow, Treatment } from '../../shared/herd/types.ts';
import type { Visit } from '../../shared/trip/visitTypes.ts';
import { amountReader, type AmountRules } from './amountCell.ts';
import { readAsOf, type AsOf } from './asOf.ts';
import { DOES_FILE, readDoes } from './doesTable.ts';
import { doeNames, type DoeNames } from './doeNames.ts';
import { momentReader } from './entered.ts';
import { guidanceNotices } from './farmTrip.ts';
import { counted, faultAt, sortedFaults, type Fault, type Findings, type Notice } from './fault.ts';
import { KIDDINGS_FILE, readKiddings } from './kiddingsTable.ts';
import { milkingFiles, MILKINGS_FOLDER, namesIn } from './milkingFiles.ts';
import { dayReader, readMilkings } from './milkingsTable.ts';
import { readMilkTests } from './milkTestsTable.ts';
import { nearestName } from './nearest.ts';
import { farmOf, LARGEST_MILKING, NO_SETTINGS, readSettings, type SettingsReading } from './settings.ts';
import { SETTINGS_FILE, type Settings } from './settingsRule.ts';
import { treatedRows } from './treatedRows.ts';
import { hasStart, readTreatments } from './treatmentsTable.ts';
import { stationsOf } from './farmStations.ts';
import { readVisits } from './visitFiles.ts';

export type { Fault, Notice } from './fault.ts';

/** A farm that could be read, or everything that a person must put right first. */
export type FarmReading =
  | {
      ok: true;
      farm: Farm;
      book: Book;
      /** Visits on file; absent where the farm has no such folder. They are no part of the book: what carries a book must not carry a school's name. */
      visits?: readonly Visit[];
      asOf: number;
      asOfFrom: AsOf['asOfFrom'];
      notices: Notice[];
    }
  | { ok: false; faults: Fault[]; notices: Notice[] };

/** What a reading takes from outside the folder. */
export interface ReadSettings {
  /** `AS_OF` as it was given; empty counts as not given. */
  readonly asOf?: string | undefined;
  readonly now_ms: number;
}

/** All that is sound in a folder, whatever else is wrong with it: what can still be gone on with. */
export interface SoundParts {
  /** The sound words of farm.yaml, and whether it is sure what the farm says of one. */
  readonly settings: SettingsReading;
  readonly book: Book;
  /** Null where the farm has no folder of visits. */
  readonly visits: readonly Visit[] | null;
  /** Ids of does.csv whose row has a fault of its own; null where the file cannot be read at all. */
  readonly faultyIds: readonly string[] | null;
  readonly asOf: AsOf;
  readonly faults: readonly Fault[];
  readonly notices: readonly Notice[];
}

/**
 * Reads `farm.yaml`, `does.csv`, `kiddings.csv`, `milkings/*.csv` and, where they are there,
 * `treatments.csv`, `milk-tests.csv` and `visits/*.yaml` of a folder and checks every cell. Never throws for what a folder holds; all faults come in one list, sorted by place.
 */
export function readFarm(dir: string, settings: ReadSettings): FarmReading {
  const { settings: reading, book, visits, asOf, faults, notices } = readSoundParts(dir, settings);
  if (faults.length > 0) return { ok: false, faults: [...faults], notices: [...notices] };
  const findings: Findings = { faults: [], notices: [...notices] };
  addNotices(book, asOf, findings);
  const farm = farmOf(reading.fields as Settings);
  if (farm.trip) findings.notices.push(...guidanceNotices(farm.trip.farm));
  return { ok: true, farm, book, ...(visits && { visits }), ...asOf, notices: findings.notices };
}

/** Reads as `readFarm` does, and keeps what is sound where something is faulty; rows with a fault are left out. */
export function readSoundParts(dir: string, settings: ReadSettings): SoundParts {
  const findings: Findings = { faults: [], notices: [] };
  const isHere = isFolder(dir);
  if (!isHere) findings.faults.push(noFolder());
  const reading = isHere && isThere(dir, SETTINGS_FILE, findings) ? readSettings(dir, findings) : NO_SETTINGS;
  const { fields } = reading;
  const timeZone = fields.timeZone ?? 'UTC';
  const asOf = readAsOf(settings.asOf, fields.asOf, { now_ms: settings.now_ms, timeZone }, findings);
  const nothing = { does: [], kiddings: [], rows: [] };
  if (!isHere) return { settings: reading, book: nothing, visits: null, faultyIds: null, asOf, ...findings };
  // Where farm.yaml is torn it may have meant to set a day of its own.
  const lastDay =
    asOf.asOfFrom === 'clock' && reading.sure('asOf') && reading.sure('timeZone') ? asOf.asOf : null;
  const herd = isThere(dir, DOES_FILE, findings)
    ? readDoes(dir, lastDay, findings)
    : { does: [], faultyIds: [], readable: false };
  const names = doeNames(herd.does, herd.faultyIds, herd.readable);
  const kiddings = isThere(dir, KIDDINGS_FILE, findings) ? readKiddings(dir, names, lastDay, findings) : [];
  const treatments = readTreatments(dir, names, lastDay, findings);
  const rows = readBook(dir, { reading, names, timeZone, lastDay, treatments: treatments ?? [] }, findings);
  const milkTests = readMilkTests(dir, names, lastDay, findings);
  const visits = readVisits(dir, stationsOf(reading), findings);
  const book = {
    does: herd.does,
    kiddings,
    rows,
    ...(treatments && { treatments }),
    ...(milkTests && { milkTests }),
  };
  const faults = sortedFaults(findings.faults);
  const faultyIds = herd.readable ? herd.faultyIds : null;
  return { settings: reading, book, visits, faultyIds, asOf, faults, notices: findings.notices };
}

interface BookRules {
  readonly reading: SettingsReading;
  readonly names: DoeNames;
  readonly timeZone: string;
  readonly lastDay: number | null;
  readonly treatments: readonly Treatment[];
}

function readBook(
  dir: string,
  { reading, names, timeZone, lastDay, treatments }: BookRules,
  findings: Findings,
): MilkingRow[] {
  const rows: MilkingRow[] = [];
  const { recordUnit = 'cup' } = reading.fields;
  const treated = treatedRows();
  const readers = {
    does: names,
    amount: amountReader({ recordUnit, largest: largestOf(reading) }),
    moment: momentReader(timeZone),
    day: dayReader(),
    lastDay,
    treatments: Map.groupBy(treatments, ({ doe }) => doe),
    onTreated: treated.onTreated,
  };
  for (const file of milkingFiles(dir, findings)) readMilkings(dir, file, readers, rows, findings);
  const standing = standingRows(rows);
  for (const [first, second] of standing.clashes) findings.faults.push(clash(first, second));
  findings.notices.push(...treated.notices(standing.rows, treatments.filter(hasStart)));
  return rows;
}

function largestOf({ fields, sure }: SettingsReading): AmountRules['largest'] {
  if (!sure('largestMilking') || !sure('recordUnit')) return null;
  const { largestMilking } = fields;
  if (largestMilking) return { ...largestMilking, from: 'in farm.yaml' };
  return { ...LARGEST_MILKING, from: 'where farm.yaml names none' };
}

function clash(first: MilkingRow, second: MilkingRow): Fault {
  return faultAt(
    second.file,
    { line: second.line, column: 1 },
    {
      found: `${second.doe}, ${isoDate(second.day)} ${second.milking} a second time (the first is ${first.file}:${first.line}), and "entered" does not say which is newer`,
      expected: 'one row for each doe, date and milking, or a later "entered" in the row that counts',
      todo: 'take the wrong row out, or write under entered when the right one was written',
    },
  );
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function noFolder(): Fault {
  return faultAt('.', null, {
    found: 'no such folder',
    expected: 'the farm folder, with farm.yaml, does.csv, kiddings.csv and milkings/ in it',
    todo: 'check the path in FARM_DIR, or lay out a new folder with "npm run farm -- FOLDER"',
  });
}

function isThere(dir: string, file: string, findings: Findings): boolean {
  const names = namesIn(dir);
  if (names.includes(file)) return true;
  const nearest = nearestName(file, names);
  findings.faults.push(
    faultAt(file, null, {
      found: 'no such file',
      expected: `${file} in the farm folder`,
      nearest,
      todo: nearest
        ? `rename that file to ${file}`
        : `put it there; "npm run farm -- FOLDER" lays out an empty one elsewhere to copy`,
    }),
  );
  return false;
}

function addNotices(
  book: { does: readonly Doe[]; kiddings: readonly Kidding[]; rows: readonly MilkingRow[] },
  { asOf, asOfFrom }: AsOf,
  { notices }: Findings,
): void {
  const add = (file: string | null, text: string) => notices.push({ file, line: null, text });
  if (book.does.length === 0) add(DOES_FILE, 'There is no doe yet: give each one a row.');
  else if (book.kiddings.length === 0)
    add(KIDDINGS_FILE, 'There is no kidding yet, so no milking is expected of any doe.');
  const noBook = notices.some(({ text }) => text.startsWith('There is no milk book yet'));
  if (book.rows.length === 0 && !noBook) add(MILKINGS_FOLDER, 'There is no milking in the milk book yet.');
  const later = book.rows.filter((row) => row.day > asOf).length;
  if (later > 0)
    add(
      MILKINGS_FOLDER,
      `${counted(later, 'row')} dated after ${isoDate(asOf)}, the day that ${asOfFrom} sets, ${later === 1 ? 'is' : 'are'} not counted.`,
    );
  const born = new Map(book.does.map((doe) => [doe.id, doe.born]));
  for (const { doe, day } of book.kiddings) {
    const birth = born.get(doe);
    if (birth && birth >= isoDate(day))
      add(
        DOES_FILE,
        `${doe} was born on ${birth} but kidded on ${isoDate(day)}: one of the two dates is wrong.`,
      );
  }
}
