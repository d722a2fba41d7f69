// Writes a file so that after a power cut it is there whole, or as it was before.
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** Writes `bytes` beside `path` first and puts the file in its place by one rename. `mode` as of `chmod`. */
export function writeWhole(path: string, bytes: string | Uint8Array, mode = 0o666): void {
  const side = `${path}.part`;
  rmSync(side, { force: true });
  const file = openSync(side, 'wx', mode);
  try {
    writeFileSync(file, bytes);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(side, path);
  syncFolder(dirname(path));
}

/** Puts a folder's list of names on the disk; where the system cannot, the names come with its next own sync. */
export function syncFolder(folder: string): void {
  try {
    const open = openSync(folder, 'r');
    try {
      fsyncSync(open);
    } finally {
      closeSync(open);
    }
  } catch {
    // Some network folders and sticks refuse it.
  }
}
