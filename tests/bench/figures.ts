// How fast the figures of a large book are, and how the time grows, beside the same sums by sqlite.
import { computeFigures, type FiguresFile } from '../../shared/herd/figures.ts';
import { largeBook } from './largeBook.ts';
import { shortest_ms, timeText, type Line, type Part } from './line.ts';
import { openSql, sqlSums, type Sums } from './sqlSums.ts';

// Rows, and how often each is measured: short runs need more of them to come to rest.
const SIZES: readonly (readonly [number, number])[] = [
  [100_000, 9],
  [300_000, 5],
  [1_000_000, 3],
];

/** Measures every size; throws where the two disagree, since then they did not do the same. */
export const figuresPart: Part = async (say) => {
  const lines: Line[] = [];
  for (const [size, runs] of SIZES) {
    say(`Figures of ${size.toLocaleString('en')} rows …`);
    const large = largeBook(size);
    const { book, asOf } = large;
    const ours_ms = await shortest_ms(runs, () => computeFigures(book, asOf));
    const db = openSql(large);
    const theirs_ms = await shortest_ms(runs, () => sqlSums(db, large));
    mustAgree(computeFigures(book, asOf), sqlSums(db, large));
    db.close();
    const perSecond = Math.round(size / (ours_ms / 1000)).toLocaleString('en');
    lines.push({
      what: `figures of ${size.toLocaleString('en')} rows (${perSecond} rows/s)`,
      ours: timeText(ours_ms),
      beside: "the same sums by Node's sqlite",
      theirs: timeText(theirs_ms),
      ratio: ours_ms / theirs_ms,
    });
  }
  return lines;
};

function mustAgree({ figures }: FiguresFile, sums: Sums): void {
  const pairs: [string, number][] = [
    ['herd.week.total', sums.week_L],
    ['herd.year.total', sums.year_L],
    ['herd.best.day', sums.bestDay_L],
    ...[...sums.perDoe_L].map(([doe, milk]): [string, number] => [`doe.${doe}.week.total`, milk]),
  ];
  for (const [id, theirs] of pairs) {
    const ours = figures[id]?.value ?? Number.NaN;
    if (!(Math.abs(ours - theirs) <= 1e-9 * Math.abs(theirs)))
      throw new Error(`${id} is ${ours} L by the engine and ${theirs} L by sqlite.`);
  }
}
