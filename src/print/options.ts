// Reads what `npm run print` was asked for; what it cannot take, it names, all at once.
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { nearestName } from '../farm/nearest.ts';

/** Sizes of paper. */
export type Paper = 'letter' | 'a4';

/** What was asked for; null where nothing was, so that the farm's own way holds. */
export interface PrintOptions {
  readonly bands: readonly Band[];
  readonly langs: readonly string[];
  readonly paper: Paper | null;
  readonly seed: string | null;
  readonly out: string | null;
}

/** The options, or one line for each that is wrong. */
export type PrintOptionsReading = { ok: true; options: PrintOptions } | { ok: false; faults: string[] };

const PAPERS: readonly Paper[] = ['letter', 'a4'];
const NAMES = ['band', 'lang', 'out', 'paper', 'seed'] as const;
type Name = (typeof NAMES)[number];
// A seed becomes part of an address and of a file's name.
const SEED = /^[\p{L}\p{N}][\p{L}\p{N}_-]{0,39}$/u;

/**
 * Reads `--band 3-5 --lang es --paper a4 --seed clover --out FOLDER`, in any order, also as
 * `--band=3-5`. `--band` and `--lang` may come again or hold several with commas; without them all
 * bands and all of `langs` are meant.
 */
export function readPrintOptions(args: readonly string[], langs: readonly string[]): PrintOptionsReading {
  const faults: string[] = [];
  const given = pairsOf(args, faults);
  const several = (name: Name, allowed: readonly string[]) => {
    const values = given.filter(([one]) => one === name).flatMap(([, value]) => value.split(','));
    const known = values.map((value) => allowedOne(name, value, allowed, faults));
    return values.length === 0 ? [...allowed] : [...new Set(known.filter((one) => one !== null))];
  };
  const last = (name: Name) => given.findLast(([one]) => one === name)?.[1] ?? null;
  const bands = several('band', BANDS) as Band[];
  const chosen = several('lang', langs);
  const paperText = last('paper');
  const paper = paperText === null ? null : (allowedOne('paper', paperText, PAPERS, faults) as Paper | null);
  const seed = last('seed');
  if (seed !== null && !SEED.test(seed))
    faults.push(`--seed "${seed}": a seed is one word of letters, digits, "-" and "_", up to 40 of them.`);
  const out = last('out');
  return faults.length > 0
    ? { ok: false, faults }
    : { ok: true, options: { bands, langs: chosen, paper, seed, out } };
}

function pairsOf(args: readonly string[], faults: string[]): [Name, string][] {
  const pairs: [Name, string][] = [];
  for (let at = 0; at < args.length; at += 1) {
    const word = args[at] ?? '';
    const match = /^--([^=]*)(?:=(.*))?$/s.exec(word);
    if (!match) {
      faults.push(`"${word}": nothing is expected here without an option before it. ${options()}`);
      continue;
    }
    const name = NAMES.find((one) => one === match[1]);
    const next = args[at + 1];
    const value = match[2] ?? (next === undefined || next.startsWith('--') ? undefined : next);
    // Its value, if one follows, belongs to an unknown option as well.
    if (match[2] === undefined && value !== undefined) at += 1;
    if (name === undefined)
      faults.push(`"${word}": there is no such option. ${options()}${meant(match[1] ?? '')}`);
    else if (value === undefined || value === '') faults.push(`--${name}: its value is missing.`);
    else pairs.push([name, value]);
  }
  return pairs;
}

const options = () => `There are: ${NAMES.map((name) => `--${name}`).join(', ')}.`;

function meant(text: string): string {
  const name = nearestName(text, NAMES);
  return name === null ? '' : ` Did you mean "--${name}"?`;
}

function allowedOne(name: Name, value: string, allowed: readonly string[], faults: string[]): string | null {
  const found = allowed.find((one) => one.toLowerCase() === value.trim().toLowerCase());
  if (found !== undefined) return found;
  const near = nearestName(value, allowed);
  faults.push(
    `--${name} "${value}": allowed is ${allowed.join(', ')}.${near === null ? '' : ` Did you mean "${near}"?`}`,
  );
  return null;
}
