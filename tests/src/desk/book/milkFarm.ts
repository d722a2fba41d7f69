// A small farm whose Milk book a test writes, and what the farm's own reader finds in it afterwards.
import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished } from 'vitest';
import { isoDate } from '../../../../shared/calendar/day.ts';
import { markOf } from '../../../../shared/book/mark.ts';
import type { BookEntry, EntryAnswer } from '../../../../shared/book/types.ts';
import type { MilkingRow } from '../../../../shared/herd/types.ts';
import { openKeeper, type Keeper, type KeeperSettings } from '../../../../src/desk/book/keeper.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';
import { farmWith, NOW_MS, temporaryFolder, type Files } from '../../farm/farmFolder.ts';

/** The file of the month in which the tests enter milk. */
export const MONTH_FILE = 'milkings/2026-05.csv';
export const HEADING_LINE = 'date,milking,doe,amount,unit,use,note,entered\n';

/** A farm with two does and an empty month. */
export function milkFarm(changes: Files = {}): string {
  return farmWith({ [MONTH_FILE]: HEADING_LINE, ...changes }, temporaryFolder());
}

/** A keeper that looks at files at once and tells the test what it tells the coordinator. */
export interface TestKeeper extends Keeper {
  readonly farm: string;
  readonly told: string[];
  /** One entry after the other, each in a post of its own, at the keeper's clock. */
  enter(...entries: readonly BookEntry[]): Promise<EntryAnswer[]>;
}

/** Opens a keeper over a farm; it is closed at the end of the test. */
export async function keeperOver(farm: string, more: Partial<KeeperSettings> = {}): Promise<TestKeeper> {
  const told: string[] = [];
  const settings = { now_ms: () => NOW_MS, complain: (text: string) => void told.push(text), quiet_ms: 10, watching: { settle_ms: 60_000, look_ms: 60_000 }, ...more }; // prettier-ignore
  const keeper = await openKeeper({ farm, ...settings });
  onTestFinished(() => keeper.close());
  const enter = async (...entries: readonly BookEntry[]) => {
    const answers: EntryAnswer[] = [];
    for (const one of entries)
      answers.push(...(await keeper.write({ sent_ms: settings.now_ms(), entries: [one] })));
    return answers;
  };
  return { ...keeper, farm, told, enter };
}

/** An id as a phone makes one. */
export function newId(): string {
  return randomBytes(16).toString('base64url');
}

/** An entry of 7 cups of Clover's on the morning of 21 May, entered at the tests' noon, changed as asked. */
export function entryOf(changes: Partial<BookEntry> = {}): BookEntry {
  return {
    id: newId(),
    doe: 'clover',
    date: '2026-05-21',
    milking: 'am',
    amount: '7',
    unit: 'cup',
    use: 'kept',
    note: '',
    sure: false,
    saw: null,
    entered_ms: NOW_MS,
    ...changes,
  };
}

/** The mark of a kept answer. */
export function markIn(answer: EntryAnswer | undefined): string {
  if (!answer?.kept) throw new Error(`not kept: ${JSON.stringify(answer)}`);
  return answer.mark;
}

/** The rows that the farm's own reader finds; a farm that cannot be read fails the test with what is wrong. */
export function rowsIn(farm: string, now_ms = NOW_MS): readonly MilkingRow[] {
  const reading = readFarm(farm, { now_ms });
  expect(reading.ok ? [] : reading.faults).toEqual([]);
  return reading.ok ? reading.book.rows : [];
}

/** A row as a test compares it: milking, amount, use, and the minute in which it was written. */
export function plainRow(row: MilkingRow): string {
  const { doe, day, milking, amount, use, entered_ms } = row;
  const much = amount ? `${amount.num / amount.den} ${amount.unit}` : 'struck out';
  const minute = entered_ms === null ? 'no time' : Math.floor(entered_ms / 60_000);
  return `${isoDate(day)} ${milking} ${doe} ${much} ${use} ${minute}`;
}

/** Marks of all rows in the farm. */
export function marksIn(farm: string, now_ms = NOW_MS): (string | null)[] {
  return rowsIn(farm, now_ms).map((row) => markOf(row));
}

/** A file's text; empty where there is none. */
export function textOf(farm: string, file: string): string {
  return existsSync(join(farm, file)) ? readFileSync(join(farm, file), 'utf8') : '';
}
