// Who may use the desk: its names, its words and the cookies of the phones that have said them.
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Context } from 'hono';
import { cookieAge_s } from './cookie.ts';
import { openSecrets, type Secrets } from './secrets.ts';
import { countTries, type Tries } from './tries.ts';

/** The desk's rules of access. */
export interface Access {
  /** What opens the desk to the farm's network; null where it serves its own machine alone. */
  readonly lan: { readonly secrets: Secrets; readonly tries: Tries } | null;
  /** The names that this machine goes by, beside its addresses, in small letters. */
  readonly names: ReadonlySet<string>;
  readonly now_ms: () => number;
  /** Whether the phone that asks has said the words before. */
  isKnown(c: Context): Promise<boolean>;
}

/** How a desk is opened to the farm's network. */
export interface Opening {
  /** Where the words are kept. */
  readonly workshop: string;
  /** The farm's first language: the words are of it. */
  readonly lang: string;
  /** Makes other words; who was known by the old ones is not known any more. */
  readonly newWords: boolean;
  readonly env: NodeJS.ProcessEnv;
  readonly now_ms: () => number;
}

const SECRETS_FILE = 'access.json';

/** The access of a desk that serves its own machine alone. */
export function hereAlone(env: NodeJS.ProcessEnv = {}): Access {
  return { lan: null, names: namesOf(env), now_ms: () => Date.now(), isKnown: () => Promise.resolve(false) };
}

/** The access of a desk on the farm's network. */
export function openAccess({ workshop, lang, newWords, env, now_ms }: Opening): Access {
  const secrets = openSecrets(join(workshop, SECRETS_FILE), { lang, anew: newWords });
  return {
    lan: { secrets, tries: countTries(now_ms) },
    names: namesOf(env),
    now_ms,
    isKnown: async (c) => (await cookieAge_s(c, secrets, now_ms())) !== null,
  };
}

/** The names of this machine, and those that `PAILSIDE_NAMES` lists, with commas between. */
function namesOf(env: NodeJS.ProcessEnv): ReadonlySet<string> {
  const own = hostname().toLowerCase();
  const short = own.split('.', 1)[0] ?? own;
  const more = (env['PAILSIDE_NAMES'] ?? '').toLowerCase().split(',');
  return new Set([own, short, `${short}.local`, ...more.map((name) => name.trim())].filter(Boolean));
}
