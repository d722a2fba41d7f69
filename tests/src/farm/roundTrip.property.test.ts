// Any valid book, written in any dialect that the contract allows, is read back row for row.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../shared/calendar/day.ts';
import type { Amount } from '../../../shared/quantity/amount.ts';
import { AMOUNT_UNITS } from '../../../shared/quantity/units.ts';
import { USES, type MilkingRow, type Use } from '../../../shared/herd/types.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { farmWith, NOW_MS, temporaryFolder, type Files } from './farmFolder.ts';

type Column = 'date' | 'milking' | 'doe' | 'amount' | 'unit' | 'use' | 'note' | 'entered';

interface Dialect {
  readonly separator: ',' | ';' | '\t';
  readonly mark: boolean;
  readonly lineBreak: '\n' | '\r\n' | '\r';
  readonly endsWithBreak: boolean;
  readonly columns: readonly Column[];
  readonly capitals: boolean;
  readonly quoteAll: boolean;
  readonly spaces: string;
  readonly commas: boolean;
  readonly blankLines: boolean;
}

// A row as it is meant, and how it is spelt: the number picks one of the spellings that mean the same.
interface Meant extends Omit<MilkingRow, 'file' | 'line'> {
  readonly spelling: number;
  readonly enteredText: string;
}

const pick = <T>(choices: readonly T[], number: number): T => choices[number % choices.length] as T;

const DOES = ['clover', 'B12', 'ñandú', 'two-words_7', '山羊'];
const FIRST_DAY = 20_000;
const LAST_DAY = Math.floor(NOW_MS / 86_400_000);

const notes = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  fc.constantFrom('hot, dry', 'said "no"', 'two\nlines', '5;6', 'a\tb', '"', '=1+1', 'naïve 🐐'),
  fc.string({ unit: 'grapheme', maxLength: 12 }).map((text) => text.trim()),
);
const amounts: fc.Arbitrary<Amount | null> = fc.option(
  fc.record({ num: fc.integer({ min: 0, max: 900 }), den: fc.constantFrom(1, 2, 3, 4, 8, 10, 100), unit: fc.constantFrom(...AMOUNT_UNITS) }),
  { freq: 9 },
); // prettier-ignore
interface Drawn extends Omit<Meant, 'entered_ms' | 'enteredText'> {
  readonly second: number;
  readonly dated: boolean;
}
const meantRow: fc.Arbitrary<Drawn> = fc.record({
  doe: fc.constantFrom(...DOES),
  day: fc.integer({ min: FIRST_DAY, max: LAST_DAY - 1 }),
  milking: fc.constantFrom('am' as const, 'pm' as const),
  amount: amounts,
  use: fc.constantFrom<Use>(...USES),
  note: notes,
  spelling: fc.nat(1000),
  second: fc.integer({ min: 0, max: 10_000_000 }),
  dated: fc.boolean(),
});
const dialects: fc.Arbitrary<Dialect> = fc.record({
  separator: fc.constantFrom(',' as const, ';' as const, '\t' as const),
  mark: fc.boolean(),
  lineBreak: fc.constantFrom('\n' as const, '\r\n' as const, '\r' as const),
  endsWithBreak: fc.boolean(),
  columns: fc.shuffledSubarray<Column>(['date', 'milking', 'doe', 'amount', 'unit', 'use', 'note', 'entered'], { minLength: 8 }),
  capitals: fc.boolean(),
  quoteAll: fc.boolean(),
  spaces: fc.constantFrom('', ' '),
  commas: fc.boolean(),
  blankLines: fc.boolean(),
}); // prettier-ignore

// One standing entry a slot at each moment: later rows of the same slot are corrections with their own time.
function distinct(rows: readonly Drawn[]): Meant[] {
  const met = new Set<string>();
  return rows.flatMap(({ second, dated, ...row }) => {
    const entered_ms = dated ? (row.day * 86_400 + second) * 1000 : null;
    const key = [row.doe, row.day, row.milking, entered_ms].join();
    if (met.has(key)) return [];
    met.add(key);
    return [
      { ...row, entered_ms, enteredText: entered_ms === null ? '' : enteredIn(entered_ms, row.spelling) },
    ];
  });
}

function enteredIn(ms: number, spelling: number): string {
  const utc = (shift_h: number) => new Date(ms + shift_h * 3_600_000).toISOString().slice(0, 19);
  // The farm lives by UTC+5:45 (no clock changes), so that a time without a zone can be told by hand.
  const choices = [
    `${utc(0)}Z`,
    `${utc(-5)}-05:00`,
    `${utc(2)}+0200`,
    utc(5.75),
    utc(5.75).replace('T', ' '),
  ];
  const short = choices.filter((text) => text.includes(':00Z')).map((text) => text.replace(':00Z', 'Z'));
  return pick([...choices, ...short], spelling);
}

