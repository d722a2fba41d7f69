// Tasks from one thing measured by many: counts, a line plot, and what the grade has met of middle and spread.
import { whole, type Shown } from '../../../quantity/grade.ts';
import { count, joined, list, math, msg, num, qty, type Message } from '../../../sheet/message.ts';
import type { DotPlotPicture, TablePicture } from '../../../sheet/picture.ts';
import { GRADE_LIMITS } from '../../../tasks/limits.ts';
import type { Ask } from '../../../tasks/task.ts';
import { centerAsks, rangeAsk } from './centers.ts';
import { stepsShown } from './fineness.ts';
import { asked, KEY, made, type Made, type MeasuredMany } from './madeTask.ts';

// From here on children draw line plots (2.MD.D.9); younger ones sort into groups.
const FIRST_PLOT = 2;
const MOST_COLUMNS = 13;
const MOST_STEPS = 40;
// The longest line that the page holds, and steps that a ruler knows.
const LINE_MM = 146;
const RULER_MM = [20, 10, 5] as const;

/** The tasks; there is at least one number. */
export function manyTasks(many: MeasuredMany): Made[] {
  if (many.grade < FIRST_PLOT) return groupsTask(many);
  const plot = plotTask(many);
  return [countsTask(many), ...(plot ? [plot] : []), ...middleTask(many)];
}

const shownBy =
  ({ den, grade }: MeasuredMany) =>
  (steps: number) =>
    stepsShown(steps, den, grade);
const timesOf = (all: readonly number[], one: number) => all.filter((other) => other === one).length;
/** What was measured, and how often where the grade counts so far. */
function leadOf({ measure, steps, grade }: MeasuredMany): Message {
  if (steps.length > (GRADE_LIMITS[grade].most ?? Infinity)) return msg(`visits.after.measure.${measure}`);
  return msg(`${KEY}.lead.${measure}`, { n: count(steps.length) });
}
const numbers = (n: number): Message => msg(`${KEY}.numbers`, { n: count(n) });

/** Those that came most often, in order; all of them where all came as often. */
function mostOften(steps: readonly number[]): number[] {
  const each = [...new Set(steps)];
  const most = Math.max(...each.map((one) => timesOf(steps, one)));
  return each.filter((one) => timesOf(steps, one) === most).sort((a, b) => a - b);
}

/** Up to three groups, as kindergarten and grade 1 sort (K.MD.B.3, 1.MD.C.4): less than the commonest number, just it, more. */
function groupsTask(many: MeasuredMany): Made[] {
  const { steps, grade, unit } = many;
  const [middle = 0] = mostOften(steps);
  const edge = qty(shownBy(many)(middle), unit);
  const groups = [
    { name: msg(`${KEY}.group.less`, { edge }), n: steps.filter((one) => one < middle).length },
    { name: msg(`${KEY}.group.just`, { edge }), n: timesOf(steps, middle) },
    { name: msg(`${KEY}.group.more`, { edge }), n: steps.filter((one) => one > middle).length },
  ].filter(({ n }) => n > 0);
  const picture: TablePicture = {
    is: 'table',
    columns: [msg(`${KEY}.column.group`), msg(`${KEY}.column.times`)],
    rows: groups.map(({ name, n }) => [name, whole(n)]),
  };
  const inOrder = groups.toSorted((a, b) => b.n - a.n);
  const [first, last] = [inOrder[0]?.n ?? 0, inOrder.at(-1)?.n ?? 0];
  // More than the grade counts to is no sheet for it.
  const { most: countsTo = Infinity } = GRADE_LIMITS[grade];
  if ((grade === 0 ? first : steps.length) > countsTo) return [];
  const largest = inOrder.filter(({ n }) => n === first);
  const most: Ask = {
    prompt: msg(`${KEY}.ask.group`),
    work: { is: 'ring', of: groups.map(({ name }) => ({ is: 'message', message: name })) },
    answer: msg(`${KEY}.any`, { all: list(largest.map(({ name }) => ({ is: 'message', message: name }))) }),
    values: [],
    accepted: [],
    steps: [],
  };
  const all = asked(
    msg(`${KEY}.ask.all`),
    [whole(steps.length)],
    numbers(steps.length),
    { is: 'boxes', after: [null] },
    [
      msg('sheet.math', {
        line: math(
          ...joined(
            groups.map(({ n }) => whole(n)),
            '+',
          ),
          '=',
          whole(steps.length),
        ),
      }),
    ],
  );
  const more = asked(
    msg(`${KEY}.ask.group-more`),
    [whole(first - last)],
    numbers(first - last),
    { is: 'boxes', after: [null] },
    [msg('sheet.math', { line: math(whole(first), '−', whole(last), '=', whole(first - last)) })],
  );
  const asks = grade === 0 ? [most] : groups.length > 1 ? [most, all, more] : [most, all];
  return [
    made('groups', [grade === 0 ? 'K.MD.B.3' : '1.MD.C.4'], 'groups', {
      lead: [leadOf(many)],
      picture,
      asks,
    }),
  ];
}

