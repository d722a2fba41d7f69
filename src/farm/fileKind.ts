// Files that are no text, told by their first bytes.

interface Kind {
  readonly found: string;
  readonly expected: string;
  readonly todo: string;
}

const EXPECTED = 'plain text: fields with a separator between them';
const SAVE_AS = 'open it in the program that made it and save it as "CSV UTF-8", then put that file here';

// Magic numbers from the formats' own specifications (from memory).
const STARTS: readonly (readonly [readonly number[], string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], 'a spreadsheet or other packed file (.xlsx, .ods, .numbers or .zip)'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'an old spreadsheet or document (.xls or .doc)'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF'],
  [[0x89, 0x50, 0x4e, 0x47], 'a picture (PNG)'],
  [[0xff, 0xd8, 0xff], 'a picture (JPEG)'],
  [[0x47, 0x49, 0x46, 0x38], 'a picture (GIF)'],
  [[0x1f, 0x8b], 'a packed file (.gz)'],
  [[0x7b, 0x5c, 0x72, 0x74, 0x66], 'a word-processor document (RTF)'],
];
const WEB_PAGE = /^\s*(?:<\?xml[^>]*>\s*)?<(?:!doctype\s+html|html|head|body|table)\b/i;
const LOOKED_AT = 512;

/** What the bytes are, where they are surely no text, else null. */
export function fileKind(bytes: Uint8Array): Kind | null {
  for (const [magic, found] of STARTS)
    if (magic.every((byte, index) => bytes[index] === byte))
      return { found, expected: EXPECTED, todo: SAVE_AS };
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, LOOKED_AT)).replace(/^ï»¿/, '');
  if (WEB_PAGE.test(start)) return { found: 'a web page (HTML)', expected: EXPECTED, todo: SAVE_AS };
  if (bytes.includes(0))
    return {
      found: 'bytes that no text holds (zeros): a file of another kind, or a damaged one',
      expected: EXPECTED,
      todo: SAVE_AS,
    };
  return null;
}
