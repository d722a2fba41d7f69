// The passphrase and the key that signs cookies: made once by chance, kept where this user alone can read them.
import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { plainWords } from '../../../shared/book/access.ts';
import { PlainError } from '../../build/plainError.ts';
import { writeWhole } from '../wholeFile.ts';
import { WORD_LISTS } from './wordLists.ts';

/** What only the desk knows. */
export interface Secrets {
  readonly words: readonly string[];
  /** The key of the cookies' signatures. */
  readonly key: Uint8Array;
  /** Tells the cookie of this desk from one of another desk on the same machine. */
  readonly desk: string;
}

/** Five words of some 300 are more than 40 bits. */
export const WORD_COUNT = 5;
const KEY_bytes = 32;
const OWNER_ONLY = 0o600;

/** Reads the secrets; makes them where there are none, where the file is torn, or where new ones are wanted. */
export function openSecrets(path: string, wanted: { lang: string; anew: boolean }): Secrets {
  const kept = readSecrets(path);
  if (kept && !wanted.anew) return kept;
  const made: Secrets = {
    words: makeWords(wanted.lang),
    key: randomBytes(KEY_bytes),
    desk: kept?.desk ?? randomBytes(6).toString('hex'),
  };
  mkdirSync(dirname(path), { recursive: true });
  const text = JSON.stringify({ ...made, key: Buffer.from(made.key).toString('base64') });
  writeWhole(path, `${text}\n`, OWNER_ONLY);
  return made;
}

/** Words of the farm's first language, each drawn anew. */
export function makeWords(lang: string): string[] {
  const list = WORD_LISTS[lang] ?? WORD_LISTS['en'] ?? [];
  return Array.from({ length: WORD_COUNT }, () => list[randomInt(list.length)] ?? '');
}

/** Whether these are the words, however they are written. Takes as long for any text of one length. */
export function areWords(secrets: Secrets, text: string): boolean {
  const hash = (words: string) => createHash('sha256').update(plainWords(words)).digest();
  return timingSafeEqual(hash(text), hash(secrets.words.join('')));
}

function readSecrets(path: string): Secrets | null {
  let text: string;
  try {
    // Whoever copied the folder may have lost who may read it.
    if ((statSync(path).mode & 0o077) !== 0) chmodSync(path, OWNER_ONLY);
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw new PlainError(
      `The desk's words cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'}): ${path}\nMake the file readable for this user alone, or delete it: new words are made then.`,
    );
  }
  return parsed(text);
}

function parsed(text: string): Secrets | null {
  try {
    const { words, key, desk } = JSON.parse(text) as Record<string, unknown>;
    if (!Array.isArray(words) || words.length < WORD_COUNT || typeof key !== 'string' || typeof desk !== 'string') return null; // prettier-ignore
    if (!words.every((word) => typeof word === 'string' && plainWords(word) !== '')) return null;
    const bytes = Buffer.from(key, 'base64');
    if (bytes.length !== KEY_bytes || !/^[0-9a-f]{12}$/.test(desk)) return null;
    return { words: words as string[], key: bytes, desk };
  } catch {
    return null;
  }
}