function countsTask(many: MeasuredMany): Made {
  const { steps, grade, unit } = many;
  const shown = shownBy(many);
  const each = [...new Set(steps)];
  const most = mostOften(steps);
  const mode = asked(
    msg(`${KEY}.ask.most`),
    most.map(shown),
    msg(`${KEY}.any`, { all: list(most.map((one) => qty(shown(one), unit))) }),
    { is: 'boxes', after: [unit] },
    [msg(`${KEY}.step.times`, { n: count(timesOf(steps, most[0] ?? 0)) })],
  );
  const all = asked(msg(`${KEY}.ask.all`), [whole(steps.length)], numbers(steps.length), {
    is: 'boxes',
    after: [null],
  });
  const told = each.length <= MOST_COLUMNS;
  const lead = told
    ? [leadOf(many)]
    : [
        leadOf(many),
        msg(`${KEY}.values`, { values: { is: 'list', of: steps.map((one) => num(shown(one))), bare: true } }),
      ];
  const codes: Readonly<Record<number, string>> = {
    2: '2.MD.D.9',
    3: '3.MD.B.4',
    4: '4.MD.B.4',
    5: '5.MD.B.2',
  };
  return made('counts', [codes[grade] ?? '6.SP.B.5.a'], 'counts', {
    lead,
    picture: told ? countsTable(many, each) : null,
    asks: [mode, all, ...(grade > FIRST_PLOT ? [rangeAsk(steps.map(shown), unit, grade)] : [])],
  });
}

function countsTable(many: MeasuredMany, each: readonly number[]): TablePicture {
  const { steps, unit } = many;
  return {
    is: 'table',
    columns: [
      msg(`${KEY}.column.unit.${unit}`),
      ...each.map((one) => msg(`${KEY}.number`, { n: num(shownBy(many)(one)) })),
    ],
    rows: [[msg(`${KEY}.column.times`), ...each.map((one) => whole(timesOf(steps, one)))]],
  };
}

/** The empty line, true to the ruler where it can be; null where it would be too long. */
export function manyLine(many: MeasuredMany): DotPlotPicture | null {
  const { steps, den, unit } = many;
  const from = Math.floor((steps[0] ?? 0) / den) * den;
  const last = Math.ceil((steps.at(-1) ?? 0) / den) * den;
  const to = last === from ? from + den : last;
  if (to - from > MOST_STEPS) return null;
  const step_mm = RULER_MM.find((one) => one * (to - from) <= LINE_MM) ?? LINE_MM / (to - from);
  const shown = shownBy(many);
  return {
    is: 'dot-plot',
    from: shown(from),
    to: shown(to),
    step: shown(1),
    // Only whole numbers stand below the line, and so far apart that they can be read.
    labelEvery: den * Math.ceil(8 / (step_mm * den)),
    unit,
    values: [],
    most: Math.max(...steps.map((one) => timesOf(steps, one))),
    step_mm,
  };
}

function plotTask(many: MeasuredMany): Made | null {
  const { steps, grade } = many;
  const line = manyLine(many);
  if (line === null) return null;
  const values = steps.map(shownBy(many));
  const draw: Ask = {
    ...asked(msg(`${KEY}.ask.draw`), values, msg(`${KEY}.dots`, { n: count(steps.length) }), {
      is: 'picture',
    }),
    picture: { ...line, values },
  };
  const codes: Readonly<Record<number, string>> = {
    2: '2.MD.D.9',
    3: '3.MD.B.4',
    4: '4.MD.B.4',
    5: '5.MD.B.2',
  };
  return made('plot', [codes[grade] ?? '6.SP.B.4'], 'plot', { lead: [], picture: line, asks: [draw] });
}

/** From grade 5 on the middle; older ones also say what it tells them. */
function middleTask(many: MeasuredMany): Made[] {
  const { steps, grade, unit } = many;
  const shown: Shown[] = steps.map(shownBy(many));
  const asks = centerAsks(shown, unit, grade);
  if (asks.length === 0) return [];
  const free = asked(msg(`${KEY}.ask.why`), [], msg(`${KEY}.free`), {
    is: 'lines',
    lines: 2,
  });
  const codes = grade < 6 ? ['5.MD.B.2'] : grade < 9 ? ['6.SP.B.5.c'] : ['6.SP.B.5.c', 'HSS-ID.A.2'];
  return [
    made('middle', codes, 'middle', { lead: [], picture: null, asks: grade < 6 ? asks : [...asks, free] }),
  ];
}
