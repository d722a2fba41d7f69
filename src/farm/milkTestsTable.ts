// Reads milk-tests.csv, which a farm may have: one row a doe and test day, as the laboratory reports it.
import { isoDate } from '../../shared/calendar/day.ts';
import type { MilkTest } from '../../shared/herd/types.ts';
import { readNumber } from '../../shared/quantity/amount.ts';
import { dateFault, readDay } from './dates.ts';
import type { DoeNames } from './doeNames.ts';
import { faultAt, shown, type Findings } from './fault.ts';
import { readDoeCell } from './kiddingsTable.ts';
import { namesIn } from './milkingFiles.ts';
import { nearestName } from './nearest.ts';
import { openTable, placeIn, walkRows, type Row, type Table } from './table.ts';

export const MILK_TESTS_FILE = 'milk-tests.csv';
/** Headings of the milk tests. */
export const MILK_TEST_COLUMNS = {
  required: ['date', 'doe'],
  optional: ['fat_pct', 'protein_pct', 'lactose_pct', 'scc'],
} as const;

// What milk of goat, cow or sheep can be. The US record keeper counts less than 1 % of fat or protein
// as not tested (CDCB, goat test-day format); the upper ends are wider than any laboratory's report.
/** What a test's values may be, in parts of a hundred; `what` is the word of a fault. */
export const PERCENT = {
  fat_pct: { least: 1, most: 15, what: 'fat' },
  protein_pct: { least: 1, most: 9, what: 'protein' },
  lactose_pct: { least: 1, most: 8, what: 'milk sugar (lactose)' },
} as const;
type PercentColumn = keyof typeof PERCENT;
// In thousands a millilitre. A count above it was most likely written in single cells.
export const MOST_CELLS_THOUSAND = 30_000;

type AddFault = (column: string, words: Parameters<typeof faultAt>[2]) => void;

/**
 * Reads the milk tests; null where the farm has none. `lastDay` is today where nothing but the clock
 * says so. An empty cell, or a 0, means "not tested".
 */
export function readMilkTests(
  dir: string,
  does: DoeNames,
  lastDay: number | null,
  findings: Findings,
): MilkTest[] | null {
  if (!isThere(dir, findings)) return null;
  const table = openTable(dir, MILK_TESTS_FILE, MILK_TEST_COLUMNS, findings);
  if (table === null) return null;
  const tests: MilkTest[] = [];
  if (table === 'empty') {
    findings.notices.push({ file: MILK_TESTS_FILE, line: null, text: 'This file is empty.' });
    return tests;
  }
  const linesByTest = new Map<string, number>();
  walkRows(table, findings, (cells, start, line) => {
    const row = { cells, start, line };
    const test = readTest(table, row, does, lastDay, findings);
    if (!test) return;
    const key = `${test.doe} ${test.day}`;
    const before = linesByTest.get(key);
    if (before !== undefined) findings.faults.push(twice(table, row, test, before));
    else linesByTest.set(key, line);
    if (isEmpty(test))
      findings.notices.push({ file: MILK_TESTS_FILE, line, text: 'This row has no result.' });
    tests.push(test);
  });
  return tests;
}

function isThere(dir: string, findings: Findings): boolean {
  const names = namesIn(dir);
  if (names.includes(MILK_TESTS_FILE)) return true;
  const near = nearestName(MILK_TESTS_FILE, names);
  if (near !== null) {
    const text = `This file is not read. If it holds milk tests, rename it to ${MILK_TESTS_FILE}.`;
    findings.notices.push({ file: near, line: null, text });
  }
  return false;
}

function readTest(
  table: Table,
  row: Row,
  does: DoeNames,
  lastDay: number | null,
  findings: Findings,
): MilkTest | null {
  const cell = (name: string) => (row.cells[table.heading.at[name] ?? -1] ?? '').trim();
  const add: AddFault = (column, words) =>
    findings.faults.push(faultAt(MILK_TESTS_FILE, placeIn(table, row, column), words));
  const hasDate = (table.heading.at['date'] ?? -1) >= 0;
  const day = hasDate ? readDate(cell('date'), lastDay, add) : null;
  const doe = readDoeCell(table, cell('doe'), does, (words) => add('doe', words));
  const decimalComma = table.heading.separator === ';';
  const [fat_pct, protein_pct, lactose_pct] = (Object.keys(PERCENT) as PercentColumn[]).map((column) =>
    readPercent(cell(column), column, decimalComma, add),
  );
  const cells_perML = readCells(cell('scc'), decimalComma, add);
  if (day === null || doe === null) return null;
  return {
    doe,
    day,
    fat_pct: fat_pct ?? null,
    protein_pct: protein_pct ?? null,
    lactose_pct: lactose_pct ?? null,
    cells_perML,
    file: MILK_TESTS_FILE,
    line: row.line,
  };
}

function readDate(text: string, lastDay: number | null, add: AddFault): number | null {
  if (text === '') {
    add('date', { found: 'an empty cell', expected: 'the day of the milk test', todo: 'write it as YYYY-MM-DD' }); // prettier-ignore
    return null;
  }
  const day = readDay(text);
  if (day === null) {
    add('date', dateFault(text));
    return null;
  }
  if (lastDay === null || day <= lastDay) return day;
  const expected = `a date up to today, ${isoDate(lastDay)}`;
  add('date', { found: text, expected, todo: 'correct the date: this test is still to come' });
  return null;
}

function readPercent(text: string, column: PercentColumn, decimalComma: boolean, add: AddFault) {
  const number = readNumber(text.replace(/\s*%$/, ''), decimalComma);
  if (!number.ok && number.why === 'empty') return null;
  const { least, most, what } = PERCENT[column];
  const percent = number.ok ? number.num / number.den : null;
  if (percent === 0) return null;
  if (percent !== null && percent >= least && percent <= most) return percent;
  const point = text.replace(',', '.');
  const isComma = !number.ok && !decimalComma && readNumber(point).ok;
  add(column, {
    found: shown(text),
    expected: `parts of ${what} in 100 of milk, a number from ${least} to ${most}`,
    nearest: isComma ? point : null,
    todo: isComma
      ? `write ${point}; a decimal comma is read only in files whose cells stand between semicolons`
      : "check the laboratory's report; leave the cell empty where it was not tested",
  });
  return null;
}

function readCells(text: string, decimalComma: boolean, add: AddFault): number | null {
  const number = readNumber(text, decimalComma);
  if (!number.ok && number.why === 'empty') return null;
  const thousand = number.ok ? number.num / number.den : null;
  if (thousand === 0) return null;
  if (thousand !== null && thousand <= MOST_CELLS_THOUSAND) return thousand * 1000;
  add('scc', {
    found: shown(text),
    expected: `thousands of cells in a millilitre, a number up to ${MOST_CELLS_THOUSAND}`,
    nearest: thousand === null ? null : String(thousand / 1000),
    todo: 'write thousands, without a sign between the digits: 850 for 850,000 cells; leave the cell empty where it was not tested',
  });
  return null;
}

const isEmpty = (test: MilkTest) =>
  [test.fat_pct, test.protein_pct, test.lactose_pct, test.cells_perML].every((value) => value === null);

function twice(table: Table, row: Row, test: MilkTest, before: number) {
  return faultAt(MILK_TESTS_FILE, placeIn(table, row, 'doe'), {
    found: `${test.doe} on ${isoDate(test.day)} a second time (the first is ${MILK_TESTS_FILE}:${before})`,
    expected: 'one row for each doe and test day',
    todo: 'take one of the two rows out',
  });
}
