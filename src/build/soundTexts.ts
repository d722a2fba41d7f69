// Every text that the Barn board may read aloud, gathered from the built pages themselves.
import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { defaultTreeAdapter, parse, type DefaultTreeAdapterTypes } from 'parse5';
import { readText, type Sight } from '../../shared/board/readText.ts';
import { readAs, soundKey } from '../../shared/board/soundKey.ts';
import { LEVELS } from '../../shared/board/tell.ts';

type Node = DefaultTreeAdapterTypes.Node;

/** A text of the board with the name of its sound. */
export interface SoundText {
  readonly lang: string;
  readonly key: string;
  readonly text: string;
  /** Address and heading of the first page that it stands on, and how many it stands on. */
  readonly path: string;
  readonly title: string;
  pages: number;
}

const BOARD = /^(?:[a-z]{2,3}(?:-[\w-]+)?\/)?barn\/(?:.*\/)?index\.html$/;

/** Sees what the parser of the build has made of a page. */
export const PARSED: Sight<Node> = {
  textOf: (node) => (defaultTreeAdapter.isTextNode(node) ? node.value : null),
  nameOf: (node) => (defaultTreeAdapter.isElementNode(node) ? node.tagName : ''),
  attributeOf: (node, name) =>
    defaultTreeAdapter.isElementNode(node)
      ? (node.attrs.find((one) => one.name === name)?.value ?? null)
      : null,
  within: (node) => ('childNodes' in node ? node.childNodes : []),
};

/**
 * The texts of every page of the board in a built site, each once a language, in the order of the pages' addresses.
 * `clashes` are texts of which two have one key: neither is among the others, since a page would play one for the other.
 */
export function soundTexts(dist: string): { texts: SoundText[]; clashes: string[] } {
  const found = new Map<string, SoundText>();
  const clashes = new Set<string>();
  for (const file of boardPages(dist)) {
    const page = readPage(readFileSync(join(dist, file), 'utf8'));
    for (const text of page.texts) {
      const key = soundKey(page.lang, text);
      const known = found.get(`${page.lang} ${key}`);
      if (known === undefined) {
        const path = file.replace(/index\.html$/, '');
        found.set(`${page.lang} ${key}`, { lang: page.lang, key, text, path, title: page.title, pages: 1 });
      } else if (known.text === text) known.pages += 1;
      else clashes.add(text).add(known.text);
    }
  }
  return { texts: [...found.values()].filter(({ text }) => !clashes.has(text)), clashes: [...clashes] };
}

function boardPages(dist: string): string[] {
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' });
  return files.map((one) => one.split(sep).join('/')).filter((path) => BOARD.test(path)).sort(); // prettier-ignore
}

/** What one page may read aloud, at either level, before and after a tap; its language and its heading. */
export function readPage(html: string): { lang: string; title: string; texts: ReadonlySet<string> } {
  const texts = new Set<string>();
  let [lang, title] = ['', ''];
  const visit = (node: Node): void => {
    const name = PARSED.nameOf(node);
    if (name === 'html') lang = PARSED.attributeOf(node, 'lang') ?? '';
    if (name === 'h1' && title === '') title = readText(node, 'younger', PARSED);
    if (PARSED.attributeOf(node, 'data-read') !== null)
      for (const level of LEVELS) texts.add(readText(node, level, PARSED));
    if (PARSED.attributeOf(node, 'id') === 'board-says') for (const text of says(node)) texts.add(text);
    for (const one of PARSED.within(node)) visit(one);
  };
  visit(parse(html));
  texts.delete('');
  return { lang, title, texts };
}

/** The texts that a thing to do may show after a tap. */
function says(script: Node): string[] {
  const json = [...PARSED.within(script)].map(PARSED.textOf).join('');
  return (JSON.parse(json) as string[]).map(readAs);
}
