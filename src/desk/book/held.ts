// The farm as the Milk book's writer holds it in memory: what its files said last, and what has been written since.
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import { markOf } from '../../../shared/book/mark.ts';
import type { Book, Doe, Farm, MilkingRow, MilkingTime, Treatment, Use } from '../../../shared/herd/types.ts';
import { countedUse } from '../../../shared/herd/treated.ts';
import { dayAt } from '../../farm/entered.ts';
import { MILKINGS_FOLDER } from '../../farm/milkingFiles.ts';
import { readSoundParts, type ReadSettings, type SoundParts } from '../../farm/readFarm.ts';
import { farmOf } from '../../farm/settings.ts';
import { TREATMENTS_FILE } from '../../farm/treatmentsTable.ts';
import { tellFaults } from '../../farm/tell.ts';
import { VISITS_FOLDER } from '../../farm/visitFiles.ts';

/** A milking of one doe. */
export interface Slot {
  readonly doe: string;
  readonly day: number;
  readonly milking: MilkingTime;
}

/** The farm in memory. */
export interface Held {
  readonly farm: Farm;
  /** Everything but the rows. */
  readonly herd: Omit<Book, 'rows'>;
  /** Null where does.csv has never been readable: nobody can say who is a doe. */
  readonly isDoe: ((id: string) => boolean) | null;
  /** The day that a setting fixes; null where the clock does. */
  readonly fixedDay: number | null;
  /** Why the files cannot be read, in the coordinator's words. */
  readonly faults: string | null;
  /** Whether a row that is not to be seen in a file may stand there all the same, behind a fault. */
  readonly mayHide: (file: string, month: string) => boolean;
  readonly rows: MilkingRow[];
  /** All rows of a milking, in the order met. */
  slot(slot: Slot): readonly MilkingRow[];
  add(row: MilkingRow): void;
}

/** A milking as a key of a map. */
export function slotKey({ doe, day, milking }: Slot): string {
  return `${day} ${milking} ${doe}`;
}

/** The row that counts of a milking, a struck-out one too; null where there is none. */
export function latest(rows: readonly MilkingRow[]): MilkingRow | null {
  let last: MilkingRow | null = null;
  for (const row of rows) if (last === null || writtenAt(row) > writtenAt(last)) last = row;
  return last;
}

const writtenAt = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;

/** Mark of the row that counts of a milking, a struck-out one too. */
export function standingMark(held: Held, slot: Slot): string | null {
  return markOf(latest(held.slot(slot)));
}

/** The farm's day just now. */
export function todayOf(held: Held, now_ms: number): number {
  return held.fixedDay ?? dayNumber(dayAt(now_ms, held.farm.timeZone)) ?? 0;
}

/**
 * Reads the farm. What its files do not say because of a fault is taken from `last`, the reading before: people mend
 * files while others milk.
 */
export function readHeld(dir: string, settings: ReadSettings, last: Held | null): Held {
  const parts = readSoundParts(dir, settings);
  const faulty = new Set(parts.faults.map(({ file }) => file));
  // A visit keeps no milk out of the book, and its file may carry a school's name, which is no phone's business.
  const ofBook = parts.faults.filter(({ file }) => file.split('/')[0] !== VISITS_FOLDER);
  const isTorn = ['.', 'farm.yaml', 'does.csv', MILKINGS_FOLDER].some((file) => faulty.has(file));
  const noSettings = faulty.has('.') || faulty.has('farm.yaml');
  const herd = {
    does: parts.faultyIds === null && last ? last.herd.does : parts.book.does,
    ...restOf(parts, faulty, last),
  };
  const held = openHeld({
    farm: noSettings && last ? last.farm : farmFrom(parts),
    herd,
    isDoe: parts.faultyIds === null ? (last?.isDoe ?? null) : knows(parts.book.does, parts.faultyIds),
    fixedDay: noSettings && last ? last.fixedDay : parts.asOf.asOfFrom === 'clock' ? null : parts.asOf.asOf,
    faults: ofBook.length > 0 ? tellFaults(ofBook, null) : null,
    mayHide: (file, month) => isTorn || faulty.has(file) || faulty.has(`${MILKINGS_FOLDER}/${month}.csv`),
  });
  for (const row of parts.book.rows) held.add(row);
  // A row that cannot be read just now is more likely being worked on than gone; with it its corrections.
  const unread = (last?.rows ?? []).filter(
    (row) => (isTorn || faulty.has(row.file)) && held.slot(row).length === 0,
  );
  for (const row of unread) held.add(row);
  return held;
}

