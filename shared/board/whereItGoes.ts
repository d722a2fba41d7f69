// Where does this week's milk go? By the use that the milker wrote down.
import { USES } from '../herd/types.ts';
import { BOOK_COLUMNS, bookRow, dayAmount, exactText, jarAmount, servings, sumOf_mL } from './shown.ts';
import type { Answer, BoardInput } from './types.ts';

/** Jars that reached the kitchen, and the road of the rest. */
export function whereItGoes(input: BoardInput): Answer {
  const { week, figures } = input;
  const total_mL = (figures.figures['herd.week.total']?.value ?? 0) * 1000;
  const kept_mL = (figures.figures['herd.week.kept']?.value ?? 0) * 1000;
  const jars = jarAmount(input, kept_mL);
  const used = USES.filter((use) => week.uses_mL[use] > 0);
  return {
    name: 'where-it-goes',
    missing: total_mL === 0,
    live: true,
    face: null,
    number: total_mL === 0 ? '' : jars.text,
    slots: { n: jars.n, amount: jars.text, percent: percentOf(kept_mL, total_mL) },
    variants: { headline: shareOf(kept_mL, total_mL) },
    concrete: servings(kept_mL),
    picture: {
      kind: 'road',
      parts: USES.map((use) => ({
        id: use,
        share: total_mL === 0 ? 0 : week.uses_mL[use] / total_mL,
        amount: dayAmount(input, week.uses_mL[use]).text,
      })),
    },
    proof: {
      figure: 'herd.week.kept',
      steps: [
        ...used.map((use) => ({ label: '', key: use, sum: exactText(input, week.uses_mL[use]) })),
        {
          label: '',
          sum: sumOf_mL(
            input,
            used.map((use) => week.uses_mL[use]),
            total_mL,
          ),
        },
        { label: '', sum: `${exactText(input, kept_mL)} ÷ ${exactText(input, input.jar_mL)} ≈ ${jars.text}` },
      ],
      columns: BOOK_COLUMNS,
      rows: week.does.flatMap((doe) => doe.milkings.map((row) => bookRow(input, doe.name, row))),
      missing: week.does.reduce((sum, doe) => sum + doe.missing.length, 0),
      facts: ['raw-milk', 'withheld-milk', 'heat-leaves-medicine', 'school-serving'],
      table: null,
    },
  };
}

function shareOf(kept_mL: number, total_mL: number): 'all' | 'most' | 'some' | 'none' {
  if (kept_mL === 0) return 'none';
  if (kept_mL === total_mL) return 'all';
  return kept_mL * 2 > total_mL ? 'most' : 'some';
}

/** Whole percent, but neither none nor all of it where it is not. */
function percentOf(kept_mL: number, total_mL: number): number {
  if (kept_mL === 0 || kept_mL === total_mL) return kept_mL === 0 ? 0 : 100;
  return Math.min(99, Math.max(1, Math.round((kept_mL / total_mL) * 100)));
}
