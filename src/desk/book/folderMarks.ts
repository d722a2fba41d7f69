// What the files of a farm look like from outside: another look tells whether somebody has changed one.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { MILKINGS_FOLDER } from '../../farm/milkingFiles.ts';
import { VISITS_FOLDER } from '../../farm/visitFiles.ts';

/** Mark of each file by its path in the farm folder. */
export type Marks = Map<string, string>;

const MOST_ROUNDS = 12;

/** The marks of the files that a farm's reading rests on. */
export function folderMarks(farm: string): Marks {
  const marks: Marks = new Map();
  for (const folder of ['', MILKINGS_FOLDER, VISITS_FOLDER])
    for (const name of namesIn(join(farm, folder))) {
      const file = folder === '' ? name : `${folder}/${name}`;
      const mark = fileMark(farm, file);
      if (mark !== null) marks.set(file, mark);
    }
  return marks;
}

/** The mark of one file; null where there is none. */
export function fileMark(farm: string, file: string): string | null {
  const stats = statsOf(join(farm, file));
  return stats?.isFile() ? `${stats.size} ${stats.mtimeNs} ${stats.ino}` : null;
}

// A link that leads round in a circle, or to where nobody may look, is no file.
function statsOf(path: string) {
  try {
    return statSync(path, { throwIfNoEntry: false, bigint: true });
  } catch {
    return undefined;
  }
}

/** Whether two looks saw the same. */
export function sameMarks(one: Marks, other: Marks): boolean {
  return one.size === other.size && [...one].every(([file, mark]) => other.get(file) === mark);
}

/** Waits until nobody has changed a file for a while, though not for ever: a program writes a file in several goes. */
export async function settledMarks(farm: string, quiet_ms: number): Promise<Marks> {
  let before = folderMarks(farm);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    await sleep(quiet_ms);
    const now = folderMarks(farm);
    if (sameMarks(before, now)) return now;
    before = now;
  }
  return before;
}

function namesIn(path: string): string[] {
  try {
    return readdirSync(path);
  } catch {
    return [];
  }
}
