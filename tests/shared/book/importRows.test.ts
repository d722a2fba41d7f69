// Sheets of every shape as milkings, and what is said of cells that are none.
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../shared/calendar/day.ts';
import { findMilkings, type ImportFarm } from '../../../shared/book/importRows.ts';
import { NO_CHOICES, type Found, type ImportChoices, type Sheet } from '../../../shared/book/importTypes.ts';
import { likelyDates } from '../../../src/farm/dates.ts';
import { momentReader } from '../../../src/farm/entered.ts';
import { day } from '../../support/bookOf.ts';

const FARM: ImportFarm = {
  does: [
    { id: 'clover', name: 'Clover' },
    { id: 'b-2', name: 'Ñandú' },
    { id: 'milk', name: 'Old Milk' },
  ],
  recordUnit: 'cup',
  largestMilking: { amount: 24, unit: 'cup' },
  milkings: { am: '06:30', pm: '17:30' },
  today: day('2026-06-30'),
};
const READERS = { datesMeant: likelyDates, moment: momentReader('America/Chicago') };

const sheetOf = (text: string, decimalComma = false): Sheet => ({
  name: 'Sheet1',
  rows: text
    .trim()
    .split('\n')
    .map((line, index) => ({ line: index + 1, cells: line.split('|').map((cell) => cell.trim()) })),
  decimalComma,
});
const find = (text: string, choices: Partial<ImportChoices> = {}, decimalComma = false): Found =>
  findMilkings(sheetOf(text, decimalComma), FARM, { ...NO_CHOICES, ...choices }, READERS);
const told = ({ milkings }: Found) =>
  milkings.map(
    ({ doe, day, milking, amount, unit }) => `${isoDate(day)} ${milking} ${doe} ${amount} ${unit}`,
  );
const wrong = ({ faults }: Found) => faults.map(({ line, column, told }) => `${line}:${column} ${told.key}`);

describe('one row a milking', () => {
  it('reads the columns of the milk book in any order, in English or Spanish', () => {
    const found = find(`
      Cabra | Fecha | Ordeño | Cantidad | Unidad | Uso | Notas
      Ñandú | 2026-05-21 | a.m. | 11 1/2 | | cabritos | tos
      clover | 2026-05-21 | Tarde | 2 | qt | | `);
    expect(told(found)).toEqual(['2026-05-21 am b-2 11 1/2 cup', '2026-05-21 pm clover 2 qt']);
    expect(found.milkings.map(({ use, note }) => [use, note])).toEqual([
      ['fed', 'tos'],
      [null, ''],
    ]);
    expect(found.faults).toEqual([]);
  });

  it('finds the heading below a title, and leaves out a row of totals with a word', () => {
    const found = find(`
      Hilltop goats | | |
       | | |
      Date | Time | Doe | Milk (lb)
      5/21/2026 | 6:40 | Clover | 4.5
      5/21/2026 | 5:45 PM | Clover | 4
      Total | | | 8.5`);
    expect(told(found)).toEqual(['2026-05-21 am clover 4.5 lb', '2026-05-21 pm clover 4 lb']);
    expect(found.left).toEqual([{ line: 6, column: null, told: { key: 'left.total', slots: {} } }]);
  });

  it('takes an empty amount for a strike, and only in this shape', () => {
    const found = find('date|milking|doe|amount\n2026-05-21|am|clover|');
    expect(found.milkings).toMatchObject([{ amount: null, read: null }]);
  });

  it('names every fault of a row with its cell', () => {
    const found = find(`
      date | milking | doe | amount | unit | use | entered
      soon | noon | Cloveer | lots | pail | drunk | never
      2026-02-30 | am | clover | -3 | | |
      2026-07-01 | am | clover | 3 | | |
      2026-05-21 | am | clover | 25 | | |
       | am | clover | 3 | | | `);
    expect(wrong(found).sort()).toEqual(
      [
        '2:5 fault.use',
        '2:6 fault.entered',
        '2:4 fault.unit',
        '2:0 fault.date',
        '2:2 fault.doe',
        '2:1 fault.milking',
        '3:0 fault.date',
        '4:0 fault.ahead',
        '5:3 fault.amount.tooMuch',
        '6:0 fault.noDate',
      ].sort(),
    );
    expect(found.milkings).toEqual([]);
    expect(found.unknown).toEqual([{ text: 'Cloveer', rows: 1, chosen: null }]);
  });

  it('takes an unknown name for the doe that somebody chose, or leaves her rows out', () => {
    const text = 'date|milking|doe|amount\n2026-05-21|am|Clo|3\n2026-05-21|am|constructor|4';
    const found = find(text, { does: { Clo: 'clover', constructor: '' } });
    expect(told(found)).toEqual(['2026-05-21 am clover 3 cup']);
    expect(found.left.map(({ told }) => told.key)).toEqual(['left.doe']);
    expect(found.unknown.map(({ text: name, chosen }) => [name, chosen])).toEqual([
      ['Clo', 'clover'],
      ['constructor', ''],
    ]);
    expect(find(text).faults).toHaveLength(2);
  });
});

