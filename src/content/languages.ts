// The languages that we have words in, and those in which a farm is served.
import { existsSync, readdirSync } from 'node:fs';

/** Languages with a folder of words. */
export function languagesIn(wordsDir: string): string[] {
  if (!existsSync(wordsDir)) return [];
  return readdirSync(wordsDir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/**
 * The languages that a farm asks for and that we have words in, its first one first, and those that we have none in. A
 * farm that writes es-MX is served by the words of es; one of which no language is known by those of en.
 */
export function servedLanguages(
  asked: readonly string[],
  known: readonly string[],
): { served: string[]; without: string[] } {
  const base = asked.map((lang) => (known.includes(lang) ? lang : (lang.split('-')[0] ?? lang)));
  const served = [...new Set(base)].filter((lang) => known.includes(lang));
  const without = asked.filter((_, index) => !known.includes(base[index] ?? ''));
  return { served: served.length > 0 ? served : ['en'], without };
}
