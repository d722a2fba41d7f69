// Reads kiddings.csv: one row a kidding, with the days on which her milkings change.
import { isoDate } from '../../shared/calendar/day.ts';
import type { Kidding } from '../../shared/herd/types.ts';
import { dateFault, readDay } from './dates.ts';
import type { DoeNames } from './doeNames.ts';
import { faultAt, shown, type Findings } from './fault.ts';
import { openTable, placeIn, walkRows, type Row, type Table } from './table.ts';

export const KIDDINGS_FILE = 'kiddings.csv';
/** Headings of the table. */
export const KIDDING_COLUMNS = {
  required: ['doe', 'date'],
  optional: ['kids', 'apart', 'weaned', 'dry'],
} as const;
const MOST_KIDS = 6;

/** Reads the kiddings. `lastDay` is today where nothing but the clock says so. */
export function readKiddings(
  dir: string,
  does: DoeNames,
  lastDay: number | null,
  findings: Findings,
): Kidding[] {
  const table = openTable(dir, KIDDINGS_FILE, KIDDING_COLUMNS, findings);
  if (table === null) return [];
  if (table === 'empty') {
    findings.faults.push(
      faultAt(KIDDINGS_FILE, null, {
        found: 'an empty file',
        expected: 'the headings doe,date,kids,apart,weaned,dry in the first line',
        todo: 'write that line; kiddings follow below it, one a line',
      }),
    );
    return [];
  }
  const kiddings: Kidding[] = [];
  const linesByKidding = new Map<string, number>();
  walkRows(table, findings, (cells, start, line) => {
    const row = { cells, start, line };
    const kidding = readKidding(table, row, does, findings);
    if (!kidding) return;
    const key = `${kidding.doe} ${kidding.day}`;
    const before = linesByKidding.get(key);
    if (before !== undefined) findings.faults.push(twice(table, row, kidding, before));
    else linesByKidding.set(key, line);
    if (lastDay !== null && kidding.day > lastDay) findings.notices.push(ahead(kidding, line));
    kiddings.push(kidding);
  });
  return kiddings;
}

function readKidding(table: Table, row: Row, does: DoeNames, findings: Findings): Kidding | null {
  const cell = (name: string) => (row.cells[table.heading.at[name] ?? -1] ?? '').trim();
  const add = (column: string, words: Parameters<typeof faultAt>[2]) =>
    findings.faults.push(faultAt(KIDDINGS_FILE, placeIn(table, row, column), words));
  const date = (column: string) => {
    const text = cell(column);
    if (text === '') return null;
    const day = readDay(text);
    if (day === null) add(column, dateFault(text));
    return day;
  };
  const doe = readDoeCell(table, cell('doe'), does, (words) => add('doe', words));
  const day = date('date');
  if (cell('date') === '' && (table.heading.at['date'] ?? -1) >= 0)
    add('date', {
      found: 'an empty cell',
      expected: 'the date of the kidding',
      todo: 'write it as YYYY-MM-DD, or take the row out',
    });
  const [apart, weaned, dry] = [date('apart'), date('weaned'), date('dry')];
  const kids = readKids(cell('kids'), (words) => add('kids', words));
  const order = (column: string, later: number | null, word: string, earlier: number | null) => {
    if (later === null || earlier === null || later >= earlier) return;
    const expected = `a date on or after ${isoDate(earlier)}, the day under ${word}`;
    add(column, { found: isoDate(later), expected, todo: 'correct one of the two dates' });
  };
  order('apart', apart, 'date', day);
  order('weaned', weaned, apart === null ? 'date' : 'apart', apart ?? day);
  order('dry', dry, 'date', day);
  return doe === null || day === null ? null : { doe, day, kids, apart, weaned, dry };
}

/** The doe that a cell names; null, with a fault, where it names none. */
export function readDoeCell(
  table: Table,
  text: string,
  does: DoeNames,
  add: (words: Parameters<typeof faultAt>[2]) => void,
): string | null {
  if ((table.heading.at['doe'] ?? -1) < 0) return null;
  if (text === '') {
    add({
      found: 'an empty cell',
      expected: 'the short name of a doe in does.csv',
      todo: 'write which doe it was',
    });
    return null;
  }
  const id = does.idOf(text);
  if (id !== null) return id;
  // Where does.csv itself could not be read, that is the fault to mend first.
  if (does.known) add({ found: shown(text), ...does.unknown(text) });
  return null;
}

function readKids(text: string, add: (words: Parameters<typeof faultAt>[2]) => void): number | null {
  if (text === '') return null;
  const kids = /^\d{1,3}$/.test(text) ? Number(text) : null;
  if (kids !== null && kids <= MOST_KIDS) return kids;
  add({
    found: shown(text),
    expected: `a whole number from 0 to ${MOST_KIDS}`,
    todo: 'write how many kids were born, or leave the cell empty',
  });
  return null;
}

function twice(table: Table, row: Row, kidding: Kidding, before: number) {
  return faultAt(KIDDINGS_FILE, placeIn(table, row, 'doe'), {
    found: `${kidding.doe} on ${isoDate(kidding.day)} a second time (the first is ${KIDDINGS_FILE}:${before})`,
    expected: 'one row for each kidding',
    todo: 'take one of the two rows out; twins and more go under kids',
  });
}

function ahead(kidding: Kidding, line: number) {
  const text = `${kidding.doe}'s kidding on ${isoDate(kidding.day)} is still to come. It counts from that day on.`;
  return { file: KIDDINGS_FILE, line, text };
}
