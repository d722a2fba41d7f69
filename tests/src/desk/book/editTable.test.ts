// One line changes, and every other byte of a farm's table stays: by example, and over random tables in any dialect.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HERD_COLUMNS, type HerdChange, type HerdFile } from '../../../../shared/book/herdBook.ts';
import { editTable } from '../../../../src/desk/book/editTable.ts';

const edited = (text: string | null, change: HerdChange) => {
  const done = editTable(text, change);
  if (!done.ok) throw new Error(JSON.stringify(done));
  return done;
};
const change = (line: number, cells: Record<string, string>, file: HerdFile = 'kiddings.csv'): HerdChange => ({
  kind: 'change', file, line, cells,
}); // prettier-ignore
const KIDDINGS = 'doe,date,kids,apart,weaned,dry\r\nash,2026-03-01,2,,,\r\nbay,2026-03-05,1\r\n';

describe('a change of a row', () => {
  it('writes the cell and keeps line ends, mark and columns of its own', () => {
    const text = '\ufeffKids;Doe;vet;DATE;Apart\r\n2;"ash";"Ng; Sr";2026-03-01;\r\n1;bay;;2026-03-05;\r\n';
    const { text: after, old, new: line } = edited(text, change(2, { apart: '2026-03-20', kids: '3' }));
    expect(after).toBe('\ufeffKids;Doe;vet;DATE;Apart\r\n3;"ash";"Ng; Sr";2026-03-01;2026-03-20\r\n1;bay;;2026-03-05;\r\n'); // prettier-ignore
    expect([old, line]).toEqual(['2;"ash";"Ng; Sr";2026-03-01;', '3;"ash";"Ng; Sr";2026-03-01;2026-03-20']);
  });

  it('fills up a row that a spreadsheet left short, only as far as it must', () => {
    expect(edited(KIDDINGS, change(3, { weaned: '2026-05-09' })).new).toBe('bay,2026-03-05,1,,2026-05-09');
  });

  it('adds a heading that the table lacks, and leaves the other rows alone', () => {
    const text = 'doe,date\nash,2026-03-01\nbay,2026-03-05\n';
    expect(edited(text, change(3, { dry: '2026-10-01', kids: '2', apart: '' })).text).toBe(
      'doe,date,kids,dry\nash,2026-03-01\nbay,2026-03-05,2,2026-10-01\n',
    );
  });

  it('keeps the quotes of a quoted cell, doubles quotes inside, and quotes what must be', () => {
    const text = 'doe,from,until,what,note\nash,2026-03-01,"2026-03-04",drench,\n';
    const { new: line } = edited(
      text,
      change(2, { until: '2026-03-09', what: 'drench, "white"', note: 'x' }, 'treatments.csv'),
    );
    expect(line).toBe('ash,2026-03-01,"2026-03-09","drench, ""white""",x');
  });

  it('writes a decimal comma where cells stand between semicolons', () => {
    const text = 'doe;weight_kg\nash;61,5\n';
    expect(edited(text, change(2, { weight_kg: '62.5' }, 'does.csv')).new).toBe('ash;62,5');
    expect(edited(text.replaceAll(';', '\t'), change(2, { weight_kg: '62.5' }, 'does.csv')).new).toBe('ash\t62.5'); // prettier-ignore
  });

  it('changes nothing where the cell says so already, and knows no row on another line', () => {
    expect(edited(KIDDINGS, change(2, { kids: '2', dry: '' })).text).toBe(KIDDINGS);
    for (const line of [0, 1, 4, 99])
      expect(editTable(KIDDINGS, change(line, { kids: '1' }))).toEqual({ ok: false, why: 'no such row' });
    expect(editTable(null, change(2, { kids: '1' }))).toEqual({ ok: false, why: 'no such row' });
  });

  it('does not touch a table whose headings are in doubt', () => {
    const done = editTable('doe,date,weand\nash,2026-03-01,\n', change(2, { weaned: '2026-05-09' }));
    expect(done).toMatchObject({ ok: false, why: 'faulty', faults: [{ found: 'the heading "weand"', nearest: 'weaned' }] }); // prettier-ignore
  });
});

describe('a new row', () => {
  const row: HerdChange = { kind: 'add', file: 'treatments.csv', cells: { doe: 'ash', from: '2026-03-01', what: 'drench, white' } }; // prettier-ignore

  it('begins a table that is not there yet, empty or only a mark', () => {
    const whole = '\ufeffdoe,from,until,what,note\nash,2026-03-01,,"drench, white",\n';
    expect(edited(null, row).text).toBe(whole);
    expect(edited('\ufeff', row).text).toBe(whole);
    expect(edited('', row).text).toBe(whole.slice(1));
  });

  it('comes last, in the columns of the table and in its way of ending', () => {
    const add: HerdChange = { kind: 'add', file: 'kiddings.csv', cells: { doe: 'cob', date: '2026-04-01' } };
    expect(edited(KIDDINGS, add).text).toBe(`${KIDDINGS}cob,2026-04-01,,,,\r\n`);
    expect(edited('date\tfarm\tdoe\n2026-03-01\tx\tash', add).text).toBe('date\tfarm\tdoe\n2026-03-01\tx\tash\n2026-04-01\t\tcob'); // prettier-ignore
    expect(edited('"doe","date"\n"ash","2026-03-01"\n', add).text).toBe('"doe","date"\n"ash","2026-03-01"\n"cob","2026-04-01"\n'); // prettier-ignore
  });
});

