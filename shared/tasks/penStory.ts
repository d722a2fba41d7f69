// Kids come and go: a story to be added or taken away. The numbers are made up, and the story says so: "Think of a pen."
import { whole, type Shown } from '../quantity/grade.ts';
import { math, msg, qty, type Message } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

const STORIES = ['come', 'go', 'how-many-came', 'come-and-go'] as const;
type Story = (typeof STORIES)[number];
const FIRST_GRADE = { come: 0, go: 0, 'how-many-came': 1, 'come-and-go': 2 } as const;
// Within ten in kindergarten, within twenty in grade 1. Grade 2 may go to a hundred, but no small farm has so many kids.
const MOST = [10, 20, 40] as const;
const SUM_CODES = ['K.OA.A.2', '1.OA.A.1', '2.OA.A.1'] as const;

/** Stories of adding to and taking from (K.OA.A.2), the change unknown (1.OA.A.1), in two steps (2.OA.A.1). */
export const penStory = taskKind<Story>({
  name: 'pen-story',
  bands: ['k-2'],
  standards: SUM_CODES,
  lack: 'no-milk',
  candidates: (context) => STORIES.filter((story) => FIRST_GRADE[story] <= context.grade),
  touches: (story) => [`pen ${story}`],
  make: (context, story) => told(context, story),
});

const kids = (n: Shown) => qty(n, 'kid');

interface Told {
  readonly lead: readonly Message[];
  readonly answer: number;
  readonly steps: readonly Message[];
  readonly wrong: number;
}

function tellStory(context: TaskContext, story: Story, most: number): Told {
  const { chance } = context;
  const key = (name: string, n: number) => msg(`task.pen-story.${name}`, { kids: kids(whole(n)) });
  const line = (...of: (string | number)[]) =>
    msg('sheet.math', { line: math(...of.map((one) => (typeof one === 'number' ? whole(one) : one))) });
  const all = chance.int(Math.max(5, Math.floor(most / 2)), most);
  // The two parts differ, so that the usual slip never meets the answer.
  const part = chance.int(2, all - 2);
  const rest = all - part;
  if (story === 'come')
    return { lead: [key('there-are', part), key('come', rest)], answer: all, steps: [line(part, '+', rest, '=', all)], wrong: all - 1 };
  if (story === 'go')
    return { lead: [key('there-are', all), key('go', part)], answer: rest, steps: [line(all, '−', part, '=', rest)], wrong: rest + 1 };
  if (story === 'how-many-came')
    return { lead: [key('there-are', part), key('now', all)], answer: rest, steps: [line(all, '−', part, '=', rest)], wrong: all };
  const gone = chance.int(2, all - 2);
  const left = all - gone;
  return {
    lead: [key('there-are', part), key('come', rest), key('then-go', gone)],
    answer: left,
    steps: [line(part, '+', rest, '=', all), line(all, '−', gone, '=', left)],
    wrong: all,
  };
} // prettier-ignore

function told(context: TaskContext, story: Story): Task {
  const step = Math.min(context.grade, 2) as 0 | 1 | 2;
  const { lead, answer, steps, wrong } = tellStory(context, story, MOST[step]);
  const right = whole(answer);
  const way = story === 'how-many-came' || story === 'come-and-go' ? story : `${story}-one`;
  return {
    kind: 'pen-story',
    standards: [SUM_CODES[step]],
    lead: [msg('task.pen-story.lead'), ...lead],
    picture: null,
    asks: [
      {
        prompt: msg(`task.pen-story.ask-${story === 'how-many-came' ? 'came' : 'now'}`),
        work: { is: 'boxes', after: ['kid'], room: true },
        answer: msg('sheet.answer', { amount: kids(right) }),
        values: [right],
        accepted: [],
        steps,
      },
    ],
    mistake: {
      what: msg('task.pen-story.mistake', { wrong: kids(whole(wrong)) }),
      why: msg(`task.pen-story.why-${way}`),
    },
    fromBook: [],
  };
}
