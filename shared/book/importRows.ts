// From the cells of an imported sheet to milkings, whichever shape the sheet has: one row a milking, a.m. and p.m. side by side, one column a doe.
import type { Farm, MilkingTime, Use } from '../herd/types.ts';
import { unitNamed, type AmountUnit } from '../quantity/units.ts';
import { importedAmount } from './importAmount.ts';
import { bareColumns, doeMeant, findHeading, roleDoe, type NamedDoe } from './importColumns.ts';
import { readDates, type DateReading, type DatesMeant } from './importDates.ts';
import { clockMinutes, isTotal, milkingNamed, useNamed } from './importWords.ts';
import type {
  Found,
  FoundMilking,
  ImportChoices,
  ImportColumn,
  ImportFault,
  LeftOut,
  PlainRole,
  Sheet,
  SheetRow,
  Told,
} from './importTypes.ts';

/** What the farm says of itself, as far as an import needs it. */
export interface ImportFarm extends Pick<Farm, 'recordUnit' | 'largestMilking' | 'milkings'> {
  readonly does: readonly NamedDoe[];
  /** Day number of the farm's today: later milkings are faults. */
  readonly today: number;
}

/** Readers of the farm folder that know what a text means. */
export interface ImportReaders {
  readonly datesMeant: DatesMeant;
  /** A moment as ms, or null where the text is none. */
  readonly moment: (text: string) => number | null;
  /** Called before each row; throws where the reading has taken too long. */
  readonly goOn?: (() => void) | undefined;
}

/** Longest note of a row; what is longer is cut and told of. */
export const LONGEST_NOTE = 200;

// As much of a faulty cell as a person needs to find it again.
const LONGEST_FOUND = 120;

/** Minutes after midnight of the middle between both milkings: what is milked before it counts as a.m. */
export function middleOf({ am, pm }: Farm['milkings']): number {
  return ((clockMinutes(am) ?? 360) + (clockMinutes(pm) ?? 1080)) / 2;
}

/** Finds every milking of a sheet, and everything that is wrong with it. */
export function findMilkings(
  sheet: Sheet,
  farm: ImportFarm,
  choices: ImportChoices,
  readers: ImportReaders,
): Found {
  const heading = findHeading(sheet.rows, farm.does, choices.roles);
  if (!heading) return noHeading(sheet, farm);
  const walk = new SheetWalk(sheet, heading.columns, farm, choices, readers, heading.below);
  for (const row of sheet.rows.slice(heading.below)) {
    readers.goOn?.();
    walk.take(row);
  }
  return walk.found();
}

function noHeading(sheet: Sheet, farm: ImportFarm): Found {
  const [first] = sheet.rows;
  const faults = [
    {
      line: first?.line ?? 1,
      column: null,
      found: (first?.cells.filter((cell) => cell.trim() !== '').join(' · ') ?? '').slice(0, LONGEST_FOUND),
      told: { key: first ? 'fault.heading' : 'fault.empty', slots: {} },
    },
  ];
  const columns = bareColumns(sheet.rows, farm.does);
  return { columns, milkings: [], faults, left: [], unknown: [], askOrder: null, askMilking: false };
}

/** What a row says of every amount in it. */
interface RowPart {
  readonly row: SheetRow;
  readonly day: number;
  readonly use: Use | null;
  readonly note: string;
  readonly entered_ms: number | null;
  readonly unit: AmountUnit | null;
  readonly warnings: readonly Told[];
}

class SheetWalk {
  readonly #at = new Map<PlainRole, ImportColumn>();
  readonly #amounts: readonly ImportColumn[];
  readonly #dates: DateReading;
  readonly #unknown = new Map<string, number>();
  readonly #milkings: FoundMilking[] = [];
  readonly #faults: ImportFault[] = [];
  readonly #left: LeftOut[] = [];
  readonly #needsMilking: boolean;
  readonly #sheet: Sheet;
  readonly #columns: readonly ImportColumn[];
  readonly #farm: ImportFarm;
  readonly #choices: ImportChoices;
  readonly #readers: ImportReaders;

