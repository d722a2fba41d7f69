// Guesses of a pail as a teacher types them: amounts with how many children guessed each, and what the doe gave.
import { part_mL, partUnit, type GuessPart } from '../../../board/pail/guessRow.ts';
import { UNIT_SIZE_mL } from '../../../quantity/unitSize.ts';
import { numberOf, readCounts } from './typed.ts';

/** Guesses and milk in parts, and the lines that are no guess. */
export interface GuessesTyped {
  readonly guesses: readonly number[];
  readonly truth: number | null;
  readonly from: number;
  readonly to: number;
  readonly wrong: readonly string[];
}

// The line of the sheet has room for as many parts; no doe gives half of that at a milking.
const MOST_PARTS = 48;

/** Reads them. The board is guessed in whole cups or half liters, so that other amounts are none of its guesses. */
export function guessesTyped(typed: string, gave: string, part: GuessPart): GuessesTyped {
  const perUnit = Math.round(UNIT_SIZE_mL[partUnit(part)] / part_mL(part));
  const { rows, wrong } = readCounts(typed);
  const told = rows.map(({ value, times }) => ({ value, times, parts: value.mul(perUnit) }));
  const isGuess = ({ parts }: (typeof told)[number]) => parts.d === 1n && parts.compare(MOST_PARTS) <= 0;
  const guesses = told
    .filter(isGuess)
    .flatMap(({ parts, times }) => Array<number>(times).fill(parts.valueOf()));
  const amount = gave.trim() === '' ? null : numberOf(gave);
  const truth = amount && amount.mul(perUnit).compare(MOST_PARTS) <= 0 ? amount.mul(perUnit).valueOf() : null;
  const odd = told.filter((one) => !isGuess(one)).map(({ value }) => value.toString());
  const oddGave = gave.trim() !== '' && truth === null ? [gave.trim()] : [];
  return {
    guesses,
    truth,
    from: Math.min(...guesses, MOST_PARTS),
    to: Math.max(...guesses, 0),
    wrong: [...wrong, ...odd, ...oddGave],
  };
}
