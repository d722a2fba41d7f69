// Parts the words of a command into options and their values; what fits nowhere is told.
import { nearestName } from '../farm/nearest.ts';

/** Names of the options of `npm run print`. */
const ARGUMENT_NAMES = [
  'band',
  'copies',
  'cover',
  'grade',
  'key',
  'lang',
  'out',
  'paper',
  'print',
  'seed',
  'sheets',
  'word',
] as const;
/** One of them. */
export type ArgumentName = (typeof ARGUMENT_NAMES)[number];

// An option that may stand without a value, and what it means then.
const ALONE: Readonly<Partial<Record<ArgumentName, string>>> = { cover: 'yes' };

/** Options with their values in the order given, as `--name value` or `--name=value`. */
export function readArguments(args: readonly string[], faults: string[]): [ArgumentName, string][] {
  const pairs: [ArgumentName, string][] = [];
  for (let at = 0; at < args.length; at += 1) {
    const word = args[at] ?? '';
    const match = /^--([^=]*)(?:=(.*))?$/s.exec(word);
    if (!match) {
      faults.push(`"${word}": nothing is expected here without an option before it. ${options()}`);
      continue;
    }
    const name = ARGUMENT_NAMES.find((one) => one === match[1]);
    const next = args[at + 1];
    const follows = match[2] === undefined && next !== undefined && !next.startsWith('--');
    const value = match[2] ?? (follows ? next : name && ALONE[name]);
    // Its value, if one follows, belongs to an unknown option as well.
    if (follows) at += 1;
    if (name === undefined)
      faults.push(`"${word}": there is no such option. ${options()}${meant(match[1] ?? '')}`);
    else if (value === undefined || value === '') faults.push(`--${name}: its value is missing.`);
    else pairs.push([name, value]);
  }
  return pairs;
}

const options = () => `There are: ${ARGUMENT_NAMES.map((name) => `--${name}`).join(', ')}.`;

function meant(text: string): string {
  const name = nearestName(text, ARGUMENT_NAMES);
  return name === null ? '' : ` Did you mean "--${name}"?`;
}
