// Facts by their ids as a page shows them in a language.
import type { ShownFact } from '../../shared/words/shownFact.ts';
import { factOf } from './facts.ts';

/** The facts in the words of a language; one that has no words in it is told in English. Throws where an id is no fact. */
export function shownFacts(ids: readonly string[], lang: string): ShownFact[] {
  return ids.map((id) => {
    const { en, es, source, sure } = factOf(id);
    return { id, text: lang === 'es' ? es : en, source, sure };
  });
}
