// Everything that the contract lets a farm write, each form with what it is read as.
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../shared/calendar/day.ts';
import {
  BOOK,
  bookWith,
  HEADING,
  noticesOf,
  NOW_MS,
  reading,
  rowsOf,
  SOUND_FARM,
  told,
} from './farmFolder.ts';

const oneRow = (row: string, heading?: string) => {
  const rows = rowsOf(bookWith([row], heading));
  expect(rows).toHaveLength(1);
  return rows[0];
};
const amountOf = (text: string, unit = '') => oneRow(`2026-05-20,am,clover,${text},${unit},,,`)?.amount;

describe('a sound farm', () => {
  it('gives the farm, the herd, the kiddings and the rows with their places', () => {
    const read = reading({});
    expect(read).toEqual({
      ok: true,
      farm: {
        name: 'Test farm',
        timeZone: 'America/Chicago',
        units: 'us',
        recordUnit: 'cup',
        languages: ['en'],
        milkings: { am: '06:30', pm: '17:30' },
        jar: { size: 1, unit: 'qt' },
        largestMilking: { amount: 24, unit: 'cup' },
        screen_mm: 21.5 * 25.4,
      },
      book: {
        does: [
          { id: 'clover', name: 'Clover', breed: 'Nubian', born: '2022-03-29', weight_kg: 62 },
          { id: 'bell', name: 'Bluebell', breed: 'Alpine', born: null, weight_kg: null },
        ],
        kiddings: [
          {
            doe: 'clover',
            day: dayNumber('2026-03-03'),
            kids: 2,
            apart: dayNumber('2026-03-24'),
            weaned: dayNumber('2026-05-09'),
            dry: null,
          },
        ],
        rows: [
          {
            doe: 'clover',
            day: dayNumber('2026-05-20'),
            milking: 'am',
            amount: { num: 15, den: 2, unit: 'cup' },
            use: 'kept',
            unsaid: true,
            note: '',
            entered_ms: null,
            file: BOOK,
            line: 2,
          },
        ],
      },
      asOf: dayNumber('2026-06-01'),
      asOfFrom: 'clock',
      notices: [],
    });
  });
});

describe('the form of a table', () => {
  it.each([
    ['semicolons', `${HEADING}\n2026-05-20,pm,bell,3,,fed,,`.replaceAll(',', ';')],
    ['tabs', `${HEADING}\n2026-05-20,pm,bell,3,,fed,,`.replaceAll(',', '\t')],
    ['a byte-order mark', `\ufeff${HEADING}\n2026-05-20,pm,bell,3,,fed,,\n`],
    ['Windows line breaks', `${HEADING}\r\n2026-05-20,pm,bell,3,,fed,,\r\n`],
    ['old Macintosh line breaks', `${HEADING}\r2026-05-20,pm,bell,3,,fed,,\r`],
    ['columns in another order and letter case', 'USE,Doe,amount,MILKING,Date\nfed,bell,3,pm,2026-05-20\n'],
    ['spaces around', ' date , milking,doe ,amount, use\n 2026-05-20 , pm ,bell ,  3, fed \n'],
    ['every cell in quotes', '"date","milking","doe","amount","use"\n"2026-05-20","pm","bell","3","fed"\n'],
    ['spaces around quotes', 'date,milking,doe,amount,use\n "2026-05-20" ,"pm" , "bell","3","fed" \n'],
    ['blank lines and rows of empty cells', `\n${HEADING}\n\n,,,,,,,\n2026-05-20,pm,bell,3,,fed,,\n  \n`],
    ['cells missing or added at the end, all empty', `${HEADING}\n2026-05-20,pm,bell,3,,fed\n,,,,,,,,,,\n`],
    ['an unnamed column with nothing in it', 'date,milking,doe,amount,use,,\n2026-05-20,pm,bell,3,fed,,\n'],
    ['an ending in capitals', null],
  ])('%s', (_, text) => {
    const book = `${HEADING}\n2026-05-20,pm,bell,3,,fed,,\n`;
    const rows = rowsOf(text === null ? { [BOOK]: null, 'milkings/MAY.CSV': book } : { [BOOK]: text });
    expect(rows).toMatchObject([
      { doe: 'bell', milking: 'pm', day: dayNumber('2026-05-20'), use: 'fed', amount: { num: 3, den: 1, unit: 'cup' } },
    ]); // prettier-ignore
  });

  it('reads quotes, separators and line breaks inside quotes, and keeps count of lines', () => {
    const rows = rowsOf(
      bookWith([
        '2026-05-20,am,clover,7,,,"said ""no"", loudly,\ntwice",',
        '',
        '2026-05-20,pm,clover,6,,,"a ""b""",',
      ]),
    );
    expect(rows.map(({ note, line }) => [line, note])).toEqual([
      [2, 'said "no", loudly,\ntwice'],
      [5, 'a "b"'],
    ]);
  });

  it('names a column that no page reads, and reads the others', () => {
    const changes = bookWith(['2026-05-20,am,clover,7,sunny'], 'date,milking,doe,amount,weather');
    expect(rowsOf(changes)).toHaveLength(1);
    expect(noticesOf(changes)).toEqual([
      `${BOOK} | 1 | The column "weather" is none that the pages know. It stays in the file and is not read.`,
    ]);
  });

  it('puts the rows of several files together in order of file name', () => {
    const changes = {
      'milkings/b.csv': `${HEADING}\n2026-05-22,am,bell,1,,,,\n`,
      'milkings/a.csv': `${HEADING}\n2026-05-23,am,bell,1,,,,\n`,
    };
    expect(rowsOf(changes).map(({ file }) => file)).toEqual([BOOK, 'milkings/a.csv', 'milkings/b.csv']);
  });
});

