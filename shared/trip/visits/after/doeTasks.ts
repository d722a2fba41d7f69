// Tasks from a number beside each doe: a bar graph and its reading, from grade 6 on the middle and the spread.
import { exactly, shownOf, valueOf, type Shown } from '../../../quantity/grade.ts';
import { joined, list, math, msg, text, type Slot } from '../../../sheet/message.ts';
import type { Picture, TablePicture } from '../../../sheet/picture.ts';
import type { Ask } from '../../../tasks/task.ts';
import { centerAsks, rangeAsk } from './centers.ts';
import { stepsShown } from './fineness.ts';
import { amountAsk, asked, KEY, made, type DoeRow, type Made, type MeasuredDoes } from './madeTask.ts';

// Squares in a row that the page holds beside faces and names.
const MOST_SQUARES = 10;
const [YOUNGEST, FIRST, LAST_SQUARES, CENTERS] = [0, 1, 2, 6];
const MOST_FIRST = 20;
// Scales of 3.MD.B.3; where numbers are too large for them there is the table alone.
const SCALES = [2, 5, 10] as const;
const MOST_LINES = 12;
// Three addends stay within twenty in grade 1 (1.OA.A.2), sums within a hundred in grade 2 (2.OA.A.1).
const MOST_SUM: Readonly<Record<number, number>> = { 0: 0, 1: 20, 2: 100 };

/** The tasks; there are at least two does. */
export function doeTasks(does: MeasuredDoes): Made[] {
  const { grade, rows, den } = does;
  if (grade <= LAST_SQUARES) return [youngTask(does)];
  if (grade < CENTERS) return [tableTask(does), ...barsTask(does)];
  const shown = rows.map(({ steps }) => stepsShown(steps, den, grade));
  const asks = [...centerAsks(shown, does.unit, grade), rangeAsk(shown, does.unit, grade)];
  return [
    tableTask(does),
    made('centers', grade < 9 ? ['6.SP.B.5.c'] : ['6.SP.B.5.c', 'HSS-ID.A.2'], 'middle', {
      lead: [],
      picture: null,
      asks,
    }),
  ];
}

const nameOf = ({ name }: DoeRow): Slot => text(name);
const shownOfRow = ({ den, grade }: MeasuredDoes, { steps }: DoeRow): Shown => stepsShown(steps, den, grade);

/** The does with the most and the least; two of them may share it. */
function ends({ rows }: MeasuredDoes): { high: readonly DoeRow[]; low: readonly DoeRow[] } {
  const [most, least] = [
    Math.max(...rows.map(({ steps }) => steps)),
    Math.min(...rows.map(({ steps }) => steps)),
  ];
  return {
    high: rows.filter(({ steps }) => steps === most),
    low: rows.filter(({ steps }) => steps === least),
  };
}

function whoAsk(does: MeasuredDoes, which: 'most' | 'least'): Ask {
  const own = which === 'most' ? ends(does).high : ends(does).low;
  return {
    prompt: msg(`${KEY}.ask.who-${which}.${does.measure}`),
    work: { is: 'ring', of: does.rows.map(nameOf) },
    answer: msg(`${KEY}.any`, { all: list(own.map(nameOf)) }),
    values: own.map(({ name }) => name),
    accepted: [],
    steps: [],
  };
}

/** How much more the one with the most has than the one with the least; null where all have as much. */
function moreAsk(does: MeasuredDoes): Ask | null {
  const { high, low } = ends(does);
  const [a, b] = [high[0] as DoeRow, low[0] as DoeRow];
  if (a.steps === b.steps) return null;
  const [first, last] = [shownOfRow(does, a), shownOfRow(does, b)];
  const value = shownOf(exactly(first).sub(exactly(last)), first.places);
  const prompt = msg(`${KEY}.ask.more.${does.measure}`, { high: nameOf(a), low: nameOf(b) });
  return amountAsk(prompt, value, does.unit, [
    msg('sheet.math', { line: math(first, '−', last, '=', value) }),
  ]);
}

function allAsk(does: MeasuredDoes): Ask | null {
  const shown = does.rows.map((one) => shownOfRow(does, one));
  const sum = shownOf(
    shown.map(exactly).reduce((a, b) => a.add(b)),
    shown[0]?.places,
  );
  if (valueOf(sum) > (MOST_SUM[does.grade] ?? 1_000)) return null;
  const line = math(...joined(shown, '+'), '=', sum);
  return amountAsk(msg(`${KEY}.ask.sum`), sum, does.unit, [msg('sheet.math', { line })]);
}

