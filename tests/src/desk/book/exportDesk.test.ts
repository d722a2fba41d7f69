// The book taken away: the file read back gives the same figures, and no cell of the spreadsheet is a formula.
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync, strFromU8 } from 'fflate';
import readWorkbook from 'read-excel-file/node';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exportCsv, exportRows } from '../../../../shared/book/exportRows.ts';
import { isoDate } from '../../../../shared/calendar/day.ts';
import { computeFigures } from '../../../../shared/herd/figures.ts';
import type { MilkingRow } from '../../../../shared/herd/types.ts';
import { exportWorkbook } from '../../../../src/desk/book/exportWorkbook.ts';
import { momentWriter } from '../../../../src/farm/entered.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';
import { row } from '../../../support/bookOf.ts';
import { NOT_HERE, openData } from '../../../support/handouts.ts';
import { openBookDesk, type BookDesk } from '../../../support/openBookDesk.ts';

const NOW = Date.parse('2026-05-21T18:00:00Z');
const farmOf = (dir: string, asOf?: string) => {
  const reading = readFarm(dir, { asOf, now_ms: NOW });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults.slice(0, 3)));
  return reading;
};

/** A copy of a farm whose milk book is the exported file alone. */
function withBook(from: string, text: string): string {
  const dir = mkdtempSync(join(tmpdir(), 'exported-'));
  cpSync(from, dir, { recursive: true });
  rmSync(join(dir, 'milkings'), { recursive: true });
  mkdirSync(join(dir, 'milkings'));
  writeFileSync(join(dir, 'milkings', 'export.csv'), text);
  return dir;
}

describe('the exported file', () => {
  const herd = openData('herd-ampm');
  const same = (from: string, asOf?: string) => {
    const before = farmOf(from, asOf);
    const moment = momentWriter(before.farm.timeZone);
    for (const rows of ['standing', 'all'] as const) {
      const text = exportCsv(exportRows(before.book, { from: null, to: null, rows }), isoDate, moment);
      const dir = withBook(from, text);
      const after = farmOf(dir, asOf);
      expect(computeFigures(after.book, after.asOf)).toEqual(computeFigures(before.book, before.asOf));
      if (rows === 'all') expect(after.book.rows).toHaveLength(before.book.rows.length);
      rmSync(dir, { recursive: true });
    }
  };

  it('read back as a milk book gives the same figures', () => same(join('content', 'farm')));
  it.skipIf(herd === null)(`does so for a real herd in kilograms (${NOT_HERE})`, () =>
    same(herd ?? '', '2025-08-20'),
  );

  it('keeps fractions, notes that look like formulas, and struck-out rows where all rows are asked for', () => {
    const rows = [
      { ...row('2026-05-21 am clover 11 1/3 cup @1000'), note: "'=1+1" },
      { ...row('2026-05-21 am clover - @2000'), note: 'slipped, "twice"' },
    ];
    const book = { does: [], kiddings: [], rows };
    const text = (which: 'all' | 'standing') =>
      exportCsv(exportRows(book, { from: null, to: null, rows: which }), isoDate, momentWriter('UTC'));
    expect(text('all').split('\n')).toEqual([
      'date,milking,doe,amount,unit,use,note,entered',
      "2026-05-21,am,clover,11 1/3,cup,kept,'=1+1,1970-01-01T00:00:01.000+00:00",
      '2026-05-21,am,clover,,cup,kept,"slipped, ""twice""",1970-01-01T00:00:02.000+00:00',
      '',
    ]);
    expect(text('standing')).toBe('date,milking,doe,amount,unit,use,note,entered\n');
  });
});

describe('a use that nobody wrote', () => {
  it('stays open where milk is kept, and says withheld where a treatment holds, which does not go along', () => {
    const kept = row('2026-05-21 am clover 11 cup @1000');
    const rows = [
      { ...kept, unsaid: true } as const,
      { ...kept, use: 'withheld', unsaid: true } as const,
      kept,
    ];
    const lines = exportCsv(rows, isoDate, momentWriter('UTC')).split('\n').slice(1, -1);
    expect(lines.map((line) => line.split(',')[5])).toEqual(['', 'withheld', 'kept']);
  });
});