describe('the cells of a milking', () => {
  it.each(['am', 'AM', 'a.m.', 'A.M.', 'a. m.', 'Am'])('%s is the morning milking', (text) => {
    expect(oneRow(`2026-05-20,${text},clover,7,,,,`)?.milking).toBe('am');
  });
  it.each(['pm', 'PM', 'p.m.', 'P. M.'])('%s is the evening milking', (text) => {
    expect(oneRow(`2026-05-20,${text},clover,7,,,,`)?.milking).toBe('pm');
  });
  it.each(['clover', 'Clover', 'CLOVER', ' clover '])('%s is clover', (text) => {
    expect(oneRow(`2026-05-20,am,${text},7,,,,`)?.doe).toBe('clover');
  });
  it.each([
    ['11', 11, 1],
    ['11.5', 115, 10],
    ['.5', 5, 10],
    ['11 1/2', 23, 2],
    ['11½', 23, 2],
    ['11 ½', 23, 2],
    ['3/4', 3, 4],
    ['0', 0, 1],
  ])('the amount %s is %i/%i', (text, num, den) => {
    expect(amountOf(text)).toEqual({ num, den, unit: 'cup' });
  });
  it.each(['11,5', '11.5'])('the amount %s is 11.5 among semicolons', (text) => {
    expect(oneRow(`2026-05-20;am;clover;${text}`, 'date;milking;doe;amount')?.amount).toEqual({ num: 115, den: 10, unit: 'cup' }); // prettier-ignore
  });
  it('an empty amount strikes the entry out', () => {
    expect(amountOf('')).toBeNull();
  });
  it.each([
    ['cup', 'cup'], ['Cups', 'cup'], ['pt', 'pt'], ['QT', 'qt'], ['gal', 'gal'], ['fl oz', 'fl oz'], ['fl. oz.', 'fl oz'],
    ['mL', 'mL'], ['ml', 'mL'], ['L', 'L'], ['lb', 'lb'], ['lbs', 'lb'], ['oz', 'oz'], ['kg', 'kg'], ['g', 'g'], ['', 'cup'],
  ])('the unit "%s" is %s', (text, unit) => {
    expect(amountOf('1', text)?.unit).toBe(unit);
  }); // prettier-ignore
  it.each([['kept', 'kept'], ['', 'kept'], ['Withheld', 'withheld'], ['FED', 'fed'], ['lost', 'lost']])(
    'the use "%s" is %s',
    (text, use) => {
      expect(oneRow(`2026-05-20,am,clover,7,,${text},,`)?.use).toBe(use);
    },
  ); // prettier-ignore
  it.each([
    ['2026-05-20T06:40:30-05:00', '2026-05-20T11:40:30Z'],
    ['2026-05-20T06:40Z', '2026-05-20T06:40:00Z'],
    ['2026-05-20T06:40:30.25+0200', '2026-05-20T04:40:30.250Z'],
    ['2026-05-20T06:40+02', '2026-05-20T04:40:00Z'],
    // Without a zone: the farm's clock, which is five hours behind in May and six in January.
    ['2026-05-20T06:40', '2026-05-20T11:40:00Z'],
    ['2026-05-20 06:40:30', '2026-05-20T11:40:30Z'],
    ['2026-01-20T06:40', '2026-01-20T12:40:00Z'],
    ['2026-05-20', '2026-05-20T05:00:00Z'],
    // The night on which the clocks go forward: 02:30 does not exist and is 03:30 of the new time.
    ['2026-03-08T01:30', '2026-03-08T07:30:00Z'],
    ['2026-03-08T02:30', '2026-03-08T08:30:00Z'],
    ['2026-03-08T06:40', '2026-03-08T11:40:00Z'],
  ])('entered %s is %s', (text, utc) => {
    expect(oneRow(`2026-05-20,am,clover,7,,,,${text}`)?.entered_ms).toBe(Date.parse(utc));
  });
  it('keeps corrections that "entered" tells apart', () => {
    const rows = ['2026-05-20,am,clover,7,,,,', '2026-05-20,am,clover,8,,,,2026-05-20T07:00', '2026-05-20,am,clover,,,,,2026-05-20T08:00']; // prettier-ignore
    expect(rowsOf(bookWith(rows))).toHaveLength(3);
  });
});

