// From the bytes of a file to its text: what is not UTF-8 text is named for what it is.
import { Buffer, isUtf8 } from 'node:buffer';
import { fileKind } from './fileKind.ts';
import type { Place } from './fault.ts';

/** What keeps a file from being read as UTF-8 text, in words. */
interface TextFault {
  readonly place: Place | null;
  readonly found: string;
  readonly expected: string;
  readonly todo: string;
}

/** Text without its byte-order mark; where `fault` is set the text is a best guess, or null. */
export interface DecodedText {
  readonly text: string | null;
  readonly fault: TextFault | null;
}

const UTF8_TEXT = 'text in UTF-8';
const SAVE_UTF8 =
  'open it in a spreadsheet or editor and save it again as "CSV UTF-8", or as text with the encoding UTF-8';

/** Reads bytes as UTF-8 with or without a byte-order mark. */
export function decodeText(bytes: Uint8Array): DecodedText {
  const wide = wideEncoding(bytes);
  if (wide) {
    const fault = { place: null, found: `text in UTF-16 ("Unicode")`, expected: UTF8_TEXT, todo: SAVE_UTF8 };
    return { text: new TextDecoder(wide).decode(bytes), fault };
  }
  const kind = fileKind(bytes);
  if (kind) return { text: null, fault: { place: null, ...kind } };
  if (isUtf8(bytes)) return { text: new TextDecoder('utf-8').decode(bytes), fault: null };
  return { text: mixedText(bytes), fault: badByte(bytes) };
}

// Letters that are UTF-8 as such, other bytes by Windows-1252: a file may hold rows from two computers.
function mixedText(bytes: Uint8Array): string {
  const ansi = new TextDecoder('windows-1252');
  const sequences = /[\xc2-\xdf][\x80-\xbf]|[\xe0-\xef][\x80-\xbf]{2}|[\xf0-\xf4][\x80-\xbf]{3}|[\x80-\xff]/g;
  const text = Buffer.from(bytes)
    .toString('latin1')
    .replace(sequences, (sequence) => {
      const raw = Buffer.from(sequence, 'latin1');
      return raw.length > 1 ? raw.toString('utf8') : ansi.decode(raw);
    });
  return text.replace(/^\ufeff/, '');
}

// A byte-order mark says so; without one, plain letters have a zero byte on every other place.
function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  if (bytes.length < 8 || bytes.length % 2 === 1) return null;
  const start = bytes.subarray(0, 8);
  const zeroAt = (parity: number) => start.every((byte, index) => (byte === 0) === (index % 2 === parity));
  return zeroAt(1) ? 'utf-16le' : zeroAt(0) ? 'utf-16be' : null;
}

function badByte(bytes: Uint8Array): TextFault {
  const at = firstBadByte(bytes);
  const before = new TextDecoder('utf-8').decode(bytes.subarray(0, at));
  const lines = before.split(/\r\n|\n|\r/);
  const place = { line: lines.length, column: [...(lines.at(-1) ?? '')].length + 1 };
  const byte = bytes[at] ?? 0;
  const hex = byte.toString(16).toUpperCase().padStart(2, '0');
  const letter = new TextDecoder('windows-1252').decode(bytes.subarray(at, at + 1));
  const likely = /\p{L}|\p{P}|\p{S}/u.test(letter)
    ? `, which Windows-1252 ("ANSI") reads as "${letter}"`
    : '';
  return { place, found: `the byte ${hex}${likely}`, expected: UTF8_TEXT, todo: SAVE_UTF8 };
}

// A prefix is valid up to a point and never again, so that point is found by halving. A sequence
// cut short at the end of the prefix counts as valid: "stream" waits for its rest.
function firstBadByte(bytes: Uint8Array): number {
  const startsWell = (length: number) => {
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, length), { stream: true });
      return true;
    } catch {
      return false;
    }
  };
  let [good, bad] = [0, bytes.length + 1];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (startsWell(middle)) good = middle;
    else bad = middle;
  }
  return sequenceStart(bytes, Math.min(good, bytes.length));
}

// The bad byte may be the one that should have gone on a sequence: then the sequence itself is at fault.
function sequenceStart(bytes: Uint8Array, at: number): number {
  for (let back = 1; back <= 3 && at - back >= 0; back += 1) {
    const byte = bytes[at - back] ?? 0;
    if (byte >= 0xc2) return isUtf8(bytes.subarray(at - back, at)) ? at : at - back;
    if (byte < 0x80) return at;
  }
  return at;
}