describe('the spreadsheet', () => {
  const does = [{ id: '=A1', name: '+Clover', breed: '', born: null, weight_kg: null }];
  const rows: MilkingRow[] = [
    { ...row('2026-05-21 am x 9 1/2 cup'), doe: '=A1', note: '=HYPERLINK("http://example.org","milk")' },
    { ...row('2026-05-21 pm x 1 qt withheld @1000'), doe: '=A1', note: '@SUM(1)' },
  ];
  const farm = { units: 'us', recordUnit: 'cup', timeZone: 'America/Chicago' } as const;

  it('has dates and numbers as such, text as text, and totals on a second sheet', async () => {
    const bytes = await exportWorkbook(rows, farm, does);
    const [milkings, totals] = await readWorkbook(Buffer.from(bytes));
    expect(milkings?.data[1]).toEqual([
      new Date('2026-05-21T00:00:00Z'),
      ...['am', '=A1', 9.5, 'cup', 'kept', '=HYPERLINK("http://example.org","milk")', null, 9.5],
    ]);
    expect(milkings?.data[2]?.slice(6)).toEqual(['@SUM(1)', '1969-12-31T18:00:01.000-06:00', 4]);
    expect(totals?.data.slice(0, 3)).toEqual([
      ['doe', 'name', 'all milk, cup', 'kept milk, cup', 'milkings'],
      ['=A1', '+Clover', 13.5, 9.5, 2],
      ['all does', null, 13.5, 9.5, 2],
    ]);
  });

  // In SpreadsheetML a formula is an element f inside a cell, and frozen rows are a pane (ECMA-376, 18.3.1; from memory).
  it('holds no formula at all, and a heading that stays', async () => {
    const files = unzipSync(await exportWorkbook(rows, farm, does));
    const sheets = Object.keys(files).filter((name) => /worksheets\/sheet\d+\.xml$/.test(name));
    expect(sheets).toHaveLength(2);
    for (const name of sheets) {
      const xml = strFromU8(files[name] as Uint8Array);
      expect(xml).not.toMatch(/<f[ >/]/);
      expect(xml).toMatch(/<pane [^>]*ySplit="1"[^>]*state="frozen"/);
    }
  });
});

describe('the desk', () => {
  let desk: BookDesk;
  beforeAll(async () => {
    desk = await openBookDesk();
  });
  afterAll(() => desk.close());

  it('hands out a span as CSV and as a spreadsheet', async () => {
    const csv = await fetch(`${desk.url}desk/export.csv?from=2026-05-01&to=2026-05-02`);
    expect(csv.headers.get('content-disposition')).toBe(
      'attachment; filename="milk-book-2026-05-01-to-2026-05-02.csv"',
    );
    const lines = (await csv.text()).trim().split('\n');
    expect(lines[0]?.replace('\ufeff', '')).toBe('date,milking,doe,amount,unit,use,note,entered');
    expect(new Set(lines.slice(1).map((line) => line.slice(0, 10)))).toEqual(
      new Set(['2026-05-01', '2026-05-02']),
    );
    const xlsx = await fetch(`${desk.url}desk/export.xlsx?from=2026-05-01&to=2026-05-02`);
    const [milkings] = await readWorkbook(Buffer.from(await xlsx.arrayBuffer()));
    expect(milkings?.data).toHaveLength(lines.length);
  });

  it('says what is wrong with a question, and tells the month', async () => {
    for (const query of ['from=yesterday', 'rows=some', 'to=2026-02-30'])
      expect((await fetch(`${desk.url}desk/export.csv?${query}`)).status).toBe(400);
    expect((await fetch(`${desk.url}desk/month?month=2026-5`)).status).toBe(400);
    const month = (await (await fetch(`${desk.url}desk/month?month=2026-04`)).json()) as {
      month: string;
      days: [];
    };
    expect([month.month, month.days.length]).toEqual(['2026-04', 30]);
    expect(readdirSync(join(desk.farm, 'milkings'))).toContain('2026-04.csv');
  });
});
