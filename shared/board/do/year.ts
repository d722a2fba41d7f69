// Slide through the year: a guess when the most milk is, then month by month the herd's own milk and why it rises and falls.
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { textsOf, type Told } from './told.ts';

/** What is behind a month's milk. `blank`: nothing is written, and no rest is known; `some`: a first month, no other to compare with. */
export type MonthWhy =
  'blank' | 'rest' | 'most' | 'mostWeaned' | 'born' | 'dry' | 'up' | 'down' | 'same' | 'some';

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
  /** What chooses the word for them: 1 up to one jar, since half a jar is told in the singular. */
  readonly jarsCount: 1 | 2;
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

/** A month above this share of the best one is too near to it: guessing would be a matter of luck. */
export const CLEARLY_LESS = 0.9;

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
  const { why, open, jars, long } = month;
  const milk = why === 'blank' ? 'blank' : jars === 0 ? 'none' : open ? 'open' : 'jars';
  const first = say(words, `barn.do.year.milk.${milk}`, jarSlots(month, long));
  return { right: true, ...withReason(words, month, first) };
}

/** What the board says after the guess. */
export function yearVerdict(words: Words, plan: YearPlan, guess: number): Told {
  const right = guess === plan.best;
  const month = plan.months[plan.best] as YearMonth;
  const first = say(words, `barn.do.year.${right ? 'right' : 'other'}`, jarSlots(month, month.name));
  return { right, ...withReason(words, month, first) };
}

const jarSlots = ({ jarsText, jarsCount }: YearMonth, month: string) => ({
  month,
  jars: jarsText,
  n: jarsCount,
});

function withReason(words: Words, { why, count }: YearMonth, first: string) {
  const uncounted = count === 0 && (why === 'born' || why === 'dry');
  const reason = `barn.do.year.why.${why}${uncounted ? 'Uncounted' : ''}`;
  const more = say(words, `${reason}.more`, { n: count });
  const hasShort = why !== 'blank' && why !== 'some';
  return { text: hasShort ? `${first} ${say(words, `${reason}.short`, { n: count })}` : first, more };
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
    ...(plan.jarEach > 1 ? [say(words, 'barn.do.year.eachJar', { n: plan.jarEach })] : []),
    ...textsOf([
      yearVerdict(words, plan, plan.best),
      yearVerdict(words, plan, other),
      ...places.map((place) => monthTold(words, plan, place)),
      ...(plan.next ? [nextTold(words, plan.next)] : []),
    ]),
  ];
}