describe('names in any letters', () => {
  it('reads ids and names of any script, composed or not', () => {
    const rows = rowsOf({
      'does.csv': 'doe,name\nñandú,"Ñandú, la mayor"\nκαλλιόπη-2,Καλλιόπη\n山羊_1,小花\n',
      'kiddings.csv': 'doe,date\nÑANDÚ,2026-03-03\n',
      ...bookWith(['2026-05-20,am,n\u0303andu\u0301,7,,,,', '2026-05-20,am,ΚΑΛΛΙΌΠΗ-2,7,,,,', '2026-05-20,am,山羊_1,7,,,,']), // prettier-ignore
    });
    expect(rows.map(({ doe }) => doe)).toEqual(['ñandú', 'καλλιόπη-2', '山羊_1']);
  });
  it('tells does apart by their capitals where nothing else does', () => {
    const does = { 'does.csv': 'doe\nA1\na1\nclover\n' };
    const rows = bookWith(['2026-05-20,am,A1,7,,,,', '2026-05-20,am,a1,6,,,,']);
    expect(rowsOf({ ...does, ...rows }).map(({ doe }) => doe)).toEqual(['A1', 'a1']);
    expect(noticesOf({ ...does, ...rows })).toEqual([
      'does.csv | 3 | "a1" and "A1" (line 2) differ only in capitals. Write each with its own capitals everywhere, or better give one of them another short name.',
    ]);
  });
});

