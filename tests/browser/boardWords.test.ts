// How the built board's answers read: short at the younger level, fuller at the older, alike in both languages, in May and in December.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, type DefaultTreeAdapterMap } from 'parse5';
import { beforeAll, describe, expect, it } from 'vitest';
import { LEVELS, type Level } from '../../shared/board/tell.ts';
import { TOPICS } from '../../shared/board/topics.ts';
import { builtSite, type SiteName } from '../support/builtSite.ts';

type Node = DefaultTreeAdapterMap['node'];
type Element = DefaultTreeAdapterMap['element'];

// Sentences for a seven-year-old: the hand-out on learning design asks eight words; a live number or a date (five words in Spanish) may add four.
const YOUNGER_WORDS = 12;
const YOUNGER_MEAN = 6.5;
const OLDER_WORDS = 20;
// Headline, three sentences and the concrete one: 25 to 35 words, and a few more where a number is told.
const YOUNGER_ALL = 42;
const LANGS = ['en', 'es'] as const;

/** What an answer says at a level. */
interface Told {
  readonly path: string;
  readonly lang: (typeof LANGS)[number];
  readonly level: Level;
  readonly headline: string;
  readonly why: readonly string[];
  readonly texts: readonly string[];
}

const told: Told[] = [];
beforeAll(async () => {
  for (const name of ['demo', 'winter'] satisfies SiteName[]) {
    const { dist } = await builtSite(name);
    for (const lang of LANGS)
      for (const question of Object.values(TOPICS).flat()) {
        const path = `${lang === 'es' ? 'es/' : ''}barn/${question}/`;
        const page = parse(readFileSync(join(dist, path, 'index.html'), 'utf8'));
        for (const level of LEVELS) told.push(...tellingOf(page, `${name}:/${path}`, lang, level));
      }
  }
}, 240_000);

function tellingOf(page: Node, path: string, lang: Told['lang'], level: Level): Told[] {
  const words = all(page, (one) => has(one, 'class', 'words') && has(one, 'data-for', level))[0];
  if (!words) return [];
  const of = (name: string) => all(words, (one) => has(one, 'class', name)).map(textOf);
  const why = all(words, (one) => one.tagName === 'li').map(textOf);
  const headline = of('headline')[0];
  // Where the book has no answer there is only a question to take along.
  if (headline === undefined) return [];
  return [{ path, lang, level, headline, why, texts: [headline, ...why, ...of('concrete')] }];
}

function all(node: Node, wanted: (element: Element) => boolean): Element[] {
  const own = 'tagName' in node && wanted(node) ? [node] : [];
  return 'childNodes' in node ? [...own, ...node.childNodes.flatMap((child) => all(child, wanted))] : own;
}

const has = (element: Element, name: string, value: string) =>
  element.attrs.some((attr) => attr.name === name && attr.value.split(' ').includes(value));

function textOf(node: Node): string {
  if ('value' in node) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('').replace(/\s+/g, ' ').trim() : '';
}

/** Sentences of a text; the point of "p.m." and of a decimal ends none. */
const sentences = (text: string) =>
  text
    .replace(/\b([ap])\.\s?m\./g, '$1m')
    .split(/(?<=[.!?])\s+/)
    .filter((sentence) => /\p{L}/u.test(sentence));
const countOf = (text: string) => (text.match(/[\p{L}\p{N}][\p{L}\p{N}'’.,½¼¾-]*/gu) ?? []).length;
const at = (level: Level) => told.filter((one) => one.level === level);

describe('an answer at the younger level', () => {
  it('is there for most questions, in May and in December, in both languages', () => {
    expect(at('younger').length).toBeGreaterThan(2 * 2 * 20);
    expect(at('older')).toHaveLength(at('younger').length);
  });

  it(`has sentences of at most ${YOUNGER_WORDS} words, ${YOUNGER_MEAN} on the whole`, () => {
    const lines = at('younger').flatMap(({ path, texts }) =>
      texts.flatMap(sentences).map((line) => ({ path, line })),
    );
    const long = lines.filter(({ line }) => countOf(line) > YOUNGER_WORDS);
    expect(long.map(({ path, line }) => `${path} ${line}`)).toEqual([]);
    expect(lines.reduce((sum, { line }) => sum + countOf(line), 0) / lines.length).toBeLessThan(YOUNGER_MEAN);
  });

  it(`has at most ${YOUNGER_ALL} words in headline, reasons and what the number means`, () => {
    const long = at('younger').filter(({ texts }) => countOf(texts.join(' ')) > YOUNGER_ALL);
    expect(long.map(({ path, texts }) => `${path} ${countOf(texts.join(' '))}`)).toEqual([]);
  });

  it('has no decimals and no percent', () => {
    const found = at('younger').filter(({ texts }) => /\d\.\d|\d,\d(?!\d\d)|%/.test(texts.join(' ')));
    expect(found.map(({ path, texts }) => `${path} ${texts.join(' ')}`)).toEqual([]);
  });
});

describe('an answer at the older level', () => {
  it(`has sentences of at most ${OLDER_WORDS} words`, () => {
    const long = at('older').flatMap(({ path, texts }) =>
      texts
        .flatMap(sentences)
        .filter((line) => countOf(line) > OLDER_WORDS)
        .map((line) => `${path} ${line}`),
    );
    expect(long).toEqual([]);
  });

  it('says more than the younger one', () => {
    const short = at('older').filter(({ path, texts }) => {
      const young = at('younger').find((one) => one.path === path);
      return countOf(texts.join(' ')) <= countOf(young?.texts.join(' ') ?? '');
    });
    expect(short.map(({ path }) => path)).toEqual([]);
  });
});

describe('both languages', () => {
  it('give as many reasons, and headlines of nine words or fewer for the youngest', () => {
    const uneven = told.filter(({ why }) => why.length !== 3);
    expect(uneven.map(({ path, level }) => `${path} ${level}`)).toEqual([]);
    const long = at('younger').filter(({ headline }) =>
      sentences(headline).some((line) => countOf(line) > 9),
    );
    expect(long.map(({ path, headline }) => `${path} ${headline}`)).toEqual([]);
  });
});
