// The head of a sheet: its title, the notes below it, and how much of the first page they take.
import { BANDS } from '../quantity/grade.ts';
import { bandOfGrade } from '../tasks/standards.ts';
import { say, type Words } from '../words/words.ts';
import { LIVE_WIDTH_MM, mmOfPt, type BandMeasures } from './pageMeasures.ts';
import type { SheetFront } from './plan.ts';
import type { Sheet } from './sheet.ts';
import { linesOf } from './lines.ts';
import { notePt } from './taskHeights.ts';

/** What stands in the head beside name, date and class. */
export interface SheetHead {
  readonly title: string;
  readonly notes: readonly string[];
}

/** Type of a sheet's title, points. */
export const TITLE_PT = 25;
/** Height of the faces and of the jar beside the title, mm. */
export const FACES_MM = 22;
/** Width that they take, with the gap before them, mm. */
const FACES_WIDTH_MM = 58;
/** The line for name, date and class, with the rule over it, mm. */
const NAME_LINE_MM = 14;
const GAP_MM = 2;
/** The farm and its week, two lines of small type at most, mm. */
const WEEK_MM = 11;

/** Title and notes of a sheet's head: the rest, the cup, what a child needs, why it is short. */
export function headOf(
  sheet: Sheet,
  front: Pick<SheetFront, 'title' | 'materials'>,
  words: Words,
): SheetHead {
  const young = BANDS.indexOf(bandOfGrade(sheet.grade)) < 2;
  const notes = [
    ...(front.materials.length > 0 ? [`${say(words, 'sheet.needs')} ${front.materials.join(', ')}`] : []),
    ...(sheet.state === 'resting' ? [say(words, 'sheet.resting')] : []),
    ...(sheet.units === 'metric' && young ? [say(words, 'sheet.cup-250')] : []),
    ...(sheet.lacks.length > 0
      ? [
          [
            say(words, sheet.tasks.length === 0 ? 'sheet.lacks-all' : 'sheet.lacks'),
            ...sheet.lacks.map((lack) => say(words, `sheet.lack.${lack}`)),
          ].join(' '),
        ]
      : []),
  ];
  return { title: front.title, notes };
}

/** Height of the head, mm; a bit more than it takes. */
export function headHeight_mm(head: SheetHead, m: BandMeasures): number {
  const titleLines = linesOf(head.title, (LIVE_WIDTH_MM - FACES_WIDTH_MM) / mmOfPt(TITLE_PT), 'slab');
  const title = titleLines * mmOfPt(TITLE_PT) * 1.05 + WEEK_MM;
  const type = mmOfPt(notePt(m));
  const notes = head.notes.reduce(
    (sum, note) => sum + linesOf(note, (LIVE_WIDTH_MM - 5) / type) * type * 1.35 + GAP_MM,
    0,
  );
  return Math.max(FACES_MM, title) + GAP_MM + NAME_LINE_MM + 1 + notes;
}
