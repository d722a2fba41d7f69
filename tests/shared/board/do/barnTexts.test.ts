// What the barn's things to do say to a child: short sentences for the younger level, longer ones for the older.
// Eight words a sentence for five to eight years, sixteen for nine and more: our own rule.
import { describe, expect, it } from 'vitest';
import { BOTH } from '../../../support/boardInput.ts';

const OURS = /^barn\.do\.(steps|squeeze|wash|udder-parts|whose-kid|grass)\./;
// A slot is filled with a name or with an amount and its unit.
const words = (sentence: string) =>
  sentence.replaceAll('{amount}', '3 cups').match(/[\p{L}\d{}]+(?:['’]\p{L}+)?/gu) ?? [];

describe.each(BOTH)('what is said in $lang', ({ entries }) => {
  const texts = Object.entries(entries)
    .filter(([key]) => OURS.test(key))
    .flatMap(([key, entry]) =>
      (typeof entry === 'string' ? [entry] : Object.values(entry)).map((text) => [key, text] as const),
    );

  it('keeps its sentences short', () => {
    expect(texts.length).toBeGreaterThan(150);
    for (const [key, text] of texts) {
      const most = key.endsWith('.more') ? 16 : 8;
      for (const sentence of text.split(/(?<=[.!?:])\s+/))
        expect([key, sentence, words(sentence).length <= most]).toEqual([key, sentence, true]);
    }
  });

  it('has no decimals and no percent for the younger level', () => {
    for (const [key, text] of texts)
      if (!key.endsWith('.more')) expect([key, /\d[.,]\d|%/.test(text)]).toEqual([key, false]);
  });

  it('explains to the older level why, wherever a child may be wrong about a cleaning step', () => {
    for (const [key] of texts)
      if (/\.steps\.(right|later)\..*\.short$/.test(key))
        expect(entries).toHaveProperty([key.replace(/short$/, 'more')]);
  });
});
