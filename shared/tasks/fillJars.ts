// Colour the cups into jars: full jars, and what is left.
import { whole, type Shown } from '../quantity/grade.ts';
import { count, joined, math, msg, qty } from '../sheet/message.ts';
import type { JarsPicture } from '../sheet/picture.ts';
import type { Reading, TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { cupsOf, nameOf, onDay, touchesOf } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

const MOST_CUPS = 20;
const MOST_JARS = 5;

interface Pour {
  readonly readings: readonly Reading[];
  readonly cups: number;
  readonly perJar: number;
}

function pours(context: TaskContext): Pour[] {
  const perJar = context.cupsPerJar;
  if (perJar === null) return [];
  const days = context.doeDays.map(({ readings }) => readings);
  return days
    .map((readings) => ({
      readings,
      cups: readings.reduce((sum, one) => sum + cupsOf(one, context.cups), 0),
      perJar,
    }))
    .filter(
      ({ cups }) => cups > perJar && cups <= MOST_CUPS && cups / perJar <= MOST_JARS && cups % perJar !== 0,
    );
}

/** Two-step joining and taking away (2.OA.A.1), with whole cups to twenty. */
export const fillJars = taskKind<Pour>({
  name: 'fill-jars',
  bands: ['k-2'],
  standards: ['2.OA.A.1'],
  lack: 'no-more-than-a-jar',
  candidates: pours,
  touches: ({ readings }) => touchesOf(readings),
  make: pourTask,
});

function pourTask(context: TaskContext, { readings, cups, perJar }: Pour): Task {
  const { doe, date } = readings[0] as Reading;
  const full = Math.floor(cups / perJar);
  const left = whole(cups - full * perJar);
  // One jar more than is needed, so that the drawing does not give the answer away.
  const jars: JarsPicture = { is: 'jars', cupsPerJar: perJar, jars: full + 2, filled: 0 };
  const parts: Shown[] = [...Array.from({ length: full }, () => whole(perJar)), left];
  return {
    kind: 'fill-jars',
    standards: ['2.OA.A.1'],
    lead: [
      msg('task.fill-jars.lead', { name: nameOf(doe), amount: qty(whole(cups), 'cup'), on: onDay(date) }),
      msg('task.fill-jars.jar', { n: count(perJar) }),
    ],
    picture: jars,
    asks: [
      {
        prompt: msg('task.fill-jars.ask-full'),
        work: { is: 'boxes', after: ['jar'] },
        answer: msg('sheet.answer', { amount: qty(whole(full), 'jar') }),
        values: [whole(full)],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups), '=', ...joined(parts, '+')) })],
        picture: { ...jars, filled: cups },
      },
      {
        prompt: msg('task.fill-jars.ask-left'),
        work: { is: 'boxes', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(left, 'cup') }),
        values: [left],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups), '−', whole(full * perJar), '=', left) })],
      },
    ],
    mistake: {
      what: msg('task.fill-jars.mistake', { wrong: qty(whole(full + 1), 'jar') }),
      why: msg('task.fill-jars.why'),
    },
    // The day is the sum of its milkings as the child would count them, each in whole cups.
    fromBook: fromBook(nameOf(doe), readings, whole(cups), context.cups),
  };
}
