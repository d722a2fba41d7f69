// What is wrong with farm.yaml, or another file of words and colons, in words, at the line and column of the node that is meant.
import { isMap, isPair, isScalar, visit, type Document, type Node, type Scalar, type YAMLError } from 'yaml';
import type * as z from 'zod';
import { faultAt, shown, type Fault, type Place } from './fault.ts';
import { nearestName } from './nearest.ts';
import { FIELD_WORDS, OTHER_SECTIONS, SETTINGS_FILE, type FieldWords } from './settingsRule.ts';

type Issue = z.core.$ZodIssue;

/** The file as text and as nodes. */
interface Source {
  readonly document: Document;
  readonly text: string;
  readonly placeOf: (offset: number) => Place;
  /** Which file of the farm folder it is, and what its fields must hold; `farm.yaml` where it is not said. */
  readonly about?: { readonly file: string; readonly words: Readonly<Record<string, FieldWords>> };
}

const SIGN_FIRST = {
  found: 'a text that begins with a sign which has a meaning of its own here, such as * & @ % ! `',
  todo: 'put the whole text in quotes',
};
const FARM = { file: SETTINGS_FILE, words: FIELD_WORDS } as const;
const COMPARE =
  'compare the line, and the one above it, with a farm.yaml that is right; "npm run farm -- FOLDER" lays one out';
const EXPECTED = 'lines of the form "word: what it is" (YAML)';
const YAML_WORDS: Readonly<Partial<Record<YAMLError['code'], { found: string; todo: string }>>> = {
  TAB_AS_INDENT: { found: 'a tab at the start of the line', todo: 'take it out and use spaces' },
  DUPLICATE_KEY: { found: 'the same word before a colon a second time', todo: 'keep one of the two' },
  BAD_INDENT: {
    found: 'a line that stands too far left or right, or a bracket that is not closed before it',
    todo: 'start the line where its neighbours start, and close every bracket',
  },
  MISSING_CHAR: {
    found: 'a quote or bracket that is opened and not closed, or a word without its colon',
    todo: 'close it, or put the colon after the word',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    found: 'a second colon, or a line that stands too far right below this one',
    todo: 'put what follows the first colon in quotes, and start each line where its neighbours start',
  },
  MULTILINE_IMPLICIT_KEY: { found: 'a line without a colon', todo: 'put the colon after its first word' },
  BAD_SCALAR_START: SIGN_FIRST,
  BAD_ALIAS: SIGN_FIRST,
  MULTIPLE_DOCS: { found: 'a line of three hyphens', todo: 'take it out' },
};

/** A fault of the file's form. */
export function yamlFault(
  { code, message, pos }: YAMLError,
  document: Document,
  placeOf: Source['placeOf'],
  file = SETTINGS_FILE,
): Fault {
  const words = YAML_WORDS[code] ?? { found: `text that cannot be read (${message})`, todo: COMPARE };
  const offset = code === 'MISSING_CHAR' ? (openQuote(document, pos[0]) ?? pos[0]) : pos[0];
  return faultAt(file, placeOf(offset), { ...words, expected: EXPECTED });
}

// With these the lines around the fault still say what they say.
const HARMLESS: readonly string[] = ['DUPLICATE_KEY', 'TAB_AS_INDENT'];

/** True where the fields of a file with slips of form can be read nonetheless. Of a word that stands twice the first is then read. */
export function canReadOn(document: Document): boolean {
  if (document.errors.some(({ code }) => !HARMLESS.includes(code))) return false;
  const names = (key: unknown) => String(isScalar(key) ? key.value : key);
  visit(document, {
    Map: (_, map) => {
      const keys = map.items.map(({ key }) => names(key));
      map.items = map.items.filter((_, place) => keys.indexOf(keys[place] ?? '') === place);
    },
  });
  return true;
}

// The parser misses a closing quote at the end of the file; a person looks for the one that opens.
function openQuote(document: Document, end: number): number | null {
  let offset: number | null = null;
  const take = (node: Scalar) => {
    const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
    if (quoted && node.range && node.range[1] >= end) offset = node.range[0];
  };
  visit(document, { Scalar: (_, node) => take(node) });
  return offset;
}

/** A fault of the file's form that has no words of its own. */
export function tornFault(message: string, file = SETTINGS_FILE): Fault {
  return faultAt(file, null, {
    found: `text that cannot be read (${message})`,
    expected: EXPECTED,
    todo: COMPARE,
  });
}

