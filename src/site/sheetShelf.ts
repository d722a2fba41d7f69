// The list of sheets as its page shows it: by band and by when in a visit, each with what a teacher chooses by.
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { miniSheet, type MiniSheet } from '../../shared/drawing/miniSheet.ts';
import { layOut } from '../../shared/sheet/layOut.ts';
import { measuresFor, paperOf } from '../../shared/sheet/pageMeasures.ts';
import { WHENS, type SheetFront, type SheetPlan, type When } from '../../shared/sheet/plan.ts';
import { firstSeed, makeSheet, type Sheet, type Span } from '../../shared/sheet/sheet.ts';
import { fullFrom } from '../../shared/sheet/support.ts';
import { taskHeight_mm } from '../../shared/sheet/taskHeights.ts';
import { GRADES_OF, type Grade } from '../../shared/tasks/standards.ts';
import { sheetEntries, sheetFront, sheetSource } from './sheets.ts';
import { openSite, wordsOf } from './site.ts';

/** A sheet on the list. */
export interface ListedSheet {
  readonly plan: SheetPlan;
  readonly front: SheetFront;
  readonly sheet: Sheet;
  readonly mini: MiniSheet;
  /** The youngest grade that gets all of its own tasks; null where every grade of the band does. */
  readonly fullFrom: Grade | null;
  /** The earlier weeks that some of its tasks take their numbers from, with how many do. */
  readonly earlier: readonly { readonly span: Span; readonly tasks: number }[];
}

/** The sheets of a band, in the order of a visit. */
export interface ListedBand {
  readonly band: Band;
  readonly stages: readonly { readonly when: When; readonly sheets: readonly ListedSheet[] }[];
}

/** All sheets that are written in a language. */
export function sheetShelf(lang: string): readonly ListedBand[] {
  const all = sheetEntries().flatMap((entry): ListedSheet[] => {
    const front = sheetFront(entry, lang);
    return front ? [listed(entry.plan, front, lang)] : [];
  });
  return BANDS.flatMap((band): ListedBand[] => {
    const own = all.filter(({ plan }) => plan.band === band);
    const stages = WHENS.map((when) => ({ when, sheets: own.filter(({ plan }) => plan.when === when) }));
    return own.length > 0 ? [{ band, stages: stages.filter(({ sheets }) => sheets.length > 0) }] : [];
  });
}

function listed(plan: SheetPlan, front: SheetFront, lang: string): ListedSheet {
  const { farm, week } = openSite();
  const { name, band, tasks } = plan;
  const sheet = makeSheet({ ...sheetSource(band), name, band, tasks, seed: firstSeed(week) });
  const from = fullFrom(plan);
  const words = wordsOf(lang);
  const measures = measuresFor(sheet.grade, 'ordinary');
  const [firstPage = []] = layOut(sheet, front, words, paperOf(farm.units));
  const mini = miniSheet(
    firstPage.flatMap((place) => {
      const task = sheet.tasks[place];
      if (!task) return [];
      const height_mm = taskHeight_mm(task, words, measures);
      return [{ height_mm, picture: task.picture?.is ?? null, works: task.asks.map(({ work }) => work.is) }];
    }),
  );
  return {
    plan,
    front,
    sheet,
    mini,
    fullFrom: from === GRADES_OF[band][0] ? null : from,
    earlier: earlierOf(sheet),
  };
}

function earlierOf(sheet: Sheet): ListedSheet['earlier'] {
  const spans = new Map<string, { span: Span; tasks: number }>();
  for (const { earlier } of sheet.tasks)
    if (earlier) spans.set(earlier.to, { span: earlier, tasks: (spans.get(earlier.to)?.tasks ?? 0) + 1 });
  return [...spans.values()];
}
