// Share a day's milk into jars: equal groups with a remainder.
import { shownIn, whole } from '../quantity/grade.ts';
import { count, math, msg, qty, sub, text, type Message } from '../sheet/message.ts';
import type { Reading, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { onDay, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

interface Share {
  readonly who: string | null;
  readonly date: string;
  readonly readings: readonly Reading[];
  readonly cups: number;
  readonly perJar: number;
}

const MOST = 9999;

function shares(context: TaskContext): Share[] {
  const perJar = context.cupsPerJar;
  if (perJar === null) return [];
  const herd = context.herdDays.map((day) => ({ who: null, ...day }));
  const does = context.doeDays.map((day) => ({ who: day.doe.name, ...day }));
  const ready = (
    from: readonly { who: string | null; date: string; readings: readonly Reading[]; total_mL: number }[],
  ) =>
    from
      .map(({ who, date, readings, total_mL }) => ({
        who,
        date,
        readings,
        perJar,
        cups: shownIn(total_mL, context.cups).num,
      }))
      .filter(({ cups }) => cups > perJar && cups <= MOST && cups % perJar !== 0);
  const ofHerd = ready(herd);
  return ofHerd.length > 0 ? ofHerd : ready(does);
}

/** Division with a remainder to be understood (4.OA.A.3). */
export const equalJars = taskKind<Share>({
  name: 'equal-jars',
  bands: ['3-5'],
  standards: ['4.OA.A.3'],
  lack: 'no-more-than-a-jar',
  candidates: shares,
  touches: ({ who, date, readings }) => (who === null ? [`herd|${date}`] : touchesOf(readings)),
  make: shareTask,
});

function shareTask(context: TaskContext, { who, date, readings, cups, perJar }: Share): Task {
  const full = Math.floor(cups / perJar);
  const left = cups - full * perJar;
  return {
    kind: 'equal-jars',
    standards: ['4.OA.A.3'],
    lead: leadOf({ who, date, readings, cups, perJar }),
    picture: { is: 'jars', cupsPerJar: perJar, jars: 1, filled: perJar },
    asks: [
      {
        prompt: msg('task.equal-jars.ask-full'),
        work: { is: 'working', after: ['jar'] },
        answer: msg('sheet.answer', { amount: qty(whole(full), 'jar') }),
        values: [whole(full)],
        accepted: [
          msg('task.equal-jars.accept', { full: qty(whole(full), 'jar'), left: qty(whole(left), 'cup') }),
        ],
        steps: [
          msg('sheet.math', { line: math(whole(full), '×', whole(perJar), '=', whole(full * perJar)) }),
          msg('task.equal-jars.step', {
            next: qty(whole(full + 1), 'jar'),
            need: qty(whole((full + 1) * perJar), 'cup'),
          }),
        ],
      },
      {
        prompt: msg('task.equal-jars.ask-left'),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(whole(left), 'cup') }),
        values: [whole(left)],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups), '−', whole(full * perJar), '=', whole(left)) })],
      },
      {
        prompt: msg('task.equal-jars.ask-all'),
        work: { is: 'boxes', after: ['jar'] },
        answer: msg('sheet.answer', { amount: qty(whole(full + 1), 'jar') }),
        values: [whole(full + 1)],
        accepted: [],
        steps: [msg('task.equal-jars.step-all', { n: count(left) })],
      },
    ],
    mistake: {
      what: msg('task.equal-jars.mistake', { wrong: qty(whole(full), 'jar') }),
      why: msg('task.equal-jars.why', { n: count(left) }),
    },
    fromBook: fromBook(
      who === null ? sub(msg('sheet.herd-on', { on: onDay(date) })) : text(who),
      readings,
      whole(cups),
      context.cups,
    ),
  };
}

function leadOf({ who, date, cups, perJar }: Share): Message[] {
  const amount = qty(whole(cups), 'cup');
  const first =
    who === null
      ? msg('task.equal-jars.lead-herd', { amount, on: onDay(date) })
      : msg('task.equal-jars.lead-doe', { name: text(who), amount, on: onDay(date) });
  return [first, msg('task.equal-jars.jar', { n: count(perJar) })];
}
