// Where the open data for outside checks lies, beside the project; checks that need it are skipped without it.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = join('..', 'shared', 'data');

/** The folder of a set of open data, or null on a machine that does not have it. */
export function openData(name: string): string | null {
  const folder = join(FOLDER, name);
  return existsSync(folder) ? folder : null;
}

/** Why a check was skipped, for its title. */
export const NOT_HERE = 'skipped where ../shared/data is absent';

/** Lines of a CSV file as records; quoted fields may hold commas. For clean published tables only. */
export function plainCsv(file: string): Record<string, string>[] {
  const lines = readFileSync(file, 'utf8').trim().split(/\r?\n/).map(fieldsOf);
  const [head = [], ...rows] = lines;
  return rows.map((fields) => Object.fromEntries(head.map((name, index) => [name, fields[index] ?? ''])));
}

function fieldsOf(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    (match) => match[1]?.replaceAll('""', '"') ?? match[2] ?? '',
  );
}