  constructor(
    sheet: Sheet,
    columns: readonly ImportColumn[],
    farm: ImportFarm,
    choices: ImportChoices,
    readers: ImportReaders,
    below: number,
  ) {
    this.#sheet = sheet;
    this.#columns = columns;
    this.#farm = farm;
    this.#choices = choices;
    this.#readers = readers;
    const byDoe = columns.filter(({ role }) => roleDoe(role) !== null);
    for (const column of columns)
      if (roleDoe(column.role) === null && column.role !== 'leave')
        this.#at.set(column.role as PlainRole, column);
    const plain = (['amount', 'am', 'pm'] as const).flatMap((role) => this.#at.get(role) ?? []);
    this.#amounts = byDoe.length > 0 && !this.#at.has('doe') ? byDoe : plain;
    this.#needsMilking =
      this.#amounts.some((column) => fixedMilking(column) === null) && !this.#at.has('milking');
    const dateAt = this.#at.get('date')?.index ?? -1;
    const texts = sheet.rows.slice(below).map(({ cells }) => (cells[dateAt] ?? '').trim());
    this.#dates = readDates(texts, choices.dateOrder, readers.datesMeant);
    if (this.#amounts.length === 0) this.#fault(sheet.rows[below - 1]?.line ?? 1, null, '', 'fault.noAmount');
    else if (plain.length > 0 && this.#amounts === plain && !this.#at.has('doe'))
      this.#fault(sheet.rows[below - 1]?.line ?? 1, null, '', 'fault.noDoe');
  }

  found(): Found {
    const unknown = [...this.#unknown].map(([text, rows]) => ({
      text,
      rows,
      chosen: chosenFor(this.#choices, text),
    }));
    return {
      columns: this.#columns,
      milkings: this.#milkings,
      faults: this.#faults,
      left: this.#left,
      unknown,
      askOrder: this.#dates.ask,
      askMilking: this.#needsMilking,
    };
  }

  take(row: SheetRow): void {
    if (row.cells.every((cell) => cell.trim() === '')) return;
    const names = [this.#cell(row, 'date'), this.#cell(row, 'doe')];
    if (names.some(isTotal)) {
      this.#left.push({ line: row.line, column: null, told: { key: 'left.total', slots: {} } });
      return;
    }
    const part = this.#part(row);
    const doe = this.#at.has('doe') ? this.#doe(row) : undefined;
    const milking = this.#milking(row);
    if (part === null || doe === null || milking === 'fault') return;
    for (const column of this.#amounts) {
      const who = doe ?? roleDoe(column.role)?.doe;
      const when = fixedMilking(column) ?? milking;
      if (who !== undefined && when !== null) this.#amount(part, column, who, when);
    }
  }

  #cell(row: SheetRow, role: PlainRole): string {
    const column = this.#at.get(role);
    return column ? (row.cells[column.index] ?? '').trim() : '';
  }

  #fault(line: number, column: number | null, found: string, key: string, slots: Told['slots'] = {}): void {
    this.#faults.push({ line, column, found: found.slice(0, LONGEST_FOUND), told: { key, slots } });
  }

  #wrong(row: SheetRow, role: PlainRole, key: string, slots: Told['slots'] = {}): void {
    this.#fault(row.line, this.#at.get(role)?.index ?? null, this.#cell(row, role), key, slots);
  }

  /** What all amounts of a row share; null where some of it cannot be read. Every fault of it is told. */
  #part(row: SheetRow): RowPart | null {
    const day = this.#day(row);
    const warnings: Told[] = [];
    const useText = this.#cell(row, 'use');
    const use = useText === '' ? null : useNamed(useText);
    if (useText !== '' && use === null) this.#wrong(row, 'use', 'fault.use');
    const enteredText = this.#cell(row, 'entered');
    const entered_ms = enteredText === '' ? null : this.#readers.moment(enteredText);
    if (enteredText !== '' && entered_ms === null) this.#wrong(row, 'entered', 'fault.entered');
    const unitText = this.#cell(row, 'unit');
    const unit = unitText === '' ? null : unitNamed(unitText);
    if (unitText !== '' && unit === null) this.#wrong(row, 'unit', 'fault.unit');
    const whole = oneLine(this.#cell(row, 'note'));
    if (whole.length > LONGEST_NOTE) warnings.push({ key: 'warn.noteCut', slots: { most: LONGEST_NOTE } });
    const bad = (useText !== '' && use === null) || (enteredText !== '' && entered_ms === null);
    if (day === null || bad || (unitText !== '' && unit === null)) return null;
    return { row, day, use, note: [...whole].slice(0, LONGEST_NOTE).join(''), entered_ms, unit, warnings };
  }

