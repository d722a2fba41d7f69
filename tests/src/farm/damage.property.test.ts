// Damage of any kind: a farm with random bytes changed is either read in full or told of with a place.
import { isUtf8 } from 'node:buffer';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFarm, type Fault, type FarmReading } from '../../../src/farm/readFarm.ts';
import { tellFaults } from '../../../src/farm/tell.ts';
import { BOOK, farmWith, HEADING, NOW_MS, SOUND_FARM, type Files } from './farmFolder.ts';

const ROWS = [
  '2026-05-20,am,clover,7 1/2,,kept,"hot, dry",2026-05-20T06:40',
  '2026-05-20,pm,clover,6,cup,fed,"said ""no""\ntwice",',
  '2026-05-21,am,bell,11½,,,,2026-05-21',
  '2026-05-21,pm,bell,,,,ñandú,2026-05-21T17:40-05:00',
];
const SOUND: Files = { ...SOUND_FARM, [BOOK]: `${HEADING}\n${ROWS.join('\n')}\n` };
const TOUCHED = Object.keys(SOUND);

interface Change {
  readonly at: number;
  readonly remove: number;
  readonly insert: Uint8Array;
}

const inserts = fc.oneof(
  fc.uint8Array({ maxLength: 3 }),
  fc
    .constantFrom('"', '""', ',', ';', '\t', '\n', '\r', '-', '0', '9', ' ', ':', '{', '[', '*', '&', '---\n', '\ufeff', '½', '\u0000')
    .map((text) => new TextEncoder().encode(text)),
); // prettier-ignore
const changes = fc.array(fc.record({ at: fc.nat(10_000), remove: fc.nat(4), insert: inserts }), {
  minLength: 1,
  maxLength: 4,
});

function damaged(bytes: Uint8Array, all: readonly Change[]): Uint8Array {
  return all.reduce((before, { at, remove, insert }) => {
    const start = at % (before.length + 1);
    return Buffer.concat([before.subarray(0, start), insert, before.subarray(start + remove)]);
  }, bytes);
}

function checkFault(fault: Fault, bytes: ReadonlyMap<string, Uint8Array>): void {
  for (const words of [fault.file, fault.found, fault.expected, fault.todo]) expect(words).not.toBe('');
  expect(fault.line === null).toBe(fault.column === null);
  if (fault.line === null || fault.column === null) return;
  const content = bytes.get(fault.file) ?? new Uint8Array();
  const lines = new TextDecoder(content.includes(0) ? 'utf-16le' : 'utf-8')
    .decode(content)
    .split(/\r\n|\n|\r/);
  expect(fault.line).toBeLessThanOrEqual(lines.length);
  // What a column is in text that is no text is anybody's guess.
  if (isUtf8(content) && !content.includes(0))
    expect(fault.column).toBeLessThanOrEqual((lines[fault.line - 1] ?? '').length + 1);
}

/** Rows of a file as csv-parse counts them; null where it takes the text for faulty or differently separated. */
function rowCount(bytes: Uint8Array): number | null {
  try {
    const text = new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n');
    const records = parse(text, { record_delimiter: '\n', relax_column_count: true, trim: true });
    return records.filter((cells) => cells.some((cell) => cell.trim() !== '')).length - 1;
  } catch {
    return null;
  }
}

function checkReading(read: FarmReading, dir: string, bytes: ReadonlyMap<string, Uint8Array>): void {
  if (!read.ok) {
    expect(read.faults.length).toBeGreaterThan(0);
    for (const fault of read.faults) checkFault(fault, bytes);
    expect(tellFaults(read.faults, dir).split('\n').length).toBeGreaterThan(read.faults.length);
    return;
  }
  // No row may be lost in silence.
  const counts = { 'does.csv': read.book.does.length, 'kiddings.csv': read.book.kiddings.length, [BOOK]: read.book.rows.length }; // prettier-ignore
  for (const [file, count] of Object.entries(counts)) {
    const outside = rowCount(bytes.get(file) ?? new Uint8Array());
    if (outside !== null && outside >= 0) expect([file, count]).toEqual([file, outside]);
  }
}

describe('a damaged farm', () => {
  it('is never thrown about: it is read in full, or every fault has words and a place that exists', () => {
    const dir = farmWith(SOUND);
    const onDisk = new Map<string, Uint8Array>();
    let taken = 0;
    const hurt = fc.record({ file: fc.constantFrom(...TOUCHED), changes });
    fc.assert(
      fc.property(fc.array(hurt, { minLength: 1, maxLength: 2 }), (hurts) => {
        const bytes = new Map(TOUCHED.map((file) => [file, Buffer.from(SOUND[file] ?? '') as Uint8Array]));
        for (const { file, changes: all } of hurts)
          bytes.set(file, damaged(bytes.get(file) as Uint8Array, all));
        for (const [file, content] of bytes) {
          if (Buffer.compare(content, onDisk.get(file) ?? new Uint8Array()) !== 0)
            writeFileSync(join(dir, file), content);
          onDisk.set(file, content);
        }
        const read = readFarm(dir, { now_ms: NOW_MS });
        if (read.ok) taken += 1;
        checkReading(read, dir, bytes);
      }),
      { numRuns: 500 },
    );
    // The test would prove little if damage were always found, or never.
    expect(taken).toBeGreaterThan(2);
    expect(taken).toBeLessThan(450);
  });
});
