// The herd's months, what is behind each, and the season to come: computed at build time.
import { dayFromCivil, isoDate } from '../../calendar/day.ts';
import { milkingsOf, phaseSpans } from '../../herd/expected.ts';
import { decimalText, mixedText, wholeParts } from '../../quantity/show.ts';
import { jarScale } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import { CLEARLY_LESS, type MonthWhy, type YearMonth, type YearNext, type YearPlan } from './year.ts';

const MOST_JARS = 24;

interface Counted {
  readonly id: string;
  readonly total_mL: number;
  readonly rows: number;
  readonly kids: number;
  readonly kiddings: number;
  readonly dried: number;
  readonly weaned: number;
  /** Days on which a milking of some doe was expected. */
  readonly expected: boolean;
  readonly resting: boolean;
  readonly open: boolean;
}

/** The last thirteen months; null where fewer than two of them can be held against each other. */
export function yearPlan(input: BoardInput): YearPlan | null {
  const counted = input.year.months.map(({ month, total_mL, rows }) =>
    countedMonth(input, month, total_mL, rows),
  );
  const known = counted.filter(isKnown);
  const most_mL = Math.max(0, ...known.map(({ total_mL }) => total_mL));
  if (most_mL === 0 || !known.some(({ total_mL }) => total_mL < CLEARLY_LESS * most_mL)) return null;
  const best = counted.findIndex((month) => isKnown(month) && month.total_mL === most_mL);
  const tallest_mL = Math.max(...counted.map(({ total_mL }) => total_mL));
  const months = counted.map((month, place): YearMonth => {
    const why = place === best ? mostOf(counted, best) : whyOf(month, counted[place - 1]);
    const jars = month.total_mL / input.jar_mL;
    const halves = wholeParts(jars * 2);
    return {
      id: month.id,
      ...namesOf(month.id, input.lang),
      share: month.total_mL / tallest_mL,
      jars,
      jarsText: jars < 10 ? mixedText(halves, 2, input.lang) : decimalText(jars, 0, input.lang),
      jarsCount: halves <= 2 ? 1 : 2,
      why,
      count: why === 'born' ? month.kids : why === 'dry' ? month.dried : 0,
      open: month.open,
    };
  });
  return { months, best, jarEach: jarScale(tallest_mL, input.jar_mL, MOST_JARS), next: nextOf(input) };
}

const isKnown = ({ open, rows, resting }: Counted) => !open && (rows > 0 || resting);

function countedMonth(input: BoardInput, id: string, total_mL: number, rows: number): Counted {
  const [year = 0, month = 0] = id.split('-').map(Number);
  const from = dayFromCivil(year, month, 1);
  const to = (month === 12 ? dayFromCivil(year + 1, 1, 1) : dayFromCivil(year, month + 1, 1)) - 1;
  const within = (day: number | null) => day !== null && day >= from && day <= to;
  const born = input.kiddings.filter(({ day }) => within(day));
  const spans = input.does
    .flatMap(({ id: doe }) => phaseSpans(input.kiddings.filter((kidding) => kidding.doe === doe)))
    .filter((span) => span.from <= to && (span.to ?? to) >= from);
  const expected = spans.some(({ phase }) => milkingsOf(phase).length > 0);
  return {
    id,
    total_mL,
    rows,
    kids: born.reduce((sum, { kids }) => sum + (kids ?? 0), 0),
    kiddings: born.length,
    dried: input.kiddings.filter(({ dry }) => within(dry)).length,
    weaned: input.kiddings.filter(({ weaned }) => within(weaned)).length,
    expected,
    resting: rows === 0 && !expected && spans.some(({ phase }) => phase === 'dry'),
    open: input.week.asOf.startsWith(id) && isoDate(to) !== input.week.asOf,
  };
}

function whyOf(month: Counted, before: Counted | undefined): MonthWhy {
  if (month.kiddings > 0) return 'born';
  if (month.resting) return 'rest';
  if (month.rows === 0) return 'blank';
  if (month.dried > 0 && !month.open) return 'dry';
  // A month that runs is not held against a whole one, nor any month against a blank.
  if (month.open || !before || !isKnown(before)) return 'some';
  if (month.total_mL > before.total_mL) return 'up';
  return month.total_mL < before.total_mL ? 'down' : 'same';
}

// Where most kids of the year were weaned shortly before, that is why more milk comes into the pail.
function mostOf(months: readonly Counted[], best: number): MonthWhy {
  const count = (some: readonly Counted[]) => some.reduce((sum, { weaned }) => sum + weaned, 0);
  const shortly = count(months.slice(Math.max(0, best - 2), best + 1));
  return shortly > 0 && 2 * shortly >= count(months.slice(0, 12)) ? 'mostWeaned' : 'most';
}

function namesOf(id: string, lang: string) {
  // Read at noon of its first day, so that no time zone moves it into another month.
  const noon = new Date(`${id}-01T12:00:00Z`);
  const text = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(lang, { ...options, timeZone: 'UTC' }).format(noon);
  return {
    name: text({ month: 'long' }),
    long: text({ month: 'long', year: 'numeric' }),
    letter: text({ month: 'narrow' }),
  };
}

function nextOf({ year: { coming }, lang }: BoardInput): YearNext | null {
  if (!coming.ok) return null;
  const month = (day: number) => namesOf(isoDate(day).slice(0, 7), lang).long;
  return { start: month(coming.start.day), most: month(coming.most.day), overlaps: coming.overlaps };
}
