// Reads the folder of visits, which a farm may have: one file a visit.
import { readdirSync, statSync } from 'node:fs';
import { extname, join } from 'node:path';
import type { Visit } from '../../shared/trip/visitTypes.ts';
import { counted, faultAt, type Findings } from './fault.ts';
import { namesIn } from './milkingFiles.ts';
import { nearestName } from './nearest.ts';
import { readText, unreadable } from './table.ts';
import { readVisit } from './visitFile.ts';

/** The folder of visits in the farm folder. */
export const VISITS_FOLDER = 'visits';

const ENDINGS = ['.yaml', '.yml'];
// Files that systems and programs leave behind on their own, and a paper that tells people about the folder.
const LEFT_BEHIND = /^(?:\..*|~\$.*|desktop\.ini|thumbs\.db|.*~|.*\.(?:tmp|bak|swp)|readme(?:\..*)?)$/i;

/**
 * Reads the visits, by date and time; null where the farm has no such folder. `stations` are the ids of the farm's
 * stations, null where it is not sure which there are. A visit with a fault is left out.
 */
export function readVisits(
  dir: string,
  stations: readonly string[] | null,
  findings: Findings,
): Visit[] | null {
  const names = visitNames(dir, findings);
  if (names === null) return null;
  const visits: Visit[] = [];
  for (const name of names) {
    const file = `${VISITS_FOLDER}/${name}`;
    const text = readText(dir, file, findings);
    if (text === null) continue;
    const read = readVisit(file, text, stations);
    if (read.ok) visits.push(read.visit);
    else findings.faults.push(...read.faults);
  }
  return visits.sort(
    ({ wish: a, file: one }, { wish: b, file: other }) =>
      (a.date < b.date ? -1 : a.date > b.date ? 1 : 0) || a.arrive - b.arrive || (one < other ? -1 : 1),
  );
}

/** The names of the visits' files in the folder, in order; null where there is none. */
function visitNames(dir: string, findings: Findings): string[] | null {
  let names: string[];
  try {
    names = readdirSync(join(dir, VISITS_FOLDER));
  } catch (error) {
    addNoFolder(dir, error, findings);
    return null;
  }
  return names.sort((a, b) => (a < b ? -1 : 1)).filter((name) => isVisit(dir, name, findings));
}

function isVisit(dir: string, name: string, { faults, notices }: Findings): boolean {
  if (LEFT_BEHIND.test(name)) return false;
  const file = `${VISITS_FOLDER}/${name}`;
  if (isFolder(join(dir, file))) {
    const inside = namesIn(join(dir, file)).filter((one) => !LEFT_BEHIND.test(one)).length;
    if (inside > 0)
      faults.push(
        faultAt(file, null, {
          found: `a folder with ${counted(inside, 'file')} in it`,
          expected: `the visits straight in ${VISITS_FOLDER}/, one file each`,
          todo: `move its files up into ${VISITS_FOLDER}/, or the folder elsewhere`,
        }),
      );
    return false;
  }
  if (ENDINGS.includes(extname(name).toLowerCase())) return true;
  notices.push({ file, line: null, text: 'This is no visit and is not read: a visit ends in .yaml.' });
  return false;
}

function addNoFolder(dir: string, error: unknown, { faults, notices }: Findings): void {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ENOTDIR')
    faults.push(
      faultAt(VISITS_FOLDER, null, {
        found: 'a file',
        expected: 'a folder with one file for each visit',
        todo: `make a folder ${VISITS_FOLDER} and move the file into it`,
      }),
    );
  else if (code !== 'ENOENT') faults.push(unreadable(VISITS_FOLDER, error));
  else {
    const near = nearestName(
      VISITS_FOLDER,
      namesIn(dir).filter((name) => isFolder(join(dir, name))),
    );
    if (near !== null)
      notices.push({
        file: near,
        line: null,
        text: `This folder is not read. If it holds the visits, rename it to ${VISITS_FOLDER}.`,
      });
  }
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}
