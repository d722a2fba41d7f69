// The guesses as dots over a number line, with their middle and the truth: places only.
import { axisOf, type Axis } from '../../drawing/axis.ts';
import { dotStacks } from '../../drawing/dotPlot.ts';
import { rowChoices, type GuessRow } from './guessRow.ts';
import { median } from './median.ts';

/** Guesses on a number line. Values are parts (cups or half liters), lengths drawing units. */
export interface GuessPlot {
  readonly axis: Axis;
  /** Parts from one tick to the next. */
  readonly stride: number;
  /** The dots' middles, the height growing downwards from 0 at the top to the line. */
  readonly dots: readonly { readonly parts: number; readonly x: number; readonly y: number }[];
  readonly radius: number;
  /** The middle guess; null without a guess. */
  readonly middle: number | null;
  readonly truth: number | null;
}

const CELL_SHARE = 0.86;
const MOST_CELL = 76;

/**
 * Lays guesses out over a row's numbers, on a line `width` long with `height` above it for the dots. The line is as
 * much longer than the row as a guess from another day's row, or the truth, asks for.
 */
export function guessPlot(
  guesses: readonly number[],
  row: GuessRow,
  truth: number | null,
  width: number,
  height: number,
): GuessPlot {
  const choices = rowChoices(row);
  const all = [...choices, ...guesses, ...(truth === null ? [] : [truth])];
  const { stride } = row;
  const low = Math.floor(Math.min(...all) / stride) * stride;
  const high = Math.ceil(Math.max(...all) / stride) * stride;
  // A row in twos may hold a guess of an odd number, from when the row was in ones.
  const fine = guesses.every((one) => one % stride === 0) ? stride : 1;
  const axis = axisOf(low, high > low ? high : low + stride, stride, width);
  const stacks = dotStacks(guesses, low, fine);
  const most = Math.max(1, ...stacks.map((dot) => dot.above + 1));
  const cell = Math.min(MOST_CELL, (axis.at(low + fine) - axis.at(low)) * CELL_SHARE, height / most);
  return {
    axis,
    stride,
    dots: stacks.map((dot) => {
      const parts = low + dot.step * fine;
      return { parts, x: axis.at(parts), y: height - (dot.above + 0.5) * cell };
    }),
    radius: cell * 0.46,
    middle: median(guesses),
    truth,
  };
}
