// The figures of one doe.
import { figure, inWindow, mean_L, sumDays, type Figure } from './figures.ts';
import type { LastDay } from './lastDay.ts';
import { isWhole, litres, type Entry, type Ledger } from './ledger.ts';
import type { Book } from './types.ts';

/** The contract's figures of a doe, keyed `doe.ID.…`. */
export function doeFigures(
  book: Book,
  ledger: Ledger,
  last: LastDay,
  weekEntries: readonly Entry[],
  doe: string,
): Record<string, Figure> {
  const { window } = last;
  const entries = weekEntries.filter(({ row }) => row.doe === doe);
  const total = entries.reduce((sum, entry) => sum + entry.grains, 0n);
  const largest = entries.reduce((most, entry) => (entry.grains > most ? entry.grains : most), 0n);
  const days = [...(ledger.doeDays.get(doe) ?? [])]
    .filter(([day]) => inWindow(day, last))
    .map(([, sum]) => sum);
  const complete = days.filter(isWhole);
  const has = entries.length > 0;
  return {
    [`doe.${doe}.week.total`]: figure('L', "The sum of the doe's milk in the window, whatever its use.",
      has ? litres(ledger, total) : null, window, entries.length),
    [`doe.${doe}.week.best`]: figure('L', "The doe's largest single milking in the window.",
      has ? litres(ledger, largest) : null, window, entries.length),
    [`doe.${doe}.week.dailyMean`]: figure('L',
      "The mean of the doe's day totals over the days of the window on which all milkings expected of her are entered.",
      mean_L(ledger, complete), window, sumDays(complete).rows),
    [`doe.${doe}.daysInMilk`]: daysInMilk(book, ledger.asOf, doe),
  }; // prettier-ignore
}

function daysInMilk(book: Book, asOf: number, doe: string): Figure {
  const method = 'Days from her latest kidding to the day the figures are made for; none once she is dry.';
  const kiddings = book.kiddings.filter((kidding) => kidding.doe === doe && kidding.day <= asOf);
  if (kiddings.length === 0) return figure('day', method, null, null, 0);
  const latest = kiddings.reduce((a, b) => (b.day > a.day ? b : a));
  const dry = latest.dry !== null && latest.dry <= asOf;
  return figure('day', method, dry ? null : asOf - latest.day, { from: latest.day, to: asOf }, 0);
}
