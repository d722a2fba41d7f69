// Read a clock, and draw the hands of another a while later.
import { whole } from '../quantity/grade.ts';
import { count, msg, qty, sub, type Message, type Slot } from '../sheet/message.ts';
import type { DialsPicture } from '../sheet/drawnPicture.ts';
import { minutesOf } from './betweenMilkings.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

const HALF_DAY_MIN = 720;

/** A time to be read, and where it comes from: a milking, or no more than a clock. */
export interface ReadTime {
  readonly time: string;
  readonly from: 'am' | 'pm' | 'clock';
}

/** `HH:MM` of minutes after midnight. */
export function timeOf(minutes: number): string {
  const day = ((minutes % 1440) + 1440) % 1440;
  return `${String(Math.floor(day / 60)).padStart(2, '0')}:${String(day % 60).padStart(2, '0')}`;
}

/** Hour and minute as a clock with twelve hours shows them. */
export function faceParts(time: string): readonly [hour: number, minute: number] {
  const minutes = minutesOf(time) % HALF_DAY_MIN;
  return [Math.floor(minutes / 60) || 12, minutes % 60];
}

/** The farm's milking times that fall on a step of the clock; where none does, a time of no one's. */
export function milkingTimes(context: TaskContext, step_min: number): ReadTime[] {
  const { am, pm } = context.milkings ?? {};
  const told = [
    ...(am === undefined ? [] : [{ time: am, from: 'am' as const }]),
    ...(pm === undefined ? [] : [{ time: pm, from: 'pm' as const }]),
  ].filter(({ time }) => minutesOf(time) % step_min === 0);
  return told.length > 0 ? told : [{ time: '09:30', from: 'clock' }];
}

/** The answer's time as one phrase. */
export const timeSlot = (time: string): Slot => ({ is: 'time', time });
const digits = (time: string) => faceParts(time).map(whole);

/** Hours and half hours in grade 1 (1.MD.B.3), steps of five minutes from grade 2 (2.MD.C.7). */
export const clockFaces = taskKind<ReadTime>({
  name: 'clock-faces',
  bands: ['k-2'],
  standards: ['1.MD.B.3', '2.MD.C.7'],
  lack: 'no-milk',
  candidates: (context) => milkingTimes(context, context.grade >= 2 ? 5 : 30),
  touches: ({ from }) => [`clock ${from}`],
  make: (context, read) => clocks(context, read),
});

function later(context: TaskContext): { minutes: number; ask: Message } {
  const pick =
    context.grade >= 2 ? context.chance.pick([5, 10, 15, 20, 25, 30, 60]) : context.chance.pick([30, 60]);
  if (pick === 60) return { minutes: pick, ask: msg('task.clock-faces.ask-hour') };
  if (pick === 30) return { minutes: pick, ask: msg('task.clock-faces.ask-half') };
  return { minutes: pick, ask: msg('task.clock-faces.ask-draw', { n: count(pick) }) };
}

function clocks(context: TaskContext, { time, from }: ReadTime): Task {
  const { minutes, ask } = later(context);
  const end = timeOf(minutesOf(time) + minutes);
  const picture: DialsPicture = {
    is: 'dials',
    dials: [
      { label: msg('task.clock-faces.now'), time, hands: true },
      { label: msg('task.clock-faces.later'), time: end, hands: false },
    ],
  };
  const [hour, minute] = faceParts(time);
  const whole5 = minute % 30 === 0 && minutes % 30 === 0;
  return {
    kind: 'clock-faces',
    standards: [whole5 ? '1.MD.B.3' : '2.MD.C.7'],
    lead: [msg(`task.clock-faces.lead-${from}`)],
    picture,
    asks: [
      {
        prompt: msg('task.clock-faces.ask-read'),
        work: { is: 'boxes', after: [null, null], signs: [':'] },
        answer: msg('task.clock-faces.answer', { time: timeSlot(time) }),
        values: digits(time),
        accepted: [],
        steps: [
          msg(minute === 0 ? 'task.clock-faces.step-hour' : 'task.clock-faces.step', {
            hour: count(hour),
            minutes: qty(whole(minute), 'minute'),
          }),
        ],
      },
      {
        prompt: ask,
        work: { is: 'picture' },
        answer: msg('task.clock-faces.answer-draw', { time: timeSlot(end) }),
        values: digits(end),
        accepted: [],
        steps: [],
        picture: { is: 'dials', dials: picture.dials.slice(1) },
      },
    ],
    mistake: {
      what: msg('task.clock-faces.mistake', { label: sub(msg('task.clock-faces.long')) }),
      why: msg('task.clock-faces.why'),
    },
    fromBook: [],
  };
}