/** A fault for a word after a star, which stands for what another place names: none does, or it grows without end. */
export function aliasFault(
  document: Document,
  placeOf: Source['placeOf'],
  message: string,
  file = SETTINGS_FILE,
): Fault {
  let offset: number | null = null;
  visit(document, { Alias: (_, node) => void (offset ??= node.range?.[0] ?? null) });
  if (offset === null) return tornFault(message, file);
  return faultAt(file, placeOf(offset), { ...SIGN_FIRST, expected: EXPECTED });
}

/** A fault for a file without any field. */
export function noFields(): Fault {
  return faultAt(
    SETTINGS_FILE,
    { line: 1, column: 1 },
    {
      found: 'no lines of the form "word: what it is"',
      expected: "the farm's name, timeZone, units, recordUnit and milkings",
      todo: 'write them, one a line; "npm run farm -- FOLDER" lays out a farm.yaml to fill in',
    },
  );
}

/** Every fault of the fields. */
export function settingFaults(issues: readonly Issue[], source: Source): Fault[] {
  return issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => unknownKey(issue.path, key, source))
      : [fieldFault(issue, source)],
  );
}

function fieldFault(issue: Issue, { document, text, placeOf, about = FARM }: Source): Fault {
  const { path } = issue;
  const field = path.filter((part) => typeof part === 'string').join('.');
  // A slip between two fields has words of its own.
  const own = issue.code === 'custom' ? (issue.params?.['words'] as FieldWords | undefined) : undefined;
  const words = own ?? about.words[field] ?? { expected: 'something else', todo: 'correct it' };
  const node = nodeAt(document, path);
  const place = placeOf(offsetAt(document, path));
  if (node === null || (isScalar(node) && node.value === null))
    return faultAt(about.file, place, {
      found: `no ${field}`,
      expected: words.expected,
      todo: `add it: ${words.todo}`,
    });
  const written = isScalar(node) ? String(node.value) : text.slice(node.range?.[0], node.range?.[1]).trim();
  const nearest = isScalar(node) ? nearestOf(written, words.names?.() ?? []) : null;
  // A right number in quotes looks right to its writer.
  const isQuoted = issue.code === 'invalid_type' && issue.expected === 'number' && isQuotedNumber(node);
  return faultAt(about.file, place, {
    found: `${shown(written)}${isQuoted ? ' in quotes' : ''} for ${field}`,
    expected: words.expected,
    // A right name that stands where a list must stand is no slip of its letters.
    nearest: nearest === written ? null : nearest,
    todo: isQuoted ? 'take the quotes away' : words.todo,
  });
}

const isQuotedNumber = (node: Node): boolean =>
  isScalar(node) && typeof node.value === 'string' && /^ *\d+(?:\.\d+)? *$/.test(node.value);

// A city alone is enough to find its time zone.
function nearestOf(text: string, names: readonly string[]): string | null {
  const city = text.trim().toLowerCase().replaceAll(' ', '_');
  const byCity = names.find((name) => name.toLowerCase().endsWith(`/${city}`));
  return byCity ?? nearestName(text, names);
}

function unknownKey(path: Issue['path'], key: string, { document, placeOf, about = FARM }: Source): Fault {
  const prefix = path.map((part) => (typeof part === 'number' ? '' : `${String(part)}.`)).join('');
  const inner = Object.keys(about.words).filter((name) => name.startsWith(prefix));
  const names = inner.map((name) => name.slice(prefix.length)).filter((name) => !name.includes('.'));
  const all = prefix === '' && about === FARM ? [...names, ...OTHER_SECTIONS] : names;
  return faultAt(about.file, placeOf(offsetAt(document, [...path, key], true)), {
    found: `${shown(prefix + key)}, which no page reads`,
    expected: `one of ${all.join(', ')}`,
    nearest: nearestName(key, all),
    todo: 'correct the word before the colon, or take the line out',
  });
}

function nodeAt(document: Document, path: readonly PropertyKey[]): Node | null {
  return (document.getIn(path, true) as Node | undefined) ?? null;
}

// Where a path's value starts (or its key); what is missing is placed where it should stand: at its parent.
function offsetAt(document: Document, path: readonly PropertyKey[], atKey = false): number {
  if (path.length === 0) return document.contents?.range?.[0] ?? 0;
  const parent = nodeAt(document, path.slice(0, -1)) ?? document.contents;
  const name = path.at(-1);
  if (isMap(parent)) {
    const pair = parent.items.find(
      (item) => isPair(item) && isScalar(item.key) && String(item.key.value) === String(name),
    );
    const node = (atKey ? pair?.key : (pair?.value ?? pair?.key)) as Node | null | undefined;
    if (node?.range) return node.range[0];
  }
  const node = nodeAt(document, path);
  if (node?.range) return node.range[0];
  return offsetAt(document, path.slice(0, -1), true);
}
