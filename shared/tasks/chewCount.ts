// Count how fast a few goats chew, and ask what a few can say of many.
import { askInWords } from './askInWords.ts';
import { rounded, whole } from '../quantity/grade.ts';
import { count, joined, math, msg, num, row } from '../sheet/message.ts';
import type { Cell } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { meanOf } from './spread.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const GOATS = 4;
/** A count lasts so many seconds; four of them make a minute. */
const SECONDS = 15;
const PER_MINUTE = 60 / SECONDS;

function askHerd(): Ask {
  return askInWords(msg('task.chew-count.ask-herd'), msg('task.chew-count.answer-herd'), 3, [
    msg('task.chew-count.accept-herd'),
  ]);
}

function task(context: TaskContext): Task {
  // Made-up counts near what goats do (about one chew a second, from memory); the sheet says that they are an example.
  const counts = Array.from({ length: GOATS }, () => context.chance.int(11, 19));
  if (new Set(counts).size === 1) counts[0] = (counts[0] as number) + 1;
  const minutes = counts.map((one) => whole(one * PER_MINUTE));
  const mean = rounded(meanOf(minutes), 1);
  const sum = whole(counts.reduce((all, one) => all + one * PER_MINUTE, 0));
  const raw = rounded(meanOf(counts.map(whole)), 1);
  const free: Cell = { free: true };
  // What a sample may say of all is asked from grade 7.
  const ofMany = context.grade >= 7;
  return {
    kind: 'chew-count',
    standards: ofMany ? ['RST.6-8.3', '7.SP.A.1'] : ['RST.6-8.3'],
    lead: [msg('task.chew-count.lead', { seconds: count(SECONDS) }), msg('task.chew-count.example')],
    picture: {
      is: 'table',
      columns: [
        msg('task.chew-count.column'),
        ...counts.map((_, index) => msg('task.chew-count.goat', { number: count(index + 1) })),
      ],
      rows: [
        [msg('task.chew-count.row-example'), ...counts.map(whole)],
        [msg('task.chew-count.row-own'), ...counts.map(() => free)],
      ],
    },
    asks: [
      {
        prompt: msg('task.chew-count.ask-mean'),
        work: { is: 'working', after: [null] },
        answer: msg('task.chew-count.answer-mean', { mean: num(mean) }),
        values: [mean],
        accepted: [],
        steps: [
          msg('task.chew-count.step-minutes', { per: count(PER_MINUTE), minutes: row(minutes.map(num)) }),
          msg('sheet.math', { line: math(...joined(minutes, '+'), '=', sum) }),
          msg('task.chew-count.step-mean', { line: math(sum, '÷', whole(GOATS)), mean: num(mean) }),
        ],
      },
      {
        prompt: msg('task.chew-count.ask-own'),
        work: { is: 'working', after: [null] },
        answer: msg('task.chew-count.answer-own'),
        values: [],
        accepted: [],
        steps: [msg('task.chew-count.step-own', { per: count(PER_MINUTE) })],
      },
      ...(ofMany ? [askHerd()] : []),
    ],
    mistake: {
      what: msg('task.chew-count.mistake', { raw: num(raw) }),
      why: msg('task.chew-count.why', { seconds: count(SECONDS) }),
    },
    fromBook: [],
  };
}

/** Follow a procedure (RST.6-8.3); what a sample may say of all (7.SP.A.1). */
export const chewCount = taskKind<'herd'>({
  name: 'chew-count',
  bands: ['6-8'],
  standards: ['RST.6-8.3', '7.SP.A.1'],
  lack: 'nothing',
  candidates: () => ['herd'],
  touches: () => [],
  make: task,
});
