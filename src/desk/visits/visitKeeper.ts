// Keeps the visits on file: reads them for the pages, adds one, changes the state of one; never over what is there.
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type {
  FiledVisit,
  VisitAnswer,
  VisitPost,
  VisitsBook,
} from '../../../shared/trip/visits/deskVisits.ts';
import { visitFileName } from '../../../shared/trip/visits/visitText.ts';
import { farmStations } from '../../farm/farmStations.ts';
import type { Fault, Findings } from '../../farm/fault.ts';
import { listedFaults } from '../../farm/tell.ts';
import { readVisit, withState } from '../../farm/visitFile.ts';
import { readVisits, VISITS_FOLDER } from '../../farm/visitFiles.ts';
import { codeOf } from '../book/disk.ts';
import { markOfBytes, OtherTable, replaceTable } from '../book/replaceTable.ts';

/** The visits under one writer. */
export interface VisitKeeper {
  read(): VisitsBook;
  /** Makes one change, after those that were asked for before it. */
  change(post: VisitPost): Promise<VisitAnswer>;
}

// Two schools of one name on one date are rare; a hundred are a slip.
const MOST_OF_A_NAME = 100;

/** Opens the visits of a farm. */
export function openVisits(farm: string, replace = replaceTable): VisitKeeper {
  let last: Promise<unknown> = Promise.resolve();
  return {
    read: () => readBook(farm),
    change: (post) => {
      const answer = last.then(() => makeChange(farm, post, replace));
      last = answer.catch(() => undefined);
      return answer;
    },
  };
}

function readBook(farm: string): VisitsBook {
  const findings: Findings = { faults: [], notices: [] };
  const visits = readVisits(farm, farmStations(farm), findings) ?? [];
  const filed = visits.flatMap((visit): FiledVisit[] => {
    const bytes = bytesOf(join(farm, visit.file));
    const mark = markOfBytes(bytes);
    return mark === null ? [] : [{ visit, mark }];
  });
  return { filed, faults: listedFaults(findings.faults) };
}

function bytesOf(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

function makeChange(farm: string, post: VisitPost, replace: typeof replaceTable): VisitAnswer {
  try {
    return post.kind === 'add' ? add(farm, post.text, replace) : setState(farm, post, replace);
  } catch (error) {
    if (error instanceof OtherTable) return { ok: false, why: 'changed', book: readBook(farm) };
    const code = codeOf(error);
    if (code === '') throw error;
    return { ok: false, why: 'not written', code };
  }
}

const faulty = (farm: string, faults: readonly Fault[]): VisitAnswer => ({
  ok: false,
  why: 'faulty',
  faults: listedFaults(faults),
  book: readBook(farm),
});

function add(farm: string, text: string, replace: typeof replaceTable): VisitAnswer {
  const read = readVisit(`${VISITS_FOLDER}/`, text, farmStations(farm));
  if (!read.ok) return faulty(farm, read.faults);
  const { school, wish } = read.visit;
  mkdirSync(join(farm, VISITS_FOLDER), { recursive: true });
  for (let number = 1; number <= MOST_OF_A_NAME; number += 1) {
    const file = `${VISITS_FOLDER}/${visitFileName(wish.date, school, number)}`;
    const path = join(farm, file);
    if (existsSync(path)) continue;
    try {
      replace(path, Buffer.from(text), null);
    } catch (error) {
      // Somebody else took the name in this very moment.
      if (error instanceof OtherTable) continue;
      throw error;
    }
    return { ok: true, file, book: readBook(farm) };
  }
  return { ok: false, why: 'not written', code: 'EEXIST' };
}

function setState(
  farm: string,
  { file, state, saw }: Extract<VisitPost, { kind: 'state' }>,
  replace: typeof replaceTable,
): VisitAnswer {
  const changed = (): VisitAnswer => ({ ok: false, why: 'changed', book: readBook(farm) });
  // Only a name straight below the folder, which a listing of it has.
  if (file !== `${VISITS_FOLDER}/${basename(file)}`) return { ok: false, why: 'malformed' };
  const path = join(farm, file);
  const bytes = bytesOf(path);
  if (bytes === null || markOfBytes(bytes) !== saw) return changed();
  const stations = farmStations(farm);
  const before = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
  const text = withState(before, state);
  if (text === null) return changed();
  const read = readVisit(file, text.replace(/^\ufeff/, ''), stations);
  if (!read.ok) return faulty(farm, read.faults);
  if (text !== before) replace(path, Buffer.from(text), saw);
  return { ok: true, file, book: readBook(farm) };
}
