// A lesson on the bench as the query of an address, so that a link shares it; and such a query read back.
import { gradeOf, gradeSign, topGrade, type Grade } from '../tasks/standards.ts';
import { clockText, readClock } from './clock.ts';
import { withMusts } from './edits.ts';
import { poolFor, type PlannedStep } from './pool.ts';
import { TOPICS } from './topics.ts';
import { PLACES, type Lesson } from './types.ts';
import { LEAST_MIN, MOST_CHILDREN, MOST_MIN, USUAL, type Wish } from './wish.ts';

/** What the bench keeps: the wish, when the lesson begins, and the steps once a teacher has changed them. */
export interface Plan {
  readonly wish: Wish;
  /** Minutes after midnight; null where nobody has said. */
  readonly start: number | null;
  /** Null while the steps are those that `composeLesson` gives. */
  readonly steps: readonly PlannedStep[] | null;
}

/** A part of an address that could not be used. */
export interface Aside {
  /**
   * `unknown`: the query has a name that is none of ours. `value`: a value that cannot be. `step`: a step that no
   * lesson of the grade has. `minutes`: a step's time, set to one that it can have. `must`: a step that other steps
   * ask for was wanting and is put in.
   */
  readonly what: 'unknown' | 'value' | 'step' | 'minutes' | 'must';
  /** What was found. */
  readonly found: string;
}

const NAMES = ['lesson', 'grade', 'min', 'place', 'topics', 'children', 'start', 'steps'];

/**
 * The query of a plan, with its question mark. What is usual is left out; `steps` stand as `lesson.step.minutes`,
 * parted by `~`. It needs no escapes.
 */
export function writePlan({ wish, start, steps }: Plan): string {
  const parts = [`grade=${gradeSign(wish.grade)}`, `min=${wish.minutes}`];
  if (wish.place !== USUAL.place) parts.push(`place=${wish.place}`);
  if (wish.topics.length > 0) parts.push(`topics=${wish.topics.join('.')}`);
  if (wish.children !== USUAL.children) parts.push(`children=${wish.children}`);
  if (start !== null) parts.push(`start=${clockText(start)}`);
  if (steps) parts.push(`steps=${steps.map(({ step, minutes }) => `${step.id}.${minutes}`).join('~')}`);
  return `?${parts.join('&')}`;
}

/**
 * Reads a query against the lessons that there are. `lesson=NAME` lays out that lesson as it is written. What cannot
 * be used is left aside and named; the rest holds.
 */
export function readPlan(
  query: string,
  lessons: readonly Lesson[],
  usualGrade: Grade,
): { plan: Plan; aside: readonly Aside[] } {
  const aside: Aside[] = [];
  const asked = new URLSearchParams(query);
  for (const name of new Set(asked.keys()))
    if (!NAMES.includes(name)) aside.push({ what: 'unknown', found: name });
  const read = <T>(name: string, usual: T, reading: (text: string) => T | null): T => {
    const text = asked.get(name);
    if (text === null || text === '') return usual;
    const value = reading(text);
    if (value === null) aside.push({ what: 'value', found: `${name}=${text}` });
    return value ?? usual;
  };
  const number = (least: number, most: number) => (text: string) => {
    const value = /^\d{1,4}$/.test(text) ? Number(text) : -1;
    return value >= least && value <= most ? value : null;
  };
  const lesson = read<Lesson | null>(
    'lesson',
    null,
    (name) => lessons.find((one) => one.name === name) ?? null,
  );
  const wish: Wish = {
    grade: read('grade', lesson ? topGrade(lesson.band) : usualGrade, gradeOf),
    minutes: read('min', lesson ? lesson.minutes : USUAL.minutes, number(LEAST_MIN, MOST_MIN)),
    place: read(
      'place',
      lesson ? lesson.place : USUAL.place,
      (text) => PLACES.find((one) => one === text) ?? null,
    ),
    topics: read('topics', USUAL.topics, (text) => topicsIn(text, aside)),
    children: read('children', USUAL.children, number(1, MOST_CHILDREN)),
  };
  const start = read<number | null>('start', null, readClock);
  const named = lesson?.steps.map(({ id, minutes }) => `${id}.${minutes}`).join('~') ?? null;
  const steps = asked.get('steps') ?? named;
  return {
    plan: { wish, start, steps: steps === null ? null : stepsIn(steps, lessons, wish, aside) },
    aside,
  };
}

/** The topics of a list, in our order; what is none is left aside. */
function topicsIn(text: string, aside: Aside[]): readonly string[] {
  const named = text.split('.');
  for (const one of named) if (!TOPICS.includes(one)) aside.push({ what: 'value', found: `topics=${one}` });
  return TOPICS.filter((one) => named.includes(one));
}

function stepsIn(text: string, lessons: readonly Lesson[], wish: Wish, aside: Aside[]): PlannedStep[] | null {
  const pool = poolFor(lessons, wish.grade);
  const steps: PlannedStep[] = [];
  for (const part of text.split('~').filter((one) => one !== '')) {
    const [, id = '', number = ''] = /^(.*?)(?:\.(\d{1,3}))?$/.exec(part) ?? [];
    const one = pool.find(({ step }) => step.id === id);
    if (!one || steps.some(({ step }) => step.id === id)) {
      aside.push({ what: 'step', found: part });
      continue;
    }
    const { least, most } = one.step;
    const wanted = number === '' ? one.step.minutes : Number(number);
    const minutes = Math.min(most, Math.max(least, wanted));
    if (minutes !== wanted || number === '') aside.push({ what: 'minutes', found: part });
    steps.push({ ...one, minutes });
  }
  const whole = withMusts(steps);
  for (const one of whole.filter(({ step }) => !steps.some((other) => other.step.id === step.id)))
    aside.push({ what: 'must', found: one.step.title });
  return whole;
}
