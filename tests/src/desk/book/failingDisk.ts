// This machine's disk, made to fail: full after so many bytes, or failing at a step that a test picks.
import { appendFileSync, statSync } from 'node:fs';
import { thisDisk, type Disk } from '../../../../src/desk/book/disk.ts';

/** A disk with a limit that a test moves. */
export interface SmallDisk extends Disk {
  /** Bytes that may still be written. */
  room: number;
  /** Whether even cutting a file fails. */
  isStuck: boolean;
  /** How often it failed. */
  failures: number;
}

/** An error as the system gives it. */
export function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: a disk made to fail`), { code });
}

/** A disk that writes what there is room for and then says that it is full, as a real one does. */
export function smallDisk(room = Number.POSITIVE_INFINITY): SmallDisk {
  const disk: SmallDisk = {
    room,
    isStuck: false,
    failures: 0,
    async append(path, bytes, from) {
      const size = statSync(path, { throwIfNoEntry: false })?.size ?? null;
      if (bytes.length <= disk.room || size !== from) {
        await thisDisk.append(path, bytes, from);
        disk.room -= bytes.length;
        return;
      }
      appendFileSync(path, bytes.subarray(0, disk.room));
      disk.room = 0;
      disk.failures += 1;
      throw systemError('ENOSPC');
    },
    async cut(path, to) {
      if (disk.isStuck) {
        disk.failures += 1;
        throw systemError('EIO');
      }
      return thisDisk.cut(path, to);
    },
    makeFolder: (path) => thisDisk.makeFolder(path),
  };
  return disk;
}
