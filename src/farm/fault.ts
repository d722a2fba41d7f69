// What a reading of the farm folder finds: faults that stop the build, and notices that only inform.

/** Something a person must put right before the book can be taken. */
export interface Fault {
  /** Relative to the farm folder, with forward slashes; `.` is the folder itself, `AS_OF` the setting. */
  readonly file: string;
  /** Both count from 1; null where the whole file is meant. The column counts characters of the line. */
  readonly line: number | null;
  readonly column: number | null;
  readonly found: string;
  readonly expected: string;
  /** The nearest valid name or spelling, bare, where one is close. */
  readonly nearest: string | null;
  /** What to do, as a request to the coordinator. */
  readonly todo: string;
}

/** Nothing wrong, but worth a word. */
export interface Notice {
  readonly file: string | null;
  readonly line: number | null;
  readonly text: string;
}

/** The growing lists of one reading. */
export interface Findings {
  readonly faults: Fault[];
  readonly notices: Notice[];
}

/** A line and a column in a file, both from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

const NOWHERE = { line: null, column: null };
const LONGEST_SHOWN = 60;
// Control characters would garble a terminal.
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\ufeff]/g;

/** A fault at a place, or of a whole file. */
export function faultAt(
  file: string,
  place: Place | null,
  words: { found: string; expected: string; todo: string; nearest?: string | null },
): Fault {
  const { found, expected, todo, nearest = null } = words;
  return { file, ...(place ?? NOWHERE), found, expected, nearest, todo };
}

/** The text of a cell as a fault shows it: in quotes, short, on one line. */
export function shown(text: string): string {
  if (text === '') return 'an empty cell';
  const characters = [...text.slice(0, LONGEST_SHOWN * 2)];
  const short = characters.slice(0, LONGEST_SHOWN).join('');
  const seen = short.replace(UNSEEN, (sign) => (sign === '\n' ? ' ⏎ ' : '\ufffd'));
  return `"${seen}${characters.length > LONGEST_SHOWN ? '…' : ''}"`;
}

/** `1 row`, `12 rows`: a count with its noun. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en')} ${count === 1 ? one : many}`;
}

/** Faults in the order in which a person works through them: by file, line and column. */
export function sortedFaults(faults: readonly Fault[]): Fault[] {
  return [...faults].sort(
    (a, b) =>
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      (a.line ?? 0) - (b.line ?? 0) ||
      (a.column ?? 0) - (b.column ?? 0),
  );
}
