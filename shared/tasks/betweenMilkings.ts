// How long from one milking to the next: elapsed time on two clocks.
import { whole } from '../quantity/grade.ts';
import { msg, qty, type Message, type Slot } from '../sheet/message.ts';
import { taskKind } from './task.ts';

const DAY_MIN = 24 * 60;

interface Clocks {
  readonly am: string;
  readonly pm: string;
  readonly day_min: number;
}

/** Minutes after midnight of `HH:MM`. */
export function minutesOf(time: string): number {
  const [hours, minutes] = time.split(':').map(Number);
  return (hours ?? 0) * 60 + (minutes ?? 0);
}

const time = (value: string): Slot => ({ is: 'time', time: value });

function lasting(minutes: number): Message {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (rest === 0) return msg('task.between-milkings.hours', { hours: qty(whole(hours), 'hour') });
  return msg('task.between-milkings.both', {
    hours: qty(whole(hours), 'hour'),
    minutes: qty(whole(rest), 'minute'),
  });
}

const parts = (minutes: number) => [whole(Math.floor(minutes / 60)), whole(minutes % 60)];

/** Word problems on intervals of time, hours and minutes (4.MD.A.2). */
export const betweenMilkings = taskKind<Clocks>({
  name: 'between-milkings',
  bands: ['3-5'],
  standards: ['4.MD.A.2'],
  lack: 'no-two-milkings',
  candidates(context) {
    const { milkings } = context;
    if (!milkings || !context.readings.some(({ milking }) => milking === 'pm')) return [];
    const day_min = minutesOf(milkings.pm) - minutesOf(milkings.am);
    const overNoon = minutesOf(milkings.am) < DAY_MIN / 2 && minutesOf(milkings.pm) > DAY_MIN / 2;
    // Milkings twelve hours apart would make both answers the same; six, the usual slip the right answer.
    const told = day_min !== DAY_MIN / 2 && day_min !== DAY_MIN / 4;
    return overNoon && day_min >= 60 && told ? [{ ...milkings, day_min }] : [];
  },
  touches: () => [],
  make(_, { am, pm, day_min }) {
    const night_min = DAY_MIN - day_min;
    const noon_min = DAY_MIN / 2 - minutesOf(am);
    return {
      kind: 'between-milkings',
      standards: ['4.MD.A.2'],
      lead: [msg('task.between-milkings.lead', { am: time(am), pm: time(pm) })],
      picture: {
        is: 'clocks',
        clocks: [
          { label: msg('sheet.label.am'), time: am },
          { label: msg('sheet.label.pm'), time: pm },
        ],
      },
      asks: [
        {
          prompt: msg('task.between-milkings.ask-day'),
          work: { is: 'boxes', after: ['hour', 'minute'] },
          answer: msg('sheet.answer-name', { name: { is: 'message', message: lasting(day_min) } }),
          values: parts(day_min),
          accepted: [msg('task.between-milkings.accept', { minutes: qty(whole(day_min), 'minute') })],
          steps: [
            msg('task.between-milkings.step-noon', {
              am: time(am),
              pm: time(pm),
              before: { is: 'message', message: lasting(noon_min) },
              after: { is: 'message', message: lasting(day_min - noon_min) },
            }),
          ],
        },
        {
          prompt: msg('task.between-milkings.ask-night'),
          work: { is: 'boxes', after: ['hour', 'minute'] },
          answer: msg('sheet.answer-name', { name: { is: 'message', message: lasting(night_min) } }),
          values: parts(night_min),
          accepted: [msg('task.between-milkings.accept', { minutes: qty(whole(night_min), 'minute') })],
          steps: [
            msg('task.between-milkings.step-night', { day: { is: 'message', message: lasting(day_min) } }),
          ],
        },
      ],
      mistake: {
        what: msg('task.between-milkings.mistake', {
          wrong: {
            is: 'message',
            message: lasting(Math.abs((minutesOf(pm) % 720) - (minutesOf(am) % 720)) || 720),
          },
        }),
        why: msg('task.between-milkings.why'),
      },
      fromBook: [],
    };
  },
});
