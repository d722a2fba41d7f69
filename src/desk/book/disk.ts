// The disk as the Milk book's writer needs it, in few words, so that a test can hand in one that fails.
import { constants } from 'node:fs';
import { mkdir, open, stat, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Where writing ended: the file is as long as `size`, and all of it is on the disk itself. */
export interface Disk {
  /**
   * Puts bytes at the end of a file that is as long as `from`, and sees them onto the disk; a new file is made where
   * `from` is null, and its folder sees it too. Throws where that fails; how much was written is then open.
   */
  append(path: string, bytes: Uint8Array, from: number | null): Promise<void>;
  /** Cuts a file to a length, or takes it away (null), and sees that onto the disk. */
  cut(path: string, to: number | null): Promise<void>;
  /** Makes a folder straight below one that is there. */
  makeFolder(path: string): Promise<void>;
}

/** Thrown where a file is not as long as the writer last saw it: somebody else has written. */
export class OtherLength extends Error {}

/** This machine's disk. */
export const thisDisk: Disk = {
  async append(path, bytes, from) {
    const flags = constants.O_WRONLY | constants.O_APPEND;
    const file = await open(path, from === null ? flags | constants.O_CREAT | constants.O_EXCL : flags).catch(
      (error: unknown) => {
        throw ['EEXIST', 'ENOENT'].includes(codeOf(error)) ? new OtherLength(path) : error;
      },
    );
    try {
      if (from !== null && (await file.stat()).size !== from) throw new OtherLength(path);
      await file.appendFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    if (from === null) await syncFolder(dirname(path));
  },
  async cut(path, to) {
    if (to === null) {
      await unlink(path).catch(ifMissing);
      return syncFolder(dirname(path));
    }
    const file = await open(path, 'r+');
    try {
      await file.truncate(to);
      await file.sync();
    } finally {
      await file.close();
    }
  },
  async makeFolder(path) {
    if (await stat(path).catch(() => null)) return;
    await mkdir(path).catch(ifThere);
    await syncFolder(dirname(path));
  },
};

const ifMissing = (error: unknown) => {
  if (codeOf(error) !== 'ENOENT') throw error;
};
const ifThere = (error: unknown) => {
  if (codeOf(error) !== 'EEXIST') throw error;
};

// A new name is on the disk only once its folder is. Some systems open no folders; there is nothing more to do then.
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r').catch(() => null);
  if (folder === null) return;
  try {
    await folder.sync();
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'ENOTSUP', 'EBADF', 'EISDIR'].includes(codeOf(error))) throw error;
  } finally {
    await folder.close();
  }
}

/** The system's short word for what went wrong; empty where it has none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** Whether a disk, or somebody's share of it, is full. */
export function isFull(error: unknown): boolean {
  return ['ENOSPC', 'EDQUOT', 'EFBIG'].includes(codeOf(error));
}