function restOf(
  { book }: SoundParts,
  faulty: ReadonlySet<string>,
  last: Held | null,
): Omit<Book, 'rows' | 'does'> {
  const before = last?.herd;
  const noKiddings = faulty.has('kiddings.csv') || faulty.has('does.csv');
  // While the file has a slip, a treatment that it may only seem to have lost still holds.
  const treatments = faulty.has(TREATMENTS_FILE)
    ? eachOnce([...(book.treatments ?? []), ...(before?.treatments ?? [])])
    : book.treatments;
  return {
    kiddings: noKiddings && before ? before.kiddings : book.kiddings,
    ...(treatments && { treatments }),
    ...(book.milkTests && { milkTests: book.milkTests }),
  };
}

function eachOnce(treatments: readonly Treatment[]): Treatment[] {
  const byText = new Map<string, Treatment>();
  for (const one of treatments) {
    const key = JSON.stringify([one.doe, one.from, one.until, one.what]);
    if (!byText.has(key)) byText.set(key, one);
  }
  return [...byText.values()];
}

function knows(does: readonly Doe[], faultyIds: readonly string[]): (id: string) => boolean {
  const ids = new Set([...does.map(({ id }) => id), ...faultyIds]);
  return (id) => ids.has(id);
}

// A farm whose farm.yaml could never be read: this machine stands on the farm, so its clock is the farm's.
function farmFrom({ settings: { fields } }: SoundParts): Farm {
  const usual = {
    name: '',
    timeZone: new Intl.DateTimeFormat('en').resolvedOptions().timeZone,
    units: 'us',
    recordUnit: 'cup',
    milkings: { am: '06:30', pm: '17:30' },
  } as const;
  return farmOf({ ...usual, ...fields });
}

function openHeld(parts: Omit<Held, 'rows' | 'slot' | 'add'>): Held {
  const rows: MilkingRow[] = [];
  const slots = new Map<string, MilkingRow[]>();
  const treatments = Map.groupBy(parts.herd.treatments ?? [], ({ doe }) => doe);
  return {
    ...parts,
    rows,
    slot: (slot) => slots.get(slotKey(slot)) ?? [],
    add(added) {
      const row = recounted(added, treatments.get(added.doe) ?? []);
      rows.push(row);
      const own = slots.get(slotKey(row));
      if (own) own.push(row);
      else slots.set(slotKey(row), [row]);
    },
  };
}

// A row may come from a reading that knew of other treatments.
function recounted(row: MilkingRow, treatments: readonly Treatment[]): MilkingRow {
  if (!row.unsaid) return row;
  const use = countedUse(null, treatments, row.doe, row.day);
  return use === row.use ? row : { ...row, use };
}

/**
 * A row that has just been written, or that hides behind a fault, as a reader will see it. `use` is null where its cell
 * is empty: `add` then counts it as the treatments say.
 */
export function heldRow(
  slot: Slot,
  { use, ...rest }: Pick<MilkingRow, 'amount' | 'note' | 'entered_ms' | 'file'> & { use: Use | null },
): MilkingRow {
  return {
    doe: slot.doe,
    day: slot.day,
    milking: slot.milking,
    ...rest,
    ...(use === null ? { use: 'kept', unsaid: true } : { use }),
    line: 0,
  };
}

/** The month of a day, `YYYY-MM`. */
export function monthOf(day: number): string {
  return isoDate(day).slice(0, 7);
}
