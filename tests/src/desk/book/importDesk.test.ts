// Import through the desk: nothing is written before it is confirmed, nothing twice, nothing over what is newer.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import writeWorkbook from 'write-excel-file/node';
import { zipSync } from 'fflate';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  NO_CHOICES,
  type ImportAnswer,
  type ImportChoices,
  type ImportPreview,
  type ImportWritten,
} from '../../../../shared/book/importTypes.ts';
import { openBookDesk, type BookDesk } from '../../../support/openBookDesk.ts';

let desk: BookDesk;
beforeAll(async () => void (desk = await openBookDesk()));
afterAll(() => desk.close());
const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const books = () =>
  Object.fromEntries(
    readdirSync(join(desk.farm, 'milkings')).map((name) => [
      name,
      readFileSync(join(desk.farm, 'milkings', name), 'utf8'),
    ]),
  );
async function send(body: string | Uint8Array, type = 'text/csv'): Promise<ImportAnswer> {
  const answer = await fetch(`${desk.url}desk/import/file?name=sheet`, {
    method: 'POST',
    headers: { 'Content-Type': type, Origin: new URL(desk.url).origin },
    body: body as BodyInit,
  });
  expect(answer.status).toBe(200);
  return (await answer.json()) as ImportAnswer;
}
async function preview(body: string | Uint8Array, type?: string): Promise<ImportPreview> {
  const answer = await send(body, type);
  if (!answer.ok) throw new Error(JSON.stringify(answer));
  return answer.preview;
}
async function post<T>(to: 'plan' | 'write', body: object): Promise<T> {
  const answer = await fetch(`${desk.url}desk/import/${to}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: new URL(desk.url).origin },
    body: JSON.stringify(body),
  });
  return (await answer.json()) as T;
}
const plan = async (hash: string, choices: Partial<ImportChoices>) => {
  const answer = await post<ImportAnswer>('plan', { hash, choices: { ...NO_CHOICES, ...choices } });
  if (!answer.ok) throw new Error(JSON.stringify(answer));
  return answer.preview;
};
const write = ({ hash, choices, fingerprint }: ImportPreview) =>
  post<ImportWritten>('write', { hash, choices, fingerprint });
// Of these dates, years before the demo book's, no milking is expected.
const HEAD = 'date,milking,doe,amount,unit,use,note,entered';
const NEW = `${HEAD}\n2024-05-01,am,juniper,9 1/2,,,first,2024-05-01T06:40\n2024-05-01,pm,juniper,2,qt,fed,,\n`;

describe('a file of new rows', () => {
  it('is shown first and written only when somebody confirms, once', async () => {
    const before = books();
    const shown = await preview(NEW);
    expect(shown.rows.map(({ kind, date, amount, use }) => [kind, date, amount, use])).toEqual([
      ['new', '2024-05-01', '9 1/2', 'kept'],
      ['new', '2024-05-01', '2', 'fed'],
    ]);
    expect(books()).toEqual(before);
    const written = await write(shown);
    expect(written).toMatchObject({ ok: true, written: 2, refused: [] });
    const [heading, first, second, ...none] = (books()['2024-05.csv'] ?? '').trim().split('\n');
    expect([heading, none]).toEqual([HEAD, []]);
    expect(first).toMatch(/^2024-05-01,am,juniper,9 1\/2,cup,,first,/);
    expect(second).toMatch(/^2024-05-01,pm,juniper,2,qt,fed,,/);
  });

  it('is known the second time, and a confirmation that comes twice adds nothing', async () => {
    const before = books();
    const again = await preview(NEW);
    expect(again.rows.map(({ kind, chosen }) => [kind, chosen])).toEqual([
      ['known', false],
      ['known', false],
    ]);
    expect(again.willWrite).toBe(0);
    expect(await write(again)).toMatchObject({ ok: true, written: 0 });
    expect(books()).toEqual(before);
  });
});

describe('rows that the book has otherwise', () => {
  const OTHER = 'date,milking,doe,amount\n2026-05-20,am,juniper,3.25\n2026-05-20,am,hester,3.5\n';

  it('are corrections that nobody has chosen: nothing is written over', async () => {
    const before = books();
    const shown = await preview(OTHER);
    expect(shown.rows.map(({ kind, chosen }) => [kind, chosen])).toEqual([
      ['correction', false],
      ['correction', false],
    ]);
    expect(await write(shown)).toMatchObject({ ok: true, written: 0 });
    expect(books()).toEqual(before);
  });

  it('are written where somebody chose them, as new rows that stand; the old ones stay', async () => {
    const before = books()['2026-05.csv'] ?? '';
    const shown = await preview(OTHER);
    const chosen = await plan(shown.hash, { corrections: [shown.rows[0]?.key ?? ''] });
    expect(chosen.rows.map((one) => one.chosen)).toEqual([true, false]);
    expect(await write(chosen)).toMatchObject({ ok: true, written: 1 });
    const all = books();
    const after = Object.entries(all).filter(([name]) => name.startsWith('2026-05'));
    expect(after.map(([, text]) => text).join('')).toContain(before);
    const row = after
      .map(([, text]) => text)
      .join('')
      .match(/2026-05-20,am,juniper,3\.25.*/g);
    expect(row).toHaveLength(1);
    const now = (await preview(OTHER)).rows[0];
    expect(now?.kind).toBe('known');
  });

  it('wait where the book has changed since the preview', async () => {
    const text = 'date,milking,doe,amount\n2024-06-01,am,juniper,5\n';
    const shown = await preview(text);
    const other = 'date,milking,doe,amount\n2024-06-01,am,juniper,6\n';
    expect(await write(await preview(other))).toMatchObject({ ok: true, written: 1 });
    const answer = await write(shown);
    expect(answer).toMatchObject({ ok: false, why: 'changed' });
    expect(books()['2024-06.csv']?.match(/juniper/g)).toHaveLength(1);
  });
});

describe('files of many kinds', () => {
  it('a spreadsheet with does beside each other, real dates and numbers', async () => {
    const data = [
      ['Date', 'Milking', 'Juniper', 'Hester'].map((value) => ({ type: String, value })),
      [new Date('2024-07-01T00:00:00Z'), 'AM', 9.5, 8].map((value) =>
        value instanceof Date ? { type: Date, value, format: 'm/d/yyyy' } : { value },
      ),
    ];
    const sheets = [
      { data: [[{ value: 'About this file' }]], sheet: 'About' },
      { data, sheet: 'Milk' },
    ];
    const bytes = await writeWorkbook(sheets as never).toBuffer();
    const shown = await preview(new Uint8Array(bytes), XLSX);
    expect(shown).toMatchObject({ sheets: ['About', 'Milk'], sheet: 'Milk', faults: [] });
    expect(shown.rows.map(({ doe, date, milking, amount }) => `${date} ${milking} ${doe} ${amount}`)).toEqual(
      ['2024-07-01 am juniper 9.5', '2024-07-01 am hester 8'],
    );
    expect((await plan(shown.hash, { sheet: 'About' })).faults[0]?.told.key).toBe('fault.heading');
  });

  it('semicolons with decimal commas, tabs, other encodings, and a bad quote', async () => {
    const [semi] = (await preview('date;milking;doe;amount\n2024-08-01;am;juniper;9,25\n')).rows;
    expect(semi?.amount).toBe('9.25');
    const [tab] = (await preview('date\tmilking\tdoe\tamount\n2024-08-01\tam\tjuniper\t9\n')).rows;
    expect(tab?.amount).toBe('9');
    const latin = new Uint8Array([...'date,milking,doe,amount,note\n2024-08-01,am,juniper,9,'].map((one) => one.charCodeAt(0)).concat(0xf1)); // prettier-ignore
    const odd = await preview(latin);
    expect([odd.rows[0]?.note, odd.remarks.map(({ key }) => key)]).toEqual(['ñ', ['remark.encoding']]);
    const quote = await preview(
      'date,milking,doe,amount\n2024-08-01,am,juni"per,9\n2024-08-02,am,juniper,9\n',
    );
    expect(quote.faults.map(({ line, told }) => [line, told.key])).toEqual([[2, 'fault.quote']]);
  });

  it('what is no such file is named for what it is', async () => {
    const why = async (bytes: string | Uint8Array, type?: string) => {
      const answer = await send(bytes, type);
      return answer.ok ? 'read' : answer.why === 'unreadable' ? answer.told.key : answer.why;
    };
    expect(await why('')).toBe('file.empty');
    expect(await why('%PDF-1.7 ...')).toBe('file.notText');
    expect(await why(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0]), XLSX)).toBe('file.oldSpreadsheet');
    expect(await why(new Uint8Array([0x50, 0x4b, 3, 4, 9, 9]), XLSX)).toBe('file.damaged');
    const bomb = zipSync({ 'xl/worksheets/sheet1.xml': new Uint8Array(90_000_000) });
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(await why(bomb, XLSX)).toBe('file.tooBig');
    const rows = Array.from({ length: 20_100 }, (_, index) => `2024-01-01,am,juniper,${index % 9}`);
    expect(await why(`date,milking,doe,amount\n${rows.join('\n')}`)).toBe('file.tooManyRows');
  });

  it('too long a file is turned away, and one that the desk no longer holds is asked for again', async () => {
    // The desk answers before it has read it all: some clients hear that, others that it hung up.
    const status = await new Promise((done) => {
      const headers = { 'Content-Type': 'text/csv', Origin: new URL(desk.url).origin };
      const sent = request(`${desk.url}desk/import/file`, { method: 'POST', headers, agent: false });
      sent.on('response', ({ statusCode }) => done(statusCode)).on('error', () => done('hung up'));
      sent.end('x'.repeat(5_000_001));
    });
    expect([413, 'hung up']).toContain(status);
    expect(await post('plan', { hash: 'gone', choices: NO_CHOICES })).toEqual({ ok: false, why: 'gone' });
    expect(await post('write', {})).toEqual({ ok: false, why: 'gone' });
  });

  it('a name that somebody settled is known in the next file', async () => {
    const text = (date: string) => `date,milking,doe,amount\n${date},am,Junie,9\n`;
    const first = await preview(text('2024-09-01'));
    expect(first.unknown).toEqual([{ text: 'Junie', rows: 1, chosen: null }]);
    await write(await plan(first.hash, { does: { Junie: 'juniper' } }));
    const next = await preview(text('2024-09-02'));
    expect(next.rows.map(({ doe }) => doe)).toEqual(['juniper']);
  });
});

describe('ICAR events', () => {
  const visit = (id: string, at: string, kg: number, more = {}) => ({
    resourceType: 'icarMilkingVisitEventResource',
    animal: { scheme: 'org.example.herd', id },
    milkingStartingDateTime: at,
    milkingMilkWeight: { unitCode: 'KGM', value: kg },
    ...more,
  });
  const test = (at: string, values: Record<string, string>) => ({
    resourceType: 'icarTestDayResultEventResource',
    animal: { scheme: 'org.example.herd', id: '7' },
    eventDateTime: at,
    milkCharacteristics: Object.entries(values).map(([characteristic, value]) => ({ characteristic, value })),
  });
  beforeEach(() => rmSync(join(desk.farm, 'desk', 'import-names.json'), { force: true }));

  it('become milkings by the farm clock, and milk tests', async () => {
    const events = [
      // 23:30Z is 18:30 of the same day in Chicago in summer: the evening milking.
      visit('7', '2024-07-09T23:30:00Z', 1.2, {
        quarterMilkings: [
          { quarterMilkingWeight: { unitCode: 'KGM', value: 0.7 } },
          { quarterMilkingWeight: { unitCode: 'KGM', value: 0.5 } },
        ],
      }),
      // 03:00Z is 22:00 of the day before there: the same evening.
      visit('7', '2024-07-10T03:00:00Z', 0.3),
      test('2024-07-10T12:00:00Z', { FAT: '3.9', PROTEIN: '3.2', SCC: '410', UREA: '200' }),
    ];
    const shown = await preview(JSON.stringify(events), 'application/json');
    expect(shown.unknown).toEqual([{ text: '7 (org.example.herd)', rows: 3, chosen: null }]);
    expect(shown.faults.map(({ told }) => told.key)).toEqual([
      'fault.animal',
      'fault.animal',
      'fault.animal',
    ]);
    const named = await plan(shown.hash, { does: { '7 (org.example.herd)': 'tansy' } });
    expect(named.rows).toMatchObject([
      { doe: 'tansy', date: '2024-07-09', milking: 'pm', amount: '1.5', unit: 'kg', kind: 'new' },
    ]);
    expect(named.rows[0]?.warnings.map(({ key }) => key)).toEqual(['warn.visits', 'warn.notExpected']);
    expect(named.tests).toMatchObject([
      { doe: 'tansy', date: '2024-07-10', fat_pct: '3.9', scc: '410', kind: 'new' },
    ]);
    const before = readFileSync(join(desk.farm, 'milk-tests.csv'), 'utf8');
    expect(await write(named)).toMatchObject({ ok: true, written: 1, tests: 1, refused: [] });
    const after = readFileSync(join(desk.farm, 'milk-tests.csv'), 'utf8');
    expect(after).toBe(`${before}2024-07-10,tansy,3.9,3.2,,410\n`);
    const again = await preview(events.map((one) => JSON.stringify(one)).join('\n'), 'application/json');
    expect([...again.rows, ...again.tests].map(({ kind }) => kind)).toEqual(['known', 'known']);
  });

  it('say by event and field what breaks the published schema', async () => {
    const noWeight = visit('7', '2024-07-09T23:30:00Z', 1, { milkingMilkWeight: undefined });
    const events = [
      noWeight,
      visit('7', '2024-07-09 at dusk', 1),
      visit('7', '2024-07-09T23:30:00Z', 1, { milkingMilkWeight: { unitCode: 'LBR', value: '2' } }),
      { resourceType: 'icarWeightEventResource' },
      { hello: 1 },
    ];
    const shown = await preview(JSON.stringify(events), 'application/json');
    expect(shown.faults.map(({ line, told }) => [line, told.key, told.slots['path']])).toEqual([
      [1, 'fault.icar.required', 'milkingMilkWeight'],
      [2, 'fault.icar.time', 'milkingStartingDateTime'],
      [3, 'fault.icar.enum', 'milkingMilkWeight.unitCode'],
      [3, 'fault.icar.type', 'milkingMilkWeight.value'],
      [5, 'fault.icar.none', undefined],
    ]);
    expect(shown.left.map(({ line, told }) => [line, told.key])).toEqual([[4, 'left.otherEvent']]);
    expect((await preview('{"a":', 'application/json')).faults[0]?.told.key).toBe('fault.icar.json');
  });

  it('are added to milk tests whatever the order of their columns, and never to a file that is no text', async () => {
    const path = join(desk.farm, 'milk-tests.csv');
    writeFileSync(path, 'scc;doe;fat_pct;date\r\n380;hester;3,1;2024-01-10');
    const shown = await preview(
      JSON.stringify(test('2024-08-10T12:00:00Z', { FAT: '3.9', SCC: '410' })),
      'application/json',
    );
    const named = await plan(shown.hash, { does: { '7 (org.example.herd)': 'tansy' } });
    expect(await write(named)).toMatchObject({ ok: true, tests: 1, refused: [] });
    expect(readFileSync(path, 'utf8')).toBe(
      'scc;doe;fat_pct;date\r\n380;hester;3,1;2024-01-10\r\n410;tansy;3,9;2024-08-10\r\n',
    );
    const protein = await preview(
      JSON.stringify(test('2024-08-11T12:00:00Z', { PROTEIN: '3.3' })),
      'application/json',
    );
    expect(await write(protein)).toMatchObject({ tests: 0, refused: [{ told: { key: 'tests.noColumn' } }] });
  });
});
