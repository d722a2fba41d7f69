// Reads a change of the herd's tables from JSON that anybody may have sent.
import {
  HERD_COLUMNS,
  LONGEST_CELL,
  type HerdChange,
  type HerdFile,
  type HerdPost,
} from '../../../shared/book/herdBook.ts';

// A row is one line, and a terminal shows it.
const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/;
const LONGEST_MARK = 100;

/** The post, its cells without spaces around them; null where it is none. */
export function readHerdPost(value: unknown): HerdPost | null {
  if (!isRecord(value)) return null;
  const { saw } = value;
  const change = readChange(value['change']);
  const isMark = saw === null || (typeof saw === 'string' && saw.length <= LONGEST_MARK);
  return change && isMark ? { change, saw } : null;
}

function readChange(value: unknown): HerdChange | null {
  if (!isRecord(value)) return null;
  const { kind, file, line } = value;
  if (!isHerdFile(file)) return null;
  if (kind === 'remove') {
    // A doe's row stays: rows of the milk book name her for good.
    return isLine(line) && file !== 'does.csv' ? { kind, file, line } : null;
  }
  const cells = readCells(value['cells'], file);
  if (cells === null) return null;
  if (kind === 'add') return cells['doe'] ? { kind, file, cells } : null;
  return kind === 'change' && isLine(line) ? { kind, file, line, cells } : null;
}

function readCells(value: unknown, file: HerdFile): Record<string, string> | null {
  if (!isRecord(value)) return null;
  const cells: Record<string, string> = {};
  for (const [name, cell] of Object.entries(value)) {
    const isKnown = (HERD_COLUMNS[file] as readonly string[]).includes(name);
    if (!isKnown || typeof cell !== 'string' || cell.length > LONGEST_CELL || UNSEEN.test(cell)) return null;
    cells[name] = cell.trim().normalize('NFC');
  }
  return cells;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isHerdFile = (value: unknown): value is HerdFile =>
  typeof value === 'string' && Object.hasOwn(HERD_COLUMNS, value);
const isLine = (value: unknown): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value > 1;
