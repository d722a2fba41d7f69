// The sheet of a class's guesses for those who draw no line plots yet: sorted into less than the milk, just it, and more.
import { partUnit } from '../../../board/pail/guessRow.ts';
import type { PailSheetRequest } from '../../../board/pail/pailSheet.ts';
import { modes, readable } from '../../../board/pail/sheetNumbers.ts';
import { msg, qty } from '../../../sheet/message.ts';
import type { SheetTask } from '../../../sheet/sheet.ts';
import { GRADE_LIMITS } from '../../../tasks/limits.ts';
import type { Grade } from '../../../tasks/grades.ts';
import { groupsTask } from './groupsTask.ts';
import { KEY, type MeasuredMany } from './madeTask.ts';
import { shownBy } from './manyNumbers.ts';

/** The tasks, of kindergarten and grade 1; none where guesses or milk are more than the grade counts to. */
export function guessGroups(
  { guesses, truth, part }: Pick<PailSheetRequest, 'guesses' | 'truth' | 'part'>,
  grade: Grade,
): SheetTask[] {
  const { most = Infinity, noUnits = [] } = GRADE_LIMITS[grade];
  const unit = partUnit(part);
  const steps = guesses.toSorted((a, b) => a - b);
  const many: MeasuredMany = {
    by: 'count',
    measure: 'guess',
    unit,
    grade,
    den: unit === 'cup' ? 1 : 2,
    steps,
  };
  const milk = truth === null ? null : readable(truth, 'k-2');
  // Liters come in grade 3 (3.MD.A.2): younger ones hear of no number of them.
  const isTold = !noUnits.includes(unit);
  const middle = milk ?? modes(steps)[0] ?? 0;
  if (isTold ? middle > most : milk === null) return [];
  const gave =
    isTold && milk !== null ? [msg(`${KEY}.gave`, { amount: qty(shownBy(many)(milk), unit) })] : [];
  const tasks =
    milk === null
      ? groupsTask(many)
      : groupsTask(many, { middle: milk, name: (group) => msg(`${KEY}.guessed.${group}`) });
  return tasks.map((task, place) => ({ ...task, lead: [...task.lead, ...gave], place, earlier: null }));
}
