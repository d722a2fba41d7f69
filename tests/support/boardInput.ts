// The board's input from a book, and the words of both languages, for tests of things to do.
import { boardFarm } from '../../shared/board/boardFarm.ts';
import type { BoardInput } from '../../shared/board/types.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import type { Book } from '../../shared/herd/types.ts';
import { wordsOf } from '../../src/site/words.ts';
import { TEST_FARM } from './testFarm.ts';

/** What the board is computed from, for a book read on a day. */
export function boardInputOf(book: Book, asOf: number, units: 'us' | 'metric' = 'metric'): BoardInput {
  const farm = { ...TEST_FARM, units };
  return { ...boardFarm(farm, book, openLedger(book, asOf)), lang: 'en', composition: [] };
}

/** The words of both languages. */
export const BOTH = ['en', 'es'].map((lang) => wordsOf(lang));
