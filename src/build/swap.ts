// Puts a finished site in the place of the standing one: whole, or not at all.
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';

const OLD = 'old-';
const BUILD = 'build-';

/** The two acts on the disk that a swap is made of, so that a test can cut it in between. */
export interface Disk {
  rename(from: string, to: string): void;
  remove(path: string): void;
}

/** The real disk. */
export const thisDisk: Disk = {
  rename: renameSync,
  remove: (path) => rmSync(path, { recursive: true, force: true }),
};

/**
 * Swaps `side` in as `dist`. The standing site waits in `workshop` until the new one stands, and comes
 * back if that fails. Both folders must be on one disk, since a rename is whole and a copy is not.
 */
export function swapIn(side: string, dist: string, workshop: string, stamp: string, disk = thisDisk): void {
  mkdirSync(workshop, { recursive: true });
  const old = join(workshop, `${OLD}${stamp}`);
  const stood = existsSync(dist);
  if (stood) disk.rename(dist, old);
  try {
    disk.rename(side, dist);
  } catch (error) {
    if (stood) disk.rename(old, dist);
    throw error;
  }
  if (stood) disk.remove(old);
}

/**
 * Mends what a build that was cut off has left: a site that was set aside comes back where none
 * stands, and builds that nobody finished go. Only for the holder of the lock. True where a site came back.
 */
export function recover(dist: string, workshop: string, disk = thisDisk): boolean {
  if (!existsSync(workshop)) return false;
  const left = readdirSync(workshop).sort();
  const old = left.filter((name) => name.startsWith(OLD));
  const newest = old.at(-1);
  const back = newest !== undefined && !existsSync(dist);
  if (back) disk.rename(join(workshop, newest), dist);
  for (const name of left.filter((one) => one.startsWith(OLD) || one.startsWith(BUILD)))
    disk.remove(join(workshop, name));
  return back;
}

/** The side folder of a build. */
export function sideFolder(workshop: string, stamp: string): string {
  return join(workshop, `${BUILD}${stamp}`);
}