describe('a.m. and p.m. side by side', () => {
  it('makes two milkings of a row, none of an empty cell or a dash', () => {
    const found = find(`
      date | doe | AM | PM | unit
      2026-05-21 | Clover | 9½ | 8.25 |
      2026-05-22 | Clover | - | 8 cups |
      2026-05-23 | Clover | | 1 | qt`);
    expect(told(found)).toEqual([
      '2026-05-21 am clover 9½ cup',
      '2026-05-21 pm clover 8.25 cup',
      '2026-05-22 pm clover 8 cup',
      '2026-05-23 pm clover 1 qt',
    ]);
  });
});

describe('one column a doe', () => {
  it('reads it with a column that says which milking', () => {
    const found = find('Date|Milking|Clover|Ñandú|weather\n2026-05-21|am|9|8|rain\n2026-05-21|pm|7||sun');
    expect(told(found)).toEqual([
      '2026-05-21 am clover 9 cup',
      '2026-05-21 am b-2 8 cup',
      '2026-05-21 pm clover 7 cup',
    ]);
    expect(found.columns.map(({ role }) => role)).toEqual([
      'date',
      'milking',
      'of both clover',
      'of both b-2',
      'leave',
    ]);
  });

  it('reads both milkings of a doe beside each other, in one heading or in two', () => {
    const one = find('Date|Clover AM|Clover PM|am b-2\n2026-05-21|9|8|7');
    const two = find('Date|Clover||Ñandú|\n|AM|PM|AM|PM\n2026-05-21|9|8|7|');
    expect(told(one)).toEqual([
      '2026-05-21 am clover 9 cup',
      '2026-05-21 pm clover 8 cup',
      '2026-05-21 am b-2 7 cup',
    ]);
    expect(told(two)).toEqual(told(one));
  });

  it('asks which milking it is where no column says so', () => {
    const text = 'Date|Clover|Ñandú\n2026-05-21|9|8';
    expect(find(text)).toMatchObject({ askMilking: true, milkings: [] });
    expect(told(find(text, { milking: 'pm' }))).toEqual([
      '2026-05-21 pm clover 9 cup',
      '2026-05-21 pm b-2 8 cup',
    ]);
  });

  it('knows a doe whose id is a word of headings', () => {
    expect(find('date|milking|milk\n2026-05-21|am|3').columns[2]?.role).toBe('of both milk');
  });
});

describe('dates', () => {
  const dates = (list: string[], dateOrder: ImportChoices['dateOrder'] = null) =>
    find(`date|milking|doe|amount\n${list.map((text) => `${text}|am|clover|3`).join('\n')}`, { dateOrder });

  it('are read in the forms of spreadsheets: serial, US, named month', () => {
    // 46163 is 2026-05-21 by the spreadsheet's own count of days from 1899-12-30 (ECMA-376, 18.17.4.1; from memory).
    expect(told(dates(['46163', '5/21/2026', 'May 21, 2026', '21.5.2026', '2026/5/21']))).toEqual(
      Array.from({ length: 5 }, () => '2026-05-21 am clover 3 cup'),
    );
  });

  it('that may be two days are asked about', () => {
    const found = dates(['5/6/2026']);
    expect(found.askOrder).toBe('5/6/2026');
    expect(wrong(found)).toEqual(['2:0 fault.whichDate']);
    expect(told(dates(['5/6/2026'], 'day first'))).toEqual(['2026-06-05 am clover 3 cup']);
    expect(told(dates(['5/6/2026'], 'month first'))).toEqual(['2026-05-06 am clover 3 cup']);
  });

  it('are month first where the file proves it; day first only by choice or where nothing else can be', () => {
    expect(told(dates(['5/21/2026', '5/6/2026']))[1]).toBe('2026-05-06 am clover 3 cup');
    const dayFirst = dates(['21/5/2026', '5/6/2026']);
    expect(told(dayFirst)).toEqual(['2026-05-21 am clover 3 cup']);
    expect(dayFirst.askOrder).toBe('5/6/2026');
    expect(dates(['21/5/2026', '5/21/2026', '5/6/2026']).askOrder).toBe('5/6/2026');
    expect(dates(['5/5/2026']).askOrder).toBeNull();
  });
});

