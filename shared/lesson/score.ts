// How well a choice of steps serves a wish, so that two choices can be held against each other.
import { doingOf, type PoolStep } from './pool.ts';
import { isOn, type Wish } from './wish.ts';

/** A step from one more lesson weighs as much as this many minutes off the usual times. */
export const LESSON_WEIGHT_min = 8;

/**
 * What is compared, the weightiest first; more is better in each:
 * 1. heart: 2 with a step between opening and closing that is on a chosen topic (any, where none was chosen),
 *    1 with any such step, 0 without;
 * 2. frame: 1 for an opening and 1 for a closing;
 * 3. usual minutes on the chosen topics, up to the time there is; of steps that do the same, one lesson's count;
 * 4. minutes that the steps can fill when stretched, up to the time there is;
 * 5. minus the lessons that do once more what another does;
 * 6. minus the bare sheets: those whose lesson has a talk, a look or something to do before them, and none of it is in;
 * 7. minus the strain: minutes by which the sum must be stretched or shortened from the usual times, and
 *    `LESSON_WEIGHT_min` for each lesson beyond the first.
 */
export type Score = readonly [
  heart: number,
  frame: number,
  onTopic_min: number,
  filled_min: number,
  notRepeated: number,
  notBare: number,
  notStrained: number,
];

/** The score of a choice of steps. */
export function scoreOf(steps: readonly PoolStep[], wish: Wish): Score {
  const { minutes, topics } = wish;
  const usual = sumOf(steps, 'minutes');
  const filled = Math.min(minutes, sumOf(steps, 'most'));
  const lessons = new Set(steps.map(({ lesson }) => lesson)).size;
  const strain = Math.abs(filled - usual) + LESSON_WEIGHT_min * Math.max(0, lessons - 1);
  return [
    heartOf(steps, topics),
    frameOf(steps),
    topics.length === 0 ? 0 : Math.min(minutes, onTopic(steps, topics)),
    filled,
    -repeatsOf(steps),
    -bareSheets(steps),
    -strain,
  ];
}

/** Positive where `a` is better than `b`, negative where it is worse, 0 where they are as good. */
export function compareScores(a: Score, b: Score): number {
  const at = a.findIndex((one, index) => one !== b[index]);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}

/** A score that no choice with a step from each of the lessons of these steps can pass. */
export function limitOf(steps: readonly PoolStep[], wish: Wish): Score {
  const [heart, frame, onTopic_min, filled_min] = scoreOf(steps, wish);
  const lessons = new Set(steps.map(({ lesson }) => lesson)).size;
  return [heart, frame, onTopic_min, filled_min, 0, 0, -LESSON_WEIGHT_min * Math.max(0, lessons - 1)];
}

/** The sum of one of the steps' three times, minutes. */
export function sumOf(steps: readonly PoolStep[], which: 'least' | 'minutes' | 'most'): number {
  return steps.reduce((sum, { step }) => sum + step[which], 0);
}

/** Whether a step stands between opening and closing. */
export function isMiddle({ step }: PoolStep): boolean {
  return step.kind !== 'open' && step.kind !== 'close';
}

function heartOf(steps: readonly PoolStep[], topics: readonly string[]): number {
  const middle = steps.filter(isMiddle);
  if (middle.length === 0) return 0;
  return topics.length === 0 || middle.some(({ step }) => isOn(step, topics)) ? 2 : 1;
}

function frameOf(steps: readonly PoolStep[]): number {
  const has = (kind: 'open' | 'close') => Number(steps.some(({ step }) => step.kind === kind));
  return has('open') + has('close');
}

/** Usual minutes on the topics; where several lessons do the same, those of the longest. */
function onTopic(steps: readonly PoolStep[], topics: readonly string[]): number {
  const longest = new Map<string, number>();
  const ofLesson = new Map<string, number>();
  for (const one of steps) {
    if (!isOn(one.step, topics)) continue;
    const doing = doingOf(one);
    const key = `${doing} ${one.lesson.name}`;
    const sum = (ofLesson.get(key) ?? 0) + one.step.minutes;
    ofLesson.set(key, sum);
    longest.set(doing, Math.max(sum, longest.get(doing) ?? 0));
  }
  return [...longest.values()].reduce((sum, one) => sum + one, 0);
}

function repeatsOf(steps: readonly PoolStep[]): number {
  const doings = new Map<string, Set<unknown>>();
  for (const one of steps) {
    const doing = doingOf(one);
    doings.set(doing, (doings.get(doing) ?? new Set()).add(one.lesson));
  }
  return [...doings.values()].reduce((sum, lessons) => sum + lessons.size - 1, 0);
}

/** Sheets that are handed out without anything that leads to them, where their lesson has it. */
export function bareSheets(steps: readonly PoolStep[]): number {
  return steps.filter(({ step, lesson }) => {
    if (step.kind !== 'sheet') return false;
    const before = lesson.steps.slice(
      0,
      lesson.steps.findIndex(({ id }) => id === step.id),
    );
    const leading = before.filter(({ kind }) => kind === 'talk' || kind === 'look' || kind === 'do');
    return leading.length > 0 && !leading.some(({ id }) => steps.some((one) => one.step.id === id));
  }).length;
}
