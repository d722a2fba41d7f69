// Reads what `npm run print` was asked for; what it cannot take, it names, all at once.
import {
  copiesOf,
  isClassWord,
  KEY_KINDS,
  LONGEST_WORD,
  sheetsFor,
  type PackOrder,
  type Shelf,
} from '../../shared/pack/order.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { MOST_COPIES } from '../../shared/sheet/mostCopies.ts';
import { PAPERS, PRINT_SIZES } from '../../shared/sheet/pageMeasures.ts';
import { bandOfGrade, gradeOf, gradeSign, topGrade, type Grade } from '../../shared/tasks/standards.ts';
import { nearestName } from '../farm/nearest.ts';
import { readArguments } from './arguments.ts';

/** Names of the options of `npm run print`. */
const ARGUMENT_NAMES = [
  'band', 'copies', 'cover', 'grade', 'key', 'lang', 'out', 'paper', 'print', 'seed', 'sheets', 'word',
] as const; // prettier-ignore
type ArgumentName = (typeof ARGUMENT_NAMES)[number];
const ARGUMENTS = { names: ARGUMENT_NAMES, alone: { cover: 'yes' } };

/** One PDF: its order, and what its file is called after. */
export interface AskedPack {
  readonly order: PackOrder;
  /** `3-5` where a whole band was asked for, `grade-4` where a grade was. */
  readonly whom: string;
  /** Whether all sheets of the band are in it. */
  readonly all: boolean;
}

/** What was asked for; `out` is null where no folder was named. */
export interface PrintOptions {
  readonly packs: readonly AskedPack[];
  readonly out: string | null;
}

/** The options, or one line for each that is wrong. */
export type PrintOptionsReading = { ok: true; options: PrintOptions } | { ok: false; faults: string[] };

/** The grades that packs are for. */
interface Group {
  readonly grade: Grade;
  readonly whom: string;
}

/** What holds for every pack of an order. */
type Common = Pick<PackOrder, 'copies' | 'word' | 'paper' | 'print' | 'key' | 'cover'>;

/**
 * Reads `--grade 2 --sheets cups-we-can-count --copies 30 --word fern --lang es --paper a4 --print large --key short --cover`,
 * in any order, also as `--grade=2`. `--band`, `--sheets` and `--lang` may come again or hold several with commas. Without
 * grade, band and sheets every band is meant, with all its sheets; without `--lang` every language; without `--copies` one
 * copy. `--seed` is another name for `--word`.
 */
export function readPrintOptions(args: readonly string[], shelf: Shelf): PrintOptionsReading {
  const faults: string[] = [];
  const given = readArguments(args, ARGUMENTS, faults);
  const asked = lookInto(given, faults);
  const common = commonOf(asked, shelf, faults);
  const langs = asked.several('lang', shelf.langs) ?? shelf.langs;
  const names = asked.several('sheets', shelf.sheets.map(({ name }) => name)); // prettier-ignore
  const groups = groupsOf(asked, shelf, names, faults);
  const packs = faults.length > 0 ? [] : packsOf(shelf, groups, names, langs, common, faults);
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, options: { packs, out: asked.last('out') ?? null } };
}

/** The arguments, looked into by name; a value that is not allowed becomes a fault. */
interface Asked {
  /** All values of a name that are allowed, each once; undefined where nothing was asked. */
  several(name: ArgumentName, allowed: readonly string[]): string[] | undefined;
  /** The value that was given last. */
  last(name: ArgumentName): string | undefined;
  /** One of a few values, or what is usual. */
  choice<T extends string>(name: ArgumentName, allowed: readonly T[], usual: T): T;
}

function lookInto(given: readonly (readonly [ArgumentName, string])[], faults: string[]): Asked {
  const allowedOne = <T extends string>(name: ArgumentName, value: string, allowed: readonly T[]) => {
    const found = allowed.find((one) => one.toLowerCase() === value.trim().toLowerCase());
    if (found !== undefined) return found;
    const near = nearestName(value, allowed);
    faults.push(
      `--${name} "${value}": allowed is ${allowed.join(', ')}.${near === null ? '' : ` Did you mean "${near}"?`}`,
    );
    return null;
  };
  const last = (name: ArgumentName) => given.findLast(([one]) => one === name)?.[1];
  return {
    last,
    several: (name, allowed) => {
      const values = given.filter(([one]) => one === name).flatMap(([, value]) => value.split(','));
      const known = values.flatMap((value) => allowedOne(name, value, allowed) ?? []);
      return values.length === 0 ? undefined : [...new Set(known)];
    },
    choice: (name, allowed, usual) => {
      const text = last(name);
      return text === undefined ? usual : (allowedOne(name, text, allowed) ?? usual);
    },
  };
}

