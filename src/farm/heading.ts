// The heading line of a table: which separator it uses, and which column holds what.
import { breaksIn, cellPlace, recordAt, type Separator } from './csv.ts';
import { faultAt, shown, type Findings, type Place } from './fault.ts';
import { nearestName } from './nearest.ts';

/** The columns of a kind of table. */
export interface ColumnRules {
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

/** A heading that was found, and where its rows begin. */
export interface Heading {
  readonly separator: Separator;
  /** Number of headings. */
  readonly width: number;
  /** Column of each known name; -1 where the file has none. */
  readonly at: Readonly<Record<string, number>>;
  /** Columns with no heading over them. */
  readonly unnamed: readonly number[];
  readonly rows: { readonly offset: number; readonly line: number };
}

const SEPARATORS: readonly Separator[] = [',', ';', '\t'];
/** A separator by its name. */
export const SEPARATOR_NAMES: Readonly<Record<Separator, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
};

const plain = (text: string) => text.trim().toLowerCase();
const known = (rules: ColumnRules) => [...rules.required, ...rules.optional];

interface FirstLine {
  readonly start: number;
  readonly line: number;
  readonly text: string;
}

/**
 * Reads the heading of a file, or null where the file has no line at all. Faults in it are added;
 * a misspelt column stands in for the one that is missing, so that its cells are checked too.
 */
export function readHeading(
  file: string,
  text: string,
  rules: ColumnRules,
  findings: Findings,
): Heading | null {
  const first = firstLine(text);
  if (!first) return null;
  const { separator, names, next } = splitHeading(text, first.start, rules);
  const rows = { offset: next, line: first.line + breaksIn(text, first.start, next) };
  const place = (index: number) => cellPlace(text, separator, first, index);
  const at: Record<string, number> = Object.fromEntries(known(rules).map((name) => [name, -1]));
  const strange: number[] = [];
  names.forEach((name, index) => {
    const before = at[plain(name)];
    if (before === undefined || !Object.hasOwn(at, plain(name))) {
      if (plain(name) !== '') strange.push(index);
    } else if (before < 0) at[plain(name)] = index;
    else findings.faults.push(twice(file, place(index), name, before));
  });
  if (!Object.values(at).some((index) => index >= 0)) {
    findings.faults.push(noHeading(file, place(0), first.text, rules));
    return {
      separator,
      width: names.length,
      at,
      unnamed: [],
      rows: { offset: text.length, line: rows.line },
    };
  }
  nameStrangers(file, names, strange, at, place, rules, findings);
  addMissing(file, place(0), at, names, rules, findings);
  const unnamed = names.flatMap((name, index) => (plain(name) === '' ? [index] : []));
  return { separator, width: names.length, at, unnamed, rows };
}

function firstLine(text: string): FirstLine | null {
  let [start, line] = [0, 1];
  while (start < text.length) {
    const found = text.indexOf('\n', start);
    const end = found < 0 ? text.length : found;
    const words = text.slice(start, end);
    if (/[^\s,;"]/.test(words)) return { start, line, text: words };
    start = end + 1;
    line += 1;
  }
  return null;
}

interface SplitHeading {
  readonly separator: Separator;
  readonly names: readonly string[];
  /** Offset of the first row. */
  readonly next: number;
}

// The separator that gives the most known names; where none gives one, the most cells.
function splitHeading(text: string, start: number, rules: ColumnRules): SplitHeading {
  const tries = SEPARATORS.map((separator) => {
    const { cells, next } = recordAt(text, separator, start);
    const hits = cells.filter((name) => known(rules).includes(plain(name))).length;
    return { separator, names: cells, next, hits };
  });
  return tries.reduce((best, one) =>
    one.hits > best.hits || (one.hits === best.hits && one.names.length > best.names.length) ? one : best,
  );
}

function twice(file: string, place: Place, name: string, before: number) {
  return faultAt(file, place, {
    found: `the column ${shown(name.trim())} a second time (the first is column ${before + 1})`,
    expected: 'each heading once',
    todo: 'take one of the two columns out, or give it another heading',
  });
}

function noHeading(file: string, place: Place, text: string, rules: ColumnRules) {
  return faultAt(file, place, {
    found: shown(text.trim()),
    expected: `the headings ${rules.required.join(', ')} in the first line, with a comma, semicolon or tab between them`,
    todo: `make ${known(rules).join(',')} the first line of the file; nothing may stand above it`,
  });
}

// A heading that is nearly a known one is a slip; any other one is the farm's own column.
function nameStrangers(
  file: string,
  names: readonly string[],
  strange: readonly number[],
  at: Record<string, number>,
  place: (index: number) => Place,
  rules: ColumnRules,
  findings: Findings,
): void {
  for (const index of strange) {
    const name = (names[index] ?? '').trim();
    const free = known(rules).filter((one) => (at[one] ?? -1) < 0);
    const nearest = nearestName(name, free);
    if (nearest === null) {
      const text = `The column ${shown(name)} is none that the pages know. It stays in the file and is not read.`;
      findings.notices.push({ file, line: place(index).line, text });
      continue;
    }
    at[nearest] = index;
    findings.faults.push(
      faultAt(file, place(index), {
        found: `the heading ${shown(name)}`,
        expected: `one of ${known(rules).join(', ')}`,
        nearest,
        todo: `write ${nearest} over this column`,
      }),
    );
  }
}

function addMissing(
  file: string,
  place: Place,
  at: Readonly<Record<string, number>>,
  names: readonly string[],
  rules: ColumnRules,
  findings: Findings,
): void {
  const missing = rules.required.filter((name) => (at[name] ?? -1) < 0);
  if (missing.length === 0) return;
  findings.faults.push(
    faultAt(file, place, {
      found: `no column ${missing.map((name) => `"${name}"`).join(' and no column ')} among ${shown(names.map((name) => name.trim()).join(', '))}`,
      expected: `the columns ${rules.required.join(', ')}`,
      todo: `add ${missing.length === 1 ? 'the heading' : 'the headings'} ${missing.join(', ')} to this line, and what belongs under ${missing.length === 1 ? 'it' : 'them'}`,
    }),
  );
}
