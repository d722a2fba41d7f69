// Numbers as somebody types or pastes them: one a line, or a number with how often it came; beside does, by their names.
import Fraction from 'fraction.js';

/** A number and how often it came. */
export interface Counted {
  readonly value: Fraction;
  readonly times: number;
}

/** A number of a doe. */
export interface OfDoe {
  /** Her short name. */
  readonly doe: string;
  readonly value: Fraction;
}

/** What was read, and the lines that could not be. */
export interface Typed<T> {
  readonly rows: readonly T[];
  readonly wrong: readonly string[];
}

/** The most numbers of a sheet, and the largest one; more is surely a slip. */
export const MOST_TYPED = Object.freeze({ numbers: 400, value: 1000 });

// Longer is no number that anybody writes, and would keep a browser reckoning for minutes.
const LONGEST_NUMBER = 40;

const HALVES: Readonly<Record<string, string>> = { '¼': ' 1/4', '½': ' 1/2', '¾': ' 3/4' };
const VALUE = /^(?:\d+(?:\.\d+)?|(?:\d+ )?\d+\/\d+)$/;
const WITH_COUNT = /^(.*?\d)\s*(?:[x×:=;,\t]|\s)\s*(\d+)$/;

/**
 * A number of 0 or more: `5`, `4.5`, `4 1/2`, `4½`; null where it is none.
 * @example numberOf('4½')?.toFraction() // => '9/2'
 */
export function numberOf(text: string): Fraction | null {
  if (text.length > LONGEST_NUMBER) return null;
  const plain = text.replace(/[¼½¾]/g, (sign) => HALVES[sign] ?? '').trim().replace(/ +/g, ' '); // prettier-ignore
  if (!VALUE.test(plain) || /\/0+$/.test(plain)) return null;
  const value = new Fraction(plain);
  return value.compare(MOST_TYPED.value) > 0 ? null : value;
}

const linesOf = (text: string) => text.split(/\r\n|\n|\r|_/).map((line) => line.trim()).filter((line) => line !== ''); // prettier-ignore

/** Reads numbers: `5`, or `5 x 7` for seven times a 5; two pasted columns do the same. Equal numbers are told together, least first. */
export function readCounts(text: string): Typed<Counted> {
  const wrong: string[] = [];
  const found = new Map<string, Counted>();
  let numbers = 0;
  for (const line of linesOf(text)) {
    const counted = countedIn(line);
    if (counted === null || numbers + counted.times > MOST_TYPED.numbers) {
      wrong.push(line);
      continue;
    }
    numbers += counted.times;
    const key = counted.value.toFraction();
    const before = found.get(key)?.times ?? 0;
    if (counted.times > 0) found.set(key, { ...counted, times: before + counted.times });
  }
  const rows = [...found.values()].sort((a, b) => a.value.compare(b.value));
  return { rows, wrong };
}

function countedIn(line: string): Counted | null {
  if (line.length > LONGEST_NUMBER) return null;
  const alone = numberOf(line);
  if (alone) return { value: alone, times: 1 };
  const [, first = '', times = ''] = WITH_COUNT.exec(line) ?? [];
  const value = numberOf(first);
  return value && Number(times) <= MOST_TYPED.numbers ? { value, times: Number(times) } : null;
}

/** Reads a number beside each doe: `Juniper 6`. Whoever is no doe of the farm is not taken: only does are named on a sheet. */
export function readOfDoes(
  text: string,
  does: readonly { readonly id: string; readonly name: string }[],
): Typed<OfDoe> {
  const wrong: string[] = [];
  const rows = new Map<string, OfDoe>();
  for (const line of linesOf(text)) {
    const found = doeIn(line, does);
    if (!found || rows.has(found.doe)) wrong.push(line);
    else rows.set(found.doe, found);
  }
  return { rows: [...rows.values()], wrong };
}

function doeIn(line: string, does: readonly { readonly id: string; readonly name: string }[]): OfDoe | null {
  for (const { id, name } of does)
    for (const own of [name, id]) {
      const rest = plain(line).startsWith(plain(own)) ? plain(line).slice(plain(own).length) : '';
      const [, amount = ''] = /^[\s:=;,]+(.*)$/.exec(rest) ?? [];
      const value = numberOf(amount);
      if (value) return { doe: id, value };
    }
  return null;
}

const plain = (text: string) => text.normalize('NFC').trim().toLowerCase();