const present = (asks: readonly (Ask | null)[]): Ask[] => asks.filter((one) => one !== null);

/** A graph of squares to color and to read; where the numbers are too large for it, the table. */
function youngTask(does: MeasuredDoes): Made {
  const { rows, grade, measure, unit } = does;
  const most = Math.max(...rows.map(({ steps }) => steps));
  const standards =
    grade === YOUNGEST
      ? [most <= 10 ? 'K.CC.C.7' : 'K.CC.B.5']
      : [rows.length <= 3 ? '1.MD.C.4' : '2.MD.D.10'];
  // Differences of larger numbers come in grade 2 (1.OA.A.1 stays within twenty).
  const read =
    grade === YOUNGEST || (grade === FIRST && most > MOST_FIRST)
      ? [whoAsk(does, 'most'), whoAsk(does, 'least')]
      : present([moreAsk(does), allAsk(does)]);
  const lead = msg(`${KEY}.lead.${measure}`, { n: { is: 'number', num: rows.length, den: 1 } });
  if (most > MOST_SQUARES)
    return made('table', standards, 'graph', { lead: [lead], picture: tableOf(does), asks: read });
  const picture: Picture = {
    is: 'block-graph',
    title: msg(`${KEY}.title.${measure}`),
    most: MOST_SQUARES,
    rows: rows.map(({ id, name, breed, steps }) => ({ label: name, face: { breed, id }, count: steps })),
  };
  const values = rows.map((one) => shownOfRow(does, one));
  const color: Ask = {
    ...asked(msg(`${KEY}.ask.color`), values, msg(`${KEY}.colored`), { is: 'picture' }),
    picture,
  };
  const square = msg(`${KEY}.square`, { one: { is: 'quantity', num: 1, den: 1, unit } });
  return made('graph', standards, 'graph', { lead: [lead, square], picture, asks: [color, ...read] });
}

function tableOf(does: MeasuredDoes): TablePicture {
  return {
    is: 'table',
    columns: [msg(`${KEY}.column.doe`), msg(`${KEY}.column.unit.${does.unit}`)],
    rows: does.rows.map((one) => [msg(`${KEY}.name`, { name: nameOf(one) }), shownOfRow(does, one)]),
  };
}

function tableTask(does: MeasuredDoes): Made {
  const { grade, measure, rows } = does;
  const lead = msg(`${KEY}.lead.${measure}`, { n: { is: 'number', num: rows.length, den: 1 } });
  const shown = rows.map((one) => shownOfRow(does, one));
  const evened = grade < CENTERS ? centerAsks(shown, does.unit, grade) : [];
  const asks = [
    whoAsk(does, 'most'),
    ...present([moreAsk(does)]),
    ...(grade < CENTERS ? present([allAsk(does)]) : []),
    ...evened,
  ];
  const standards =
    grade >= CENTERS ? ['6.SP.B.5.a'] : evened.length > 0 ? ['3.MD.B.3', '5.MD.B.2'] : ['3.MD.B.3'];
  return made('table', standards, 'table', { lead: [lead], picture: tableOf(does), asks });
}

/** An empty scaled graph; the bars stand in the key. */
function barsTask(does: MeasuredDoes): Made[] {
  const { rows, unit, measure } = does;
  const most = Math.max(...rows.map((one) => valueOf(shownOfRow(does, one))));
  const scale = SCALES.find((one) => most <= one * MOST_LINES);
  if (scale === undefined) return [];
  const empty: Extract<Picture, { is: 'bars' }> = {
    is: 'bars',
    title: msg(`${KEY}.title.${measure}`),
    unit,
    scale,
    top: Math.max(1, Math.ceil(most / scale)) * scale,
    bars: rows.map(({ name }) => ({ label: name, value: { num: 0, den: 1 } })),
  };
  const values = rows.map((one) => shownOfRow(does, one));
  const done = { ...empty, bars: rows.map((one) => ({ label: one.name, value: shownOfRow(does, one) })) };
  const draw: Ask = {
    ...asked(msg(`${KEY}.ask.bars`), values, msg(`${KEY}.drawn`), { is: 'picture' }),
    picture: done,
  };
  return [
    made('bars', ['3.MD.B.3'], 'bars', {
      lead: [msg(`${KEY}.scale`, { step: { is: 'quantity', num: scale, den: 1, unit } })],
      picture: empty,
      asks: [draw],
    }),
  ];
}
