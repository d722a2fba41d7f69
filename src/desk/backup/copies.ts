// The folder of copies: where it is, what lies in it, making one, dropping those that are not needed any more.
import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, renameSync, rmSync, statSync } from 'node:fs'; // prettier-ignore
import { basename, isAbsolute, join, relative, resolve } from 'node:path';
import { copiesToDrop, type FarmCopy } from '../../../shared/book/backupRule.ts';
import { dayNumber } from '../../../shared/calendar/day.ts';
import { readSettings } from '../../farm/settings.ts';
import { syncFolder, writeWhole } from '../wholeFile.ts';
import { checkZip, zipFolder } from './zipFolder.ts';

/** Where a farm's copies go. */
export interface CopyPlace {
  readonly folder: string;
  /** Why they do not go where farm.yaml says, in the coordinator's words; null where they do. */
  readonly aside: string | null;
}

/** What copies need of farm.yaml. */
export interface FarmNotes {
  /** Null where it cannot be read. */
  readonly name: string | null;
  /** The machine's own where it cannot be read. */
  readonly timeZone: string;
  readonly backups: string | null;
}

const ENDING = '.zip';
const NAME = /^(\d{4}-\d{2}-\d{2})(?:-\d{6}-before-restore)?$/;
// Whatever the rule says, no day takes more than this: a clock gone wrong for a day must not empty the folder.
const MOST_DROPPED = 3;
const LONGEST_COPY_ms = 3_600_000;

/** What farm.yaml says that copies need; faults in it are told elsewhere. */
export function farmNotes(farm: string): FarmNotes {
  const { fields } = readSettings(farm, { faults: [], notices: [] });
  return {
    name: fields.name ?? null,
    timeZone: fields.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone,
    backups: fields.backups ?? null,
  };
}

/**
 * Where the copies of a farm go: into the folder that `backups` of farm.yaml names, counted from the farm folder, if it is there
 * (a stick that is not plugged in is not), else into the workshop. A farm.yaml that cannot be read changes nothing: copies are
 * wanted most just then.
 */
export function copyPlace(farm: string, workshop: string, { name, backups }: FarmNotes): CopyPlace {
  if (name === null) {
    const folder = lastPlace(farm, workshop) ?? join(workshop, 'backups', folderName(basename(farm)));
    return { folder, aside: null };
  }
  const usual = join(workshop, 'backups', folderName(name));
  if (backups === null) return { folder: usual, aside: null };
  const wanted = isAbsolute(backups) ? backups : resolve(farm, backups);
  const aside = (why: string) => ({
    folder: usual,
    aside: `${why}: ${wanted} (backups: in farm.yaml). The copy went to ${usual} instead.`,
  });
  if (!isFolder(wanted)) return aside('The folder for copies is not there');
  if (isWithin(realpathSync(wanted), realpathSync(farm)))
    return aside('The folder for copies lies in the farm folder itself');
  return { folder: join(wanted, folderName(name)), aside: null };
}

// Which folder holds the copies of which farm folder.
const placesFile = (workshop: string) => join(workshop, 'backups', 'places.json');

function placesIn(workshop: string): Record<string, string> {
  try {
    return JSON.parse(readFileSync(placesFile(workshop), 'utf8')) as Record<string, string>;
  } catch {
    return {};
  }
}

function lastPlace(farm: string, workshop: string): string | null {
  const folder = placesIn(workshop)[farm];
  return typeof folder === 'string' && isFolder(folder) ? folder : null;
}

/** Notes that a farm's copies lie in a folder, for the day on which farm.yaml cannot be read. */
export function rememberPlace(farm: string, workshop: string, folder: string): void {
  const places = placesIn(workshop);
  if (places[farm] === folder) return;
  mkdirSync(join(workshop, 'backups'), { recursive: true });
  writeWhole(placesFile(workshop), `${JSON.stringify({ ...places, [farm]: folder }, null, 2)}\n`);
}

/** A farm's name as the name of a folder on any disk. */
export function folderName(name: string): string {
  const plain = name.normalize('NFC').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, ''); // prettier-ignore
  return plain.slice(0, 60) || 'farm';
}

/** The copies in a folder, oldest first. */
export function copiesIn(folder: string): FarmCopy[] {
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder)
    .filter((name) => name.endsWith(ENDING))
    .map((name) => name.slice(0, -ENDING.length));
  return names.sort().flatMap((name) => {
    const day = dayNumber(NAME.exec(name)?.[1] ?? '');
    return day === null ? [] : [{ name, day }];
  });
}

/** The path of a copy. */
export const copyPath = (folder: string, name: string): string => join(folder, `${name}${ENDING}`);

/**
 * Makes a copy of the farm folder: written whole beside its place, read back, and only then put there, over one of the same
 * name. Throws where it could not be made; then nothing of it is left and what stood stands.
 */
export async function makeCopy(farm: string, folder: string, name: string, now_ms: number): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const side = join(folder, `.${name}.${process.pid}.part`);
  rmSync(side, { force: true });
  try {
    await zipFolder(farm, side, now_ms);
    await checkZip(side);
    renameSync(side, copyPath(folder, name));
    syncFolder(folder);
  } catch (error) {
    rmSync(side, { force: true });
    throw error;
  }
}

/** Takes away what the rule does not keep, and what copies that were cut off have left. */
export function dropOld(folder: string, today: number): void {
  for (const left of readdirSync(folder).filter((name) => /^\.\d{4}-.*\.part$/.test(name)))
    if (!isFresh(join(folder, left))) rmSync(join(folder, left), { force: true });
  for (const name of copiesToDrop(copiesIn(folder), today).slice(0, MOST_DROPPED))
    rmSync(copyPath(folder, name), { force: true });
}

/** Whether another desk may be writing it just now. */
const isFresh = (path: string) =>
  Math.abs(Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0)) < LONGEST_COPY_ms;

/** When the newest file below a folder was changed, ms. */
export function lastChange_ms(farm: string): number {
  const names = readdirSync(farm, { recursive: true, encoding: 'utf8' });
  const times = names.map((name) => statSync(join(farm, name), { throwIfNoEntry: false })?.mtimeMs ?? 0);
  return times.reduce((newest, one) => Math.max(newest, one), 0);
}

/** Whether two folders lie on the same disk; one that is not there yet counts as its nearest folder above. */
export function onSameDisk(one: string, other: string): boolean {
  return diskOf(one) === diskOf(other);
}

function diskOf(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  return found ? found.dev : diskOf(resolve(path, '..'));
}

const isFolder = (path: string) => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way === '' || (!way.startsWith('..') && !isAbsolute(way));
}
