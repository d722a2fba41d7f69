// Reads treatments.csv, which a farm may have: one row a treatment after which a doe's milk is kept apart.
import { dayNumber, isoDate } from '../../shared/calendar/day.ts';
import type { Treatment } from '../../shared/herd/types.ts';
import { dateFault, readDay } from './dates.ts';
import type { DoeNames } from './doeNames.ts';
import { faultAt, type Findings } from './fault.ts';
import { readDoeCell } from './kiddingsTable.ts';
import { namesIn } from './milkingFiles.ts';
import { nearestName } from './nearest.ts';
import { openTable, placeIn, walkRows, type Row, type Table } from './table.ts';

export const TREATMENTS_FILE = 'treatments.csv';
// The first day of a treatment whose own cannot be read; the milk book takes no date so old.
const ALL_ALONG = (dayNumber('1900-01-01') ?? 0) - 1;

/** Headings of the table. */
export const TREATMENT_COLUMNS = {
  required: ['doe', 'from'],
  optional: ['until', 'what', 'note'],
} as const;

/** Reads the treatments; null where the farm has none. `lastDay` is today where nothing but the clock says so. */
export function readTreatments(
  dir: string,
  does: DoeNames,
  lastDay: number | null,
  findings: Findings,
): Treatment[] | null {
  if (!isThere(dir, findings)) return null;
  const table = openTable(dir, TREATMENTS_FILE, TREATMENT_COLUMNS, findings);
  if (table === null) return null;
  const treatments: Treatment[] = [];
  if (table === 'empty') {
    findings.notices.push({ file: TREATMENTS_FILE, line: null, text: 'This file is empty.' });
    return treatments;
  }
  const linesByTreatment = new Map<string, number>();
  walkRows(table, findings, (cells, start, line) => {
    const row = { cells, start, line };
    const treatment = readTreatment(table, row, does, findings);
    if (!treatment) return;
    // Two medicines on one day are two treatments; the same one twice is a slip.
    treatments.push(treatment);
    if (!hasStart(treatment)) return;
    const key = JSON.stringify([treatment.doe, treatment.from, treatment.what.toLowerCase()]);
    const before = linesByTreatment.get(key);
    if (before !== undefined) findings.faults.push(twice(table, row, treatment, before));
    else linesByTreatment.set(key, line);
    if (lastDay !== null && treatment.from > lastDay) findings.notices.push(ahead(treatment));
  });
  return treatments;
}

/** Whether it is known from which day a treatment holds; without one there is a fault, and she counts as treated all along. */
export function hasStart({ from }: Treatment): boolean {
  return from !== ALL_ALONG;
}

function isThere(dir: string, findings: Findings): boolean {
  const names = namesIn(dir);
  if (names.includes(TREATMENTS_FILE)) return true;
  const near = nearestName(TREATMENTS_FILE, names);
  if (near !== null) {
    const text = `This file is not read. If it says whose milk is kept apart, rename it to ${TREATMENTS_FILE}.`;
    findings.notices.push({ file: near, line: null, text });
  }
  return false;
}

function readTreatment(table: Table, row: Row, does: DoeNames, findings: Findings): Treatment | null {
  const cell = (name: string) => (row.cells[table.heading.at[name] ?? -1] ?? '').trim();
  const add = (column: string, words: Parameters<typeof faultAt>[2]) =>
    findings.faults.push(faultAt(TREATMENTS_FILE, placeIn(table, row, column), words));
  const date = (column: string) => {
    const text = cell(column);
    if (text === '') return null;
    const day = readDay(text);
    if (day === null) add(column, dateFault(text));
    return day;
  };
  const doe = readDoeCell(table, cell('doe'), does, (words) => add('doe', words));
  const [from, until] = [date('from'), date('until')];
  if (cell('from') === '' && (table.heading.at['from'] ?? -1) >= 0)
    add('from', {
      found: 'an empty cell',
      expected: 'the first day whose milk is kept apart',
      todo: 'write it as YYYY-MM-DD, or take the row out',
    });
  if (from !== null && until !== null && until < from)
    add('until', {
      found: isoDate(until),
      expected: `a date on or after ${isoDate(from)}, the day under from`,
      todo: 'correct one of the two dates; under until stands the first day whose milk may be kept again',
    });
  if (doe === null) return null;
  // A day that cannot be read must not free milk while the slip stands: she counts as treated all along, and an end
  // that cannot be is none. The fault above stops every build.
  const isBackward = from !== null && until !== null && until < from;
  const [first, end] = [from ?? ALL_ALONG, isBackward ? null : until];
  return {
    doe,
    from: first,
    until: end,
    what: cell('what'),
    note: cell('note'),
    file: TREATMENTS_FILE,
    line: row.line,
  };
}

function twice(table: Table, row: Row, { doe, from, what }: Treatment, before: number) {
  const named = what === '' ? '' : `, ${what},`;
  return faultAt(TREATMENTS_FILE, placeIn(table, row, 'doe'), {
    found: `${doe}${named} from ${isoDate(from)} a second time (the first is ${TREATMENTS_FILE}:${before})`,
    expected: 'one row for each treatment',
    todo: 'take one of the two rows out; to make a treatment longer, correct the date under until',
  });
}

function ahead({ doe, from, line }: Treatment) {
  const text = `${doe}'s treatment from ${isoDate(from)} is still to come. It counts from that day on.`;
  return { file: TREATMENTS_FILE, line, text };
}
