// When a milking is over, and how long one took: minutes that pass.
import { whole } from '../quantity/grade.ts';
import { math, msg, qty } from '../sheet/message.ts';
import { minutesOf } from './betweenMilkings.ts';
import { faceParts, milkingTimes, timeOf, timeSlot, type ReadTime } from './clockFaces.ts';
import type { Chance } from '../sheet/chance.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const minutes = (n: number) => qty(whole(n), 'minute');

/** Intervals in minutes (3.MD.A.1). The lengths are made up, and the task says so; the start is the farm's own. */
export const minutesMilking = taskKind<ReadTime>({
  name: 'minutes-milking',
  bands: ['3-5'],
  standards: ['3.MD.A.1'],
  lack: 'no-milk',
  candidates: (context) => milkingTimes(context, 1),
  touches: ({ from }) => [`clock ${from}`],
  make: (context, start) => passing(context, start),
});

/** A second interval, within the hour that begins at `hour` (minutes after midnight) but not from its full hour. */
function tookAsk(chance: Chance, hour: number): Ask {
  const [first, took] = [chance.int(3, 20), chance.int(21, 38)];
  const [from, to] = [timeOf(hour + first), timeOf(hour + first + took)];
  return {
    prompt: msg('task.minutes-milking.ask-took', { start: timeSlot(from), end: timeSlot(to) }),
    work: { is: 'boxes', after: ['minute'] },
    answer: msg('sheet.answer', { amount: minutes(took) }),
    values: [whole(took)],
    accepted: [],
    steps: [
      msg('task.minutes-milking.step-took', {
        start: { is: 'number', ...whole(first) },
        end: { is: 'number', ...whole(first + took) },
        minutes: minutes(took),
      }),
    ],
  };
}

function passing(context: TaskContext, { time, from }: ReadTime): Task {
  const { chance } = context;
  const start = minutesOf(time);
  // Past the full hour, where the minutes start again: that is the step that a child has to see.
  const toHour = 60 - (start % 60);
  const past = chance.pick([5, 8, 10, 12, 15]);
  const length = toHour + past <= 60 ? toHour + past : 45;
  const end = timeOf(start + length);
  const dial = (key: string, at: string, hands: boolean) => ({
    label: msg(`task.minutes-milking.${key}`),
    time: at,
    hands,
  });
  const over = length > toHour;
  return {
    kind: 'minutes-milking',
    standards: ['3.MD.A.1'],
    lead: [
      msg(`task.minutes-milking.lead-${from}`, { time: timeSlot(time) }),
      msg('task.minutes-milking.lead-takes', { minutes: minutes(length) }),
    ],
    picture: { is: 'dials', dials: [dial('start', time, true), dial('end', end, false)] },
    asks: [
      {
        prompt: msg('task.minutes-milking.ask-end'),
        work: { is: 'boxes', after: [null, null], signs: [':'] },
        answer: msg('sheet.answer-name', { name: timeSlot(end) }),
        values: faceParts(end).map(whole),
        accepted: [],
        steps: over
          ? [
              msg('task.minutes-milking.step', {
                hour: timeSlot(timeOf(start + toHour)),
                before: minutes(toHour),
                after: minutes(length - toHour),
              }),
            ]
          : [
              msg('task.minutes-milking.step-within', {
                line: math(whole(start % 60), '+', whole(length), '=', whole((start % 60) + length)),
              }),
            ],
        picture: { is: 'dials', dials: [dial('end', end, false)] },
      },
      tookAsk(chance, start - (start % 60) + 60),
    ],
    mistake: { what: msg('task.minutes-milking.mistake'), why: msg('task.minutes-milking.why') },
    fromBook: [],
  };
} // prettier-ignore
