// Which earlier week carries a task that this week cannot: the last one that does, for each kind and grade.
import { findLastDay, WINDOW_DAYS, type LastDay } from '../herd/lastDay.ts';
import { isWhole, type Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { weekView, type WeekView } from '../herd/week.ts';
import type { Band } from '../quantity/grade.ts';
import { carryKey, taskContext, type EarlierWeeks, type SheetSource } from '../tasks/context.ts';
import { kindsOf } from '../tasks/kinds.ts';
import { GRADES_OF, type Grade } from '../tasks/standards.ts';
import { ABOVE_GRADE, type TaskKind } from '../tasks/task.ts';

/** How far back a week is looked for: two years, so that a season without milk is passed over. */
const MOST_WEEKS = 104;

interface Wanted {
  readonly kind: TaskKind;
  readonly grade: Grade;
}

/**
 * For every kind of a band and every grade in it that the week of `source` cannot carry, the last earlier week
 * (in steps of seven days, up to two years back) that can. Kinds that no week carries are left out.
 */
export function earlierWeeks(book: Book, ledger: Ledger, source: SheetSource, band: Band): EarlierWeeks {
  let open: Wanted[] = GRADES_OF[band].flatMap((grade) => {
    const context = taskContext(source, band, '', grade);
    return kindsOf(band).flatMap((kind) => (isLacking(kind.fits(context)) ? [{ kind, grade }] : []));
  });
  const weeks: WeekView[] = [];
  const carry: Record<string, number> = {};
  const newest = findLastDay(ledger).day;
  for (let back = 1; newest !== null && back <= MOST_WEEKS && open.length > 0; back += 1) {
    const last = weekEnding(ledger, newest - back * WINDOW_DAYS);
    if (!last) continue;
    const week = weekView(book, ledger, last);
    const carried = open.filter(
      ({ kind, grade }) => kind.fits(taskContext({ ...source, week }, band, '', grade)) === true,
    );
    if (carried.length === 0) continue;
    for (const { kind, grade } of carried) carry[carryKey(kind.name, grade)] = weeks.length;
    weeks.push(week);
    open = open.filter((one) => !carried.includes(one));
  }
  return { weeks, carry };
}

const isLacking = (fit: true | string): boolean => fit !== true && fit !== ABOVE_GRADE;

/** The week that ends on a day, or null where nothing was entered in it. */
function weekEnding(ledger: Ledger, day: number): LastDay | null {
  const days = Array.from({ length: WINDOW_DAYS }, (_, index) => ledger.herdDays.get(day - index));
  if (days.every((sum) => (sum?.rows ?? 0) === 0)) return null;
  return {
    state: 'milking',
    day,
    wholeDay: isWhole(ledger.herdDays.get(day)),
    window: { from: day - WINDOW_DAYS + 1, to: day },
  };
}
