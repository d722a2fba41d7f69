// How close the data sheet is set, so that it keeps to one page.
import { headHeight_mm } from '../../sheet/head.ts';
import {
  liveHeight_mm,
  measuresFor,
  setCloser,
  SETTINGS,
  type BandMeasures,
  type Paper,
  type Setting,
} from '../../sheet/pageMeasures.ts';
import type { SheetTask } from '../../sheet/sheet.ts';
import { taskHeight_mm } from '../../sheet/taskHeights.ts';
import { topGrade } from '../../tasks/standards.ts';
import type { Words } from '../../words/words.ts';
import type { PailBand } from './sheetNumbers.ts';

// Many dots on one place stand closer than the cells of other graphs.
const MOST_STACK_MM = 30;
const SPARE_MM = 14;
// Letters on a line: questions of one line each leave the page to the dots.
const WIDE = 64;
// One page is worth more here than the type of the grade's other sheets.
const CLOSEST: Setting = Object.freeze({ type: 0.8, free: 0, rows: 0.5 });

/** The sizes of a grade in which the tasks fit a page; the closest where none does. */
export function sheetSetting(
  band: PailBand,
  tasks: readonly SheetTask[],
  title: string,
  words: Words,
  paper: Paper,
): BandMeasures {
  const most = Math.max(1, ...tasks.map(({ picture }) => (picture?.is === 'dot-plot' ? picture.most : 1)));
  const sizes = [...SETTINGS, CLOSEST].map((setting) => {
    const m = setCloser(measuresFor(topGrade(band), 'ordinary'), setting);
    return { ...m, longest: Math.max(m.longest, WIDE), cell_mm: Math.min(m.cell_mm, MOST_STACK_MM / most) };
  });
  const fits = (m: BandMeasures) =>
    headHeight_mm({ title, notes: [] }, m) +
      tasks.reduce((sum, task) => sum + taskHeight_mm(task, words, m), 0) <=
    liveHeight_mm(paper) - SPARE_MM;
  return sizes.find(fits) ?? (sizes.at(-1) as BandMeasures);
}
