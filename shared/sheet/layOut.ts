// Which task stands on which page: as few pages as hold them, each filled about alike.
import type { Words } from '../words/words.ts';
import { headHeight_mm, headOf } from './head.ts';
import {
  liveHeight_mm,
  measuresFor,
  setCloser,
  SETTINGS,
  type Setting,
  type BandMeasures,
  type Paper,
  type PrintSize,
} from './pageMeasures.ts';
import type { SheetFront } from './plan.ts';
import type { Sheet } from './sheet.ts';
import { asksHeight_mm, betweenHeight_mm, earlierHeight_mm, taskHeight_mm } from './taskHeights.ts';
import { textsAfter, textsByTask } from './texts.ts';

/** Kept free on every page, so that a line more than was reckoned makes no page more. */
const SPARE_MM = 2;
/** A task that fills more of a page than this may go on over it, where nothing else helps. */
const LONG = 0.55;

/** A task on a page, or those of its questions that stand there: from one up to, not with, another. */
export interface Piece {
  readonly task: number;
  readonly from: number;
  readonly to: number;
}

/** The pages of a sheet, and the sizes that they are set in. */
export interface PageLayout {
  readonly pages: readonly (readonly Piece[])[];
  readonly m: BandMeasures;
}

type Front = Pick<SheetFront, 'title' | 'materials' | 'texts'>;

/**
 * Lays a sheet out. Where a task is taller than a page in the sizes of its grade, the whole sheet is set a little
 * smaller; where that is not enough, as in large print, a long task goes on over the page between two of its
 * questions. A sheet without tasks has one page, for its head.
 */
export function pageLayout(
  sheet: Sheet,
  front: Front,
  words: Words,
  paper: Paper,
  print: PrintSize = 'ordinary',
): PageLayout {
  const page = liveHeight_mm(paper) - SPARE_MM;
  const laid = (setting: Setting, parted: boolean): PageLayout & { readonly fits: boolean } => {
    const m = setCloser(measuresFor(sheet.grade, print), setting);
    const head = headHeight_mm(headOf(sheet, front, words), m) + m.gap_mm;
    const whole = taskHeights_mm(sheet, front.texts, words, m);
    const pieces = whole.flatMap((height, task) =>
      parted && height > page * LONG ? questions(sheet, task, height, words, m) : [{ task, from: 0, to: Infinity, height }],
    ); // prettier-ignore
    const heights = pieces.map(({ height }) => height);
    const places = fillPages(heights, page, head);
    const fullest = Math.max(
      ...places.map((on, index) => on.reduce((sum, at) => sum + (heights[at] ?? 0), index === 0 ? head : 0)),
    );
    const pages = places.map((on) => joined(on.flatMap((at) => pieces.slice(at, at + 1))));
    return { pages, m, fits: fullest <= page + 0.2 };
  };
  const whole = SETTINGS.map((setting) => laid(setting, false));
  const { pages, m } = whole.find(({ fits }) => fits) ?? laid(SETTINGS[2] as Setting, true);
  return { pages, m };
}

/** A task as its questions; the first keeps what is told and drawn before it, and all texts about the task. */
function questions(
  sheet: Sheet,
  task: number,
  height: number,
  words: Words,
  m: BandMeasures,
): (Piece & { readonly height: number })[] {
  const asks = sheet.tasks[task]?.asks ?? [];
  const own = asks.map((ask) => asksHeight_mm([ask], words, m));
  const rest = own.slice(1).reduce((sum, one) => sum + one, 0);
  // What goes on begins with a line that says so.
  const again = earlierHeight_mm(m);
  return own.map((one, from) => ({
    task,
    from,
    to: from + 1,
    height: from === 0 ? height - rest : one + again,
  }));
}

/** Questions of one task that follow each other on a page, as one piece. */
function joined(pieces: readonly Piece[]): Piece[] {
  const all: Piece[] = [];
  for (const { task, from, to } of pieces) {
    const last = all.at(-1);
    if (last && last.task === task) all[all.length - 1] = { task, from: last.from, to };
    else all.push({ task, from, to });
  }
  return all;
}

/** The tasks of each page, by their place on the sheet. */
export function layOut(
  sheet: Sheet,
  front: Front,
  words: Words,
  paper: Paper,
  print: PrintSize = 'ordinary',
): number[][] {
  return pageLayout(sheet, front, words, paper, print).pages.map((page) => page.map(({ task }) => task));
}

/** Heights of tasks with the texts about them: a text stays with the task that it leads to, those at the end with the last. */
function taskHeights_mm(sheet: Sheet, texts: SheetFront['texts'], words: Words, m: BandMeasures): number[] {
  const before = textsByTask(sheet, texts);
  const last = sheet.tasks.length - 1;
  const ends = textsAfter(sheet, texts);
  return sheet.tasks.map((task, index) =>
    [...before(index), ...(index === last ? ends : [])].reduce(
      (sum, text) => sum + betweenHeight_mm(text, m),
      taskHeight_mm(task, words, m) + (task.earlier ? earlierHeight_mm(m) : 0),
    ),
  );
}

/**
 * Parts heights, in order, into the fewest pages of a height; of all ways to do so it takes the one
 * whose fullest page is emptiest. The first page also holds `head`. A height larger than a page stands alone.
 */
export function fillPages(heights: readonly number[], page: number, head: number): number[][] {
  if (heights.length === 0) return [[]];
  const fewest = pagesNeeded(heights, page, head);
  // The smallest fill that still takes no more pages, to a tenth of a millimetre.
  let [low, high] = [0, page];
  while (high - low > 0.1) {
    const middle = (low + high) / 2;
    const fits = pagesNeeded(heights, middle, head) <= fewest && heights.every((one) => one <= middle);
    if (fits) high = middle;
    else low = middle;
  }
  return greedy(heights, high, head);
}

function pagesNeeded(heights: readonly number[], page: number, head: number): number {
  return greedy(heights, page, head).length;
}

function greedy(heights: readonly number[], page: number, head: number): number[][] {
  const pages: number[][] = [[]];
  let filled = head;
  heights.forEach((height, index) => {
    const current = pages.at(-1) as number[];
    // The first page takes its first task in any case: a head alone on a page helps nobody.
    if (current.length > 0 && filled + height > page) {
      pages.push([index]);
      filled = height;
      return;
    }
    current.push(index);
    filled += height;
  });
  return pages;
}
