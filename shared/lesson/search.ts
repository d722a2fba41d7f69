// The exact search among the steps of a few lessons: include or leave out each in turn, and turn back early.
import { areAlike, doingOf, wantingMusts, type PoolStep } from './pool.ts';
import { bareSheets, compareScores, isMiddle, LESSON_WEIGHT_min, type Score } from './score.ts';
import { isOn, type Wish } from './wish.ts';

/**
 * The best choice that has a step from each of the lessons, every `must` and fits the time, if one scores higher
 * than `toBeat`; else null. `steps` are all steps of these lessons.
 */
export function searchLessons(
  steps: readonly PoolStep[],
  wish: Wish,
  toBeat: Score,
): readonly PoolStep[] | null {
  const search = new Search(steps, wish, toBeat);
  search.look(0);
  return search.best;
}

/** What a step adds, looked up once. */
interface Trait {
  readonly one: PoolStep;
  readonly least: number;
  readonly usual: number;
  readonly most: number;
  readonly onTopic_min: number;
  readonly doing: number;
  readonly lesson: number;
  readonly isOpen: number;
  readonly isClose: number;
  /** What it makes of the score's heart. */
  readonly heart: number;
}

/** Holds the choice as it grows and shrinks, with sums that are carried along. */
class Search {
  best: readonly PoolStep[] | null = null;
  private score: Score;
  private readonly traits: readonly Trait[];
  /** What the steps from each place on could still add. */
  private readonly ahead: readonly Ahead[];
  private readonly lessons: number;
  private readonly minutes: number;
  private readonly chosen: Trait[] = [];
  private readonly by: Tally[] = [];
  private least = 0;
  private usual = 0;
  private most = 0;
  private onTopic_min = 0;
  private repeats = 0;

  constructor(steps: readonly PoolStep[], wish: Wish, toBeat: Score) {
    // A must that is left out ends its branch at once, so these come first.
    const sorted = [...steps.filter(({ step }) => step.must), ...steps.filter(({ step }) => !step.must)];
    const lessons = [...new Set(steps.map(({ lesson }) => lesson))];
    const doings = [...new Set(sorted.map(doingOf))];
    this.traits = sorted.map((one) => traitOf(one, wish, doings, lessons));
    this.ahead = this.traits.map((_, index) => aheadOf(this.traits.slice(index)));
    this.by = doings.map(() => ({ count: lessons.map(() => 0), onTopic_min: lessons.map(() => 0) }));
    this.lessons = lessons.length;
    this.minutes = wish.minutes;
    this.score = toBeat;
  }

  look(index: number): void {
    if (compareScores(this.reach(this.ahead[index] ?? NOTHING_AHEAD), this.score) <= 0) return;
    const trait = this.traits[index];
    if (trait === undefined) {
      this.take();
      return;
    }
    if (this.least + trait.least <= this.minutes) {
      this.add(trait, 1);
      this.chosen.push(trait);
      this.look(index + 1);
      this.chosen.pop();
      this.add(trait, -1);
    }
    if (!trait.one.step.must || this.hasStandIn(trait, index)) this.look(index + 1);
  }

  /** The choice as it stands may be better than the best; it counts if nothing that must be in is wanting. */
  private take(): void {
    const steps = this.chosen.map(({ one }) => one);
    if (new Set(steps.map(({ lesson }) => lesson)).size < this.lessons) return;
    if (wantingMusts(steps).length > 0) return;
    const own = this.reach(NOTHING_AHEAD, bareSheets(steps));
    if (compareScores(own, this.score) <= 0) return;
    this.best = steps;
    this.score = own;
  }

  /** Whether another lesson's must does the same and is in, or may still come. */
  private hasStandIn({ one }: Trait, index: number): boolean {
    const isOne = (other: Trait) => other.one.step.must && areAlike(one, other.one);
    return this.chosen.some(isOne) || this.traits.slice(index + 1).some(isOne);
  }

  private add(trait: Trait, way: 1 | -1): void {
    this.least += way * trait.least;
    this.usual += way * trait.usual;
    this.most += way * trait.most;
    const tally = this.by[trait.doing];
    if (!tally) return;
    this.repeats -= repeatsIn(tally);
    this.onTopic_min -= Math.max(...tally.onTopic_min);
    tally.count[trait.lesson] = (tally.count[trait.lesson] ?? 0) + way;
    tally.onTopic_min[trait.lesson] = (tally.onTopic_min[trait.lesson] ?? 0) + way * trait.onTopic_min;
    this.repeats += repeatsIn(tally);
    this.onTopic_min += Math.max(...tally.onTopic_min);
  }

  /** The best score that may follow; with nothing ahead and its bare sheets, the score of the choice itself. */
  private reach(ahead: Ahead, bare = 0): Score {
    const { chosen, minutes } = this;
    const heart = chosen.reduce((best, trait) => Math.max(best, trait.heart), ahead.heart);
    const open = chosen.reduce((any, { isOpen }) => any | isOpen, ahead.isOpen);
    const close = chosen.reduce((any, { isClose }) => any | isClose, ahead.isClose);
    const filled = Math.min(minutes, this.most + ahead.most);
    const off = Math.max(this.usual - filled, filled - this.usual - ahead.usual, 0);
    return [
      heart,
      open + close,
      Math.min(minutes, this.onTopic_min + ahead.onTopic_min),
      filled,
      -this.repeats,
      -bare,
      -off - LESSON_WEIGHT_min * (this.lessons - 1),
    ];
  }
}

/** Of one thing to do: for each lesson the steps that do it, and their minutes on the topics. */
interface Tally {
  readonly count: number[];
  readonly onTopic_min: number[];
}

const repeatsIn = ({ count }: Tally) => Math.max(0, count.filter((one) => one > 0).length - 1);

type Ahead = Pick<Trait, 'usual' | 'most' | 'onTopic_min' | 'isOpen' | 'isClose' | 'heart'>;
const NOTHING_AHEAD: Ahead = { usual: 0, most: 0, onTopic_min: 0, isOpen: 0, isClose: 0, heart: 0 };

function aheadOf(traits: readonly Trait[]): Ahead {
  const sum = (which: 'usual' | 'most' | 'onTopic_min') => traits.reduce((all, one) => all + one[which], 0);
  const most = (which: 'isOpen' | 'isClose' | 'heart') => Math.max(0, ...traits.map((one) => one[which]));
  return {
    usual: sum('usual'),
    most: sum('most'),
    onTopic_min: sum('onTopic_min'),
    isOpen: most('isOpen'),
    isClose: most('isClose'),
    heart: most('heart'),
  };
}

function traitOf(
  one: PoolStep,
  { topics }: Wish,
  doings: readonly string[],
  lessons: readonly unknown[],
): Trait {
  const { step, lesson } = one;
  const on = isOn(step, topics);
  return {
    one,
    least: step.least,
    usual: step.minutes,
    most: step.most,
    onTopic_min: on ? step.minutes : 0,
    doing: doings.indexOf(doingOf(one)),
    lesson: lessons.indexOf(lesson),
    isOpen: Number(step.kind === 'open'),
    isClose: Number(step.kind === 'close'),
    heart: !isMiddle(one) ? 0 : topics.length === 0 || on ? 2 : 1,
  };
}