  #day(row: SheetRow): number | null {
    const text = this.#cell(row, 'date');
    const day = text === '' ? null : this.#dates.dayOf(text);
    if (text === '') this.#wrong(row, 'date', 'fault.noDate');
    else if (day === 'ask') this.#wrong(row, 'date', 'fault.whichDate');
    else if (day === null) this.#wrong(row, 'date', 'fault.date');
    else if (day > this.#farm.today) this.#wrong(row, 'date', 'fault.ahead');
    else return day;
    return null;
  }

  #doe(row: SheetRow): string | null {
    const text = this.#cell(row, 'doe');
    if (text === '') {
      this.#wrong(row, 'doe', 'fault.doeEmpty');
      return null;
    }
    const meant = doeMeant(text, this.#farm.does);
    if (meant !== null) return meant;
    // A whole page of text is nobody's name to choose a doe for.
    if (text.length <= LONGEST_FOUND) this.#unknown.set(text, (this.#unknown.get(text) ?? 0) + 1);
    const chosen = chosenFor(this.#choices, text);
    if (chosen === '') {
      const told = { key: 'left.doe', slots: { doe: text } };
      this.#left.push({ line: row.line, column: this.#at.get('doe')?.index ?? null, told });
      return null;
    }
    if (chosen !== null && this.#farm.does.some(({ id }) => id === chosen)) return chosen;
    this.#wrong(row, 'doe', 'fault.doe');
    return null;
  }

  #milking(row: SheetRow): MilkingTime | null | 'fault' {
    if (this.#needsMilking) return this.#choices.milking;
    if (!this.#at.has('milking')) return null;
    const text = this.#cell(row, 'milking');
    const minutes = clockMinutes(text);
    if (minutes !== null) return minutes < middleOf(this.#farm.milkings) ? 'am' : 'pm';
    const milking = milkingNamed(text);
    if (milking === null) this.#wrong(row, 'milking', 'fault.milking');
    return milking ?? 'fault';
  }

  #amount(part: RowPart, column: ImportColumn, doe: string, milking: MilkingTime): void {
    const { row } = part;
    const cell = row.cells[column.index] ?? '';
    const unit = part.unit ?? column.unit ?? this.#choices.unit ?? this.#farm.recordUnit;
    const { decimalComma } = this.#sheet;
    const read = importedAmount(cell, { unit, decimalComma, largest: this.#farm.largestMilking });
    if (!read.ok) {
      this.#fault(row.line, column.index, cell.trim(), read.told.key, read.told.slots);
      return;
    }
    // An empty cell of a table with several amounts a row is a milking that nobody wrote down, not a strike.
    if (read.amount === null && column.role !== 'amount') return;
    this.#milkings.push({
      key: `${row.line}:${column.index}`,
      line: row.line,
      column: column.index,
      doe,
      day: part.day,
      milking,
      amount: read.text,
      read: read.amount,
      unit: read.amount?.unit ?? unit,
      use: part.use,
      note: part.note,
      entered_ms: part.entered_ms,
      warnings: read.warning ? [...part.warnings, read.warning] : part.warnings,
    });
  }
}

const fixedMilking = ({ role }: ImportColumn): MilkingTime | null =>
  role === 'am' || role === 'pm' ? role : (roleDoe(role)?.milking ?? null);

const chosenFor = ({ does }: ImportChoices, text: string): string | null =>
  Object.hasOwn(does, text) ? (does[text] ?? null) : null;

/** A text on one line, without characters that no line holds. */
export function oneLine(text: string): string {
  return text
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ')
    .replace(/ {2,}/g, ' ')
    .trim();
}
