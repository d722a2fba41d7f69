// Messages, their slots and plurals, and how a hole is refused.
import { describe, expect, it } from 'vitest';
import { flatten, say, type Words } from '../../../shared/words/words.ts';

const en: Words = {
  lang: 'en',
  entries: flatten({
    jars: { one: '{n} jar', other: '{n} jars' },
    hello: 'Good morning',
    gave: '{name} gave {amount}, says {name}.',
    short: { one: 'one only' },
  }),
};
const es: Words = {
  lang: 'es',
  entries: flatten({
    jars: { one: '{n} frasco', many: '{n} de frascos', other: '{n} frascos' },
    until: 'Hasta las {at}.',
    few: { one: '{n} vez', other: '{n} veces' },
  }),
};

const tries = (run: () => string) => {
  try {
    return run();
  } catch (error) {
    return (error as Error).message;
  }
};

describe('say', () => {
  it('fills every slot, the same one twice as well', () => {
    expect(say(en, 'gave', { name: 'Hester', amount: '3 cups' })).toBe('Hester gave 3 cups, says Hester.');
    expect(say(en, 'hello')).toBe('Good morning');
  });

  it('ends a sentence with one point where a value brings its own', () => {
    expect(say(es, 'until', { at: '11:45 a.m.' })).toBe('Hasta las 11:45 a.m.');
    expect(say(es, 'until', { at: '11:45' })).toBe('Hasta las 11:45.');
  });

  it('says one o’clock in the singular in Spanish, and no other hour', () => {
    expect(say(es, 'until', { at: '1:05 p.m.' })).toBe('Hasta la 1:05 p.m.');
    expect(say(es, 'until', { at: '11:05' })).toBe('Hasta las 11:05.');
  });

  it.each([[0, '0 jars'], [1, '1 jar'], [2, '2 jars'], [1.5, '1.5 jars'], ['1', '1 jar'], ['1½', '1½ jars']])(
    'chooses the English plural of %s',
    (n, text) => {
      expect(say(en, 'jars', { n })).toBe(text);
    },
  ); // prettier-ignore

  it.each([[0, '0 frascos'], [1, '1 frasco'], [2, '2 frascos'], [1.5, '1.5 frascos'], [1_000_000, '1000000 de frascos']])(
    'chooses the Spanish plural of %s',
    (n, text) => {
      expect(say(es, 'jars', { n })).toBe(text);
    },
  ); // prettier-ignore

  it('takes the text for nothing at all where there is one', () => {
    const words = {
      lang: 'en',
      entries: flatten({ a: { zero: 'no jar', one: '{n} jar', other: '{n} jars' } }),
    };
    expect([0, '0', 1, 2].map((n) => say(words, 'a', { n }))).toEqual([
      'no jar',
      'no jar',
      '1 jar',
      '2 jars',
    ]);
  });

  it('falls back on "other" where a language knows one plural more than the words do', () => {
    expect(say(es, 'few', { n: 1_000_000 })).toBe('1000000 veces');
  });

  it('puts a value in as it is, signs and all', () => {
    expect(say(en, 'gave', { name: '$&', amount: '{name}' })).toBe('$& gave {name}, says $&.');
    expect(say(en, 'gave', { name: '', amount: 0 })).toBe(' gave 0, says .');
  });

  it('refuses a key, a slot or a plural that is not there, by name', () => {
    expect(tries(() => say(en, 'jugs'))).toMatchInlineSnapshot(`"No words for "jugs" in en."`);
    expect(tries(() => say(en, 'gave', { name: 'Hester' }))).toMatchInlineSnapshot(
      `""gave" in en needs a value for {amount}."`,
    );
    expect(tries(() => say(en, 'short', { n: 2 }))).toMatchInlineSnapshot(
      `""short" in en has no text for "other" or "other"."`,
    );
    expect(tries(() => say(en, 'jars'))).toMatchInlineSnapshot(
      `""jars" in en needs {n} to choose its plural."`,
    );
    expect(tries(() => say(es, 'hello'))).toMatchInlineSnapshot(`"No words for "hello" in es."`);
  });
});

describe('flatten', () => {
  it('makes dotted keys, and one entry of an object of plurals', () => {
    expect(flatten({ a: 'x', b: { c: { d: 'y' } }, e: { one: 'z', other: 'zs' } })).toEqual({
      a: 'x',
      'b.c.d': 'y',
      e: { one: 'z', other: 'zs' },
    });
  });

  it('refuses what is no text, by its key', () => {
    expect(tries(() => JSON.stringify(flatten({ a: { b: 3 } })))).toMatchInlineSnapshot(
      `""a.b" must be a text."`,
    );
    expect(tries(() => JSON.stringify(flatten({ a: null })))).toMatchInlineSnapshot(`""a" must be a text."`);
  });
});
