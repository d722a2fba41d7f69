// The desk's journal: every entry that it took, in the order of taking, so that a file that is saved over loses none.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DESK_FOLDER } from '../../build/fingerprint.ts';

/** A row that the desk has promised to keep. */
export interface JournalEntry {
  /** Of the entry; the same id is never a second row. */
  readonly id: string;
  /** Where it was written, relative to the farm folder. */
  readonly file: string;
  /** The row's exact text, without a line break. */
  readonly row: string;
  /** Mark of the row, as it was told to who entered it. */
  readonly mark: string;
  /** Mark of the row that somebody had before them, and of the one that truly stood. */
  readonly saw: string | null;
  readonly stood: string | null;
  readonly sure: boolean;
}

/** What a journal held when it was opened. */
export interface JournalReading {
  readonly entries: readonly JournalEntry[];
  /** Files whose last line was torn, and how long each is without it. */
  readonly torn: readonly { readonly file: string; readonly size: number }[];
  /** Whole lines that cannot be read, as `file:line`. */
  readonly damaged: readonly string[];
}

const NAME = /^entries-\d{4}\.jsonl$/;
const LINE_FEED = 0x0a;

/** The journal's file of a year, relative to the farm folder. */
export function journalFile(year: string): string {
  return `${DESK_FOLDER}/entries-${year}.jsonl`;
}

/** An entry as its line. */
export function journalLine({ id, file, row, mark, saw, stood, sure }: JournalEntry): string {
  return `${JSON.stringify({ id, file, row, mark, saw, stood, sure })}\n`;
}

/** Reads all years of a farm's journal, oldest first. A line without its end was torn by a sudden stop. */
export function readJournal(farm: string): JournalReading {
  const entries: JournalEntry[] = [];
  const torn: { file: string; size: number }[] = [];
  const damaged: string[] = [];
  for (const name of namesIn(join(farm, DESK_FOLDER))) {
    const file = `${DESK_FOLDER}/${name}`;
    const bytes = readFileSync(join(farm, file));
    const size = bytes.lastIndexOf(LINE_FEED) + 1;
    if (size < bytes.length) torn.push({ file, size });
    const lines = bytes.subarray(0, size).toString('utf8').split('\n');
    lines.forEach((line, index) => {
      if (line === '') return;
      const entry = entryIn(line);
      if (entry) entries.push(entry);
      else damaged.push(`${file}:${index + 1}`);
    });
  }
  return { entries, torn, damaged };
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => NAME.test(name))
      .sort();
  } catch {
    return [];
  }
}

function entryIn(line: string): JournalEntry | null {
  try {
    const value = JSON.parse(line) as JournalEntry;
    const texts = [value.id, value.file, value.row, value.mark];
    const marks = [value.saw, value.stood];
    const isSound =
      texts.every((text) => typeof text === 'string') &&
      marks.every((mark) => mark === null || typeof mark === 'string');
    return isSound ? value : null;
  } catch {
    return null;
  }
}
