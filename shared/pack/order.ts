// An order of the print room: which sheets, for which grade, how many, on what; read from an address and written back.
import type { Band } from '../quantity/grade.ts';
import { MOST_COPIES } from '../sheet/mostCopies.ts';
import { PAPERS, PRINT_SIZES, type Paper, type PrintSize } from '../sheet/pageMeasures.ts';
import type { When } from '../sheet/plan.ts';
import { bandOfGrade, gradeOf, gradeSign, topGrade, type Grade } from '../tasks/grades.ts';
import { isClassWord } from './classWord.ts';

export { isClassWord, LONGEST_WORD } from './classWord.ts';

/** Which keys a pack ends with: one short key for all copies, a full one for each copy, or none. */
export type KeyKind = 'short' | 'full' | 'none';
/** All kinds of keys. */
export const KEY_KINDS: readonly KeyKind[] = Object.freeze(['short', 'full', 'none']);

/** A pack of sheets as somebody orders it. */
export interface PackOrder {
  readonly grade: Grade;
  /** Names of sheets of the grade's band, in the order of a visit. */
  readonly sheets: readonly string[];
  readonly copies: number;
  /** The word that the numbers of every copy are picked by. */
  readonly word: string;
  readonly lang: string;
  readonly paper: Paper;
  readonly print: PrintSize;
  readonly key: KeyKind;
  readonly cover: boolean;
}

/** A sheet that can be ordered, without its words. */
export interface ShelfSheet {
  readonly name: string;
  readonly band: Band;
  readonly when: When;
  readonly minutes: number;
  /** Languages that it is written in. */
  readonly langs: readonly string[];
}

/** Everything that can be ordered: sheets in the order of bands and of a visit, and what is taken where nothing is said. */
export interface Shelf {
  readonly langs: readonly string[];
  readonly sheets: readonly ShelfSheet[];
  /** The word of the week's own sheets, and the paper of the farm's country. */
  readonly word: string;
  readonly paper: Paper;
}

/** The fields of an address, in the order in which they are written. */
export const ORDER_FIELDS = Object.freeze([
  'grade', 'sheets', 'copies', 'word', 'lang', 'paper', 'print', 'key', 'cover',
] as const); // prettier-ignore
/** One of them. */
export type OrderField = (typeof ORDER_FIELDS)[number];

/** Why a part of an address was left aside; a key under `print.aside`. */
export type AsideWhy = 'field' | 'grade' | 'sheet' | 'band' | 'language' | 'copies' | 'word' | 'choice';
/** A part of an address that was left aside. */
export interface LeftAside {
  readonly field: string;
  readonly value: string;
  readonly why: AsideWhy;
}

const LONGEST_TOLD = 40;
const USUAL_GRADE: Grade = 2;
const USUAL_COPIES = 24;

/** The sheets of a band in a language, in the order of a visit. */
export function sheetsFor(shelf: Shelf, band: Band, lang: string): readonly ShelfSheet[] {
  return shelf.sheets.filter((one) => one.band === band && one.langs.includes(lang));
}

/**
 * Reads an order from the fields of an address. What makes no sense is left aside and told, and what is not said takes the
 * usual: grade 2 (or the top grade of the first sheet that is named), the first sheet before a visit, 24 copies.
 * `lang` is the language of the page.
 */
export function readOrder(
  fields: Iterable<readonly [string, string]>,
  shelf: Shelf,
  lang: string,
): { order: PackOrder; aside: readonly LeftAside[] } {
  const aside: LeftAside[] = [];
  const given = new Map<OrderField, string>();
  for (const [field, value] of fields) {
    const known = ORDER_FIELDS.find((one) => one === field);
    if (known) given.set(known, value.trim());
    else aside.push(told(field, value, 'field'));
  }
  /** The value of a field by what `take` makes of its text; null of it leaves the text aside. */
  const field = <T>(name: OrderField, usual: T, why: AsideWhy, take: (text: string) => T | null): T => {
    const text = given.get(name);
    if (text === undefined) return usual;
    const taken = take(text);
    if (taken === null) aside.push(told(name, text, why));
    return taken ?? usual;
  };
  const choice = <T extends string>(name: OrderField, usual: T, of: readonly T[]): T =>
    field(name, usual, 'choice', (text) => of.find((one) => one === text.toLowerCase()) ?? null);
  const chosenLang = choice('lang', lang, shelf.langs);
  const named = (given.get('sheets') ?? '').split(',').map((one) => one.trim()).filter((one) => one !== ''); // prettier-ignore
  const firstNamed = shelf.sheets.find(({ name }) => named.includes(name));
  const grade = field('grade', firstNamed ? topGrade(firstNamed.band) : USUAL_GRADE, 'grade', gradeOf);
  return {
    order: {
      grade,
      sheets: sheetsRead(given.get('sheets'), named, shelf, bandOfGrade(grade), chosenLang, aside),
      copies: field('copies', USUAL_COPIES, 'copies', copiesOf),
      word: field('word', shelf.word, 'word', (text) => (isClassWord(text) ? text : null)),
      lang: chosenLang,
      paper: choice('paper', shelf.paper, PAPERS),
      print: choice('print', 'ordinary', PRINT_SIZES),
      key: choice('key', 'short', KEY_KINDS),
      cover: choice('cover', 'yes', ['yes', 'no']) === 'yes',
    },
    aside,
  };
}

/**
 * The number of copies that a text means, or null where it is no whole number from 1 to 60.
 * @example copiesOf('30') // => 30
 * @example copiesOf('0') // => null
 */
export function copiesOf(text: string): number | null {
  const copies = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  return copies >= 1 && copies <= MOST_COPIES ? copies : null;
}

/** The sheets that are named, in the shelf's order; the band's first one where none of those named can be had. */
function sheetsRead(
  text: string | undefined,
  named: readonly string[],
  shelf: Shelf,
  band: Band,
  lang: string,
  aside: LeftAside[],
): string[] {
  const ready = sheetsFor(shelf, band, lang).map(({ name }) => name);
  // An empty list was written by a page on which nothing is ticked.
  if (text === '') return [];
  for (const name of new Set(named)) {
    if (ready.includes(name)) continue;
    const known = shelf.sheets.find((one) => one.name === name);
    aside.push(told('sheets', name, !known ? 'sheet' : known.band === band ? 'language' : 'band'));
  }
  const chosen = ready.filter((name) => named.includes(name));
  return chosen.length > 0 ? chosen : ready.slice(0, 1);
}

/** What is left aside, cut where it is too long to repeat. */
function told(field: string, value: string, why: AsideWhy): LeftAside {
  const short = (text: string): string =>
    text.length > LONGEST_TOLD ? `${text.slice(0, LONGEST_TOLD)}…` : text;
  return { field: short(field), value: short(value), why };
}

/** The order as the end of an address, from its `?`; `readOrder` gives the same order again. */
export function orderQuery(order: PackOrder): string {
  const values: Readonly<Record<OrderField, string>> = {
    grade: gradeSign(order.grade),
    sheets: order.sheets.join(','),
    copies: String(order.copies),
    word: order.word,
    lang: order.lang,
    paper: order.paper,
    print: order.print,
    key: order.key,
    cover: order.cover ? 'yes' : 'no',
  };
  // A comma may stand in a query as it is, and is easier to read so.
  const part = (text: string): string => encodeURIComponent(text).replaceAll('%2C', ',');
  return `?${ORDER_FIELDS.map((name) => `${name}=${part(values[name])}`).join('&')}`;
}
