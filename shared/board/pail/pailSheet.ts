// The data sheet of a class: its guesses as a table, a line to draw the dots on, and questions by grade with their key.
import { exactly, shownOf, whole, type Shown } from '../../quantity/grade.ts';
import { msg, num, qty, list, text, type Message, count } from '../../sheet/message.ts';
import type { DotPlotPicture, TablePicture } from '../../sheet/picture.ts';
import type { SheetTask } from '../../sheet/sheet.ts';
import type { Ask, Work } from '../../tasks/task.ts';
import type { GuessPart } from './guessRow.ts';
import { partUnit } from './guessRow.ts';
import { median } from './median.ts';
import { modes, nearerThan, partsShown, readable, type PailBand } from './sheetNumbers.ts';

/** What a data sheet is made from. Guesses and milk in parts. */
export interface PailSheetRequest {
  readonly band: PailBand;
  readonly part: GuessPart;
  /** At least one. */
  readonly guesses: readonly number[];
  /** Null while the milking is not in the book. */
  readonly truth: number | null;
  readonly name: string;
  /** The numbers that could be guessed: the line has room for all of them. */
  readonly from: number;
  readonly to: number;
}

/** Codes of all standards that a data sheet may support. */
export const PAIL_STANDARDS: readonly string[] = Object.freeze([
  '1.MD.C.4',
  '2.MD.D.9',
  '3.MD.B.4',
  '4.MD.B.4',
  '6.SP.B.4',
  '6.SP.B.5.c',
]);

/** The sheet's tasks. */
export function pailTasks(request: PailSheetRequest): SheetTask[] {
  const truth = request.truth === null ? null : readable(request.truth, request.band);
  return [countsTask(request), plotTask(request, truth), middleTask(request, truth)].map((task, place) => ({
    ...task,
    place,
    earlier: null,
  }));
}

type Made = Omit<SheetTask, 'place' | 'earlier'>;
const KEY = 'barn.pail.sheet';

const made = (
  kind: string,
  standards: readonly string[],
  rest: Pick<Made, 'lead' | 'picture' | 'asks'>,
): Made => ({
  kind: `pail-${kind}`,
  standards,
  ...rest,
  mistake: { what: msg(`${KEY}.mistake.${kind}`), why: msg(`${KEY}.why.${kind}`) },
  fromBook: [],
});

/** A question whose answer is numbers in boxes. */
function boxed(
  key: string,
  values: readonly Shown[],
  answer: Message,
  work: Work,
  steps: readonly Message[] = [],
): Ask {
  return { prompt: msg(`${KEY}.ask.${key}`), work, answer, values, accepted: [], steps };
}

const amount = ({ part, band }: PailSheetRequest, parts: number) =>
  qty(partsShown(parts, part, band), partUnit(part));
const children = (n: number) => msg(`${KEY}.children`, { n: count(n) });

function countsTask(request: PailSheetRequest): Made {
  const { guesses, band, part } = request;
  const unit = partUnit(part);
  const most = modes(guesses);
  const times = guesses.filter((one) => one === most[0]).length;
  const [least, greatest] = [Math.min(...guesses), Math.max(...guesses)];
  const mode = boxed(
    'most',
    most.map((one) => partsShown(one, part, band)),
    msg(`${KEY}.any`, { all: list(most.map((one) => amount(request, one))) }),
    { is: 'boxes', after: [unit] },
    [msg(`${KEY}.step.${most.length > 1 ? 'tie' : 'most'}`, { n: count(times) })],
  );
  const range = boxed(
    'range',
    [partsShown(greatest - least, part, band)],
    msg('sheet.answer', { amount: amount(request, greatest - least) }),
    { is: 'boxes', after: [unit] },
    [msg('sheet.math', { line: difference(request, greatest, least) })],
  );
  const all = boxed('all', [whole(guesses.length)], children(guesses.length), { is: 'boxes', after: [null] });
  return made('counts', band === 'k-2' ? ['1.MD.C.4'] : band === '3-5' ? ['4.MD.B.4'] : ['6.SP.B.5.c'], {
    lead: [msg(`${KEY}.lead`, { name: text(request.name), n: count(guesses.length) })],
    picture: countsTable(request),
    asks: band === 'k-2' ? [mode, all] : [mode, range],
  });
}

/** A line of arithmetic: a number less a smaller one. */
function difference({ part, band }: PailSheetRequest, larger: number, smaller: number) {
  const [a, b, c] = [larger, smaller, larger - smaller].map((one) => partsShown(one, part, band));
  return { is: 'math', line: [a as Shown, '−', b as Shown, '=', c as Shown] } as const;
}

const MOST_COLUMNS = 13;

function countsTable({ guesses, part, band }: PailSheetRequest): TablePicture {
  const [least, greatest] = [Math.min(...guesses), Math.max(...guesses)];
  const every = Array.from({ length: greatest - least + 1 }, (_, index) => least + index);
  // Where guesses lie far apart, numbers that nobody guessed are left out.
  const told = every.length <= MOST_COLUMNS ? every : [...new Set(guesses)].toSorted((a, b) => a - b);
  return {
    is: 'table',
    columns: [
      msg(`${KEY}.column.${partUnit(part)}`),
      ...told.map((one) => msg(`${KEY}.number`, { n: num(partsShown(one, part, band)) })),
    ],
    rows: [
      [
        msg(`${KEY}.column.children`),
        ...told.map((one) => whole(guesses.filter((guess) => guess === one).length)),
      ],
    ],
  };
}

