// What `npm start` is told: serve or not, this machine alone or the farm's network.
import { parseArgs } from 'node:util';
import { PlainError } from '../build/plainError.ts';

/** How the desk is started. */
export interface StartOptions {
  readonly serve: boolean;
  /** Opens the desk to the farm's network. */
  readonly lan: boolean;
  /** Makes other words, so that every phone has to say them anew. */
  readonly newWords: boolean;
}

const HOW = `npm start                          for this machine alone
  npm start -- --lan                 for phones on the farm's network too
  npm start -- --lan --new-words     the same, with other words
  npm start -- --no-serve            builds and prints, and ends`;

/** Reads the words after `npm start --`. Throws PlainError where one is unknown. */
export function startOptions(args: readonly string[]): StartOptions {
  const options = {
    lan: { type: 'boolean', default: false },
    'new-words': { type: 'boolean', default: false },
    'no-serve': { type: 'boolean', default: false },
  } as const;
  try {
    const { values } = parseArgs({ args: [...args], options, strict: true });
    if (values['new-words'] && !values.lan) throw new Error('--new-words goes with --lan.');
    return { serve: !values['no-serve'], lan: values.lan, newWords: values['new-words'] };
  } catch (error) {
    throw new PlainError(`${error instanceof Error ? error.message : String(error)}\n  ${HOW}`);
  }
}
