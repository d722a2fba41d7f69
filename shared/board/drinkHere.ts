// May I drink it here? Raw milk never; told by the minutes of heat that come before the first cup.
import { HEAT_ROWS, holdOf, type HeatRow } from '../milk/pasteurizing.ts';
import type { Answer, BoardInput } from './types.ts';

const FACTS = Object.freeze([
  'raw-milk',
  'germs-in-raw',
  'not-sterile',
  'pasteurizing-table',
  'raw-cures-nothing',
  'raw-law',
  'milk-allergy',
  'no-food-near-animals',
]);

/** A temperature of the law's table in the farm's scale. */
export function heatText({ units }: Pick<BoardInput, 'units'>, row: HeatRow): string {
  return units === 'us' ? `${row.at_F}\u00a0°F` : `${row.at_C}\u00a0°C`;
}

/** How long milk is held at the coolest row of the pasteurizing table, and at the row that dairies use; the same in every book. */
export function drinkHere(input: BoardInput): Answer {
  const [slow, fast] = HEAT_ROWS.milk;
  if (!slow || !fast) throw new Error('The pasteurizing table has no rows for milk.');
  const minutes = holdOf(slow).amount;
  return {
    name: 'drink-here',
    missing: false,
    live: false,
    face: null,
    number: String(minutes),
    slots: {
      n: minutes,
      hot: heatText(input, slow),
      hotter: heatText(input, fast),
      seconds: holdOf(fast).amount,
    },
    variants: {},
    concrete: minutes,
    picture: { kind: 'kitchen', kitchen: { of: 'heated', minutes, hot: heatText(input, slow) } },
    proof: {
      figure: null,
      steps: [slow, fast].map((row, i) => ({
        label: '',
        key: i === 0 ? 'heat.slow' : 'heat.fast',
        sum: `${heatText(input, row)} · ${holdOf(row).amount} ${i === 0 ? 'min' : 's'}`,
      })),
      columns: [],
      rows: [],
      missing: 0,
      facts: FACTS,
      table: null,
    },
  };
}
