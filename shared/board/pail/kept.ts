// The guesses that a board keeps: how many children guessed which amount of which milking, and nothing else.
import { dayNumber } from '../../calendar/day.ts';
import type { MilkingTime } from '../../herd/types.ts';
import type { GuessPart } from './guessRow.ts';

/** Whose milking was guessed. */
export interface GuessedMilking {
  readonly date: string;
  readonly milking: MilkingTime;
  /** Her id. */
  readonly doe: string;
}

/** The guesses of one milking: how many children guessed a number of parts. */
export interface GuessSet extends GuessedMilking {
  readonly part: GuessPart;
  readonly counts: Readonly<Record<string, number>>;
}

/** Guesses older than this, by the newest milking that was guessed, are dropped. */
export const KEPT_DAYS = 42;
const MOST_PARTS = 999;
const MOST_GUESSES = 9999;

/** Whether two name the same milking. */
export function isSameMilking(a: GuessedMilking, b: GuessedMilking): boolean {
  return a.date === b.date && a.milking === b.milking && a.doe === b.doe;
}

/** What is kept in a text, newest first. What is broken, or not ours, is left out without a word. */
export function readGuesses(text: string | null): GuessSet[] {
  let kept: unknown;
  try {
    kept = JSON.parse(text ?? '');
  } catch {
    return [];
  }
  const sets = Array.isArray(kept) ? kept.flatMap((one) => guessSet(one) ?? []) : [];
  const once = sets.filter((one, index) => sets.findIndex((other) => isSameMilking(one, other)) === index);
  return fresh(once);
}

function guessSet(kept: unknown): GuessSet | null {
  if (kept === null || typeof kept !== 'object') return null;
  const { date, milking, doe, part, counts } = kept as Record<string, unknown>;
  if (typeof date !== 'string' || dayNumber(date) === null || typeof doe !== 'string' || doe === '')
    return null;
  if ((milking !== 'am' && milking !== 'pm') || (part !== 'cup' && part !== 'half-L')) return null;
  if (counts === null || typeof counts !== 'object' || Array.isArray(counts)) return null;
  const sound = Object.entries(counts).filter(
    ([parts, count]) =>
      /^\d{1,3}$/.test(parts) &&
      Number.isInteger(count) &&
      (count as number) > 0 &&
      (count as number) <= MOST_GUESSES,
  );
  if (sound.length === 0) return null;
  return { date, milking, doe, part, counts: Object.fromEntries(sound) };
}

/** In order, newest first, without those that are too old. */
function fresh(sets: readonly GuessSet[]): GuessSet[] {
  const dayOf = (one: GuessSet) => dayNumber(one.date) ?? 0;
  const newest = Math.max(...sets.map(dayOf));
  return sets
    .filter((one) => newest - dayOf(one) <= KEPT_DAYS)
    .toSorted((a, b) => dayOf(b) - dayOf(a) || b.milking.localeCompare(a.milking));
}

/** The sets with one guess more. A set in other parts, from before the farm changed its units, begins anew. */
export function addGuess(
  sets: readonly GuessSet[],
  { date, milking, doe }: GuessedMilking,
  part: GuessPart,
  parts: number,
): GuessSet[] {
  if (!Number.isInteger(parts) || parts < 0 || parts > MOST_PARTS)
    throw new Error(`A guess is a whole number of parts, not ${parts}.`);
  const own = sets.find((one) => isSameMilking(one, { date, milking, doe }) && one.part === part);
  const counts = { ...own?.counts, [parts]: Math.min(MOST_GUESSES, (own?.counts[parts] ?? 0) + 1) };
  const others = sets.filter((one) => !isSameMilking(one, { date, milking, doe }));
  return fresh([{ date, milking, doe, part, counts }, ...others]);
}

/** The guesses of a milking one by one, the least first; empty where nobody guessed it in these parts. */
export function guessesOf(sets: readonly GuessSet[], milking: GuessedMilking, part: GuessPart): number[] {
  const own = sets.find((one) => isSameMilking(one, milking) && one.part === part);
  return own ? everyGuess(own) : [];
}

/** The guesses of a set one by one, the least first. */
export function everyGuess({ counts }: GuessSet): number[] {
  return Object.entries(counts)
    .toSorted(([a], [b]) => Number(a) - Number(b))
    .flatMap(([parts, count]) => Array.from({ length: count }, () => Number(parts)));
}
