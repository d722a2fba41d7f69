// Reads farm.yaml: every fault with the line and column of the words that it is about.
import {
  isMap,
  isPair,
  isScalar,
  LineCounter,
  parseDocument,
  type Document,
  type Node,
  type YAMLError,
} from 'yaml';
import type * as z from 'zod';
import type { Farm } from '../../shared/herd/types.ts';
import { faultAt, shown, type Findings, type Place } from './fault.ts';
import { nearestName } from './nearest.ts';
import { FIELD_WORDS, OTHER_SECTIONS, settingsRule, type Settings } from './settingsRule.ts';
import { readText } from './table.ts';

export const SETTINGS_FILE = 'farm.yaml';

/** What could be read. `whole` is false where farm.yaml has faults: then missing fields are unknown. */
export interface SettingsReading {
  readonly fields: Partial<Settings>;
  readonly whole: boolean;
}

const UNKNOWN: SettingsReading = { fields: {}, whole: false };
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
  MULTIPLE_DOCS: { found: 'a line of three hyphens', todo: 'take it out' },
};

/** Reads and checks the settings of a farm that has the file. */
export function readSettings(dir: string, findings: Findings): SettingsReading {
  const text = readText(dir, SETTINGS_FILE, findings);
  if (text === null) return UNKNOWN;
  const lines = new LineCounter();
  let fields: unknown;
  let document: Document;
  try {
    document = parseDocument(text, { lineCounter: lines, prettyErrors: false, logLevel: 'silent' });
    fields = document.toJS();
  } catch (error) {
    findings.faults.push(yamlFault(String(error instanceof Error ? error.message : error), null, null));
    return UNKNOWN;
  }
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  for (const error of document.errors)
    findings.faults.push(yamlFault(error.message, error.code, placeOf(error.pos[0])));
  // Where the text is torn, what stands under which word is a guess.
  if (document.errors.some(({ code }) => code !== 'DUPLICATE_KEY' && code !== 'TAB_AS_INDENT'))
    return UNKNOWN;
  if (!isMap(document.contents)) {
    findings.faults.push(noFields());
    return UNKNOWN;
  }
  const read = settingsRule.safeParse(withoutEmpty(fields));
  if (read.success) return { fields: read.data, whole: document.errors.length === 0 };
  for (const issue of read.error.issues) addIssue(issue, document, placeOf, findings);
  return { fields: soundFields(withoutEmpty(fields)), whole: false };
}

function yamlFault(message: string, code: YAMLError['code'] | null, place: Place | null) {
  const words = code === null ? undefined : YAML_WORDS[code];
  return faultAt(SETTINGS_FILE, place, {
    found: words?.found ?? `text that cannot be read (${message})`,
    expected: 'lines of the form "word: what it is" (YAML)',
    todo: words?.todo ?? 'compare the line, and the one above it, with the lines that are right',
  });
}

function noFields() {
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

// A word with nothing after its colon is as good as left out.
function withoutEmpty(fields: unknown): Record<string, unknown> {
  const entries = Object.entries(fields as Record<string, unknown>);
  return Object.fromEntries(entries.filter(([, value]) => value !== null && value !== undefined));
}

function soundFields(fields: Record<string, unknown>): Partial<Settings> {
  const sound = Object.entries(settingsRule.shape).flatMap(([name, rule]) => {
    const read = Object.hasOwn(fields, name) ? rule.safeParse(fields[name]) : null;
    return read?.success ? [[name, read.data] as const] : [];
  });
  return Object.fromEntries(sound) as Partial<Settings>;
}

type Issue = z.core.$ZodIssue;

function addIssue(
  issue: Issue,
  document: Document,
  placeOf: (offset: number) => Place,
  findings: Findings,
): void {
  const { path } = issue;
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) findings.faults.push(unknownKey(path, key, document, placeOf));
    return;
  }
  const field = path.filter((part) => typeof part === 'string').join('.');
  const words = FIELD_WORDS[field] ?? { expected: 'something else', todo: 'correct it' };
  const node = nodeAt(document, path);
  const text = isScalar(node) ? String(node.value) : null;
  const missing = node === null || (isScalar(node) && node.value === null);
  findings.faults.push(
    faultAt(SETTINGS_FILE, placeOf(offsetAt(document, path)), {
      found: missing ? `no ${field}` : `${text === null ? 'something else' : shown(text)} for ${field}`,
      expected: words.expected,
      nearest: text === null || missing ? null : nearestOf(text, words.names?.() ?? []),
      todo: missing ? `add it: ${words.todo}` : words.todo,
    }),
  );
}

// A city alone is enough to find its time zone.
function nearestOf(text: string, names: readonly string[]): string | null {
  const city = text.trim().toLowerCase().replaceAll(' ', '_');
  const byCity = names.find((name) => name.toLowerCase().endsWith(`/${city}`));
  return byCity ?? nearestName(text, names);
}

function unknownKey(
  path: Issue['path'],
  key: string,
  document: Document,
  placeOf: (offset: number) => Place,
) {
  const prefix = path.map((part) => `${String(part)}.`).join('');
  const inner = Object.keys(FIELD_WORDS).filter((name) => name.startsWith(prefix));
  const names = inner.map((name) => name.slice(prefix.length)).filter((name) => !name.includes('.'));
  const all = prefix === '' ? [...names, ...OTHER_SECTIONS] : names;
  return faultAt(SETTINGS_FILE, placeOf(offsetAt(document, [...path, key], true)), {
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

/** The farm as pages know it, with the defaults of fields that a farm may leave out. */
export function farmOf(settings: Settings): Farm {
  const { name, timeZone, units, recordUnit, milkings, languages = ['en'] } = settings;
  return {
    name,
    timeZone,
    units,
    recordUnit,
    languages,
    milkings,
    jar: settings.jar ?? (units === 'us' ? { size: 1, unit: 'qt' } : { size: 1, unit: 'L' }),
    largestMilking: settings.largestMilking ?? LARGEST_MILKING,
  };
}

/** The largest single milking of a farm that names none. Source: the farm folder's contract. */
export const LARGEST_MILKING = Object.freeze({ amount: 10, unit: 'L' } as const);
