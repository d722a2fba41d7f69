// Which files of milkings/ hold the milk book, and what to say of the others.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import { counted, faultAt, type Findings } from './fault.ts';
import { MILKING_COLUMNS } from './milkingsTable.ts';
import { unreadable } from './table.ts';

export const MILKINGS_FOLDER = 'milkings';

const SPREADSHEETS = ['.xlsx', '.xlsm', '.xls', '.ods', '.numbers', '.gsheet', '.fods'];
const TEXTS = ['.tsv', '.tab', '.txt', '.dat', ''];
// Files that systems and programs leave behind on their own.
const LEFT_BEHIND = /^(?:\..*|~\$.*|desktop\.ini|thumbs\.db|.*~|.*\.(?:tmp|bak|swp))$/i;

/** The CSV files of the milk book, in order of name, relative to the farm folder. */
export function milkingFiles(dir: string, findings: Findings): string[] {
  let names: string[];
  try {
    names = readdirSync(join(dir, MILKINGS_FOLDER));
  } catch (error) {
    addNoFolder(dir, error, findings);
    return [];
  }
  const files: string[] = [];
  for (const name of names.sort((a, b) => (a < b ? -1 : 1))) {
    if (LEFT_BEHIND.test(name)) continue;
    const file = `${MILKINGS_FOLDER}/${name}`;
    if (isFolder(join(dir, file))) addFolder(dir, file, findings);
    else if (extname(name).toLowerCase() === '.csv') files.push(file);
    else addOther(dir, file, findings);
  }
  if (files.length === 0)
    findings.notices.push({
      file: MILKINGS_FOLDER,
      line: null,
      text: `There is no milk book yet: ${MILKINGS_FOLDER}/ holds no CSV file. Pages say so until there is one.`,
    });
  return files;
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function addNoFolder(dir: string, error: unknown, findings: Findings): void {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ENOTDIR') {
    findings.faults.push(
      faultAt(MILKINGS_FOLDER, null, {
        found: 'a file',
        expected: 'a folder with the CSV files of the milk book',
        todo: `make a folder ${MILKINGS_FOLDER} and move the file into it`,
      }),
    );
    return;
  }
  if (code !== 'ENOENT') {
    findings.faults.push(unreadable(MILKINGS_FOLDER, error));
    return;
  }
  const other = namesIn(dir).find((name) => name.toLowerCase() === MILKINGS_FOLDER);
  if (other === undefined) {
    findings.notices.push({
      file: null,
      line: null,
      text: `There is no milk book yet: the folder ${MILKINGS_FOLDER} is missing. Pages say so until there is one.`,
    });
    return;
  }
  findings.faults.push(
    faultAt(MILKINGS_FOLDER, null, {
      found: `a folder named "${other}"`,
      expected: `a folder named ${MILKINGS_FOLDER}`,
      nearest: null,
      todo: `rename the folder to ${MILKINGS_FOLDER}`,
    }),
  );
}

/** The names in a folder; none where it cannot be read. */
export function namesIn(dir: string): string[] {
  try {
    return readdirSync(dir);
  } catch {
    return [];
  }
}

function addFolder(dir: string, file: string, findings: Findings): void {
  const inside = namesIn(join(dir, file)).filter((name) => !LEFT_BEHIND.test(name)).length;
  if (inside === 0) return;
  findings.faults.push(
    faultAt(file, null, {
      found: `a folder with ${counted(inside, 'file')} in it`,
      expected: `the CSV files of the milk book straight in ${MILKINGS_FOLDER}/`,
      todo: `move its files up into ${MILKINGS_FOLDER}/, or the folder elsewhere`,
    }),
  );
}

function addOther(dir: string, file: string, findings: Findings): void {
  const ending = extname(file).toLowerCase();
  if (SPREADSHEETS.includes(ending)) {
    findings.faults.push(
      faultAt(file, null, {
        found: `a spreadsheet (${ending})`,
        expected: 'CSV files, whose name ends in .csv',
        todo: 'open it and save each sheet as "CSV UTF-8" in this folder; move the spreadsheet elsewhere',
      }),
    );
  } else if (TEXTS.includes(ending) && looksLikeABook(join(dir, file))) {
    findings.faults.push(
      faultAt(file, null, {
        found: 'a table of milkings under another ending',
        expected: 'CSV files, whose name ends in .csv',
        todo: 'rename it so that it ends in .csv, or move it elsewhere',
      }),
    );
  } else findings.notices.push({ file, line: null, text: 'This is no CSV file and is not read.' });
}

function looksLikeABook(path: string): boolean {
  try {
    const heading =
      readFileSync(path, 'utf8')
        .split(/[\r\n]/)[0]
        ?.toLowerCase() ?? '';
    const words = heading.split(/[^a-z]+/);
    return MILKING_COLUMNS.required.filter((name) => words.includes(name)).length >= 2;
  } catch {
    return false;
  }
}
