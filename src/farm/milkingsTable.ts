// Reads one file of the milk book: one row a doe and milking.
import { isoDate } from '../../shared/calendar/day.ts';
import { countedUse } from '../../shared/herd/treated.ts';
import {
  USES,
  type MilkingRow,
  type MilkingTime,
  type Treatment,
  type Use,
} from '../../shared/herd/types.ts';
import type { AmountCell } from './amountCell.ts';
import { dateFault, readDay } from './dates.ts';
import type { DoeNames } from './doeNames.ts';
import type { ReadMoment } from './entered.ts';
import { faultAt, shown, type Findings } from './fault.ts';
import { readDoeCell } from './kiddingsTable.ts';
import { nearestName } from './nearest.ts';
import { openTable, placeIn, walkRows, type Row, type Table } from './table.ts';

/** Headings of the milk book. */
export const MILKING_COLUMNS = {
  required: ['date', 'milking', 'doe', 'amount'],
  optional: ['unit', 'use', 'note', 'entered'],
} as const;

/** What all files of a milk book are read with; readers remember, so share them between files. */
export interface MilkingReaders {
  readonly does: DoeNames;
  readonly amount: (amount: string, unit: string, decimalComma: boolean) => AmountCell;
  readonly moment: ReadMoment;
  readonly day: (text: string) => number | null;
  /** Today, where nothing but the clock says so: later rows are faults. */
  readonly lastDay: number | null;
  /** The treatments of each doe: what an empty use means. */
  readonly treatments: ReadonlyMap<string, readonly Treatment[]>;
  /** Hears of every row of a doe under treatment that does not itself say withheld; null where the cell is empty. */
  readonly onTreated: (row: MilkingRow, written: Use | null) => void;
}

/** A reader of dates that remembers them. */
export function dayReader(): (text: string) => number | null {
  const days = new Map<string, number | null>();
  return (text) => {
    let day = days.get(text);
    if (day === undefined) days.set(text, (day = readDay(text)));
    return day;
  };
}

type AddFault = (column: string, words: Parameters<typeof faultAt>[2]) => void;

/** Reads a file's rows and adds them to `rows`; rows with a fault are left out and named. */
export function readMilkings(
  dir: string,
  file: string,
  readers: MilkingReaders,
  rows: MilkingRow[],
  findings: Findings,
): void {
  const table = openTable(dir, file, MILKING_COLUMNS, findings);
  if (table === null) return;
  if (table === 'empty') {
    findings.notices.push({ file, line: null, text: 'This file is empty.' });
    return;
  }
  const { at, separator } = table.heading;
  const column = (name: string) => at[name] ?? -1;
  const columns = {
    date: column('date'),
    milking: column('milking'),
    doe: column('doe'),
    amount: column('amount'),
    unit: column('unit'),
    use: column('use'),
    note: column('note'),
    entered: column('entered'),
  };
  const decimalComma = separator === ';';
  walkRows(table, findings, (cells, start, line, quoted) => {
    const text = (index: number) => (index < 0 ? '' : (cells[index] ?? '').trim());
    const add: AddFault = (name, words) =>
      findings.faults.push(faultAt(file, placeIn(table, { cells, start, line }, name), words));
    const day = readDate(text(columns.date), columns.date, readers, add);
    const milking = readMilking(text(columns.milking), columns.milking, add);
    const doeText = text(columns.doe);
    const doe =
      readers.does.idOf(doeText) ?? readDoeCell(table, doeText, readers.does, (words) => add('doe', words));
    const cell = readers.amount(text(columns.amount), text(columns.unit), decimalComma);
    if (!cell.ok) for (const fault of cell.faults) add(fault.column, fault);
    const written = readUse(text(columns.use), add);
    const note = text(columns.note);
    const entered_ms = readEntered(text(columns.entered), readers.moment, add);
    if (quoted) addSwallowed(table, { cells, start, line }, findings);
    if (
      day === null ||
      milking === null ||
      doe === null ||
      !cell.ok ||
      written === false ||
      entered_ms === false
    )
      return;
    const treatments = readers.treatments.get(doe) ?? [];
    const use = countedUse(written, treatments, doe, day);
    const said = { doe, day, milking, amount: cell.amount, use, note, entered_ms, file, line };
    const row: MilkingRow = written === null ? { ...said, unsaid: true } : said;
    rows.push(row);
    if (written !== 'withheld' && countedUse(null, treatments, doe, day) === 'withheld')
      readers.onTreated(row, written);
  });
}

