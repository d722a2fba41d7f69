// Where the line of a herd's year lies, and the milk under it, as written outlines.
import type { YearMonth } from './year.ts';

/** The plot: its left edge, the width of a month, and the heights of no milk and of the most; y grows downwards. */
export const YEAR_PLOT = Object.freeze({ left: 14, step: 60, base: 290, top: 50 });

/** A run of months that follow one another: its upper line, and the whole area down to the base. */
export interface YearLine {
  readonly top: string;
  readonly area: string;
}

/** The runs of whole months with a known amount, each at least two months long: a blank month breaks the line. */
export function yearLines(months: readonly Pick<YearMonth, 'share' | 'why' | 'open'>[]): YearLine[] {
  const runs: { place: number; share: number }[][] = [[]];
  for (const [place, { share, why, open }] of months.entries()) {
    if (why === 'blank' || open) runs.push([]);
    else runs.at(-1)?.push({ place, share });
  }
  const { left, step, base, top } = YEAR_PLOT;
  const x = (place: number) => left + (place + 0.5) * step;
  return runs.flatMap((run) => {
    const [first, last] = [run[0], run.at(-1)];
    if (!first || !last || run.length < 2) return [];
    const points = run.map(({ place, share }) => `${x(place)},${Math.round(base - share * (base - top))}!`);
    const line = points.join(' ');
    return [{ top: line, area: `${line} ${x(last.place)},${base}! ${x(first.place)},${base}!` }];
  });
}
