// Puts a copy of the farm folder in its place: whole, after a copy of what stands, and mended where it was cut off.
import { closeSync, existsSync, fsyncSync, lstatSync, mkdirSync, openSync, readdirSync, readlinkSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'; // prettier-ignore
import { basename, dirname, join, resolve } from 'node:path';
import { PlainError } from '../../build/plainError.ts';
import { syncFolder } from '../wholeFile.ts';
import { copiesIn, copyPath, makeCopy } from './copies.ts';
import { checkZip, DamagedCopy, isLeftOut, type CheckedZip } from './zipFolder.ts';

/** The acts on the disk that a swap is made of, so that a test can cut it in between. */
export interface SwapDisk {
  rename(from: string, to: string): void;
  remove(path: string): void;
}

const thisDisk: SwapDisk = {
  rename: renameSync,
  remove: (path) => rmSync(path, { recursive: true, force: true }),
};

/** Which copy, of which farm. */
export interface Restoring {
  readonly farm: string;
  /** The folder of copies. */
  readonly folder: string;
  /** The copy's name: a date, or a date with a time. */
  readonly name: string;
  readonly now_ms: number;
  /** Today on the farm's clock and the time of day as six digits, for the name of the copy of what stands. */
  readonly today: string;
  readonly time: string;
}

/** What a restore has done. */
export interface Restored {
  /** The name of the copy that was made of what stood before; null where nothing stood. */
  readonly before: string | null;
  readonly files: number;
}

/**
 * Restores a copy. Throws PlainError where there is no such copy, where it is damaged, or where what stands could not be
 * copied first; then the farm folder is as it was.
 */
export async function restoreCopy(restoring: Restoring, disk: SwapDisk = thisDisk): Promise<Restored> {
  const { folder, name, now_ms } = restoring;
  const farm = realPath(restoring.farm);
  const zip = await checked(folder, name);
  const before = await copyOfWhatStands(farm, restoring);
  const sides = sidesOf(farm, `${now_ms}-${process.pid}`);
  try {
    unpack(zip, sides.coming);
  } catch (error) {
    disk.remove(sides.coming);
    const { code, message } = error as NodeJS.ErrnoException;
    throw new PlainError(
      `The copy could not be unpacked (${code ?? message}). The farm folder is as it was.`,
    );
  }
  if (existsSync(farm)) disk.rename(farm, sides.going);
  disk.rename(sides.coming, farm);
  syncFolder(dirname(farm));
  tidyUp(farm, sides.going, disk);
  return { before, files: zip.files.length };
}

/**
 * Mends what a restore that was cut off has left: before the swap the farm folder stands and the half unpacked copy goes; within
 * the swap the folder from before comes back. True where it came back.
 */
export function mendRestore(farm: string, disk: SwapDisk = thisDisk): boolean {
  const real = realPath(farm);
  const parent = dirname(real);
  if (!existsSync(parent)) return false;
  const left = readdirSync(parent).sort();
  const { coming, going } = sidesOf(real, '');
  const named = (start: string) => left.filter((name) => name.startsWith(basename(start))).map((name) => join(parent, name)); // prettier-ignore
  const newest = named(going).at(-1);
  const back = newest !== undefined && !existsSync(real);
  if (back) disk.rename(newest, real);
  for (const one of named(going)) if (existsSync(one)) tidyUp(real, one, disk);
  for (const one of named(coming)) disk.remove(one);
  return back;
}

/** What the farm folder's path leads to, also in the moment when that is not there. */
function realPath(farm: string): string {
  if (existsSync(farm)) return realpathSync(farm);
  const link = lstatSync(farm, { throwIfNoEntry: false })?.isSymbolicLink();
  return link ? resolve(dirname(farm), readlinkSync(farm)) : farm;
}

/** Beside the farm folder, so that the swap is two renames on one disk. */
const sidesOf = (farm: string, stamp: string) => ({
  coming: join(dirname(farm), `.${basename(farm)}-restoring-${stamp}`),
  going: join(dirname(farm), `.${basename(farm)}-replaced-${stamp}`),
});

/** Carries over what no copy holds, and takes away the folder from before: all else of it is in a copy. */
function tidyUp(farm: string, going: string, disk: SwapDisk): void {
  if (!existsSync(going)) return;
  for (const name of readdirSync(going).filter(isLeftOut))
    if (!existsSync(join(farm, name))) disk.rename(join(going, name), join(farm, name));
  disk.remove(going);
}

async function checked(folder: string, name: string): Promise<CheckedZip> {
  const path = copyPath(folder, name);
  if (!copiesIn(folder).some((copy) => copy.name === name)) {
    const names = copiesIn(folder).map((copy) => copy.name);
    const there = names.length === 0 ? 'There is no copy yet' : `There are: ${names.join(', ')}`;
    throw new PlainError(`There is no copy "${name}" in ${folder}\n${there}.`);
  }
  try {
    return await checkZip(path);
  } catch (error) {
    if (!(error instanceof DamagedCopy)) throw error;
    throw new PlainError(`This copy is damaged (${error.message}): ${path}\nTake another one; "npm run restore -- list" names them. The farm folder is as it was.`); // prettier-ignore
  }
}

async function copyOfWhatStands(farm: string, { folder, now_ms, today, time }: Restoring): Promise<string | null> {
  if (!existsSync(farm) || readdirSync(farm).length === 0) return null;
  const name = `${today}-${time}-before-restore`;
  try {
    await makeCopy(farm, folder, name, now_ms);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new PlainError(
      `What stands in the farm folder could not be copied first (${code ?? message}), so nothing was restored.\nMake room in ${folder} or name another folder with --from, then try again.`,
    );
  }
  return name;
} // prettier-ignore

/** Writes a copy's files and sees all of them onto the disk before anything is swapped. */
function unpack(zip: CheckedZip, target: string): void {
  mkdirSync(target);
  for (const folder of zip.folders) mkdirSync(join(target, folder), { recursive: true });
  for (const file of zip.files) {
    const open = openSync(join(target, file), 'wx');
    try {
      writeFileSync(open, zip.read(file));
      fsyncSync(open);
    } finally {
      closeSync(open);
    }
  }
  for (const folder of ['', ...zip.folders]) syncFolder(join(target, folder));
}
