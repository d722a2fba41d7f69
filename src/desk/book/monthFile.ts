// Which file of the milk book the desk may append to, and how its lines end there.
import { isUtf8 } from 'node:buffer';
import { accessSync, constants, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { BOOK_HEADING } from '../../../shared/book/csvRow.ts';
import { MILKINGS_FOLDER } from '../../farm/milkingFiles.ts';
import { codeOf } from './disk.ts';

/** A file that rows may be put at the end of. */
export interface MonthFile {
  /** Relative to the farm folder. */
  readonly file: string;
  /** Its length in bytes; null where it is still to be made. */
  readonly size: number | null;
  /** What must stand before the first new row: a heading, a line break that is missing, or nothing. */
  readonly before: string;
  readonly lineEnd: '\n' | '\r\n' | '\r';
  /** What stands on the last line, where no break ends it: perhaps one of our rows, torn. */
  readonly tail: string;
}

const MOST_FILES = 99;
// With this mark spreadsheets open and save the file as UTF-8, so that every name keeps its letters.
const BYTE_ORDER_MARK = '\ufeff';

/**
 * The file for the rows of a month (`YYYY-MM`): the month's own where it is ours to append to, else the first of the
 * desk's own that is. A hand-written file with other columns, separators or letters is never touched. `locked` are
 * files that did not let themselves be written just now.
 */
export function monthFile(farm: string, month: string, locked: ReadonlySet<string> = new Set()): MonthFile {
  for (const name of names(month)) {
    const file = `${MILKINGS_FOLDER}/${name}.csv`;
    const found = locked.has(file) ? null : appendable(farm, file);
    if (found) return found;
  }
  throw new Error(`none of ${MOST_FILES} files of ${month} can be appended to`);
}

function* names(month: string): Generator<string> {
  yield month;
  yield `${month}-desk`;
  for (let count = 2; count <= MOST_FILES; count += 1) yield `${month}-desk-${count}`;
}

/** A file as the desk may append to it; null where it is somebody else's. */
export function appendable(farm: string, file: string): MonthFile | null {
  let bytes: Buffer;
  try {
    bytes = readFileSync(join(farm, file));
    accessSync(join(farm, file), constants.W_OK);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') return null;
    const before = `${BYTE_ORDER_MARK}${BOOK_HEADING}\n`;
    return { file, size: null, before, lineEnd: '\n', tail: '' };
  }
  if (!isUtf8(bytes) || bytes.includes(0)) return null;
  const text = bytes.toString('utf8');
  const size = bytes.length;
  const body = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  if (body === '')
    return {
      file,
      size,
      before: `${text === '' ? BYTE_ORDER_MARK : ''}${BOOK_HEADING}\n`,
      lineEnd: '\n',
      tail: '',
    };
  const [heading = '', lineEnd = '\n'] = /^([^\r\n]*)(\r\n|\n|\r)?/.exec(body)?.slice(1) ?? [];
  // A quote mark without its other half could swallow the rows that follow.
  if (heading !== BOOK_HEADING || body.split('"').length % 2 === 0) return null;
  const tail = body.slice(Math.max(body.lastIndexOf('\n'), body.lastIndexOf('\r')) + 1);
  const end = lineEnd as MonthFile['lineEnd'];
  return { file, size, before: tail === '' ? '' : end, lineEnd: end, tail: tail === heading ? '' : tail };
}
