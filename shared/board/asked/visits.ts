// What was asked on a board: how often each page was opened, by day and language. Nothing else is ever kept.
import { dayFromCivil, civilFromDay, dayNumber } from '../../calendar/day.ts';

/** Visits by date (`YYYY-MM-DD`), language and the page's name. */
export type Visits = Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, number>>>>>>;

/** How many months of visits are kept. */
export const KEPT_MONTHS = 13;
const MOST_VISITS = 999_999;

/** The visits in a text, those of the last thirteen months before a date. What is broken or not ours is left out. */
export function readVisits(text: string | null, today: string): Visits {
  let kept: unknown;
  try {
    kept = JSON.parse(text ?? '');
  } catch {
    return {};
  }
  const first = monthsBefore(today, KEPT_MONTHS);
  return fieldsOf(kept, (date) => {
    const day = dayNumber(date);
    return day !== null && day > first;
  }, (languages) =>
    fieldsOf(languages, (lang) => /^[a-z]{2,3}(-[A-Za-z0-9]+)*$/.test(lang), (names) =>
      fieldsOf(names, (name) => /^[a-z][a-z0-9-]*$/.test(name), (count) =>
        Number.isInteger(count) && (count as number) > 0 && (count as number) <= MOST_VISITS ? (count as number) : null,
      ),
    ),
  ) ?? {}; // prettier-ignore
}

/** The sound fields of an object, each read; null where it is none or has none. */
function fieldsOf<Value>(
  kept: unknown,
  isKey: (key: string) => boolean,
  read: (value: unknown) => Value | null,
): Readonly<Record<string, Value>> | null {
  if (kept === null || typeof kept !== 'object' || Array.isArray(kept)) return null;
  const sound = Object.entries(kept).flatMap(([key, value]): [string, Value][] => {
    const one = isKey(key) ? read(value) : null;
    return one === null ? [] : [[key, one]];
  });
  return sound.length === 0 ? null : Object.fromEntries(sound);
}

/** The same day of the month so many months before; of a longer month its last day. */
function monthsBefore(date: string, months: number): number {
  const day = dayNumber(date);
  if (day === null) throw new Error(`"${date}" is no date.`);
  const { year, month, dayOfMonth } = civilFromDay(day);
  const at = year * 12 + month - 1 - months;
  const [firstYear, firstMonth] = [Math.floor(at / 12), (((at % 12) + 12) % 12) + 1];
  const next = dayFromCivil(firstMonth === 12 ? firstYear + 1 : firstYear, (firstMonth % 12) + 1, 1);
  return Math.min(dayFromCivil(firstYear, firstMonth, dayOfMonth), next - 1);
}

/** The visits with one more of a page, on a date, in a language. */
export function addVisit(visits: Visits, date: string, lang: string, name: string): Visits {
  const day = visits[date] ?? {};
  const count = Math.min(MOST_VISITS, (day[lang]?.[name] ?? 0) + 1);
  return { ...visits, [date]: { ...day, [lang]: { ...day[lang], [name]: count } } };
}
