// Puts a table in the place of the one that was read: whole or not at all, and never over somebody else's save.
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { syncFolder } from '../wholeFile.ts';

/** Thrown where the file is no longer the one that was read; nothing was written. */
export class OtherTable extends Error {}

/** A mark of a file's bytes; null where there is no file. */
export function markOfBytes(bytes: Uint8Array | null): string | null {
  return bytes && createHash('sha256').update(bytes).digest('base64url').slice(0, 22);
}

/**
 * Writes `bytes` beside the file, sees them onto the disk and renames them into its place, if the file still has the
 * mark `was` (null: there is none). The file's own mode stays, and a link goes on naming the file that it names.
 */
export function replaceTable(path: string, bytes: Uint8Array, was: string | null): void {
  const place = was === null ? path : realpathSync(path);
  const side = sideOf(place);
  rmSync(side, { force: true });
  try {
    writeSide(side, bytes);
    if (was !== null) chmodSync(side, statSync(place).mode & 0o7777);
    if (was === null) takeFree(side, place);
    else {
      // The last look is right before the rename: a spreadsheet that saves takes longer than what lies between.
      if (markOfBytes(readFileSync(place)) !== was) throw new OtherTable(path);
      renameSync(side, place);
    }
  } catch (error) {
    rmSync(side, { force: true });
    throw codeOf(error) === 'ENOENT' && was !== null ? new OtherTable(path) : error;
  }
  syncFolder(dirname(place));
}

/** Where a table is written before it takes its place. */
const sideOf = (place: string) => join(dirname(place), `.${basename(place)}.part`);

/** Takes away what a sudden stop left of a table that was never put in its place. */
export function clearSide(path: string): void {
  rmSync(sideOf(existsSync(path) ? realpathSync(path) : path), { force: true });
}

function writeSide(side: string, bytes: Uint8Array): void {
  const file = openSync(side, 'wx', 0o666);
  try {
    writeFileSync(file, bytes);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A second name for the new file fails where the place is taken, which a rename would not. */
function takeFree(side: string, place: string): void {
  try {
    linkSync(side, place);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw new OtherTable(place);
    // Sticks and some network folders know no second names.
    renameSync(side, place);
    return;
  }
  rmSync(side);
}

const codeOf = (error: unknown) => (error instanceof Error && 'code' in error ? String(error.code) : '');
