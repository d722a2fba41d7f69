// What an import reads and what its preview says: a sheet's cells, the choices of a person, what each row would become.
import type { MilkingTime, Use } from '../herd/types.ts';
import type { Amount } from '../quantity/amount.ts';
import type { AmountUnit } from '../quantity/units.ts';
import type { Slots } from '../words/words.ts';

/** A sentence by its key below `month.import`, with what fills its slots. */
export interface Told {
  readonly key: string;
  readonly slots: Slots;
}

/** A row of a sheet: its number there, and its cells as text. */
export interface SheetRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A sheet as cells. */
export interface Sheet {
  readonly name: string;
  readonly rows: readonly SheetRow[];
  /** Whether a comma may stand for the decimal point, as in files with semicolons between the cells. */
  readonly decimalComma: boolean;
}

/**
 * What a column holds: one of the plain roles, or the amounts of one doe (`of am clover`, `of pm clover`; `of both
 * clover` where another column says which milking).
 */
export type Role = PlainRole | DoeRole;
/** The amounts of one doe. */
export type DoeRole = `of ${MilkingTime | 'both'} ${string}`;
/** Columns that any shape may have. `am` and `pm` are amounts side by side, `leave` is not read. */
export type PlainRole = (typeof PLAIN_ROLES)[number];

/** The plain roles, in the order that a page offers them. */
export const PLAIN_ROLES = Object.freeze([
  'date',
  'milking',
  'doe',
  'amount',
  'am',
  'pm',
  'unit',
  'use',
  'note',
  'entered',
  'leave',
] as const);

/** Which number of `5/6/2026` is the month. */
export type DateOrder = 'month first' | 'day first';

/** What a person chose on the preview. Every choice has a state in which nobody chose. */
export interface ImportChoices {
  /** The sheet of a workbook; null for the first one with something to read. */
  readonly sheet: string | null;
  /** Roles by column, counted from 0, where they differ from what the heading says. */
  readonly roles: Readonly<Record<string, Role>>;
  readonly dateOrder: DateOrder | null;
  /** The unit of amounts that name none; null for the farm's own. */
  readonly unit: AmountUnit | null;
  /** Which milking a table without a column for it holds. */
  readonly milking: MilkingTime | null;
  /** The doe that a name in the file means; an empty text leaves her rows out. */
  readonly does: Readonly<Record<string, string>>;
  /** Keys of rows that shall take the place of what the book has; `*` for all. */
  readonly corrections: readonly string[];
}

/** Nobody has chosen anything yet. */
export const NO_CHOICES: ImportChoices = Object.freeze({
  sheet: null,
  roles: {},
  dateOrder: null,
  unit: null,
  milking: null,
  does: {},
  corrections: [],
});

/** A column of the sheet with what it is taken for. */
export interface ImportColumn {
  readonly index: number;
  readonly heading: string;
  readonly role: Role;
  /** The unit that its heading names. */
  readonly unit: AmountUnit | null;
}

/** One milking as the file has it. */
export interface FoundMilking {
  /** Line and column of the amount: the same for the same cell of the same file. */
  readonly key: string;
  readonly line: number;
  readonly column: number;
  readonly doe: string;
  readonly day: number;
  readonly milking: MilkingTime;
  /** As it will be written; null strikes out. */
  readonly amount: string | null;
  readonly read: Amount | null;
  readonly unit: AmountUnit;
  /** Null where the file does not say. */
  readonly use: Use | null;
  readonly note: string;
  /** When the file says that it was written down, ms. */
  readonly entered_ms: number | null;
  readonly warnings: readonly Told[];
}

/** What is wrong with a cell, or with a row where `column` is null. */
export interface ImportFault {
  readonly line: number;
  readonly column: number | null;
  /** The cell as it stands. */
  readonly found: string;
  readonly told: Told;
}

/** A row that nobody needs to look at again: a total, a doe that was left out, a twin within the file. */
export interface LeftOut {
  readonly line: number;
  readonly column: number | null;
  readonly told: Told;
}

/** A name in the file that is no doe's. */
export interface UnknownDoe {
  readonly text: string;
  readonly rows: number;
  /** What somebody chose for it; null while nobody has. */
  readonly chosen: string | null;
}

