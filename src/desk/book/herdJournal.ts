// The journal of changes to the herd's tables: every line as it was and as it became, so that nothing is lost.
import { stat, open } from 'node:fs/promises';
import { join } from 'node:path';
import type { HerdFile } from '../../../shared/book/herdBook.ts';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import type { Disk } from './disk.ts';

/** A change as it is written down. It is written before the table: it holds once the table has the mark `after`. */
export interface HerdRecord {
  /** When, ISO 8601 in UTC. */
  readonly at: string;
  readonly file: HerdFile;
  /** The line before and after; null where there was or is none. */
  readonly old: string | null;
  readonly new: string | null;
  /** Marks of the whole file. */
  readonly before: string | null;
  readonly after: string;
}

const LINE_FEED = 0x0a;

/** The journal's file of a year, relative to the farm folder. */
export function herdJournalFile(year: string): string {
  return `${DESK_FOLDER}/herd-${year}.jsonl`;
}

/** Puts a record at the end of its year's journal and sees it onto the disk. A line torn by a sudden stop is cut first. */
export async function recordChange(farm: string, record: HerdRecord, disk: Disk): Promise<void> {
  const path = join(farm, herdJournalFile(record.at.slice(0, 4)));
  await disk.makeFolder(join(farm, DESK_FOLDER));
  const { size, whole } = await lengthOf(path);
  // A torn record is of a change that was never made: the table is written only after it.
  if (whole !== size) await disk.cut(path, whole);
  try {
    await disk.append(path, Buffer.from(`${JSON.stringify(record)}\n`), whole);
  } catch (error) {
    // What was written of it goes again where the disk lets it; else the next record cuts it.
    await disk.cut(path, whole).catch(() => undefined);
    throw error;
  }
}

/** How long a journal is, and how long without a torn last line; null where there is none. */
async function lengthOf(path: string): Promise<{ size: number | null; whole: number | null }> {
  const stats = await stat(path).catch(() => null);
  if (!stats) return { size: null, whole: null };
  const file = await open(path, 'r');
  try {
    let whole = stats.size;
    const byte = Buffer.alloc(1);
    while (whole > 0) {
      await file.read(byte, 0, 1, whole - 1);
      if (byte[0] === LINE_FEED) break;
      whole -= 1;
    }
    return { size: stats.size, whole };
  } finally {
    await file.close();
  }
}
