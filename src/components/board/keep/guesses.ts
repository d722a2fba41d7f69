// The guesses on this board, and the one of the child who stands before it.
import type { GuessPart } from '../../../../shared/board/pail/guessRow.ts';
import {
  addGuess,
  isSameMilking,
  readGuesses,
  type GuessedMilking,
  type GuessSet,
} from '../../../../shared/board/pail/kept.ts';
import { keepText, takeText } from './box.ts';

const GUESSES = 'pailside.guesses';
const MINE = 'pailside.my-guess';
// Reached late: in a browser that keeps nothing the bare name already throws.
const lasting = () => localStorage;
const passing = () => sessionStorage;

/** All guesses that are kept here, newest milking first. */
export function keptGuesses(): GuessSet[] {
  return readGuesses(takeText(lasting, GUESSES));
}

/** Adds one guess to those of a milking and remembers it as this child's own. */
export function keepGuess({ date, milking, doe }: GuessedMilking, part: GuessPart, parts: number): void {
  keepText(lasting, GUESSES, JSON.stringify(addGuess(keptGuesses(), { date, milking, doe }, part, parts)));
  keepText(passing, MINE, JSON.stringify({ date, milking, doe, part, parts }));
}

/** Takes all guesses away. */
export function clearGuesses(): void {
  keepText(lasting, GUESSES, null);
  keepText(passing, MINE, null);
}

/** What this child has guessed of a milking; null before the guess, and for the next child. */
export function myGuess(milking: GuessedMilking, part: GuessPart): number | null {
  try {
    const mine = JSON.parse(takeText(passing, MINE) ?? 'null') as Partial<
      GuessedMilking & { part: string; parts: number }
    > | null;
    const isMine = mine !== null && isSameMilking(mine as GuessedMilking, milking) && mine.part === part;
    return isMine && Number.isInteger(mine.parts) ? (mine.parts as number) : null;
  } catch {
    return null;
  }
}

/** The next child comes to the board. */
export function forgetMyGuess(): void {
  keepText(passing, MINE, null);
}