describe('amounts', () => {
  const amount = (cell: string, decimalComma = false) =>
    find(`date|milking|doe|amount\n2026-05-21|am|clover|${cell}`, {}, decimalComma);

  it('keep their exact number and their own unit', () => {
    expect(amount('11 1/2').milkings[0]?.read).toEqual({ num: 23, den: 2, unit: 'cup' });
    expect(amount('1 qt').milkings[0]).toMatchObject({ amount: '1', unit: 'qt' });
    expect(told(find('date|milking|doe|amount\n2026-05-21|am|clover|3', { unit: 'lb' }))).toEqual([
      '2026-05-21 am clover 3 lb',
    ]);
  });

  it('with a comma count where semicolons stand between the cells, else with a word of warning', () => {
    expect(amount('9,25', true).milkings[0]).toMatchObject({ amount: '9.25', warnings: [] });
    expect(amount('9,25').milkings[0]).toMatchObject({ amount: '9.25', warnings: [{ key: 'warn.comma' }] });
    expect(wrong(amount('9,250'))).toEqual(['2:3 fault.amount.number']);
  });
});

describe('a sheet that is none', () => {
  it('says so, and may be read once somebody has named its columns', () => {
    expect(wrong(find('who|how much\nclover|3'))).toEqual(['1:null fault.heading']);
    expect(
      findMilkings({ name: '', rows: [], decimalComma: false }, FARM, NO_CHOICES, READERS).faults,
    ).toMatchObject([{ told: { key: 'fault.empty' } }]);
    const named = find('wann|who|which|how much\n2026-05-21|clover|am|3', {
      roles: { 0: 'date', 1: 'doe', 2: 'milking', 3: 'amount' },
    });
    expect(told(named)).toEqual(['2026-05-21 am clover 3 cup']);
    expect(wrong(find('date|milking\n2026-05-21|am'))).toEqual(['1:null fault.noAmount']);
    expect(wrong(find('date|milking|amount\n2026-05-21|am|3'))).toEqual(['1:null fault.noDoe']);
  });
});

describe('a file made to keep the desk busy', () => {
  const long = ' '.repeat(150_000);
  // Each pattern that looks at a cell twice over would need minutes here.
  it.each([
    ['an amount with a gap', `date|milking|doe|amount\n2026-05-21|am|clover|1${long}x`],
    ['a heading with a gap', `date|milking|doe|milk${long}9|c\n2026-05-21|am|clover|1|2`],
    ['brackets that do not close', `date|milking|doe|${'('.repeat(150_000)}\n2026-05-21|am|clover|1`],
    ['commas and slashes', `date|milking|doe|${' ,/'.repeat(50_000)}x\n2026-05-21|am|clover|1`],
    ['a thousand numbers in a cell', `date|milking|doe|amount\n2026-05-21|am|clover|${'1 '.repeat(1_000_000)}x`],
    ['no date', `date|milking|doe|amount\n2026-05-21${long}x|am${long}x|clover${long}x|1`],
  ])('is read quickly: %s', (_, text) => {
    const before_ms = performance.now();
    const { milkings, faults, unknown } = find(text);
    expect(performance.now() - before_ms).toBeLessThan(1_500);
    expect([milkings, unknown]).toEqual([[], []]);
    expect(faults.length).toBeGreaterThan(0);
    for (const { found } of faults) expect(found.length).toBeLessThanOrEqual(120);
  }); // prettier-ignore

  it('is given up between two rows once its time is over', () => {
    let rows = 0;
    const goOn = () => {
      rows += 1;
      if (rows > 2) throw new Error('too long');
    };
    const sheet = sheetOf('date|milking|doe|amount\n2026-05-21|am|clover|1\n2026-05-22|am|clover|1\n2026-05-23|am|clover|1');
    expect(() => findMilkings(sheet, FARM, NO_CHOICES, { ...READERS, goOn })).toThrow('too long');
    expect(rows).toBe(3);
  }); // prettier-ignore
});
