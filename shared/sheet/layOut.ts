// Which task stands on which page: as few pages as hold them, each filled about alike.
import type { Words } from '../words/words.ts';
import { headHeight_mm, headOf } from './head.ts';
import {
  liveHeight_mm,
  measuresFor,
  setCloser,
  SETTINGS,
  type BandMeasures,
  type Paper,
  type PrintSize,
} from './pageMeasures.ts';
import type { SheetFront } from './plan.ts';
import type { Sheet } from './sheet.ts';
import { betweenHeight_mm, earlierHeight_mm, taskHeight_mm } from './taskHeights.ts';
import { textsAfter, textsByTask } from './texts.ts';

/** Kept free on every page, so that a line more than was reckoned makes no page more. */
const SPARE_MM = 2;

/** The pages of a sheet: the tasks of each by their place on the sheet, and the sizes that they are set in. */
export interface PageLayout {
  readonly pages: readonly (readonly number[])[];
  readonly m: BandMeasures;
}

/**
 * Lays a sheet out. Where a task is taller than a page in the sizes of its grade, the whole sheet is set a little
 * smaller. A sheet without tasks has one page, for its head.
 */
export function pageLayout(
  sheet: Sheet,
  front: Pick<SheetFront, 'title' | 'materials' | 'texts'>,
  words: Words,
  paper: Paper,
  print: PrintSize = 'ordinary',
): PageLayout {
  const page = liveHeight_mm(paper) - SPARE_MM;
  const ways = SETTINGS.map((setting) => {
    const m = setCloser(measuresFor(sheet.grade, print), setting);
    const heights = taskHeights_mm(sheet, front.texts, words, m);
    const head = headHeight_mm(headOf(sheet, front, words), m) + m.gap_mm;
    const pages = fillPages(heights, page, head);
    const fullest = Math.max(
      ...pages.map((tasks, index) =>
        tasks.reduce((sum, task) => sum + (heights[task] ?? 0), index === 0 ? head : 0),
      ),
    );
    return { pages, m, fits: fullest <= page + 0.2 };
  });
  const fit = ways.find(({ fits }) => fits) ?? ways.at(-1);
  if (!fit) throw new Error('There is no way to set a sheet.');
  return { pages: fit.pages, m: fit.m };
}

/** The tasks of each page, by their place on the sheet. */
export function layOut(
  sheet: Sheet,
  front: Pick<SheetFront, 'title' | 'materials' | 'texts'>,
  words: Words,
  paper: Paper,
  print: PrintSize = 'ordinary',
): PageLayout['pages'] {
  return pageLayout(sheet, front, words, paper, print).pages;
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
