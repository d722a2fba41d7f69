// A claim about one doe's mornings and evenings, to be judged by the record.
import { exactly, rounded, shownIn, valueOf, whole, type Shown } from '../quantity/grade.ts';
import { count, list, math, msg, qty, sub } from '../sheet/message.ts';
import type { DoeWeek } from '../herd/week.ts';
import { doesWithDays, total, type DoeDay, type Reading, type TaskContext } from './context.ts';
import { amountHeading } from './dayTable.ts';
import { readingFromBook } from './fromBook.ts';
import { dayLabel, nameOf, shortDayLabel } from './phrases.ts';
import { taskKind, type Ask, type Task } from './task.ts';

const LEAST_DAYS = 3;

interface Record {
  readonly doe: DoeWeek;
  readonly days: readonly DoeDay[];
  readonly am: readonly Shown[];
  readonly pm: readonly Shown[];
}

function records(context: TaskContext): Record[] {
  return doesWithDays(context, LEAST_DAYS).flatMap(({ doe, days }) => {
    const both = days.filter((one) => one.am && one.pm);
    const read = (one: Reading | null) => shownIn((one as Reading).amount_mL, context.measure);
    const [am, pm] = [both.map((one) => read(one.am)), both.map((one) => read(one.pm))];
    const sound = both.length >= LEAST_DAYS && [...am, ...pm].every(({ num }) => num > 0);
    return sound ? [{ doe, days: both, am, pm }] : [];
  });
}

/** Claims that the record may bear out or not; each is judged from the printed numbers. */
const CLAIMS = ['every-morning', 'tenth-more', 'same'] as const;

/** Words into a table and back, with evidence (RST.9-10.7). */
export const claimCheck = taskKind<Record>({
  name: 'claim-check',
  bands: ['9-12'],
  standards: ['RST.9-10.7'],
  lack: 'no-two-milkings',
  candidates: records,
  touches: ({ doe }) => [doe.id],
  make(context, record) {
    const claim = context.chance.pick(CLAIMS);
    const { days, am, pm } = record;
    return {
      kind: 'claim-check',
      standards: ['RST.9-10.7'],
      lead: [
        msg('task.claim-check.lead', { name: nameOf(record.doe) }),
        msg(`task.claim-check.claim-${claim}`, { name: nameOf(record.doe) }),
      ],
      picture: {
        is: 'table',
        columns: [amountHeading(context), ...days.map(({ date }) => shortDayLabel(date))],
        rows: [
          [msg('sheet.label.am'), ...am],
          [msg('sheet.label.pm'), ...pm],
        ],
      },
      asks: [judge(context, record, claim)],
      mistake: { what: msg('task.claim-check.mistake'), why: msg('task.claim-check.why') },
      fromBook: days.flatMap((day, index) => [
        ...readingFromBook(day.am as Reading, am[index] as Shown, context.measure),
        ...readingFromBook(day.pm as Reading, pm[index] as Shown, context.measure),
      ]),
    } satisfies Task;
  },
});

function judge(context: TaskContext, record: Record, claim: (typeof CLAIMS)[number]): Ask {
  const work = { is: 'lines', lines: 5 } as const;
  const prompt = msg('task.claim-check.ask');
  const accepted = [msg('task.claim-check.accept')];
  if (claim === 'every-morning') return { prompt, work, accepted, ...everyMorning(record) };
  return { prompt, work, accepted, ...ofTheWeek(context, record, claim) };
}

function everyMorning({ days, am, pm }: Record): Pick<Ask, 'answer' | 'values' | 'steps'> {
  const against = days.filter((_, index) => valueOf(am[index] as Shown) <= valueOf(pm[index] as Shown));
  const holds = against.length === 0;
  return {
    answer: holds
      ? msg('task.claim-check.holds-every', { n: count(days.length) })
      : msg('task.claim-check.fails-every', {
          n: count(against.length),
          days: list(against.map(({ date }) => sub(dayLabel(date)))),
        }),
    values: [holds ? 'holds' : 'fails', whole(against.length)],
    steps: [msg('task.claim-check.step-every', { n: count(days.length) })],
  };
}

function ofTheWeek(
  context: TaskContext,
  { am, pm }: Record,
  claim: 'tenth-more' | 'same',
): Pick<Ask, 'answer' | 'values' | 'steps'> {
  const { unit, places = 1 } = context.measure;
  const morning = rounded(total(am.map(exactly)), places);
  const evening = rounded(total(pm.map(exactly)), places);
  const percent = rounded(exactly(morning).sub(exactly(evening)).div(exactly(evening)).mul(100), 1);
  const holds = claim === 'tenth-more' ? valueOf(percent) >= 10 : valueOf(morning) === valueOf(evening);
  return {
    answer: msg(`task.claim-check.${holds ? 'holds' : 'fails'}-${claim}`, {
      am: qty(morning, unit),
      pm: qty(evening, unit),
      percent: qty(percent, 'percent'),
    }),
    values: [holds ? 'holds' : 'fails', morning, evening],
    steps: [
      msg('task.claim-check.step-week', {
        am: qty(morning, unit),
        pm: qty(evening, unit),
        line: math('(', morning, '−', evening, ')', '÷', evening, '×', whole(100)),
        percent: qty(percent, 'percent'),
      }),
    ],
  };
}
