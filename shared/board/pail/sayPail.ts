// What "Guess the pail" says: after a guess, and when the pail is known.
import { dayNumber, weekday } from '../../calendar/day.ts';
import { wholeParts } from '../../quantity/show.ts';
import { say, type Words } from '../../words/words.ts';
import type { Level } from '../tell.ts';
import {
  inGuessParts,
  partsExact,
  partsTold,
  partUnit,
  rowChoices,
  type GuessPart,
  type GuessRow,
} from './guessRow.ts';
import type { AskedMilking } from './pailBook.ts';

/** Where a guess falls among the guesses before it. */
export type GuessPlace = 'first' | 'least' | 'most' | 'same' | 'among';

/**
 * Where a new guess falls among those before it.
 * @example placeOf(3, [5, 7]) // => 'least'
 */
export function placeOf(guess: number, before: readonly number[]): GuessPlace {
  if (before.length === 0) return 'first';
  const [fewer, more] = [before.some((one) => one < guess), before.some((one) => one > guess)];
  if (fewer && more) return 'among';
  if (!fewer && !more) return 'same';
  return fewer ? 'most' : 'least';
}

/** How near the middle guess came: to a quarter of a part, to one part or a tenth of the milk, or not so near. */
export type Nearness = 'hit' | 'near' | 'far';

const HIT_PARTS = 0.25;
const NEAR_SHARE = 0.1;

/** How near a middle guess came to the truth, both in parts. */
export function nearness(middle: number, truth: number): Nearness {
  const off = Math.abs(middle - truth);
  if (off <= HIT_PARTS + 1e-9) return 'hit';
  return off <= Math.max(1, truth * NEAR_SHARE) + 1e-9 ? 'near' : 'far';
}

/** Fewer guesses than these have no steady middle (our rule; common practice, no source). */
export const FEW_GUESSES = 5;

/** A number of parts with its unit: "7 cups". */
export function amountText(words: Words, parts: number, part: GuessPart): string {
  return unitText(words, partsTold(parts, part, words.lang), part);
}

function unitText(words: Words, { n, text }: { n: number; text: string }, part: GuessPart): string {
  const unit = partUnit(part);
  // Less than one is told in the singular, and "a quarter of a cup" in some languages with a word between.
  if (/^[¼½¾]$/.test(text))
    return say(words, `barn.pail.${text === '½' ? 'half' : 'quarters'}.${unit}`, { amount: text });
  return `${text} ${say(words, `barn.unit.${unit}`, { n })}`;
}

/** A number of parts as exactly as the book has it, with its unit: "6¼ cups". */
export function exactText(words: Words, parts: number, part: GuessPart): string {
  return unitText(words, partsExact(parts, part, words.lang), part);
}

/** When a milking is, as a child says it: "on Friday morning". */
export function whenText(words: Words, { date, milking }: Pick<AskedMilking, 'date' | 'milking'>): string {
  const day = say(words, `barn.pail.weekday.${weekday(dayNumber(date) ?? 0)}`);
  return say(words, `barn.pail.when.${milking}`, { day });
}

/** What is said before a guess. */
export function askTexts(words: Words, asked: AskedMilking, part: GuessPart): string[] {
  const slots = { name: asked.name, when: whenText(words, asked) };
  return [say(words, 'barn.pail.soon', slots), say(words, `barn.pail.ask.${partUnit(part)}`, slots)];
}

/** What is said right after a guess: that it counts, where it falls, and for the older how much is usual. */
export function countedTexts(
  words: Words,
  level: Level,
  asked: AskedMilking,
  part: GuessPart,
  guess: number,
  place: GuessPlace,
): string[] {
  const counted = say(words, 'barn.pail.counted', { amount: amountText(words, guess, part) });
  const where = say(words, `barn.pail.place.${place}`);
  if (level === 'younger') return [counted, where];
  const usual = exactText(words, inGuessParts(asked.usual_mL, part), part);
  const hint = say(words, `barn.pail.usual.${asked.milking}`, { usual, name: asked.name });
  return [counted, where, hint];
}

/** What is known once a milking is in the book, in parts. */
export interface PailOutcome {
  readonly part: GuessPart;
  readonly guesses: readonly number[];
  readonly middle: number;
  readonly truth: number;
}

/** What is said when the pail is known: what she gave, the middle guess, and why the middle is often near. */
export function outcomeTexts(
  words: Words,
  level: Level,
  { part, guesses, middle, truth }: PailOutcome,
): string[] {
  const few = guesses.length < FEW_GUESSES;
  if (level === 'younger') {
    // The youngest read whole cups, and hear how near these two numbers are.
    const whole = wholeParts(truth);
    return [
      say(words, 'barn.pail.truth', { amount: amountText(words, whole, part) }),
      say(words, 'barn.pail.middle', { amount: amountText(words, middle, part) }),
      say(words, `barn.pail.younger.${few ? 'few' : nearness(middle, whole)}`),
    ];
  }
  const near = nearness(middle, truth);
  const off = say(words, `barn.pail.off.${sideOf(middle, truth)}`, {
    off: exactText(words, Math.abs(middle - truth), part),
  });
  return [
    say(words, 'barn.pail.truth', { amount: exactText(words, truth, part) }),
    say(words, 'barn.pail.middle', { amount: amountText(words, middle, part) }),
    off,
    say(words, `barn.pail.older.${few ? 'few' : leaning(guesses, truth) && near === 'far' ? 'lean' : near}`),
  ];
}

function sideOf(middle: number, truth: number): 'none' | 'above' | 'below' {
  if (Math.abs(middle - truth) < 1e-6) return 'none';
  return middle > truth ? 'above' : 'below';
}

/** Whether nearly all guesses missed to the same side. */
function leaning(guesses: readonly number[], truth: number): boolean {
  const above = guesses.filter((one) => one > truth).length;
  const below = guesses.filter((one) => one < truth).length;
  return Math.min(above, below) <= guesses.length / 10;
}

/** Everything that the page may say while a milking is guessed, so that it can be recorded beforehand. */
export function pailSays(words: Words, asked: AskedMilking, row: GuessRow): string[] {
  const places: readonly GuessPlace[] = ['first', 'least', 'most', 'same', 'among'];
  const guessed = rowChoices(row).flatMap((guess) =>
    countedTexts(words, 'older', asked, row.part, guess, 'first'),
  );
  return [
    ...new Set([
      ...askTexts(words, asked, row.part),
      ...guessed,
      ...places.map((place) => say(words, `barn.pail.place.${place}`)),
      ...['hit', 'near', 'far', 'few'].map((one) => say(words, `barn.pail.younger.${one}`)),
      ...['hit', 'near', 'far', 'few', 'lean'].map((one) => say(words, `barn.pail.older.${one}`)),
      ...rowChoices(row).flatMap((parts) => [
        say(words, 'barn.pail.truth', { amount: amountText(words, parts, row.part) }),
        say(words, 'barn.pail.middle', { amount: amountText(words, parts, row.part) }),
      ]),
    ]),
  ];
}
