// Fills the page of recordings: every text of a language with the key that its recording is named by.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { RECORDINGS_FOLDER } from './soundOwn.ts';
import { wholeNames } from './soundSpelling.ts';
import type { SoundText } from './soundTexts.ts';

// The page leaves two tables open, and tells the names that come and go with the herd.
const OPEN = /(<tbody data-texts="(stay|change)" data-names="([^"]*)" data-own="([^"]*)">)(<\/tbody>)/g;

/**
 * Fills the page of each language that has one. Texts with a number or a doe's name in them change with the milk book
 * and go into the second table; the others stay, and are worth a recording. `own` holds `lang key` of what is recorded.
 */
export function fillRecordingsPages(
  dist: string,
  texts: readonly SoundText[],
  own: ReadonlySet<string>,
): void {
  const langs = new Set(texts.map(({ lang }) => lang));
  for (const lang of langs) {
    const file = [`${lang}/${RECORDINGS_FOLDER}/index.html`, `${RECORDINGS_FOLDER}/index.html`]
      .map((path) => join(dist, path))
      .find((path) => existsSync(path) && languageOf(path) === lang);
    if (file === undefined) continue;
    const ours = texts.filter((one) => one.lang === lang).sort(byWeight);
    const filled = readFileSync(file, 'utf8').replace(OPEN, (_, open: string, which: string, names: string, word: string, close: string) => {
      const changes = changing(names);
      const rows = ours.filter(({ text }) => changes(text) === (which === 'change'));
      return `${open}${rows.map((one) => row(one, own.has(`${lang} ${one.key}`) ? word : '')).join('')}${close}`;
    }); // prettier-ignore
    writeFileSync(file, filled);
  }
}

const languageOf = (path: string) => /<html[^>]* lang="([^"]+)"/.exec(readFileSync(path, 'utf8'))?.[1];

/** Whether a text hangs on the milk book: it has a number in it, or one of these names (`Tansy|Wren`, as the page's HTML has them). */
function changing(names: string): (text: string) => boolean {
  const named = wholeNames(names.split('|').filter((name) => name !== ''));
  return (text) => /\d/.test(text) || (named !== null && escaped(text).search(named) >= 0);
}

// What is met on most pages first; then as a child comes to it: home, topics, answers, things to do, proofs.
const ORDER = [/barn\/$/, /barn\/topic\//, /barn\/(?!do\/)[^/]+\/$/, /barn\/do\//];
const rank = (path: string) => (ORDER.findIndex((one) => one.test(path)) + ORDER.length + 1) % (ORDER.length + 1); // prettier-ignore
const byWeight = (a: SoundText, b: SoundText) =>
  Math.min(b.pages, 3) - Math.min(a.pages, 3) || rank(a.path) - rank(b.path);

const row = ({ text, key, title }: SoundText, word: string) =>
  `<tr><td>${escaped(text)}</td><td><code>${key}</code></td><td>${escaped(title)}</td><td>${escaped(word)}</td></tr>`;
const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
