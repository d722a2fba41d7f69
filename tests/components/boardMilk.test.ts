// The built pages of what there is to do with milk: one task to read, buttons with names, and no style that the board's policy forbids.
import { render } from 'svelte/server';
import type { Component } from 'svelte';
import { describe, expect, it } from 'vitest';
import { doingOf } from '../../shared/board/do/plans.ts';
import { PARTS } from '../../src/components/board/do/parts.ts';
import { wordsOf } from '../../src/site/words.ts';
import { bookOf, dates, day, twice } from '../support/bookOf.ts';
import { inputOf } from '../shared/board/do/doInput.ts';
import { marksIn } from './drawn.ts';

const OURS = ['pour', 'guess', 'cups', 'year', 'two-milks', 'menu', 'faces'] as const;

function input(lang: string) {
  const book = bookOf(
    ['ash 2026-01-01 weaned 2026-03-01', 'bay 2026-01-01 weaned 2026-03-01'],
    [
      ...twice('ash', dates('2026-03-01', '2026-05-20'), '1 L'),
      ...twice('bay', dates('2026-04-01', '2026-05-20'), '2 L'),
    ],
  );
  const born = book.does.map((doe) => ({ ...doe, born: '2022-02-01' }));
  return inputOf({ ...book, does: born }, day('2026-05-20'), { lang });
}

describe.each(['en', 'es'])('in %s', (lang) => {
  it.each(OURS)('%s stands there before anybody taps', async (name) => {
    const words = wordsOf(lang);
    const { plan, says } = doingOf(name, input(lang), words);
    expect(plan).not.toBeNull();
    const part = (await PARTS[name]()).default as Component<{ words: typeof words; plan: unknown }>;
    const markup = render(part, { props: { words, plan } }).body.replace(/<!--.*?-->/gs, '');
    expect(markup).not.toMatch(/\sstyle=|NaN|undefined|\{|\}/);

    const texts = [...markup.matchAll(/<(p|li)[^>]*data-read[^>]*>([^<]*)</g)].map(([, , text = '']) =>
      text.trim().replaceAll('&amp;', '&'),
    );
    expect(texts.length).toBeGreaterThan(0);
    // What can be read aloud has been foreseen, so that it has a sound.
    for (const text of texts) expect(says).toContain(text);

    const buttons = [...markup.matchAll(/<button([^>]*)>(.*?)<\/button>/gs)];
    expect(buttons.length).toBeGreaterThan(1);
    for (const [, attributes = '', inside = ''] of buttons) {
      const label = /aria-label="([^"]+)"/.exec(attributes)?.[1];
      expect(label ?? inside.replace(/<[^>]+>/g, '').trim()).not.toBe('');
      expect(attributes).toContain('type="button"');
    }
  });

  it('the year is drawn with every month on its axis', async () => {
    const words = wordsOf(lang);
    const { plan } = doingOf('year', input(lang), words);
    const part = (await PARTS.year()).default as Component<{ words: typeof words; plan: unknown }>;
    const letters = marksIn(render(part, { props: { words, plan } }).body.replace(/<!--.*?-->/gs, ''))
      .filter(({ tag, of }) => tag === 'text' && of['font-size'] === '34')
      .map(({ text }) => text);
    expect(letters.join('')).toBe(lang === 'en' ? 'MJJASONDJFMAM' : 'MJJASONDEFMAM');
  });
});