function readDate(text: string, column: number, readers: MilkingReaders, add: AddFault): number | null {
  const day = readers.day(text);
  if (day === null) {
    if (column < 0) return null;
    if (text === '')
      add('date', {
        found: 'an empty cell',
        expected: 'the date of the milking',
        todo: 'write it as YYYY-MM-DD',
      });
    else add('date', dateFault(text));
    return null;
  }
  if (readers.lastDay !== null && day > readers.lastDay) {
    const expected = `a date up to today, ${isoDate(readers.lastDay)}`;
    add('date', { found: text, expected, todo: 'correct the date: this milking is still to come' });
    return null;
  }
  return day;
}

const MILKING_SPELLINGS = new Map<string, MilkingTime>([
  ['am', 'am'],
  ['pm', 'pm'],
]);

function readMilking(text: string, column: number, add: AddFault): MilkingTime | null {
  const quick = MILKING_SPELLINGS.get(text);
  if (quick) return quick;
  const plain = text.toLowerCase().replace(/[.\s]/g, '');
  const milking = MILKING_SPELLINGS.get(plain);
  if (milking) return milking;
  if (column >= 0)
    add('milking', {
      found: shown(text),
      expected: 'am or pm',
      nearest:
        plain.startsWith('a') || plain.startsWith('m')
          ? 'am'
          : plain.startsWith('p') || plain.startsWith('e')
            ? 'pm'
            : null,
      todo: 'write am for the morning milking, pm for the evening one',
    });
  return null;
}

const USE_SPELLINGS = new Map<string, Use>(USES.map((use) => [use, use] as const));

/** The use as written, null where nothing is; false, with a fault, where it is none. */
function readUse(text: string, add: AddFault): Use | null | false {
  if (text === '') return null;
  const use = USE_SPELLINGS.get(text) ?? USE_SPELLINGS.get(text.toLowerCase());
  if (use) return use;
  add('use', {
    found: shown(text),
    expected: `one of ${USES.join(', ')}`,
    nearest: nearestName(text, USES),
    todo: 'write what became of the milk, or leave the cell empty (kept); other words go under note',
  });
  return false;
}

function readEntered(text: string, moment: ReadMoment, add: AddFault): number | null | false {
  if (text === '') return null;
  const entered_ms = moment(text);
  if (entered_ms !== null) return entered_ms;
  add('entered', {
    found: shown(text),
    expected: 'a date and time as 2026-05-21T06:40, or a date alone',
    todo: 'write when the row was written, or leave the cell empty (it then counts as the oldest)',
  });
  return false;
}

// A quote that is never closed can swallow whole rows into a note, and no row may be lost in silence.
function addSwallowed(table: Table, row: Row, findings: Findings): void {
  const { at, separator } = table.heading;
  const least = Math.max(...MILKING_COLUMNS.required.map((name) => at[name] ?? -1)) + 1;
  for (const cell of row.cells) {
    if (!cell.includes('\n')) continue;
    const inner = cell.split('\n').slice(1);
    const lost = inner.findIndex((line) => {
      const cells = line.split(separator);
      return cells.length >= least && readDay((cells[at['date'] ?? -1] ?? '').trim()) !== null;
    });
    if (lost < 0) continue;
    findings.faults.push(
      faultAt(table.file, placeIn(table, row, row.cells.indexOf(cell)), {
        found: `what looks like a row of its own inside a quoted cell: ${shown(inner[lost] ?? '')}`,
        expected: 'a double quote that closes the cell before the next row',
        todo: 'close the quote where the cell ends, so that the rows below it count',
      }),
    );
  }
}
