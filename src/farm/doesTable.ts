// Reads does.csv: one row a doe.
import { isoDate } from '../../shared/calendar/day.ts';
import { readNumber } from '../../shared/quantity/amount.ts';
import type { Doe } from '../../shared/herd/types.ts';
import { dateFault, readDay } from './dates.ts';
import { faultAt, shown, type Findings } from './fault.ts';
import { openTable, placeIn, walkRows, type Row, type Table } from './table.ts';

export const DOES_FILE = 'does.csv';
/** Headings of the table. */
export const DOE_COLUMNS = { required: ['doe'], optional: ['name', 'breed', 'born', 'weight_kg'] } as const;
/** Letters and digits of any script, hyphen and underscore: what a web address and a file name can carry. */
const ID = /^[\p{L}\p{M}\p{N}_-]+$/u;
const LONGEST_ID = 60;
// From a newborn kid to a large bull; a farm may well write down a cow.
const [LIGHTEST_KG, HEAVIEST_KG] = [1, 1500];

/** The herd, ids of rows that have a fault of their own, and whether the file could be read. */
export interface DoesReading {
  readonly does: readonly Doe[];
  readonly faultyIds: readonly string[];
  readonly readable: boolean;
}

/** Reads the herd. `lastDay` is today where nothing but the clock says so: nobody is born later. */
export function readDoes(dir: string, lastDay: number | null, findings: Findings): DoesReading {
  const nothing = { does: [], faultyIds: [], readable: false };
  const table = openTable(dir, DOES_FILE, DOE_COLUMNS, findings);
  if (table === null) return nothing;
  if (table === 'empty') {
    findings.faults.push(
      faultAt(DOES_FILE, null, {
        found: 'an empty file',
        expected: 'the headings doe,name,breed,born,weight_kg in the first line',
        todo: 'write that line; does follow below it, one a line',
      }),
    );
    return nothing;
  }
  const does: Doe[] = [];
  const faultyIds: string[] = [];
  const met: Met = new Map();
  walkRows(table, findings, (cells, start, line) => {
    const row = { cells, start, line };
    const before = findings.faults.length;
    const doe = readDoe(table, row, lastDay, findings);
    addIfTwice(table, row, doe.id, met, findings);
    if (findings.faults.length === before) does.push(doe);
    else faultyIds.push(doe.id);
  });
  return { does, faultyIds, readable: (table.heading.at['doe'] ?? -1) >= 0 };
}

function readDoe(table: Table, row: Row, lastDay: number | null, findings: Findings): Doe {
  const cell = (name: string) => (row.cells[table.heading.at[name] ?? -1] ?? '').trim();
  const id = cell('doe').normalize('NFC');
  addIdFault(table, row, id, findings);
  return {
    id,
    name: cell('name') || id,
    breed: cell('breed'),
    born: readBorn(table, row, cell('born'), lastDay, findings),
    weight_kg: readWeight_kg(table, row, cell('weight_kg'), findings),
  };
}

function addIdFault(table: Table, row: Row, id: string, findings: Findings): void {
  if ((table.heading.at['doe'] ?? -1) < 0) return;
  if (ID.test(id) && id.length <= LONGEST_ID) return;
  const plain = id.replace(/[^\p{L}\p{M}\p{N}_-]+/gu, '-').replace(/^-+|-+$/g, '');
  findings.faults.push(
    faultAt(DOES_FILE, placeIn(table, row, 'doe'), {
      found: shown(id),
      expected: `a short name of at most ${LONGEST_ID} letters, digits, hyphens (-) and underscores (_)`,
      nearest: plain !== '' && plain.length <= LONGEST_ID ? plain : null,
      todo: "write it without spaces and other signs: it becomes part of her page's web address; her full name goes under name",
    }),
  );
}

// Ids met so far, under their spelling in small letters.
type Met = Map<string, { id: string; line: number }[]>;

function addIfTwice(table: Table, row: Row, id: string, met: Met, findings: Findings): void {
  if (id === '') return;
  const alike = met.get(id.toLowerCase()) ?? [];
  const same = alike.find((one) => one.id === id);
  const other = alike[0];
  if (same) {
    findings.faults.push(
      faultAt(DOES_FILE, placeIn(table, row, 'doe'), {
        found: `${shown(id)} a second time (the first is ${DOES_FILE}:${same.line})`,
        expected: 'one row for each doe',
        todo: 'take one of the two rows out, or give one of the does another short name',
      }),
    );
    return;
  }
  if (other) {
    const text = `${shown(id)} and ${shown(other.id)} (line ${other.line}) differ only in capitals. Write each with its own capitals everywhere, or better give one of them another short name.`;
    findings.notices.push({ file: DOES_FILE, line: row.line, text });
  }
  met.set(id.toLowerCase(), [...alike, { id, line: row.line }]);
}

function readBorn(
  table: Table,
  row: Row,
  text: string,
  lastDay: number | null,
  findings: Findings,
): string | null {
  if (text === '') return null;
  const day = readDay(text);
  if (day === null) {
    findings.faults.push(faultAt(DOES_FILE, placeIn(table, row, 'born'), dateFault(text)));
    return null;
  }
  if (lastDay !== null && day > lastDay)
    findings.faults.push(
      faultAt(DOES_FILE, placeIn(table, row, 'born'), {
        found: text,
        expected: `a date up to today, ${isoDate(lastDay)}`,
        todo: 'correct the date, or leave the cell empty',
      }),
    );
  return text;
}

function readWeight_kg(table: Table, row: Row, text: string, findings: Findings): number | null {
  if (text === '') return null;
  const number = readNumber(text, table.heading.separator === ';');
  const weight_kg = number.ok ? number.num / number.den : null;
  if (weight_kg !== null && weight_kg >= LIGHTEST_KG && weight_kg <= HEAVIEST_KG) return weight_kg;
  findings.faults.push(
    faultAt(DOES_FILE, placeIn(table, row, 'weight_kg'), {
      found: shown(text),
      expected: `her weight in kilograms, a number from ${LIGHTEST_KG} to ${HEAVIEST_KG}`,
      todo: 'write the number alone (1 lb is 0.454 kg), or leave the cell empty',
    }),
  );
  return null;
}
