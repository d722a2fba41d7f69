// The steps of a clean milking in order, and the clock of cooling.
import { askInWords } from './askInWords.ts';
import { whole } from '../quantity/grade.ts';
import { count, msg, sub, type Message, type Slot } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

/** Order of work at the stand: common practice, no source; the clean teats are a rule of milk hygiene. */
const STEPS = ['hands', 'teats', 'pail', 'weigh', 'strain', 'chill'] as const;

/**
 * The US Grade "A" Pasteurized Milk Ordinance, table 1: at 10 °C within four hours of the start of milking and at 7 °C
 * within two hours of its end (the fact `cooling-clock` in content/facts).
 */
export const COOLING = Object.freeze({
  first: { celsius: 10, hours: 4 },
  second: { celsius: 7, hours: 2 },
});

/** A milking: when it began, how long it took. Two hours would put both deadlines on one minute. */
interface Span {
  readonly start_min: number;
  readonly minutes: number;
}

const STARTS = ['05:30', '06:00', '06:15', '06:45', '16:30', '17:00', '17:45'].map(minutesOf);
const LENGTHS = [45, 60, 75, 90, 105, 135, 150];
const SPANS: readonly Span[] = STARTS.flatMap((start_min) =>
  LENGTHS.map((minutes) => ({ start_min, minutes })),
);

function minutesOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
}

function timeOf(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

const clock = (time: string): Slot => ({ is: 'time', time });

/** Steps in an order by chance that is not the right one. */
function mixedSteps(context: TaskContext): { words: Message; place: number }[] {
  const mixed = context.chance.shuffle(
    STEPS.map((step, index) => ({ words: msg(`task.clean-to-cold.${step}`), place: index + 1 })),
  );
  return mixed.every(({ place }, index) => place === index + 1)
    ? [...mixed.slice(1), ...mixed.slice(0, 1)]
    : mixed;
}

function task(context: TaskContext, { start_min, minutes }: Span): Task {
  const steps = mixedSteps(context);
  const end_min = start_min + minutes;
  const warm = timeOf(start_min + COOLING.first.hours * 60);
  const cold = timeOf(end_min + COOLING.second.hours * 60);
  const limits = {
    warm: count(COOLING.first.celsius),
    cold: count(COOLING.second.celsius),
    first: count(COOLING.first.hours),
    second: count(COOLING.second.hours),
  };
  const coldFirst = cold < warm;
  return {
    kind: 'clean-to-cold',
    standards: ['RST.6-8.3'],
    lead: [msg('task.clean-to-cold.lead')],
    picture: { is: 'steps', steps },
    asks: [
      {
        prompt: msg('task.clean-to-cold.ask-order', { most: count(STEPS.length) }),
        work: { is: 'picture' },
        answer: msg(
          'task.clean-to-cold.answer-order',
          Object.fromEntries(
            STEPS.map((step, index) => ['abcdef'.charAt(index), sub(msg(`task.clean-to-cold.${step}`))]),
          ),
        ),
        values: steps.map(({ place }) => whole(place)),
        accepted: [],
        steps: [],
        picture: { is: 'steps', steps },
      },
      {
        prompt: msg('task.clean-to-cold.ask-clock', {
          ...limits,
          start: clock(timeOf(start_min)),
          end: clock(timeOf(end_min)),
        }),
        work: { is: 'boxes', after: [null, null] },
        answer: msg('task.clean-to-cold.answer-clock', { warm: clock(warm), cold: clock(cold) }),
        values: [warm, cold],
        accepted: [],
        steps: [msg(`task.clean-to-cold.step-${coldFirst ? 'second' : 'first'}`, { second: limits.second })],
      },
      askInWords(msg('task.clean-to-cold.ask-why'), msg('task.clean-to-cold.answer-why'), 2, [
        msg('task.clean-to-cold.accept-why'),
      ]),
    ],
    mistake: { what: msg('task.clean-to-cold.mistake'), why: msg('task.clean-to-cold.why') },
    fromBook: [],
  };
}

/** A procedure followed exactly, with its limits of time (RST.6-8.3). */
export const cleanToCold = taskKind<Span>({
  name: 'clean-to-cold',
  bands: ['6-8'],
  standards: ['RST.6-8.3'],
  lack: 'nothing',
  candidates: () => SPANS,
  touches: () => [],
  make: task,
});
