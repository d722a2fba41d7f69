// Tasks from one thing measured by many: counts, a line plot, and what the grade has met of middle and spread.
import { modes } from '../../../board/pail/sheetNumbers.ts';
import { whole, type Shown } from '../../../quantity/grade.ts';
import { count, list, msg, num, qty } from '../../../sheet/message.ts';
import type { DotPlotPicture, TablePicture } from '../../../sheet/picture.ts';
import type { Ask } from '../../../tasks/task.ts';
import { centerAsks, rangeAsk } from './centers.ts';
import { groupsTask } from './groupsTask.ts';
import { asked, KEY, made, type Made, type MeasuredMany } from './madeTask.ts';
import { leadOf, numbers, shownBy, timesOf } from './manyNumbers.ts';

/** From this grade on children draw line plots (2.MD.D.9); younger ones sort into groups. */
export const FIRST_PLOT = 2;
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

function countsTask(many: MeasuredMany): Made {
  const { steps, grade, unit } = many;
  const shown = shownBy(many);
  const each = [...new Set(steps)];
  const most = modes(steps);
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
    made('middle', codes, grade < 6 ? 'even' : 'middle', {
      lead: [],
      picture: null,
      asks: grade < 6 ? asks : [...asks, free],
    }),
  ];
}
