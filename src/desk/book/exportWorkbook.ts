// The milk book as a spreadsheet: the rows with dates and numbers as such, and a sheet of totals. No cell holds a formula.
import Fraction from 'fraction.js';
import writeWorkbook, { type Cell, type Row } from 'write-excel-file/node';
import { noteOf } from '../../../shared/book/csvRow.ts';
import { bookUnit } from '../../../shared/book/month.ts';
import { isoDate } from '../../../shared/calendar/day.ts';
import { nearestDouble } from '../../../shared/herd/nearestDouble.ts';
import { exportedUse } from '../../../shared/book/exportRows.ts';
import { standingRows } from '../../../shared/herd/standing.ts';
import type { Doe, Farm, MilkingRow } from '../../../shared/herd/types.ts';
import { amount_mL } from '../../../shared/quantity/amount.ts';
import { UNIT_ML, type AmountUnit } from '../../../shared/quantity/units.ts';
import { momentWriter } from '../../farm/entered.ts';

const DAY_MS = 86_400_000;
const WIDTHS = [12, 9, 16, 10, 8, 11, 40, 30, 12];

// The type of a cell is always named: a text that begins with an equals sign stays the text that somebody wrote.
const text = (value: string): Cell => (value === '' ? null : { type: String, value });
const number = (value: number): Cell => ({ type: Number, value });
const date = (day: number): Cell => ({ type: Date, value: new Date(day * DAY_MS), format: 'yyyy-mm-dd' });
const heading = (value: string): Cell => ({
  type: String,
  value,
  fontWeight: 'bold',
  backgroundColor: '#E8D9B8',
});

/** The workbook's bytes. Headings are those of the farm's own files, so that it may be read back. */
export async function exportWorkbook(
  rows: readonly MilkingRow[],
  farm: Pick<Farm, 'units' | 'recordUnit' | 'timeZone'>,
  does: readonly Doe[],
): Promise<Uint8Array> {
  const unit = bookUnit(farm);
  const milkings = {
    sheet: 'milkings',
    data: milkingRows(rows, unit, momentWriter(farm.timeZone)),
    columns: WIDTHS.map((width) => ({ width })),
    stickyRowsCount: 1,
  };
  const totals = {
    sheet: 'totals',
    data: totalRows(standingRows(rows).rows, unit, does),
    columns: [14, 16, 22, 22, 10].map((width) => ({ width })),
    stickyRowsCount: 1,
  };
  return new Uint8Array(await writeWorkbook([milkings, totals]).toBuffer());
}

const inUnit = (row: MilkingRow, unit: AmountUnit) =>
  row.amount ? amount_mL(row.amount).div(UNIT_ML[unit]) : new Fraction(0);

function milkingRows(
  rows: readonly MilkingRow[],
  unit: AmountUnit,
  momentText: (moment_ms: number) => string,
): Row[] {
  const names = ['date', 'milking', 'doe', 'amount', 'unit', 'use', 'note', 'entered', `in ${unit}`];
  return [
    names.map(heading),
    ...rows.map((row): Row => {
      const { amount, entered_ms } = row;
      return [
        date(row.day),
        text(row.milking),
        text(row.doe),
        amount && number(nearestDouble(new Fraction(amount.num, amount.den))),
        amount && text(amount.unit),
        exportedUse(row) && text(row.use),
        text(noteOf(row.note)),
        entered_ms === null ? null : text(momentText(entered_ms)),
        amount && number(nearestDouble(inUnit(row, unit))),
      ];
    }),
  ];
}

/** Totals by doe, then by month, each exact until it is written. */
function totalRows(rows: readonly MilkingRow[], unit: AmountUnit, does: readonly Doe[]): Row[] {
  const sumOf = (own: readonly MilkingRow[]) =>
    nearestDouble(own.reduce((sum, row) => sum.add(inUnit(row, unit)), new Fraction(0)));
  const line = (first: string, second: string, own: readonly MilkingRow[]): Row => [
    text(first),
    text(second),
    number(sumOf(own)),
    number(sumOf(own.filter(({ use }) => use === 'kept'))),
    number(own.length),
  ];
  const months = [...Map.groupBy(rows, ({ day }) => isoDate(day).slice(0, 7))];
  const byDoe = Map.groupBy(rows, ({ doe }) => doe);
  return [
    ['doe', 'name', `all milk, ${unit}`, `kept milk, ${unit}`, 'milkings'].map(heading),
    ...does.flatMap(({ id, name }) => (byDoe.has(id) ? [line(id, name, byDoe.get(id) ?? [])] : [])),
    line('all does', '', rows),
    [],
    ['month', '', `all milk, ${unit}`, `kept milk, ${unit}`, 'milkings'].map(heading),
    ...months.map(([month, own]) => line(month, '', own)),
  ];
}
