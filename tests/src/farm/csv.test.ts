// The CSV reader beside csv-parse: the same cells for whatever RFC 4180 allows, and places that hold.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cellPlace,
  plainBreaks,
  walkRecords,
  type QuoteFault,
  type Separator,
} from '../../../src/farm/csv.ts';

interface Met {
  readonly cells: readonly string[];
  readonly start: number;
  readonly line: number;
}

function walked(text: string, separator: Separator): { records: Met[]; faults: QuoteFault[] } {
  const [records, faults]: [Met[], QuoteFault[]] = [[], []];
  walkRecords(
    text,
    separator,
    { offset: 0, line: 1 },
    (cells, start, line) => void records.push({ cells: [...cells], start, line }),
    (fault) => void faults.push(fault),
  );
  return { records, faults };
}

const cell = fc.oneof(
  fc.constantFrom('', '"', '""', ',', ';', '\t', '\n', 'a', ' a ', '11½', 'x,y', 'say "no"', 'two\nlines'),
  fc.string({ unit: 'grapheme', maxLength: 8 }),
);
const separators = fc.constantFrom<Separator>(',', ';', '\t');
const needsQuotes = (text: string) => /["\n,;\t]/.test(text);

/** RFC 4180, with quotes where they must be and wherever `quoteAll` says so. */
function written(records: readonly (readonly string[])[], separator: Separator, quoteAll: boolean): string {
  const one = (text: string) => (quoteAll || needsQuotes(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return records.map((cells) => cells.map(one).join(separator)).join('\n');
}

describe('walkRecords', () => {
  const records = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 });

  it('reads back what RFC 4180 writes, as csv-parse does', () => {
    fc.assert(
      fc.property(records, separators, fc.boolean(), (all, separator, quoteAll) => {
        const text = written(all, separator, quoteAll);
        const { records: read, faults } = walked(text, separator);
        expect(faults).toEqual([]);
        expect(read.map(({ cells }) => cells)).toEqual(all);
        const outside = parse(text, {
          delimiter: separator,
          record_delimiter: '\n',
          relax_column_count: true,
        });
        expect(read.map(({ cells }) => cells)).toEqual(outside);
      }),
      { numRuns: 400 },
    );
  });

  it('gives the place at which each cell starts', () => {
    fc.assert(
      fc.property(records, separators, fc.boolean(), (all, separator, quoteAll) => {
        const text = written(all, separator, quoteAll);
        for (const record of walked(text, separator).records)
          record.cells.forEach((value, index) => {
            const { line, column } = cellPlace(text, separator, record, index);
            const rest = [
              ...text
                .split('\n')
                .slice(line - 1)
                .join('\n'),
            ]
              .slice(column - 1)
              .join('');
            const quoted = quoteAll || needsQuotes(value);
            expect(rest.startsWith(quoted ? `"${value.replaceAll('"', '""')}"` : value)).toBe(true);
          });
      }),
      { numRuns: 200 },
    );
  });

  it('on any text: ends, agrees with csv-parse wherever it finds no fault, and stays on lines that exist', () => {
    const wild = fc.array(fc.constantFrom('"', '""', ',', '\n', 'a', ' ', 'b"c'), { maxLength: 40 }).map((parts) => parts.join('')); // prettier-ignore
    fc.assert(
      fc.property(wild, (text) => {
        const { records: read, faults } = walked(text, ',');
        const lines = text.split('\n').length;
        for (const { line } of [...read, ...faults.map(({ place }) => place)])
          expect(line).toBeLessThanOrEqual(lines);
        if (faults.length > 0 || / "|" /.test(text)) return;
        const outside = parse(text, {
          record_delimiter: '\n',
          relax_column_count: true,
          skip_empty_lines: true,
        });
        expect(read.map(({ cells }) => cells)).toEqual(outside);
      }),
      { numRuns: 2000 },
    );
  });

  it('finds a fault wherever csv-parse does', () => {
    for (const text of ['a,"b', 'a,b"c', 'a,"b"c,d', '"', '"""', 'a\n"b"c\nd']) {
      expect(walked(text, ',').faults, text).not.toEqual([]);
      expect(() => parse(text, { relax_column_count: true }), text).toThrow();
    }
  });
});

describe('plainBreaks', () => {
  it('makes every line break one line feed', () => {
    expect(plainBreaks('a\r\nb\rc\nd\r\r\n')).toBe('a\nb\nc\nd\n\n');
  });
});
