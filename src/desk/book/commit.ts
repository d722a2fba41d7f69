// Puts rows onto the disk: the journal first, then the farm's file; what fails half-way is taken back.
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import { MILKINGS_FOLDER } from '../../farm/milkingFiles.ts';
import { codeOf, OtherLength, type Disk } from './disk.ts';
import { journalLine, type JournalEntry } from './journal.ts';
import type { MonthFile } from './monthFile.ts';

/** Rows for one file. */
export interface Group {
  readonly to: MonthFile;
  readonly entries: readonly JournalEntry[];
}

/** The farm's disk, as rows go onto it. */
export interface Committer {
  /** Takes back what an earlier failure left, if anything. Nothing is to be read or written before. */
  readonly clean: () => Promise<void>;
  /**
   * Writes groups into the journal's file and each into its own, in this order, all of them seen onto the disk.
   * Says how many groups are kept; `error` is what stopped the next one, of which nothing stays.
   */
  commit(journal: string, groups: readonly Group[]): Promise<{ kept: number; error: unknown }>;
  /** Puts rows back that the journal has already. */
  putBack(group: Group): Promise<void>;
}

/** Thrown where a file of the milk book is there and lets itself not be written: locked, or somebody else's. */
export class Locked extends Error {
  readonly file: string;
  constructor(file: string, cause: unknown) {
    super(`${file} cannot be written: ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
    this.file = file;
  }
}

const LOCKED_CODES = ['EACCES', 'EPERM', 'EBUSY'];

/** What could not be taken back, since the disk failed in that too: it is tried again before anything is written. */
interface Leftover {
  readonly path: string;
  readonly from: number | null;
  readonly bytes: Uint8Array;
}

/** Opens a farm's disk for writing. */
export function openCommitter(farm: string, disk: Disk): Committer {
  const { append, takeBack, clean } = openAppending(disk);
  const appendRows = async ({ to, entries }: Group) => {
    try {
      await append(join(farm, to.file), Buffer.from(textOf(to, entries)), to.size);
    } catch (error) {
      throw to.size !== null && LOCKED_CODES.includes(codeOf(error)) ? new Locked(to.file, error) : error;
    }
  };
  return {
    clean,
    async commit(journal, groups) {
      const path = join(farm, journal);
      const texts = groups.map(({ entries }) => entries.map(journalLine).join(''));
      const bytes = Buffer.from(texts.join(''));
      let from: number | null;
      try {
        await disk.makeFolder(join(farm, DESK_FOLDER));
        await disk.makeFolder(join(farm, MILKINGS_FOLDER));
        from = sizeOf(path);
        await append(path, bytes, from);
      } catch (error) {
        return { kept: 0, error };
      }
      let end = from ?? 0;
      for (const [index, group] of groups.entries()) {
        try {
          await appendRows(group);
        } catch (error) {
          const unkept = bytes.subarray(end - (from ?? 0));
          await takeBack({ path, from: end === 0 ? null : end, bytes: unkept });
          return { kept: index, error };
        }
        end += Buffer.byteLength(texts[index] ?? '');
      }
      return { kept: groups.length, error: null };
    },
    async putBack(group) {
      await disk.makeFolder(join(farm, MILKINGS_FOLDER));
      await appendRows(group);
    },
  };
}

/** Appending that takes back what it could not finish, at once or, where the disk fails in that too, later. */
function openAppending(disk: Disk) {
  let leftovers: Leftover[] = [];
  const takeBack = async (left: Leftover) => {
    try {
      await undo(disk, left);
    } catch {
      leftovers.push(left);
    }
  };
  return {
    takeBack,
    append: async (path: string, bytes: Uint8Array, from: number | null) => {
      try {
        await disk.append(path, bytes, from);
      } catch (error) {
        // Where somebody else was quicker nothing of ours is there to be taken back.
        if (!(error instanceof OtherLength)) await takeBack({ path, from, bytes });
        throw error;
      }
    },
    clean: async () => {
      const before = leftovers;
      leftovers = [];
      // The last one written goes first.
      for (const left of before.reverse()) await takeBack(left);
      if (leftovers[0]) await undo(disk, leftovers[0]);
    },
  };
}

/** Rows as they go to the end of a file. */
function textOf({ before, lineEnd }: MonthFile, entries: readonly JournalEntry[]): string {
  return before + entries.map(({ row }) => row + lineEnd).join('');
}

function sizeOf(path: string): number | null {
  return statSync(path, { throwIfNoEntry: false })?.size ?? null;
}

/** Cuts off what was written of some bytes; what somebody else has written there since is left alone. */
async function undo(disk: Disk, { path, from, bytes }: Leftover): Promise<void> {
  const size = sizeOf(path);
  // Nothing was written: there is nothing to take back from a file that may be locked.
  if (size === null || size < (from ?? 0) || size === from) return;
  const written = readFileSync(path).subarray(from ?? 0);
  if (written.length > bytes.length || !written.equals(bytes.subarray(0, written.length))) return;
  await disk.cut(path, from);
}
