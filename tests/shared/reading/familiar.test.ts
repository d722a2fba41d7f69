// Which words count as known: the lists, regular endings, what a text explains.
import { daleChall } from 'dale-chall';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unknownIn } from '../../../shared/reading/counts.ts';
import { explainedWords, isFamiliar, stemsOf } from '../../../shared/reading/familiar.ts';

const NONE: ReadonlySet<string> = new Set();
const knows = (word: string) => isFamiliar(word, NONE);

describe('isFamiliar', () => {
  it('strips the endings that the list leaves out, and no more', () => {
    // The list holds base forms only: these are the words that tripped others (teaching facts, section 2.4).
    for (const word of ['milks', 'goats', 'kids', 'cups', 'called', 'makes', "goat's", 'babies', 'stopped', 'stirring', 'making', 'hooves', 'biggest', 'softly', 'drank', "doesn't", "we're", 'baby', 'Zero', 'twenty-one', 'goat’s', 'milkers'])
      expect(knows(word), word).toBe(true); // prettier-ignore
    for (const word of ['doe', 'udder', 'teat', 'rumen', 'forage', 'stanchion', 'mammal', 'protein', 'liter', 'lactose', 'liters', 'digested', 'fiber', 'enzymes', 'milk-enzyme'])
      expect(knows(word), word).toBe(false); // prettier-ignore
  });

  it('knows every word of the list with every regular ending', () => {
    const verbs = fc.constantFrom(...daleChall.filter((word) => /^[a-z]{3,}[^aeiouys]$/.test(word)));
    fc.assert(
      fc.property(verbs, fc.constantFrom('s', "'s", 'ed', 'ing', 'er', 'est'), (word, ending) => {
        expect(stemsOf(word + ending)).toContain(word);
        expect(knows(word + ending)).toBe(true);
      }),
    );
  });

  it('knows what the text explains, in each of its forms', () => {
    const explained = explainedWords(['udder', 'milking stand', 'to browse']);
    for (const word of ['udder', 'udders', "udder's", 'Udder', 'browse', 'browses', 'browsing', 'stand'])
      expect(isFamiliar(word, explained), word).toBe(true);
    expect(isFamiliar('rumen', explained)).toBe(false);
  });
});

describe('unknownIn', () => {
  it('takes a capital within a sentence for a name', () => {
    expect(unknownIn(['Lactose', 'is', 'in', 'Saanen', 'and', 'nubian', 'milk'], NONE)).toEqual(['Lactose', 'nubian']); // prettier-ignore
  });
});