function amountText({ amount, spelling }: Meant, commas: boolean): string {
  if (amount === null) return pick(['', ' '], spelling);
  const { num, den } = amount;
  const [whole, rest] = [Math.floor(num / den), num % den];
  const lead = whole === 0 ? '' : `${whole} `;
  const choices = [den === 1 ? String(num) : `${lead}${rest}/${den}`, `${num}/${den}`];
  const signs: Record<string, string> = {
    '1/2': '½',
    '1/3': '⅓',
    '2/3': '⅔',
    '1/4': '¼',
    '3/4': '¾',
    '3/8': '⅜',
  };
  const sign = signs[`${rest}/${den}`];
  if (sign) choices.push(`${lead.trim()}${sign}`, `${lead}${sign}`);
  if (den !== 3) {
    const decimal = String(num / den);
    choices.push(decimal, `${decimal}${decimal.includes('.') ? '00' : '.0'}`);
    if (commas) choices.push(decimal.replace('.', ','));
  }
  return pick(choices, spelling);
}

function unitText({ amount, spelling }: Meant): string {
  const unit = amount?.unit ?? 'kg';
  const choices: string[] = [unit, unit.toUpperCase(), unit.toLowerCase(), `${unit}.`];
  if (unit === 'qt') choices.push('');
  return pick(choices, spelling);
}

function cellsOf(row: Meant, dialect: Dialect): Record<Column, string> {
  const { spelling } = row;
  const [letter] = row.milking;
  return {
    date: isoDate(row.day),
    milking: pick(
      [row.milking, row.milking.toUpperCase(), `${letter}.m.`, `${letter?.toUpperCase()}. M.`],
      spelling,
    ),
    doe: pick([row.doe, row.doe.toUpperCase(), row.doe.toLowerCase(), row.doe.normalize('NFD')], spelling),
    amount: amountText(row, dialect.commas && dialect.separator === ';'),
    unit: unitText(row),
    use:
      row.use === 'kept'
        ? pick(['', 'kept', 'Kept'], spelling)
        : pick([row.use, row.use.toUpperCase()], spelling),
    note: row.note,
    entered: row.enteredText,
  };
}

/** A file in a dialect, and the line on which each row starts. */
function writtenFile(rows: readonly Meant[], dialect: Dialect): { text: string; lines: number[] } {
  const { separator, columns, capitals, quoteAll, spaces, lineBreak } = dialect;
  const one = (cell: string) =>
    quoteAll || /["\n,;\t]/.test(cell)
      ? `${spaces}"${cell.replaceAll('"', '""')}"${spaces}`
      : `${spaces}${cell}${spaces}`;
  const heading = columns.map((name) => one(capitals ? name.toUpperCase() : name)).join(separator);
  const lines: number[] = [];
  let text = heading;
  for (const row of rows) {
    text += dialect.blankLines ? '\n\n' : '\n';
    lines.push(text.split('\n').length);
    const cells = cellsOf(row, dialect);
    text += columns.map((name) => one(cells[name])).join(separator);
  }
  if (dialect.endsWithBreak) text += '\n';
  return { text: (dialect.mark ? '\ufeff' : '') + text.replaceAll('\n', lineBreak), lines };
}

const base: Files = {
  'farm.yaml': "name: T\ntimeZone: Asia/Kathmandu\nunits: us\nrecordUnit: qt\nmilkings: { am: '06:00', pm: '18:00' }\nlargestMilking: { amount: 1000, unit: gal }\n",
  'does.csv': `doe\n${DOES.join('\n')}\n`,
  'kiddings.csv': 'doe,date\n',
  'milkings/2026-05.csv': null,
}; // prettier-ignore

// A row with its amount as a number: 1/2 and 0.5 are the same milk.
function asRead({ doe, day, milking, amount, use, note, entered_ms, file, line }: MilkingRow) {
  const value = amount && { value: amount.num / amount.den, unit: amount.unit };
  return { doe, day, milking, amount: value, use, note, entered_ms, file, line };
}

describe('any valid book in any dialect', () => {
  it('is read back row for row, each with its file and line', () => {
    const dir = temporaryFolder();
    const names = ['a.csv', 'b.CSV', 'ç.csv'];
    const book = fc.array(meantRow, { maxLength: 12 }).map(distinct);
    fc.assert(
      fc.property(
        book,
        fc.array(dialects, { minLength: 3, maxLength: 3 }),
        fc.nat(3),
        (rows, styles, cut) => {
          const parts = [rows.slice(0, cut), rows.slice(cut, cut * 2), rows.slice(cut * 2)];
          const files = parts.map((part, index) => writtenFile(part, styles[index] as Dialect));
          const changes = Object.fromEntries(
            files.map(({ text }, index) => [`milkings/${names[index]}`, text]),
          );
          const read = readFarm(farmWith({ ...base, ...changes }, dir), { now_ms: NOW_MS });
          if (!read.ok) throw new Error(JSON.stringify(read.faults, null, 1));
          const expected = parts.flatMap((part, index) =>
            part.map((row, at) =>
              asRead({ ...row, file: `milkings/${names[index]}`, line: files[index]?.lines[at] ?? 0 }),
            ),
          );
          const got = read.book.rows.map(asRead);
          expect(got).toEqual(expected);
        },
      ),
      { numRuns: 150 },
    );
  });
});