function commonOf(asked: Asked, shelf: Shelf, faults: string[]): Common {
  const copiesText = asked.last('copies');
  const copies = copiesText === undefined ? 1 : copiesOf(copiesText.trim());
  if (copies === null)
    faults.push(`--copies "${copiesText}": allowed is a whole number from 1 to ${MOST_COPIES}.`);
  const [seed, plain] = [asked.last('seed'), asked.last('word')];
  if (seed !== undefined && plain !== undefined && seed !== plain)
    faults.push(`--word "${plain}" and --seed "${seed}" are two names of one thing; give one of them.`);
  const word = plain ?? seed ?? shelf.word;
  if (!isClassWord(word))
    faults.push(`--${plain === undefined ? 'seed' : 'word'} "${word}": a class word is one word of letters, digits, "-" and "_", up to ${LONGEST_WORD} of them.`); // prettier-ignore
  return {
    copies: copies ?? 1,
    word,
    paper: asked.choice('paper', PAPERS, shelf.paper),
    print: asked.choice('print', PRINT_SIZES, 'ordinary'),
    // One copy has room for its whole key; thirty of them would be a book.
    key: asked.choice('key', KEY_KINDS, copies === 1 ? 'full' : 'short'),
    cover: asked.choice('cover', ['yes', 'no'], 'yes') === 'yes',
  };
}

/** The grades that are asked for: by grade, by band, else the bands of the sheets, else all. */
function groupsOf(
  asked: Asked,
  shelf: Shelf,
  names: readonly string[] | undefined,
  faults: string[],
): readonly Group[] {
  const bands = asked.several('band', BANDS) as Band[] | undefined;
  const text = asked.last('grade');
  if (text !== undefined) {
    const grade = gradeOf(text);
    if (grade === null) {
      faults.push(`--grade "${text}": allowed is K, 1, 2, … 12.`);
      return [];
    }
    const other = bands?.find((band) => band !== bandOfGrade(grade));
    if (other !== undefined)
      faults.push(`--grade ${gradeSign(grade)} is not in --band ${other}; give one of them.`);
    return [{ grade, whom: `grade-${gradeSign(grade)}` }];
  }
  const ofSheets = names && shelf.sheets.filter(({ name }) => names.includes(name)).map(({ band }) => band);
  return BANDS.filter((band) => (bands ?? ofSheets ?? BANDS).includes(band)).map((band) => ({
    grade: topGrade(band),
    whom: band,
  }));
}

function packsOf(
  shelf: Shelf,
  groups: readonly Group[],
  names: readonly string[] | undefined,
  langs: readonly string[],
  common: Common,
  faults: string[],
): AskedPack[] {
  const met = new Set<string>();
  const packs = langs.flatMap((lang) =>
    groups.flatMap(({ grade, whom }): AskedPack[] => {
      const ready = sheetsFor(shelf, bandOfGrade(grade), lang).map(({ name }) => name);
      const sheets = ready.filter((name) => names === undefined || names.includes(name));
      for (const name of sheets) met.add(name);
      const all = sheets.length === ready.length;
      return sheets.length === 0 ? [] : [{ order: { ...common, grade, sheets, lang }, whom, all }];
    }),
  );
  for (const name of names ?? []) {
    const sheet = shelf.sheets.find((one) => one.name === name);
    if (!sheet || met.has(name)) continue;
    const written = sheet.langs.some((lang) => langs.includes(lang));
    faults.push(`--sheets "${name}": ${written ? `it is for grades ${sheet.band}, which were not asked for` : `it is not written in ${langs.join(', ')}`}.`); // prettier-ignore
  }
  return packs;
}
