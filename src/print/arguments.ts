// Parts the words of a command into options and their values; what fits nowhere is told.
import { nearestName } from '../farm/nearest.ts';

/** The options of a command: their names, and for those that may stand without a value what they mean then. */
export interface ArgumentKinds<Name extends string> {
  readonly names: readonly Name[];
  readonly alone: Readonly<Partial<Record<Name, string>>>;
}

/**
 * Options with their values in the order given, as `--name value` or `--name=value`. `takeBare` hears a word without an
 * option before it and says whether it has a use for it.
 */
export function readArguments<Name extends string>(
  args: readonly string[],
  { names, alone }: ArgumentKinds<Name>,
  faults: string[],
  takeBare: (word: string) => boolean = () => false,
): [Name, string][] {
  const options = `There are: ${names.map((name) => `--${name}`).join(', ')}.`;
  const pairs: [Name, string][] = [];
  for (let at = 0; at < args.length; at += 1) {
    const word = args[at] ?? '';
    const match = /^--([^=]*)(?:=(.*))?$/s.exec(word);
    if (!match) {
      if (!takeBare(word))
        faults.push(`"${word}": nothing is expected here without an option before it. ${options}`);
      continue;
    }
    const name = names.find((one) => one === match[1]);
    const next = args[at + 1];
    const follows = match[2] === undefined && next !== undefined && !next.startsWith('--');
    const value = match[2] ?? (follows ? next : name && alone[name]);
    // Its value, if one follows, belongs to an unknown option as well.
    if (follows) at += 1;
    if (name === undefined)
      faults.push(`"${word}": there is no such option. ${options}${meant(match[1] ?? '', names)}`);
    else if (value === undefined || value === '') faults.push(`--${name}: its value is missing.`);
    else pairs.push([name, value]);
  }
  return pairs;
}

function meant(text: string, names: readonly string[]): string {
  const name = nearestName(text, names);
  return name === null ? '' : ` Did you mean "--${name}"?`;
}
