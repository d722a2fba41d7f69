// What they asked, week by week from Monday: counts by question and language, the small ones hidden.
import { dayNumber, isoDate, weekday } from '../../calendar/day.ts';
import { hideSmall, type Shown } from './hidden.ts';
import type { Visits } from './visits.ts';

/** One language's counts of a week, in the order of the week's names. */
export interface AskedColumn {
  readonly lang: string;
  readonly counts: readonly Shown[];
  /** All visits in this language; null where it would give a hidden count away. */
  readonly total: number | null;
}

/** A week of questions. */
export interface AskedWeek {
  /** Its Monday and Sunday, ISO dates. */
  readonly from: string;
  readonly to: string;
  /** Names of the pages of which some count is not small, the most asked first by what is shown. */
  readonly names: readonly string[];
  /** How many other pages were fewer than five in every language. */
  readonly others: number;
  readonly columns: readonly AskedColumn[];
}

const WEEK_DAYS = 7;

/**
 * The Monday of a date's week. Source: ISO 8601, in which a week begins on Monday.
 * @example mondayOf('2026-05-21') // => '2026-05-18'
 */
export function mondayOf(date: string): string {
  const day = dayNumber(date);
  if (day === null) throw new Error(`"${date}" is no date.`);
  return isoDate(day - ((weekday(day) + WEEK_DAYS - 1) % WEEK_DAYS));
}

/**
 * The weeks with visits, newest first, and the week of `today` always. Each language is hidden by itself, over all
 * pages of the board (`names`); there are no sums over languages or weeks, which could be set against each other.
 */
export function askedWeeks(
  visits: Visits,
  names: readonly string[],
  languages: readonly string[],
  today: string,
): AskedWeek[] {
  const mondays = new Set([mondayOf(today), ...Object.keys(visits).map(mondayOf)]);
  return [...mondays]
    .toSorted()
    .toReversed()
    .map((from) => weekOf(visits, names, languages, from));
}

function weekOf(
  visits: Visits,
  names: readonly string[],
  languages: readonly string[],
  from: string,
): AskedWeek {
  const first = dayNumber(from) as number;
  const dates = Array.from({ length: WEEK_DAYS }, (_, index) => isoDate(first + index));
  const columns = languages.map((lang): AskedColumn => {
    const sums = names.map((name) =>
      dates.reduce((sum, date) => sum + (visits[date]?.[lang]?.[name] ?? 0), 0),
    );
    return { lang, ...hideSmall(sums) };
  });
  const told = names.flatMap((name, place) => {
    const own = columns.map(({ counts }) => counts[place] as Shown);
    return own.every(({ as }) => as === 'few') ? [] : [{ name, place, rank: Math.max(...own.map(rankOf)) }];
  });
  const inOrder = told.toSorted((a, b) => b.rank - a.rank || a.place - b.place);
  return {
    from,
    to: dates.at(-1) ?? from,
    names: inOrder.map(({ name }) => name),
    others: names.length - inOrder.length,
    columns: columns.map((column) => ({
      ...column,
      counts: inOrder.map(({ place }) => column.counts[place] as Shown),
    })),
  };
}

// What is kept back takes part in the order by nothing but that it is shown.
const rankOf = (shown: Shown): number => (shown.as === 'count' ? shown.count : 0);
