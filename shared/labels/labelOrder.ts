// Which labels: the milking, how its jars are filled, the sheet. In an address, so that it can be kept and printed again.
import { dayNumber } from '../calendar/day.ts';
import type { MilkingTime } from '../herd/types.ts';

/** An order of labels. */
export interface LabelOrder {
  /** Date of the milking, ISO. */
  readonly date: string;
  readonly milking: MilkingTime;
  readonly way: 'doe' | 'mix';
  /** ISO date on which the milk was pasteurized; null for raw milk. */
  readonly pasteurized: string | null;
  /** Whether milk for the goat's kids gets labels, too. */
  readonly kids: boolean;
  /** Name of a sheet or of a single label. */
  readonly sheet: string;
  /** The first label that is still on the sheet, from 1. */
  readonly start: number;
  /** Whether the edges of the labels are printed: to try the printer on plain paper, or to cut them out. */
  readonly edges: boolean;
  /** Keys of jars that get no label. */
  readonly without: readonly string[];
}

const MOST_START = 999;

/** Reads the end of an address; what it does not say, or says wrongly, is as in `usual`. `sheets` are the names there are. */
export function readLabelOrder(
  query: URLSearchParams,
  usual: LabelOrder,
  sheets: readonly string[],
): LabelOrder {
  const isDate = (text: string | null): text is string => text !== null && dayNumber(text) !== null;
  const [date, milking, on, sheet] = ['date', 'milking', 'pasteurized', 'sheet'].map((name) => query.get(name)) as [string | null, string | null, string | null, string | null]; // prettier-ignore
  const start = Number(query.get('start') ?? usual.start);
  return {
    date: isDate(date) ? date : usual.date,
    milking: milking === 'am' || milking === 'pm' ? milking : usual.milking,
    way: query.get('way') === 'mix' ? 'mix' : query.has('way') ? 'doe' : usual.way,
    pasteurized: isDate(on) ? on : query.has('pasteurized') ? null : usual.pasteurized,
    kids: query.has('kids') ? query.get('kids') === '1' : usual.kids,
    sheet: sheet !== null && sheets.includes(sheet) ? sheet : usual.sheet,
    start: Number.isInteger(start) && start >= 1 && start <= MOST_START ? start : usual.start,
    edges: query.has('edges') ? query.get('edges') === '1' : usual.edges,
    without: query.getAll('without'),
  };
}

/** The order as the end of an address, which `readLabelOrder` reads back. */
export function labelQuery(order: LabelOrder): string {
  const query = new URLSearchParams({
    date: order.date,
    milking: order.milking,
    way: order.way,
    sheet: order.sheet,
    start: String(order.start),
  });
  if (order.pasteurized !== null) query.set('pasteurized', order.pasteurized);
  if (order.kids) query.set('kids', '1');
  if (order.edges) query.set('edges', '1');
  for (const key of order.without) query.append('without', key);
  return `?${query.toString()}`;
}
