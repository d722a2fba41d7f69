// Promised rows that are gone from the farm's files are put back, and the coordinator is told.
import { join } from 'node:path';
import { isoDate } from '../../../shared/calendar/day.ts';
import type { RowPutBack } from '../../../shared/book/deskState.ts';
import { Locked, type Committer } from './commit.ts';
import { isFull, type Disk } from './disk.ts';
import { monthOf, type Held } from './held.ts';
import { monthFile, type MonthFile } from './monthFile.ts';
import { mendEnd, missingRows, type Doubt, type Promised } from './recover.ts';

/** What a look for missing rows works on. */
interface Looking {
  readonly farm: string;
  readonly held: Held;
  readonly promised: readonly Promised[];
  readonly committer: Committer;
  /** Rows that are missing when the desk opens may be those that a sudden stop kept from their file. */
  readonly isStart: boolean;
  readonly now_ms: () => number;
  readonly complain: (text: string) => void;
  /** Rows of which the coordinator has heard that they are not put back; added to. */
  readonly told: Set<Promised>;
}

/** What came of it. */
interface PutBack {
  readonly rows: readonly RowPutBack[];
  /** Rows that are in no file that can be read, and may stand behind a fault. */
  readonly hidden: readonly Promised[];
  readonly isThrough: boolean;
}

// Years that a farm has put away stay away.
const LOOKED_AFTER_MS = 400 * 86_400_000;
const MOST_TOLD = 10;

/**
 * Puts missing rows back, each into the file of its month. What may stand behind a fault waits until that is mended;
 * where putting back could do harm the row stays in the journal, and the coordinator hears of it once.
 */
export async function putBackMissing(looking: Looking): Promise<PutBack> {
  const { held, promised, isStart, now_ms, complain } = looking;
  const now = now_ms();
  const recent = promised.filter(({ row }) => (row.entered_ms ?? 0) > now - LOOKED_AFTER_MS);
  const { gone: missing, doubts } = missingRows(recent, held);
  const mayHide = ({ row }: Promised) => held.mayHide(row.file, monthOf(row.day));
  const hidden = missing.filter(mayHide);
  const isDoe = ({ row }: Promised) => held.isDoe?.(row.doe) ?? true;
  const open = missing.filter((one) => !mayHide(one));
  const gone = open.filter(isDoe);
  // With a row of a doe that does.csv does not know the book could not be read.
  const strays = open.filter((one) => !isDoe(one)).map((one) => ({ one, why: 'stray' as const }));
  tellDoubts([...doubts.filter(({ one }) => !mayHide(one)), ...strays], looking);
  const rows: RowPutBack[] = [];
  let isThrough = true;
  for (const [month, own] of Map.groupBy(gone, ({ row }) => monthOf(row.day)))
    try {
      const to = await writeBack(month, own, looking);
      rows.push(...own.map(({ row }) => rowPutBack(row, to.file, now)));
      complain(words(own, to.file, isStart));
    } catch (error) {
      isThrough = false;
      hidden.push(...own);
      complain(
        failureWords(`What was entered for ${month} and is gone (rows: ${own.length})`, 'be put back', error),
      );
    }
  return { rows, hidden, isThrough };
}

/** Puts rows of a month back; where one file is locked, into the next one. */
async function writeBack(
  month: string,
  own: readonly Promised[],
  { farm, committer }: Looking,
): Promise<MonthFile> {
  const locked = new Set<string>();
  for (;;)
    try {
      const to = monthFile(farm, month, locked);
      await committer.putBack({ to, entries: own.map(({ entry }) => entry) });
      return to;
    } catch (error) {
      if (!(error instanceof Locked)) throw error;
      locked.add(error.file);
    }
}

type Why = Doubt['why'] | 'stray';

const DOUBT_WORDS: Readonly<Record<Why, string>> = {
  moved:
    'A row that had been entered stands at another doe, date or milking now, with the same time and amount: somebody moved it by hand. It stays where it is now',
  changed:
    'A row that had been entered was changed by hand, and its time (entered) is empty now. It stays as it is now',
  older:
    'A row that had been entered is gone, and a later one of the same milking has lost its time (entered) or its place, so that the older one would count again. It was not put back',
  stray:
    'A row that had been entered is gone, and its doe is not in does.csv. It was not put back, as the book could not be read with it; once does.csv has the doe under this id again it comes back by itself',
};

function tellDoubts(doubts: readonly { one: Promised; why: Why }[], { told, complain }: Looking): void {
  const fresh = doubts.filter(({ one }) => !told.has(one));
  for (const [why, own] of Map.groupBy(fresh, (doubt) => doubt.why)) {
    const rows = own.map(({ one }) => one);
    complain(
      [
        `${DOUBT_WORDS[why]}. What was entered is kept in the desk's journal (rows: ${rows.length}):`,
        ...listed(rows),
        "If it should count as it was entered, enter it again on the Milk book's page.",
      ].join('\n'),
    );
    for (const one of rows) told.add(one);
  }
}

const rowPutBack = ({ doe, day, milking }: Promised['row'], file: string, at_ms: number): RowPutBack => ({
  file,
  doe,
  date: isoDate(day),
  milking,
  at_ms,
});

function words(gone: readonly Promised[], file: string, isStart: boolean): string {
  const count = gone.length === 1 ? 'One row' : `${gone.length} rows`;
  const why = isStart
    ? `${count} of the Milk book had not reached the files, or had gone from them, when the desk was opened`
    : `${count} that people had entered had gone from the milk book: a file was saved over, put back from an older copy or cut`;
  return [
    `${why}. Nothing is lost: they stand in ${file} now.`,
    ...listed(gone),
    "To take a row out for good, strike it out on the Milk book's page, or leave its line and make its amount empty.",
  ].join('\n');
}

function listed(rows: readonly Promised[]): string[] {
  const more = rows.length > MOST_TOLD ? [`  and ${rows.length - MOST_TOLD} more`] : [];
  return [...rows.slice(0, MOST_TOLD).map(({ entry }) => `  ${entry.row}`), ...more];
}

/** Why something that must be put right cannot be just now. */
export function failureWords(what: string, how: string, error: unknown): string {
  const why = isFull(error) ? 'the disk is full' : error instanceof Error ? error.message : String(error);
  return `${what} must ${how} in the milk book and cannot: ${why}. It is kept in the desk's journal; the desk tries again.`;
}

/** Puts the ends of our files right after a sudden stop. */
export async function mendEnds(farm: string, disk: Disk, promised: readonly Promised[]): Promise<void> {
  for (const [file, own] of Map.groupBy(promised, ({ entry }) => entry.file)) {
    const mending = mendEnd(farm, file, own.map(({ entry }) => entry.row).reverse());
    if (!mending) continue;
    if (mending.cut !== null) await disk.cut(join(farm, file), mending.cut);
    if (mending.add.length > 0) await disk.append(join(farm, file), mending.add, mending.size);
  }
}