describe('the settings', () => {
  it('fills in what a farm may leave out', () => {
    const least =
      'name: B\ntimeZone: Europe/Copenhagen\nunits: Metric\nrecordUnit: Kg\nmilkings: { am: 6:30, pm: "16:00" }\nasOf:\n';
    const read = reading({ 'farm.yaml': least });
    expect(read).toMatchObject({
      ok: true,
      farm: {
        units: 'metric',
        recordUnit: 'kg',
        languages: ['en', 'es'],
        milkings: { am: '06:30', pm: '16:00' },
        jar: { size: 1, unit: 'L' },
        largestMilking: { amount: 10, unit: 'L' },
      },
    });
  });
  it("takes the barn's screen in inches or centimeters, and a common one where none is named", () => {
    const screenOf = (line: string) => {
      const read = reading({ 'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}${line}` });
      return read.ok ? read.farm.screen_mm : null;
    };
    // 1 in is 25.4 mm exactly: NIST SP 811, Appendix B.
    expect(screenOf('board: { screen: { diagonal: 32, unit: in } }\n')).toBeCloseTo(812.8, 9);
    expect(screenOf('board: { screen: { diagonal: 54.6, unit: cm } }\n')).toBeCloseTo(546, 9);
    expect(screenOf('')).toBeCloseTo(546.1, 9);
  });
  it('lets sections of other parts stand', () => {
    const more = 'lessons: [{ name: Pen, minutes: 10 }]\nsheets: 2\nfeed: { name: Ada }\nland: x\n';
    expect(told({ 'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}${more}` })).toBe('ok');
  });
  it('takes today from AS_OF, else from farm.yaml, else from the clock of the farm', () => {
    const yaml = { 'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}asOf: 2026-05-21\n` };
    expect(reading(yaml, '2026-05-25')).toMatchObject({ asOf: dayNumber('2026-05-25'), asOfFrom: 'AS_OF' });
    expect(reading(yaml, '')).toMatchObject({ asOf: dayNumber('2026-05-21'), asOfFrom: 'farm.yaml' });
    expect(reading({})).toMatchObject({ asOf: dayNumber('2026-06-01'), asOfFrom: 'clock' });
    expect(new Date(NOW_MS).toISOString()).toBe('2026-06-01T17:00:00.000Z');
  });
  it('counts rows after a day that is set as not yet there, and says so', () => {
    const rows = bookWith(['2026-05-20,am,clover,7,,,,', '2026-07-01,am,clover,7,,,,']);
    expect(noticesOf(rows, '2026-05-21')).toEqual([
      'milkings |  | 1 row dated after 2026-05-21, the day that AS_OF sets, is not counted.',
    ]);
  });
});

describe('a thin book', () => {
  const thin = (changes: Parameters<typeof noticesOf>[0]) => noticesOf({ [BOOK]: null, ...changes });
  it('without a milk book is told of', () => {
    expect(thin({})).toEqual([' |  | There is no milk book yet: the folder milkings is missing. Pages say so until there is one.']); // prettier-ignore
    expect(thin({ 'milkings/.keep': '' })).toEqual(['milkings |  | There is no milk book yet: milkings/ holds no CSV file. Pages say so until there is one.']); // prettier-ignore
    expect(thin({ 'milkings/a.csv': '' })).toEqual(['milkings/a.csv |  | This file is empty.', 'milkings |  | There is no milking in the milk book yet.']); // prettier-ignore
    expect(thin({ 'milkings/a.csv': HEADING })).toEqual(['milkings |  | There is no milking in the milk book yet.']); // prettier-ignore
  });
  it('without does or kiddings is told of', () => {
    expect(thin({ 'does.csv': 'doe,name', 'kiddings.csv': 'doe,date', 'milkings/a.csv': HEADING })).toEqual([
      'does.csv |  | There is no doe yet: give each one a row.',
      'milkings |  | There is no milking in the milk book yet.',
    ]);
    expect(noticesOf({ 'kiddings.csv': 'doe,date' })).toEqual(['kiddings.csv |  | There is no kidding yet, so no milking is expected of any doe.']); // prettier-ignore
  });
  it('tells of dates that do not fit together', () => {
    expect(noticesOf({ 'kiddings.csv': 'doe,date\nclover,2021-03-03\nbell,2026-09-01\n' })).toEqual([
      "kiddings.csv | 3 | bell's kidding on 2026-09-01 is still to come. It counts from that day on.",
      'does.csv |  | clover was born on 2022-03-29 but kidded on 2021-03-03: one of the two dates is wrong.',
    ]);
  });
  it('passes over what systems leave behind, and names other files', () => {
    const others = {
      'milkings/.DS_Store': 'x',
      'milkings/~$a.xlsx': 'x',
      'milkings/Thumbs.db': 'x',
      'milkings/a.csv~': 'x',
    };
    expect(noticesOf({ ...others, 'milkings/plan.md': 'x', 'milkings/notes.txt': 'Rained.' })).toEqual([
      'milkings/notes.txt |  | This is no CSV file and is not read.',
      'milkings/plan.md |  | This is no CSV file and is not read.',
    ]);
  });
});