describe('a row that is taken out', () => {
  it('takes its own line along and no other', () => {
    const out = (line: number): HerdChange => ({ kind: 'remove', file: 'kiddings.csv', line });
    expect(edited(KIDDINGS, out(2)).text).toBe('doe,date,kids,apart,weaned,dry\r\nbay,2026-03-05,1\r\n');
    expect(edited(KIDDINGS.trimEnd(), out(3)).text).toBe(
      'doe,date,kids,apart,weaned,dry\r\nash,2026-03-01,2,,,',
    );
  });
});

// Random tables in any dialect that the farm folder allows.
const word = fc.oneof(
  { weight: 4, arbitrary: fc.stringMatching(/^[a-z0-9 äñ-]{0,8}$/).map((text) => text.trim()) },
  fc.constantFrom('', '2026-03-01', 'a,b', 'c;d', 'said "no"', 'e\tf', '62,5', '山羊 🐐'),
);
const COLUMNS = [...HERD_COLUMNS['treatments.csv'], 'vet', 'pen'];
const tables = fc.record({
  separator: fc.constantFrom(',', ';', '\t'),
  lineBreak: fc.constantFrom('\n', '\r\n', '\r'),
  mark: fc.constantFrom('', '\ufeff'),
  end: fc.constantFrom(true, false),
  columns: fc.shuffledSubarray(COLUMNS, { minLength: COLUMNS.length }),
  quoteAll: fc.boolean(),
  space: fc.constantFrom('', ' '),
  short: fc.boolean(),
  blank: fc.boolean(),
  rows: fc.array(fc.array(word, { minLength: COLUMNS.length, maxLength: COLUMNS.length }), { minLength: 1, maxLength: 6 }),
}); // prettier-ignore
type Table = typeof tables extends fc.Arbitrary<infer T> ? T : never;

function linesOf({ separator, columns, quoteAll, space, short, blank, rows }: Table): string[] {
  const cell = (text: string) =>
    quoteAll || /[",;\t]/.test(text)
      ? `${space}"${text.replaceAll('"', '""')}"${space}`
      : `${space}${text}${space}`;
  const lines = [columns.map(cell).join(separator)];
  for (const [index, row] of rows.entries()) {
    // The first cell keeps a row from being blank; spreadsheets leave empty cells out at a row's end.
    const cells = [row[0] || `r${index}`, ...row.slice(1)];
    while (short && cells.length > 1 && cells.at(-1) === '') cells.pop();
    if (blank) lines.push('');
    lines.push(cells.map(cell).join(separator));
  }
  return lines;
}

describe('any table in any dialect', () => {
  it('has exactly one line changed, and that line says what was asked', () => {
    const asked = fc.record({ from: word, until: word, what: word, note: word }, { requiredKeys: [] });
    fc.assert(
      fc.property(tables, fc.nat(), asked, (table, pick, cells) => {
        const { lineBreak, mark, end, columns, separator } = table;
        const lines = linesOf(table);
        const own = lines.flatMap((line, index) => (index > 0 && line !== '' ? [index] : []));
        const index = own[pick % own.length] ?? 1;
        const text = mark + lines.join(lineBreak) + (end ? lineBreak : '');
        const after = edited(text, change(index + 1, cells, 'treatments.csv')).text;
        const afterLines = after.slice(mark.length).split(lineBreak);
        expect(after.startsWith(mark)).toBe(true);
        expect(after.endsWith(lineBreak)).toBe(end);
        const others = (all: readonly string[]) => all.filter((_, at) => at !== index);
        expect(others(afterLines)).toEqual(others([...lines, ...(end ? [''] : [])]));
        // What the line says, by another reader of CSV than ours.
        const readLine = (line: string | undefined): string[] => {
          const rows: string[][] = parse(line ?? '', { delimiter: separator, relax_column_count: true, trim: true });
          return rows[0] ?? [];
        };
        const [before, now] = [readLine(lines[index]), readLine(afterLines[index])];
        for (const [at, name] of columns.entries()) {
          const wanted = (cells as Record<string, string>)[name] ?? before[at] ?? '';
          expect(now[at] ?? '').toBe(wanted);
        }
      }),
      { numRuns: 400 },
    ); // prettier-ignore
  });

  it('has a new row at its end and all before it as it was, and is the same again once that row is taken out', () => {
    const cells = fc.record({ doe: fc.constant('ash'), from: word, until: word, what: word, note: word });
    fc.assert(
      fc.property(tables, cells, (table, asked) => {
        const { lineBreak, mark, end } = table;
        const lines = linesOf(table);
        const text = mark + lines.join(lineBreak) + (end ? lineBreak : '');
        const after = edited(text, { kind: 'add', file: 'treatments.csv', cells: asked }).text;
        expect(after.startsWith(text)).toBe(true);
        const line = lines.length + 1;
        expect(edited(after, { kind: 'remove', file: 'treatments.csv', line }).text).toBe(text);
      }),
      { numRuns: 200 },
    );
  });
});
