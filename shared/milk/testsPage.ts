// What the milk page shows of the farm's milk tests: by test day, by doe, and cells beside the limit.
import { civilFromDay } from '../calendar/day.ts';
import type { Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import type { MilkRichness } from './products/products.ts';
import { CELL_LIMITS_PERML, judgeCells } from './tests/cells.ts';
import { herdTestDays, summaryOf, type HerdTestDay, type TestSummary } from './tests/summary.ts';
import { testedDays, type TestedDay, type TestedDays } from './tests/testedDays.ts';

/** A doe's tests of the newest test year. */
export interface DoeTests {
  readonly doe: string;
  readonly name: string;
  readonly summary: TestSummary;
}

/** A doe's cells on the newest test day, as parts of the bar's length. */
export interface CellBar {
  readonly doe: string;
  readonly name: string;
  readonly cells_perML: number;
  readonly within: boolean;
  readonly bar_pct: number;
}

/** The tests, or that the book has none with milk beside them. */
export type TestsPage =
  | {
      readonly ok: true;
      /** Newest first. */
      readonly days: readonly HerdTestDay[];
      readonly newest: HerdTestDay;
      /** Calendar year that the does' means are of. */
      readonly year: number;
      readonly does: readonly DoeTests[];
      readonly herd: TestSummary;
      readonly cells: readonly CellBar[];
      /** Where the limit stands along the bars. */
      readonly limit_pct: number;
      readonly left: TestedDays['left'];
    }
  | { readonly ok: false; readonly why: 'no tests' | 'no test with milk'; readonly left: TestedDays['left'] };

/** Lays out the tests up to the ledger's day. */
export function testsPage(book: Book, ledger: Ledger): TestsPage {
  const { days, left } = testedDays(book, ledger);
  const byDay = herdTestDays(days).reverse();
  const [newest] = byDay;
  if (!newest) return { ok: false, why: left.length > 0 ? 'no test with milk' : 'no tests', left };
  const year = Number(newest.date.slice(0, 4));
  const ofYear = days.filter(({ test }) => civilFromDay(test.day).year === year);
  const does = book.does.flatMap(({ id, name }) => {
    const own = ofYear.filter(({ test }) => test.doe === id);
    return own.length > 0 ? [{ doe: id, name, summary: summaryOf(own) }] : [];
  });
  const counts = ofYear.filter(({ test }) => test.day === ofYear.at(-1)?.test.day);
  return {
    ok: true,
    days: byDay,
    newest,
    year,
    does,
    herd: summaryOf(ofYear),
    ...cellBars(book, counts),
    left,
  };
}

/** Fat and protein of the newest test day, for the cheese formula; null where either was not tested. */
export function testedRichness(tests: TestsPage): MilkRichness | null {
  if (!tests.ok) return null;
  const { fat_pct, protein_pct } = tests.newest;
  return fat_pct.ok && protein_pct.ok ? { fat_pct: fat_pct.mean, protein_pct: protein_pct.mean } : null;
}

// The bars run to the limit at least, so that a herd far below it shows its distance.
function cellBars(book: Book, days: readonly TestedDay[]): { cells: CellBar[]; limit_pct: number } {
  const limit = CELL_LIMITS_PERML.goat;
  const counted = book.does.flatMap(({ id, name }) => {
    const cells_perML = days.find(({ test }) => test.doe === id)?.test.cells_perML ?? null;
    return cells_perML === null ? [] : [{ doe: id, name, cells_perML }];
  });
  const most = Math.max(limit * 1.1, ...counted.map(({ cells_perML }) => cells_perML));
  const cells = counted.map((one) => ({
    ...one,
    within: judgeCells(one.cells_perML).within,
    bar_pct: (one.cells_perML / most) * 100,
  }));
  return { cells, limit_pct: (limit / most) * 100 };
}
