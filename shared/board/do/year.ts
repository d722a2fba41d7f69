// Slide through the year: a guess when the most milk is, then month by month the herd's own milk and why it rises and falls.
import { dayFromCivil, isoDate } from '../../calendar/day.ts';
import { milkingsOf, phaseSpans } from '../../herd/expected.ts';
import { decimalText, mixedText, wholeParts } from '../../quantity/show.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { jarScale } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import { textsOf, type Told } from './told.ts';

/** What is behind a month's milk. `blank`: milk was expected and nothing is written; `some`: a first month, no other to compare with. */
export type MonthWhy =
  | 'blank' | 'rest' | 'most' | 'mostWeaned' | 'born' | 'dry' | 'up' | 'down' | 'same' | 'some';

/** A month of the herd. */
export interface YearMonth {
  /** `YYYY-MM`. */
  readonly id: string;
  /** Its name, and its name with the year. */
  readonly name: string;
  readonly long: string;
  /** First letter, for the axis. */
  readonly letter: string;
  /** Its milk as a share of the month with the most, 0..1. */
  readonly share: number;
  /** Its milk in the farm's jars, and how that is written. */
  readonly jars: number;
  readonly jarsText: string;
  readonly why: MonthWhy;
  /** Kids born or does dried off, where `why` counts them; 0 where the book does not say. */
  readonly count: number;
  /** The month is not over. */
  readonly open: boolean;
}

/** The season to come, in months. */
export interface YearNext {
  readonly start: string;
  readonly most: string;
  /** The herd is never without milk. */
  readonly overlaps: boolean;
}

/** The herd's months and what comes next. */
export interface YearPlan {
  readonly months: readonly YearMonth[];
  /** Place of the month with the most milk. */
  readonly best: number;
  /** Jars that one drawn jar stands for. */
  readonly jarEach: number;
  readonly next: YearNext | null;
}

const MOST_JARS = 24;
// Months nearer than this to the best one would make the guess a matter of luck.
const CLEARLY_LESS = 0.9;

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
  const counted = input.year.months.map(({ month, total_mL, rows }) => countedMonth(input, month, total_mL, rows));
  const known = counted.filter(isKnown);
  const most_mL = Math.max(0, ...known.map(({ total_mL }) => total_mL));
  if (most_mL === 0 || !known.some(({ total_mL }) => total_mL < CLEARLY_LESS * most_mL)) return null;
  const best = counted.findIndex((month) => isKnown(month) && month.total_mL === most_mL);
  const tallest_mL = Math.max(...counted.map(({ total_mL }) => total_mL));
  const months = counted.map((month, place): YearMonth => {
    const why = place === best ? mostOf(counted, best) : whyOf(month, counted[place - 1]);
    const jars = month.total_mL / input.jar_mL;
    return {
      id: month.id,
      ...namesOf(month.id, input.lang),
      share: month.total_mL / tallest_mL,
      jars,
      jarsText: jars < 10 ? mixedText(wholeParts(jars * 2), 2, input.lang) : decimalText(jars, 0, input.lang),
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

/** Places of the months to guess from, in order of time: the one with the most milk and up to three with clearly less. */
export function yearChoices(plan: YearPlan, seed: number): number[] {
  const best = plan.months[plan.best] as YearMonth;
  const others = plan.months.flatMap(({ share, open, why, name }, place) => {
    const isOther = place !== plan.best && !open && why !== 'blank' && name !== best.name;
    return isOther && share < CLEARLY_LESS * best.share ? [place] : [];
  });
  const picked = chanceOf(`year/${seed}`).shuffle(others).slice(0, 3);
  return [plan.best, ...picked].toSorted((a, b) => a - b);
}

/** What the board says of a month: its milk, and why there is so much of it. */
export function monthTold(words: Words, { months }: YearPlan, place: number): Told {
  const month = months[place] as YearMonth;
  const { why, count, open, jarsText } = month;
  const slots = { month: month.long, jars: jarsText, n: count };
  const milk = why === 'blank' ? 'blank' : month.jars === 0 ? 'none' : open ? 'open' : 'jars';
  const reason = `barn.do.year.why.${why}${count === 0 && (why === 'born' || why === 'dry') ? 'Uncounted' : ''}`;
  // Half a jar is told in the singular.
  const counted = wholeParts(month.jars * 2) <= 2 ? 1 : 2;
  const parts = [say(words, `barn.do.year.milk.${milk}`, { ...slots, n: counted })];
  if (why !== 'blank' && why !== 'some') parts.push(say(words, `${reason}.short`, slots));
  return { right: true, text: parts.join(' '), more: say(words, `${reason}.more`, slots) };
}

/** What the board says after the guess. */
export function yearVerdict(words: Words, plan: YearPlan, guess: number): Told {
  const isRight = guess === plan.best;
  const month = (plan.months[plan.best] as YearMonth).name;
  const found = say(words, `barn.do.year.${isRight ? 'right' : 'other'}`, { month });
  const { text, more } = monthTold(words, plan, plan.best);
  return { right: isRight, text: `${found} ${text}`, more };
}

/** What the board says of the season to come. */
export function nextTold(words: Words, next: YearNext): Told {
  const key = `barn.do.year.next.${next.overlaps ? 'overlaps' : 'starts'}`;
  const slots = { start: next.start, most: next.most };
  return { right: true, text: say(words, `${key}.short`, slots), more: say(words, `${key}.more`, slots) };
}

/** Everything that this page may say. */
export function yearSays(words: Words, plan: YearPlan): string[] {
  const places = plan.months.map((_, place) => place);
  const other = places.find((place) => place !== plan.best) ?? plan.best;
  return [
    say(words, 'barn.do.year.ask'),
    say(words, 'barn.do.year.slide'),
    ...textsOf([
      yearVerdict(words, plan, plan.best),
      yearVerdict(words, plan, other),
      ...places.map((place) => monthTold(words, plan, place)),
      ...(plan.next ? [nextTold(words, plan.next)] : []),
    ]),
  ];
}
