// What the list of sheets says and shows of a week.
import type { WeekView } from '../herd/week.ts';
import { date, msg, type Message } from './message.ts';
import type { Face } from './picture.ts';

/** Faces for the head of a sheet: the does with milk in the week, in the book's order. */
export function faceList(week: WeekView): Face[] {
  return week.does.filter((doe) => (doe.total_mL ?? 0) > 0).map(({ breed, id }) => ({ breed, id }));
}

/** A word on the week where it is not a common one: the does rest, or the book is empty. */
export function sheetNote(week: WeekView): Message | null {
  if (!week.window) return msg('shelf.state-empty');
  if (week.state !== 'resting') return null;
  return msg('shelf.state-resting', {
    from: date(week.window.from),
    to: { is: 'date', iso: week.window.to, style: 'year' },
  });
}
