// The milk book to take away: as a CSV file that a farm folder can hold, and as a spreadsheet.
import type { Context, Hono } from 'hono';
import { exportCsv, exportRows, type ExportSpan } from '../../../shared/book/exportRows.ts';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import { momentWriter } from '../../farm/entered.ts';
import { exportWorkbook } from './exportWorkbook.ts';
import type { Keeper } from './keeper.ts';

const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Adds `desk/export.csv` and `desk/export.xlsx` below `base` (it ends in `/`): `?from=…&to=…&rows=standing|all`. */
export function addExportDesk(app: Hono, base: string, keeper: Keeper): void {
  app.get(`${base}desk/export.csv`, async (c) => {
    const asked = await ask(c, keeper);
    if (asked.fault !== null) return c.text(asked.fault, 400);
    const { rows, farm, name } = asked;
    const text = exportCsv(rows, isoDate, momentWriter(farm.timeZone));
    // With this mark spreadsheets read the file as UTF-8.
    return c.body(`\ufeff${text}`, 200, headersOf('text/csv; charset=utf-8', `${name}.csv`));
  });

  app.get(`${base}desk/export.xlsx`, async (c) => {
    const asked = await ask(c, keeper);
    if (asked.fault !== null) return c.text(asked.fault, 400);
    const bytes = await exportWorkbook(asked.rows, asked.farm, asked.book.does);
    return c.body(new Uint8Array(bytes), 200, headersOf(XLSX_TYPE, `${asked.name}.xlsx`));
  });
}

async function ask(c: Context, keeper: Keeper) {
  const span = spanOf(c);
  if (span === null) return { fault: 'from and to are dates as 2026-05-21; rows is standing or all.\n' };
  await keeper.outsideChange();
  const { farm, book } = keeper.book();
  const rows = exportRows(book, span);
  const [first, last] = [rows[0], rows.at(-1)].map((row) => (row ? isoDate(row.day) : 'empty'));
  const name = [
    'milk-book',
    first === last ? first : `${first}-to-${last}`,
    ...(span.rows === 'all' ? ['all-rows'] : []),
  ];
  return { fault: null, rows, farm, book, name: name.join('-') };
}

function spanOf(c: Context): ExportSpan | null {
  const [from, to] = (['from', 'to'] as const).map((name) => {
    const text = c.req.query(name);
    return text === undefined ? null : (dayNumber(text) ?? 'wrong');
  });
  const rows = c.req.query('rows') ?? 'standing';
  if (from === 'wrong' || to === 'wrong' || (rows !== 'standing' && rows !== 'all')) return null;
  return { from: from ?? null, to: to ?? null, rows };
}

const headersOf = (type: string, name: string) => ({
  'Content-Type': type,
  'Content-Disposition': `attachment; filename="${name}"`,
  'Cache-Control': 'no-store',
});
