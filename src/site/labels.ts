// What the page of jar labels works with: the last days of the book, and the labels there are.
import { dayNumber, isoDate } from '../../shared/calendar/day.ts';
import { standingRows } from '../../shared/herd/standing.ts';
import { newestMilking, type LabelBook } from '../../shared/labels/labelBook.ts';
import type { LabelOrder } from '../../shared/labels/labelOrder.ts';
import {
  COMMON_SHEETS,
  COMMON_SINGLES,
  type LabelSheet,
  type SingleLabel,
} from '../../shared/labels/labelSheet.ts';
import { amount_mL } from '../../shared/quantity/amount.ts';
import { paperOf } from '../../shared/sheet/pageMeasures.ts';
import { openSite } from './site.ts';

// As many as the desk hands to a phone.
const DAYS = 21;

/** The standing rows of the last days up to the farm's day. */
export function builtLabelBook(): LabelBook {
  const { book, figures } = openSite();
  const last = dayNumber(figures.asOf) ?? 0;
  const near = book.rows.filter(({ day }) => day <= last && day > last - DAYS);
  return {
    today: figures.asOf,
    does: book.does.map(({ id, name }) => ({ id, name })),
    rows: standingRows(near).rows.flatMap(({ doe, day, milking, amount, use }) =>
      amount ? [{ doe, date: isoDate(day), milking, volume_mL: amount_mL(amount).valueOf(), use }] : [],
    ),
    treatments: (book.treatments ?? []).map(({ doe, from, until, what }) => ({ doe, from, until, what })),
  };
}

/** Sheets and single labels, the farm's own first, then those of its country's paper. */
export function labelChoices(): {
  readonly sheets: readonly LabelSheet[];
  readonly singles: readonly SingleLabel[];
} {
  const { farm } = openSite();
  const usual = paperOf(farm.units);
  const own = farm.labels;
  return {
    sheets: [
      ...(own?.sheet ? [own.sheet] : []),
      ...COMMON_SHEETS.filter(({ paper }) => paper === usual),
      ...COMMON_SHEETS.filter(({ paper }) => paper !== usual),
    ],
    singles: [...(own?.single ? [own.single] : []), ...COMMON_SINGLES],
  };
}

/** What is printed where an address says nothing: the newest milking, raw, doe by doe, on the first sheet there is. */
export function usualOrder(book: LabelBook): LabelOrder {
  const { sheets } = labelChoices();
  return {
    ...newestMilking(book),
    way: 'doe',
    pasteurized: null,
    kids: false,
    sheet: sheets[0]?.id ?? '',
    start: 1,
    edges: false,
    without: [],
  };
}
