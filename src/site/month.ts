// The months of the book as they are built into pages, and the words that their pages need.
import {
  monthsOf,
  monthView,
  type MonthCell,
  type MonthRow,
  type MonthView,
} from '../../shared/book/month.ts';
import { isoDate } from '../../shared/calendar/day.ts';
import type { Words } from '../../shared/words/words.ts';
import { openSite } from './site.ts';
import { wordsOf } from './words.ts';

/** The months that there are, oldest first. */
export function builtMonths(): string[] {
  return monthsOf(openSite().ledger);
}

/** The newest month with anything in it; in an empty book the one of its day. */
export function newestMonth(): string {
  return builtMonths().at(-1) ?? isoDate(openSite().ledger.asOf).slice(0, 7);
}

/** A month without notes: what was found at the strip cup is for the farm, and anybody may read the built site. */
export function builtMonth(month: string): MonthView {
  const { book, ledger, farm } = openSite();
  const view = monthView(book, ledger, farm, month);
  const bare = (row: MonthRow): MonthRow => ({ ...row, note: '' });
  const cell = (one: MonthCell): MonthCell => ({
    ...one,
    row: one.row && bare(one.row),
    older: one.older.map(bare),
  });
  const does = view.does.map((doe) => ({
    ...doe,
    days: doe.days.map((day) => ({ ...day, am: cell(day.am), pm: cell(day.pm) })),
  }));
  return { ...view, does };
}

/** The words of the month's page. */
export function monthWords(lang: string): Words {
  return wordsWith(
    lang,
    (key) => (key.startsWith('month.') && !key.startsWith('month.import.')) || isShared(key),
  );
}

/** The words of the import's page. */
export function importWords(lang: string): Words {
  return wordsWith(lang, (key) => /^month\.(import|when|short|mark)\./.test(key) || isShared(key));
}

const isShared = (key: string) => /^book\.(unit|use)\./.test(key);

function wordsWith(lang: string, wanted: (key: string) => boolean): Words {
  const { entries } = wordsOf(lang);
  return { lang, entries: Object.fromEntries(Object.entries(entries).filter(([key]) => wanted(key))) };
}
