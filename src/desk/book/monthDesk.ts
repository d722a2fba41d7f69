// The month of the Milk book as the desk holds it just now.
import type { Hono } from 'hono';
import { monthSpan, monthView } from '../../../shared/book/month.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import { openLedger } from '../../../shared/herd/ledger.ts';
import type { Keeper } from './keeper.ts';

/** Adds `desk/month?month=YYYY-MM` below `base` (it ends in `/`); without a month, the one of the farm's today. */
export function addMonthDesk(app: Hono, base: string, keeper: Keeper): void {
  app.get(`${base}desk/month`, async (c) => {
    await keeper.outsideChange();
    const { farm, book, asOf } = keeper.book();
    const month = c.req.query('month') ?? isoDate(asOf).slice(0, 7);
    if (!monthSpan(month)) return c.text('A month is written as 2026-05.\n', 400);
    return c.json(monthView(book, openLedger(book, asOf), farm, month));
  });
}
