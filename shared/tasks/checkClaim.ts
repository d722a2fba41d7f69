// A sign in the barn: is it true? Add and compare whole cups.
import { shownIn, whole } from '../quantity/grade.ts';
import { math, msg, qty, sub } from '../sheet/message.ts';
import { distinctBy, leastUsed, use, type DoeDay, type TaskContext } from './context.ts';
import { fromBook } from './fromBook.ts';
import { nameOf, onDay } from './phrases.ts';
import { taskKind, type Task } from './task.ts';

const LEAST_CUPS = 2;

const cupsOf = (context: TaskContext, day: DoeDay): number => shownIn(day.total_mL, context.cups).num;

/** Does with a whole day on the same date, by name, three or more. */
function sameDay(context: TaskContext): DoeDay[][] {
  const days = distinctBy(context.doeDays, ({ date }) => date).map(({ date }) => date);
  return days
    .map((date) =>
      distinctBy(
        context.doeDays.filter((one) => one.date === date && cupsOf(context, one) >= LEAST_CUPS),
        ({ doe }) => doe.name,
      ),
    )
    .filter((group) => group.length >= 3);
}

/** Sums within a thousand, to test a claim (3.NBT.A.2). */
export const checkClaim = taskKind<DoeDay[]>({
  name: 'check-claim',
  bands: ['3-5'],
  standards: ['3.NBT.A.2'],
  lack: 'no-three-does',
  candidates: sameDay,
  touches: ([first]) => (first ? [first.date] : []),
  make(context, group) {
    const three = leastUsed(context, group, 3, ({ doe }) => doe.id);
    use(context, three.map(({ doe }) => doe.id));
    return claimed(context, three);
  },
}); // prettier-ignore

function claimed(context: TaskContext, three: readonly DoeDay[]): Task {
  const cups = (one: DoeDay) => cupsOf(context, one);
  const [best, ...others] = [...three].sort((a, b) => cups(b) - cups(a)) as [DoeDay, DoeDay, DoeDay];
  const [a, b] = context.chance.shuffle(others) as [DoeDay, DoeDay];
  const sum = cups(a) + cups(b);
  // Two claims that a total decides; which of them the sign makes is chance.
  const than = context.chance.pick(['more', 'less'] as const);
  const holds = than === 'more' ? cups(best) > sum : cups(best) < sum;
  const verdict = holds ? 'true' : 'not-true';
  const sign = cups(best) > sum ? '>' : cups(best) < sum ? '<' : '=';
  return {
    kind: 'check-claim',
    standards: ['3.NBT.A.2'],
    lead: [
      msg('task.check-claim.lead', { on: onDay(three[0]?.date as string) }),
      msg(`task.check-claim.claim-${than}`, { name: nameOf(best.doe), a: nameOf(a.doe), b: nameOf(b.doe) }),
    ],
    picture: {
      is: 'table',
      columns: [msg('sheet.column.doe'), msg('sheet.column.cup')],
      rows: three.map((one) => [msg('sheet.label.name', { name: nameOf(one.doe) }), whole(cups(one))]),
    },
    asks: [
      {
        prompt: msg('task.check-claim.ask-sum', { a: nameOf(a.doe), b: nameOf(b.doe) }),
        work: { is: 'working', after: ['cup'] },
        answer: msg('sheet.answer', { amount: qty(whole(sum), 'cup') }),
        values: [whole(sum)],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups(a)), '+', whole(cups(b)), '=', whole(sum)) })],
      },
      {
        prompt: msg('task.check-claim.ask-true'),
        work: { is: 'ring', of: ['true', 'not-true'].map((key) => sub(msg(`task.check-claim.${key}`))) },
        answer: msg(`task.check-claim.${verdict}`),
        values: [verdict],
        accepted: [],
        steps: [msg('sheet.math', { line: math(whole(cups(best)), sign, whole(sum)) })],
      },
    ],
    mistake: { what: msg('task.check-claim.mistake'), why: msg('task.check-claim.why') },
    fromBook: three.flatMap((one) =>
      fromBook(
        sub(msg('sheet.doe-on', { name: nameOf(one.doe), on: onDay(one.date) })),
        one.readings,
        whole(cups(one)),
        context.cups,
      ),
    ),
  };
}