/** All that was found in a sheet. */
export interface Found {
  readonly columns: readonly ImportColumn[];
  readonly milkings: readonly FoundMilking[];
  readonly faults: readonly ImportFault[];
  readonly left: readonly LeftOut[];
  readonly unknown: readonly UnknownDoe[];
  /** A date that may be read two ways, where somebody has to say which; null where there is none. */
  readonly askOrder: string | null;
  /** Whether somebody has to say which milking the table holds. */
  readonly askMilking: boolean;
}

/** Columns of the farm's milk tests, besides date and doe. */
export type TestColumn = 'fat_pct' | 'protein_pct' | 'lactose_pct' | 'scc';

/** A milk test as it would be written. `known`: the farm has the same; `other`: it has another one, which only a person may change. */
export interface PlannedTest extends Readonly<Record<TestColumn, string | null>> {
  readonly key: string;
  readonly line: number;
  readonly kind: 'new' | 'known' | 'other';
  readonly doe: string;
  readonly date: string;
  readonly warnings: readonly Told[];
}

/**
 * `new`: nothing stands there. `known`: the same amount and use stand. `correction`: something else stands, and somebody
 * has to choose. Only new rows and chosen corrections are written.
 */
export type PlannedKind = 'new' | 'known' | 'correction';

/** What a milking of the file would become. */
export interface PlannedRow {
  readonly key: string;
  readonly line: number;
  readonly column: number;
  readonly kind: PlannedKind;
  readonly doe: string;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly amount: string | null;
  readonly unit: Amount['unit'];
  readonly use: Use;
  /** Whether the file itself says that it is kept. */
  readonly saidKept: boolean;
  readonly note: string;
  readonly entered_ms: number | null;
  /** Whether it will be written. */
  readonly chosen: boolean;
  /** What the book has; null where it has nothing. */
  readonly before: { readonly amount: Amount | null; readonly use: Use } | null;
  /** The mark of that row, so that a change in between is seen. */
  readonly saw: string | null;
  readonly warnings: readonly Told[];
}

/** Something that kept an entry from being written after all. */
export interface ImportRefusal {
  readonly line: number;
  readonly told: Told;
}

/** Everything that a person looks at before anything is written. */
export interface ImportPreview {
  /** Of the file's bytes: by it the desk knows the file again. */
  readonly hash: string;
  readonly name: string;
  readonly kind: 'sheet' | 'icar';
  readonly sheets: readonly string[];
  readonly sheet: string | null;
  /** What holds: the choices that were sent, and what was kept from earlier imports. */
  readonly choices: ImportChoices;
  readonly columns: readonly ImportColumn[];
  readonly unknown: readonly UnknownDoe[];
  readonly askOrder: string | null;
  readonly askMilking: boolean;
  readonly rows: readonly PlannedRow[];
  readonly tests: readonly PlannedTest[];
  readonly faults: readonly ImportFault[];
  readonly left: readonly LeftOut[];
  /** What is worth a word about the file as a whole. */
  readonly remarks: readonly Told[];
  readonly does: readonly { readonly id: string; readonly name: string }[];
  readonly recordUnit: AmountUnit;
  /** Rows that would be written, and a mark of all that they say: another one means that the book has changed. */
  readonly willWrite: number;
  readonly fingerprint: string;
}

/** The desk's answer to a file or to choices. `gone`: the desk does not hold that file any more; send it again. */
export type ImportAnswer =
  | { readonly ok: true; readonly preview: ImportPreview }
  | { readonly ok: false; readonly why: 'gone' }
  | { readonly ok: false; readonly why: 'unreadable'; readonly told: Told };

/** What is sent to `desk/import/plan`, and with the preview's mark to `desk/import/write`. */
export interface ImportPost {
  readonly hash: string;
  readonly choices: ImportChoices;
  readonly fingerprint?: string;
}

/** The answer of `desk/import/write`. `changed`: the book is not as the preview showed it, and nothing was written. */
export type ImportWritten =
  | {
      readonly ok: true;
      readonly written: number;
      readonly tests: number;
      readonly refused: readonly ImportRefusal[];
      readonly preview: ImportPreview;
    }
  | { readonly ok: false; readonly why: 'changed'; readonly preview: ImportPreview }
  | { readonly ok: false; readonly why: 'gone' };
