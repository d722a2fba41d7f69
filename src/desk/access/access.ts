// Who may use the desk: its names, its words and the cookies of the phones that have said them.
import { hostname } from 'node:os';
import type { Context } from 'hono';

/** The desk's rules of access. */
export interface Access {
  /** Whether it is open to the farm's network. */
  readonly lan: boolean;
  /** The names that this machine goes by, beside its addresses, in small letters. */
  readonly names: ReadonlySet<string>;
  /** Whether the phone that asks has said the words before. */
  isKnown(c: Context): Promise<boolean>;
}

/** The access of a desk that serves its own machine alone. */
export function hereAlone(env: NodeJS.ProcessEnv = {}): Access {
  return { lan: false, names: namesOf(env), isKnown: () => Promise.resolve(false) };
}

/** The names of this machine, and those that `PAILSIDE_NAMES` lists, with commas between. */
function namesOf(env: NodeJS.ProcessEnv): ReadonlySet<string> {
  const own = hostname().toLowerCase();
  const short = own.split('.', 1)[0] ?? own;
  const more = (env['PAILSIDE_NAMES'] ?? '').toLowerCase().split(',');
  return new Set([own, short, `${short}.local`, ...more.map((name) => name.trim())].filter(Boolean));
}
