// The preview of an import: the file, the choices and the book as they stand, put together.
import { createHash } from 'node:crypto';
import { isTreated } from '../../../shared/herd/treated.ts';
import { milkingsOf, phaseOn, phaseSpans } from '../../../shared/herd/expected.ts';
import type { MilkingRow, MilkingTime } from '../../../shared/herd/types.ts';
import { findTests, type TestLimits } from '../../../shared/book/icarTests.ts';
import { AnimalDoes, findVisits } from '../../../shared/book/icarVisits.ts';
import { planImport, type BookLookup } from '../../../shared/book/importPlan.ts';
import { findMilkings, type ImportFarm } from '../../../shared/book/importRows.ts';
import type {
  Found,
  ImportChoices,
  ImportFault,
  ImportPreview,
  LeftOut,
  PlannedTest,
  Sheet,
} from '../../../shared/book/importTypes.ts';
import { likelyDates } from '../../farm/dates.ts';
import { localTime, momentReader } from '../../farm/entered.ts';
import { MOST_CELLS_THOUSAND, PERCENT } from '../../farm/milkTestsTable.ts';
import type { ImportFile } from './importFile.ts';
import type { KeptBook } from './keeper.ts';

const LIMITS: TestLimits = { percent: PERCENT, cells_thousand: MOST_CELLS_THOUSAND };

/** Thrown where a file takes so long to look through that entries from the barn would have to wait. */
export class TooLong extends Error {}

// A file as large as the desk takes is looked through in less than one.
const LONGEST_ms = 8_000;

/** What throws once the time for a file is over. */
function timeFor(longest_ms: number): () => void {
  const end_ms = performance.now() + longest_ms;
  return () => {
    if (performance.now() > end_ms) throw new TooLong();
  };
}

/** A file that the desk holds for a while. */
export interface HeldFile {
  readonly hash: string;
  readonly name: string;
  readonly file: Exclude<ImportFile, { kind: 'unreadable' }>;
}

/** Puts the preview together. `settled` are names that earlier imports settled. Throws TooLong. */
export function importPreview(
  held: HeldFile,
  kept: KeptBook,
  sent: ImportChoices,
  settled: Readonly<Record<string, string>>,
  longest_ms = LONGEST_ms,
): ImportPreview {
  const farm = importFarm(kept);
  const known = Object.fromEntries(
    Object.entries(settled).filter(([, doe]) => farm.does.some(({ id }) => id === doe)),
  );
  const choices = { ...sent, does: { ...known, ...sent.does } };
  const { found, tests, more, sheets, sheet } =
    held.file.kind === 'icar'
      ? icarFound(held.file.reading, kept, farm, choices)
      : sheetFound(held.file, kept, farm, choices, longest_ms);
  const plan = planImport(found.milkings, bookLookup(kept), choices.corrections);
  const twins = plan.twins.map(({ line, column, told }): ImportFault => ({
    line,
    column: tests.length > 0 ? null : column,
    found: '',
    told,
  }));
  const rows = [...plan.rows].sort((a, b) => a.line - b.line || a.column - b.column);
  const write = rows.filter(({ chosen }) => chosen);
  const newTests = tests.filter(({ kind }) => kind === 'new');
  return {
    ...{ hash: held.hash, name: held.name, kind: held.file.kind, sheets, sheet, choices },
    columns: found.columns,
    unknown: found.unknown,
    askOrder: found.askOrder,
    askMilking: found.askMilking,
    rows,
    tests,
    faults: byLine([...more, ...found.faults, ...twins]),
    left: byLine([...found.left, ...plan.left]),
    remarks: held.file.remarks,
    does: farm.does.map(({ id, name }) => ({ id, name })),
    recordUnit: kept.farm.recordUnit,
    willWrite: write.length + newTests.length,
    fingerprint: createHash('sha256')
      .update(JSON.stringify([write, newTests]))
      .digest('hex')
      .slice(0, 16),
  };
}

const byLine = <T extends ImportFault | LeftOut>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => a.line - b.line || (a.column ?? -1) - (b.column ?? -1));

function importFarm({ farm, book, asOf }: KeptBook): ImportFarm {
  const { recordUnit, largestMilking, milkings } = farm;
  return { recordUnit, largestMilking, milkings, does: book.does, today: asOf };
}

interface Findings {
  readonly found: Found;
  readonly tests: readonly PlannedTest[];
  readonly more: readonly ImportFault[];
  readonly sheets: readonly string[];
  readonly sheet: string | null;
}

function sheetFound(
  file: Extract<ImportFile, { kind: 'sheet' }>,
  { farm: { timeZone } }: KeptBook,
  farm: ImportFarm,
  choices: ImportChoices,
  longest_ms: number,
): Findings {
  const goOn = timeFor(longest_ms);
  const readers = { datesMeant: likelyDates, moment: momentReader(timeZone), goOn };
  const chosen = file.sheets.find(({ name }) => name === choices.sheet);
  const filled = file.sheets.filter(({ rows }) => rows.length > 0);
  const read = (sheet: Sheet) => {
    goOn();
    return findMilkings(sheet, farm, choices, readers);
  };
  // Where nobody has chosen, the first sheet with milkings in it is most likely the one that is meant.
  const best =
    chosen ?? filled.find((sheet) => read(sheet).milkings.length > 0) ?? filled[0] ?? file.sheets[0];
  const sheet = best ?? { name: '', rows: [], decimalComma: false };
  return {
    found: read(sheet),
    tests: [],
    more: file.faults,
    sheets: file.sheets.map(({ name }) => name),
    sheet: sheet.name,
  };
}

function icarFound(
  reading: Extract<ImportFile, { kind: 'icar' }>['reading'],
  { farm: { timeZone }, book }: KeptBook,
  farm: ImportFarm,
  choices: ImportChoices,
): Findings {
  const animals = new AnimalDoes(farm, choices);
  const local = localTime(timeZone);
  const visits = findVisits(reading.visits, farm, animals, local);
  const tests = findTests(reading.tests, book.milkTests ?? [], farm, animals, local, LIMITS);
  return {
    found: {
      columns: [],
      milkings: visits.milkings,
      faults: [...reading.faults, ...visits.faults, ...tests.faults],
      left: [...reading.left, ...visits.left, ...tests.left],
      unknown: animals.unknown(),
      askOrder: null,
      askMilking: false,
    },
    tests: tests.tests,
    more: [],
    sheets: [],
    sheet: null,
  };
}

function bookLookup({ book }: KeptBook): BookLookup {
  const key = (doe: string, day: number, milking: MilkingTime) => `${day} ${milking} ${doe}`;
  const at = (row: MilkingRow) => row.entered_ms ?? Number.NEGATIVE_INFINITY;
  const latest = new Map<string, MilkingRow>();
  for (const row of book.rows) {
    const own = key(row.doe, row.day, row.milking);
    const before = latest.get(own);
    if (!before || at(row) > at(before)) latest.set(own, row);
  }
  const spans = new Map(
    book.does.map(({ id }) => [id, phaseSpans(book.kiddings.filter(({ doe }) => doe === id))]),
  );
  return {
    latest: (doe, day, milking) => latest.get(key(doe, day, milking)) ?? null,
    expected: (doe, day, milking) => milkingsOf(phaseOn(spans.get(doe) ?? [], day)).includes(milking),
    treated: (doe, day) => isTreated(book.treatments ?? [], doe, day),
  };
}
