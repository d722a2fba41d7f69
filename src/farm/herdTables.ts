// Does, kiddings and treatments as they are written, cell by cell, for the page that corrects them.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HERD_COLUMNS, type HerdFile } from '../../shared/book/herdBook.ts';
import { plainBreaks } from './csv.ts';
import { DOE_COLUMNS } from './doesTable.ts';
import { decodeText } from './encoding.ts';
import type { Findings } from './fault.ts';
import { readHeading, type ColumnRules } from './heading.ts';
import { KIDDING_COLUMNS } from './kiddingsTable.ts';
import { walkRows } from './table.ts';
import { TREATMENT_COLUMNS } from './treatmentsTable.ts';

/** The headings of each table, required ones apart. */
export const HERD_RULES: Readonly<Record<HerdFile, ColumnRules>> = Object.freeze({
  'does.csv': DOE_COLUMNS,
  'kiddings.csv': KIDDING_COLUMNS,
  'treatments.csv': TREATMENT_COLUMNS,
});

/** A row as written, by heading, with its line. */
export type WrittenRow<Name extends HerdFile> = Readonly<
  Record<(typeof HERD_COLUMNS)[Name][number], string>
> & {
  readonly line: number;
};

/** A file's bytes; null where there is none. Any other fault of the system is thrown. */
export function readBytes(dir: string, file: string): Buffer | null {
  try {
    return readFileSync(join(dir, file));
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

/** The rows of a table as they stand, right or wrong: what is wrong with them `readFarm` tells. */
export function writtenRows<Name extends HerdFile>(bytes: Uint8Array | null, file: Name): WrittenRow<Name>[] {
  const findings: Findings = { faults: [], notices: [] };
  const raw = bytes && decodeText(bytes).text;
  if (raw === null) return [];
  const text = plainBreaks(raw);
  const rules = HERD_RULES[file];
  const heading = readHeading(file, text, rules, findings);
  if (!heading) return [];
  const rows: WrittenRow<Name>[] = [];
  walkRows({ file, text, heading, rules }, findings, (cells, _start, line) => {
    const named = HERD_COLUMNS[file].map((name) => [name, (cells[heading.at[name] ?? -1] ?? '').trim()]);
    rows.push({ ...Object.fromEntries(named), line } as WrittenRow<Name>);
  });
  return rows;
}
