// Both languages say the same things with the same slots, and no answer has a number typed into it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { flatten, type Dictionary, type Entry } from '../../shared/words/words.ts';

const LANGUAGES = ['en', 'es'] as const;
const slotsOf = (entry: Entry) => {
  const texts = typeof entry === 'string' ? [entry] : Object.values(entry);
  return [
    ...new Set(texts.flatMap((text) => [...text.matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? ''))),
  ].sort();
};

/** Differences between the words of two languages. */
function differences(en: Dictionary, es: Dictionary): string[] {
  const keys = [...new Set([...Object.keys(en), ...Object.keys(es)])].sort();
  return keys.flatMap((key) => {
    const [first, second] = [en[key], es[key]];
    if (first === undefined || second === undefined)
      return [`${key} is missing in ${first === undefined ? 'en' : 'es'}`];
    if ((typeof first === 'string') !== (typeof second === 'string'))
      return [`${key} has plurals in one language alone`];
    const [a, b] = [slotsOf(first).join(), slotsOf(second).join()];
    return a === b ? [] : [`${key} has slots {${a}} in en and {${b}} in es`];
  });
}

const yamlWords = (lang: string, file: string) =>
  flatten(parse(readFileSync(join('content/words', lang, file), 'utf8')) as Record<string, unknown>);
const filesIn = (...path: string[]) => readdirSync(join('content', ...path)).sort();

/** The words of a question, and the text below them. */
function question(lang: string, file: string): { words: Dictionary; body: string } {
  const text = readFileSync(join('content/questions', lang, file), 'utf8');
  const [, matter = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  return { words: flatten(parse(matter) as Record<string, unknown>), body };
}

/** Numbers typed into a text. A hundred is no finding: it is what "parts of a hundred" and "per 100 g" mean. */
const typedNumbers = (text: string) => [...text.replace(/\{\w+\}/g, '').matchAll(/\d[\d.,]*/g)].map((match) => match[0].replace(/[.,]$/, '')).filter((number) => number !== '100'); // prettier-ignore

describe('content/words', () => {
  it('has the same files in both languages', () => {
    expect(filesIn('words', 'es')).toEqual(filesIn('words', 'en'));
  });

  it.each(filesIn('words', 'en'))('%s has the same keys and slots in both', (file) => {
    expect(differences(yamlWords('en', file), yamlWords('es', file))).toEqual([]);
  });

  it.each(LANGUAGES)('%s has the plural that every number may fall back on', (lang) => {
    const short = filesIn('words', lang).flatMap((file) =>
      Object.entries(yamlWords(lang, file)).flatMap(([key, entry]) =>
        typeof entry === 'string' || 'other' in entry ? [] : [`${file} ${key}`],
      ),
    );
    expect(short).toEqual([]);
  });
});

describe('content/questions', () => {
  it('has the same questions in both languages', () => {
    expect(filesIn('questions', 'es')).toEqual(filesIn('questions', 'en'));
  });

  it.each(filesIn('questions', 'en'))('%s has the same keys and slots in both', (file) => {
    expect(differences(question('en', file).words, question('es', file).words)).toEqual([]);
  });

  it.each(LANGUAGES)('in %s takes its numbers through slots', (lang) => {
    const typed = filesIn('questions', lang).flatMap((file) => {
      const { words, body } = question(lang, file);
      const texts = Object.entries(words).flatMap(([key, entry]) => (typeof entry === 'string' ? [entry] : Object.values(entry)).map((text) => ({ key, text }))); // prettier-ignore
      return [...texts, { key: 'the text below', text: body }].flatMap(({ key, text }) =>
        typedNumbers(text).map((number) => `${file} ${key}: ${number}`),
      );
    });
    expect(typed).toEqual([]);
  });
});

describe('the rules themselves', () => {
  it('catch a missing key, a missing slot and a typed number', () => {
    expect(differences({ a: 'x {n}', b: 'y' }, { a: 'x', c: 'z' })).toEqual([
      'a has slots {n} in en and {} in es',
      'b is missing in es',
      'c is missing in en',
    ]);
    expect(typedNumbers('{n} of 100 g in 2.44 cups, 3.')).toEqual(['2.44', '3']);
  });
});