// The longest line that the page holds, and steps that a ruler knows.
const LINE_MM = 146;
const RULER_MM = [20, 10, 5] as const;
// What a number under the line wants: cups are whole, of half liters every other one has a fraction.
const LABEL_MM = Object.freeze({ cup: 8, L: 20 });

/** The empty line, true to the ruler. */
export function pailLine({ guesses, truth, part, band, from, to }: PailSheetRequest): DotPlotPicture {
  const low = Math.min(from, ...guesses, Math.floor(truth ?? from));
  const high = Math.max(to, low + 1, ...guesses, Math.ceil(truth ?? to));
  const step_mm = RULER_MM.find((one) => one * (high - low) <= LINE_MM) ?? LINE_MM / (high - low);
  const counts = guesses.map((one) => guesses.filter((other) => other === one).length);
  return {
    is: 'dot-plot',
    from: partsShown(low, part, band),
    to: partsShown(high, part, band),
    step: partsShown(1, part, band),
    labelEvery: Math.ceil(LABEL_MM[partUnit(part)] / step_mm),
    unit: partUnit(part),
    values: [],
    most: Math.max(...counts),
    step_mm,
  };
}

function plotTask(request: PailSheetRequest, truth: number | null): Made {
  const { guesses, part, band } = request;
  const line = pailLine(request);
  const done = { ...line, values: guesses.map((one) => partsShown(one, part, band)) };
  const draw: Ask = {
    ...boxed('draw', done.values, msg(`${KEY}.dots`, { n: count(guesses.length) }), { is: 'picture' }),
    picture: done,
  };
  const mark: Ask | null =
    truth === null
      ? null
      : {
          ...boxed(
            'mark',
            [partsShown(truth, part, band)],
            msg('sheet.answer', { amount: amount(request, truth) }),
            {
              is: 'picture',
            },
          ),
          prompt: msg(`${KEY}.ask.mark`, { name: text(request.name), amount: amount(request, truth) }),
        };
  const lead = msg(`${KEY}.ruler.${(line.step_mm ?? 0) % 5 === 0 ? 'true' : 'plain'}`, {
    step: qty(line.step, line.unit),
    mm: count(line.step_mm ?? 0),
  });
  return made('plot', [band === 'k-2' ? '2.MD.D.9' : band === '3-5' ? '3.MD.B.4' : '6.SP.B.4'], {
    lead: [lead],
    picture: line,
    asks: mark ? [draw, mark] : [draw],
  });
}

function middleTask(request: PailSheetRequest, truth: number | null): Made {
  const { guesses, part, band } = request;
  const unit = partUnit(part);
  const middle = median(guesses) ?? 0;
  const asks = {
    median: boxed(
      band === '3-5' ? 'middle' : 'median',
      [partsShown(middle, part, band)],
      msg('sheet.answer', { amount: amount(request, middle) }),
      { is: 'boxes', after: [unit] },
      [middleStep(request)],
    ),
    why: { ...boxed('why', [], msg(`${KEY}.free`), { is: 'lines', lines: 2 }), accepted: [] },
    later: boxed('later', [], msg(`${KEY}.later`), { is: 'boxes', after: [unit] }),
  } as const;
  const standards = band === 'k-2' ? ['1.MD.C.4'] : band === '3-5' ? ['4.MD.B.4'] : ['6.SP.B.5.c'];
  const known = truth === null ? [] : offAsks(request, middle, truth);
  const own = band === 'k-2' ? known : [asks.median, ...known];
  return made('middle', standards, {
    lead: [],
    picture: null,
    asks: [...own, ...(truth === null ? [asks.later] : []), ...(band === '6-8' ? [asks.why] : [])],
  });
}

/** Which places the middle has: one of an odd number of guesses, two of an even one. */
function middleStep(request: PailSheetRequest): Message {
  const inOrder = request.guesses.toSorted((a, b) => a - b);
  const half = Math.floor(inOrder.length / 2);
  if (inOrder.length % 2 === 1)
    return msg(`${KEY}.step.odd`, { n: count(inOrder.length), place: count(half + 1) });
  return msg(`${KEY}.step.even`, {
    n: count(inOrder.length),
    a: amount(request, inOrder[half - 1] ?? 0),
    b: amount(request, inOrder[half] ?? 0),
  });
}

function offAsks(request: PailSheetRequest, middle: number, truth: number): Ask[] {
  const { guesses, part, band } = request;
  if (band === 'k-2') {
    const hits = guesses.filter((one) => one === truth).length;
    return [boxed('hits', [whole(hits)], children(hits), { is: 'boxes', after: [null] })];
  }
  // Told from the numbers that stand on the sheet, so that the key's sum is the child's.
  const off = exactly(partsShown(Math.max(middle, truth), part, band)).sub(
    exactly(partsShown(Math.min(middle, truth), part, band)),
  );
  const places = band === '6-8' ? partsShown(Math.abs(middle - truth), part, band).places : undefined;
  const shown = shownOf(off, places);
  const far = boxed(
    'off',
    [shown],
    msg('sheet.answer', { amount: qty(shown, partUnit(part)) }),
    { is: 'boxes', after: [partUnit(part)] },
    [msg('sheet.math', { line: difference(request, Math.max(middle, truth), Math.min(middle, truth)) })],
  );
  if (band === '3-5') return [far];
  const nearer = nearerThan(guesses, middle, truth);
  return [far, boxed('nearer', [whole(nearer)], children(nearer), { is: 'boxes', after: [null] })];
}
