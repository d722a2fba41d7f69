// Loads the words of a language: every YAML file in content/words/<lang>, merged.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { flatten, type Words } from '../../shared/words/words.ts';
import { languagesIn } from '../content/languages.ts';

const WORDS_DIR = join(process.cwd(), 'content', 'words');
const cache = new Map<string, Words>();

/** Languages that Pailside has words in. */
export function knownLanguages(): string[] {
  return languagesIn(WORDS_DIR);
}

/** All words of a language. Throws where it has none, or two files claim one key. */
export function wordsOf(lang: string): Words {
  const cached = cache.get(lang);
  if (cached) return cached;
  const entries: Record<string, Words['entries'][string]> = {};
  const folder = join(WORDS_DIR, lang);
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()) {
    for (const [key, entry] of Object.entries(
      flatten(parse(readFileSync(join(folder, file), 'utf8')) as Record<string, unknown>),
    )) {
      if (key in entries)
        throw new Error(`content/words/${lang}/${file}: "${key}" stands in another file as well.`);
      entries[key] = entry;
    }
  }
  const words = { lang, entries };
  cache.set(lang, words);
  return words;
}

/** The part of the words under one of some top keys, small enough to send to a browser. */
export function wordsUnder(lang: string, topKeys: readonly string[]): Words {
  const { entries } = wordsOf(lang);
  const kept = Object.entries(entries).filter(([key]) => topKeys.includes(key.split('.')[0] ?? ''));
  return { lang, entries: Object.fromEntries(kept) };
}
