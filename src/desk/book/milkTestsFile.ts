// Adds rows to the farm's milk tests, in whatever order of columns the file has; every byte that stands there stays.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PlannedTest, TestColumn, Told } from '../../../shared/book/importTypes.ts';
import { plainBreaks } from '../../farm/csv.ts';
import { decodeText } from '../../farm/encoding.ts';
import type { Findings } from '../../farm/fault.ts';
import { readHeading } from '../../farm/heading.ts';
import { MILK_TEST_COLUMNS, MILK_TESTS_FILE } from '../../farm/milkTestsTable.ts';
import { markOfBytes, OtherTable, replaceTable } from './replaceTable.ts';

const VALUES: readonly TestColumn[] = ['fat_pct', 'protein_pct', 'lactose_pct', 'scc'];

/** Adds the tests to the file, or makes it. Returns why it could not be, and then nothing was written. */
export function addMilkTests(farm: string, tests: readonly PlannedTest[]): Told | null {
  const path = join(farm, MILK_TESTS_FILE);
  const bytes = bytesOf(path);
  const made = bytes === null ? newTable(tests) : grownTable(bytes, tests);
  if ('key' in made) return made;
  try {
    replaceTable(path, Buffer.from(made.text, 'utf8'), markOfBytes(bytes));
    return null;
  } catch (error) {
    if (error instanceof OtherTable) return { key: 'tests.changed', slots: {} };
    throw error;
  }
}

function bytesOf(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

function newTable(tests: readonly PlannedTest[]): { text: string } {
  const names = ['date', 'doe', ...VALUES];
  return { text: `${[names.join(','), ...tests.map((test) => line(test, names, ','))].join('\n')}\n` };
}

function grownTable(bytes: Uint8Array, tests: readonly PlannedTest[]): { text: string } | Told {
  const { text, fault } = decodeText(bytes);
  if (text === null || fault) return { key: 'tests.notText', slots: {} };
  const findings: Findings = { faults: [], notices: [] };
  const heading = readHeading(MILK_TESTS_FILE, plainBreaks(text), MILK_TEST_COLUMNS, findings);
  // The mark at the start of the file was taken off by the decoder.
  const raw = Buffer.from(bytes).toString('utf8');
  if (heading === null) return { text: `${raw}${newTable(tests).text}` };
  if (findings.faults.length > 0) return { key: 'tests.faulty', slots: {} };
  const lacking = VALUES.filter(
    (name) => (heading.at[name] ?? -1) < 0 && tests.some((test) => test[name] !== null),
  );
  if (lacking.length > 0) return { key: 'tests.noColumn', slots: { columns: lacking.join(', ') } };
  const names: string[] = Array.from({ length: heading.width }, () => '');
  for (const [name, index] of Object.entries(heading.at)) if (index >= 0) names[index] = name;
  const lineBreak = raw.includes('\r\n') ? '\r\n' : '\n';
  const start = /[\r\n]$/.test(raw) ? raw : `${raw}${lineBreak}`;
  const rows = tests.map((test) => line(test, names, heading.separator));
  return { text: start + rows.map((row) => row + lineBreak).join('') };
}

function line(test: PlannedTest, names: readonly string[], separator: string): string {
  const cell = (name: string) => {
    if (name === 'date' || name === 'doe') return test[name];
    const value = VALUES.includes(name as TestColumn) ? (test[name as TestColumn] ?? '') : '';
    // Where semicolons stand between the cells, people read and write a decimal comma.
    return separator === ';' ? value.replace('.', ',') : value;
  };
  return names.map((name) => quoted(cell(name), separator)).join(separator);
}

const quoted = (text: string, separator: string) =>
  text.includes(separator) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
