// Files that are missing, of another kind or in another encoding, and folders that are not as they should be.
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { tellFaults } from '../../../src/farm/tell.ts';
import { BOOK, farmWith, HEADING, NOW_MS, SOUND_FARM, temporaryFolder, told } from './farmFolder.ts';

const text = (start: string, end: string, bytes: number[]) =>
  Buffer.concat([Buffer.from(start), Buffer.from(bytes), Buffer.from(end)]);
const book = `${HEADING}\n2026-05-20,am,clover,7,,,,\n`;

describe('missing', () => {
  it('the folder itself', () => {
    const dir = join(temporaryFolder(), 'nowhere');
    const read = readFarm(dir, { now_ms: NOW_MS });
    if (read.ok) throw new Error('read a folder that is not there');
    expect(tellFaults(read.faults, '/somewhere/farm')).toMatchInlineSnapshot(`
      "The milk book was not taken: 1 thing needs a hand. Nothing was changed.
      The farm folder is /somewhere/farm. Each line says file:line:column.

      the farm folder  found no such folder; expected the farm folder, with farm.yaml, does.csv, kiddings.csv and milkings/ in it; do: check the path in FARM_DIR, or lay out a new folder with "npm run farm -- FOLDER"
      "
    `);
  });
  it('every file', () => {
    expect(told({ 'farm.yaml': null, 'does.csv': null, 'kiddings.csv': null, [BOOK]: null }))
      .toMatchInlineSnapshot(`
      "does.csv  found no such file; expected does.csv in the farm folder; do: put it there; "npm run farm -- FOLDER" lays out an empty one elsewhere to copy

      farm.yaml  found no such file; expected farm.yaml in the farm folder; do: put it there; "npm run farm -- FOLDER" lays out an empty one elsewhere to copy

      kiddings.csv  found no such file; expected kiddings.csv in the farm folder; do: put it there; "npm run farm -- FOLDER" lays out an empty one elsewhere to copy"
    `);
  });
  it('a file under nearly its name', () => {
    const { 'farm.yaml': yaml = '', 'does.csv': does = '' } = SOUND_FARM;
    expect(told({ 'farm.yaml': null, 'farm.yml': yaml, 'does.csv': null, 'Does.CSV': does })).toMatchInlineSnapshot(`
      "does.csv  found no such file; expected does.csv in the farm folder; nearest "Does.CSV"; do: rename that file to does.csv

      farm.yaml  found no such file; expected farm.yaml in the farm folder; nearest "farm.yml"; do: rename that file to farm.yaml"
    `); // prettier-ignore
    expect(told({ [BOOK]: null, 'Milkings/2026-05.csv': book })).toMatchInlineSnapshot(
      `"milkings  found a folder named "Milkings"; expected a folder named milkings; do: rename the folder to milkings"`,
    );
  });
  it('does.csv: no doe is called unknown for that', () => {
    expect(told({ 'does.csv': null })).not.toContain('clover');
  });
  it('the heading of an empty file', () => {
    expect(told({ 'does.csv': '', 'kiddings.csv': '\ufeff \n' })).toMatchInlineSnapshot(`
      "does.csv  found an empty file; expected the headings doe,name,breed,born,weight_kg in the first line; do: write that line; does follow below it, one a line

      kiddings.csv  found an empty file; expected the headings doe,date,kids,apart,weaned,dry in the first line; do: write that line; kiddings follow below it, one a line"
    `);
  });
});

describe('of another kind', () => {
  it.each<[string, Buffer]>([
    [
      'a spreadsheet or other packed file (.xlsx, .ods, .numbers or .zip)',
      Buffer.from('PK\u0003\u0004\u0014\u0000'),
    ],
    ['an old spreadsheet or document (.xls or .doc)', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1])],
    ['a PDF', Buffer.from('%PDF-1.7\n')],
    ['a picture (PNG)', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a])],
    ['a picture (JPEG)', Buffer.from([0xff, 0xd8, 0xff, 0xe0])],
    ['a picture (GIF)', Buffer.from('GIF89a')],
    ['a packed file (.gz)', gzipSync(book)],
    ['a word-processor document (RTF)', Buffer.from('{\\rtf1 milk}')],
    ['a web page (HTML)', Buffer.from('\ufeff<!DOCTYPE html>\n<html><body><table>')],
    [
      'bytes that no text holds (zeros): a file of another kind, or a damaged one',
      Buffer.concat([Buffer.from(book), Buffer.from([0, 0, 0])]),
    ],
  ])('%s', (found, bytes) => {
    expect(told({ [BOOK]: bytes })).toContain(`${BOOK}  found ${found}; expected`);
  });
  it('says what to do', () => {
    expect(told({ 'does.csv': Buffer.from('PK\u0003\u0004') })).toMatchInlineSnapshot(
      `"does.csv  found a spreadsheet or other packed file (.xlsx, .ods, .numbers or .zip); expected plain text: fields with a separator between them; do: open it in the program that made it and save it as "CSV UTF-8", then put that file here"`,
    );
  });
  it('a spreadsheet, a table under another ending or a folder among the milkings', () => {
    const changes = {
      'milkings/May.xlsx': 'x',
      'milkings/may.tsv': HEADING.replaceAll(',', '\t'),
      'milkings/old/a.csv': book,
    };
    expect(told(changes)).toMatchInlineSnapshot(`
      "milkings/May.xlsx  found a spreadsheet (.xlsx); expected CSV files, whose name ends in .csv; do: open it and save each sheet as "CSV UTF-8" in this folder; move the spreadsheet elsewhere

      milkings/may.tsv  found a table of milkings under another ending; expected CSV files, whose name ends in .csv; do: rename it so that it ends in .csv, or move it elsewhere

      milkings/old  found a folder with 1 file in it; expected the CSV files of the milk book straight in milkings/; do: move its files up into milkings/, or the folder elsewhere"
    `);
  });
  it('a file where a folder should be, and the other way round', () => {
    expect(told({ [BOOK]: null, milkings: book })).toMatchInlineSnapshot(
      `"milkings  found a file; expected a folder with the CSV files of the milk book; do: make a folder milkings and move the file into it"`,
    );
    const dir = farmWith({ 'does.csv': null });
    mkdirSync(join(dir, 'does.csv'));
    const read = readFarm(dir, { now_ms: NOW_MS });
    expect(read.ok ? [] : read.faults.map(({ file, found }) => [file, found])).toEqual([
      ['does.csv', 'a folder'],
    ]);
  });
  it('a file that the system does not hand over', () => {
    const dir = farmWith({ 'does.csv': null, [BOOK]: null });
    symlinkSync('does.csv', join(dir, 'does.csv'));
    mkdirSync(join(dir, 'milkings'));
    symlinkSync('gone.csv', join(dir, BOOK));
    const read = readFarm(dir, { now_ms: NOW_MS });
    expect(read.ok ? '' : tellFaults(read.faults, dir).split('\n').slice(3).join('\n').trimEnd())
      .toMatchInlineSnapshot(`
      "does.csv  found a file that cannot be read (ELOOP); expected a file that can be read; do: see that it is a plain file, closed in other programs, and that you may open it

      milkings/2026-05.csv  found no such file; expected a file that can be read; do: see that it is a plain file, closed in other programs, and that you may open it"
    `);
  });
});

describe('in another encoding', () => {
  it('Windows-1252: the first bad byte, and the other faults of the file', () => {
    const bytes = text(
      `${HEADING}\n2026-05-20,am,clover,7,,,h`,
      'roe,\n2026-05-21,noon,clover,7,,,,\n',
      [0xe9],
    );
    expect(told({ [BOOK]: bytes })).toMatchInlineSnapshot(`
      "milkings/2026-05.csv:2:27  found the byte E9, which Windows-1252 ("ANSI") reads as "é"; expected text in UTF-8; do: open it in a spreadsheet or editor and save it again as "CSV UTF-8", or as text with the encoding UTF-8
      milkings/2026-05.csv:3:12  found "noon"; expected am or pm; do: write am for the morning milking, pm for the evening one"
    `);
  });
  it('a letter of UTF-8 that is cut off', () => {
    expect(
      told({ 'does.csv': text('doe,name\nclover,Clover\nbell,Bell', '', [0xc3]) }),
    ).toMatchInlineSnapshot(
      `"does.csv:3:10  found the byte C3, which Windows-1252 ("ANSI") reads as "Ã"; expected text in UTF-8; do: open it in a spreadsheet or editor and save it again as "CSV UTF-8", or as text with the encoding UTF-8"`,
    );
    expect(told({ 'does.csv': text('doe,name\nclover,é', '\nbell,\n', [0xe2, 0x82]) })).toContain(
      'does.csv:2:9',
    );
  });
  it('UTF-16, with a mark or without, little or big end first', () => {
    expect(told({ [BOOK]: Buffer.from(`\ufeff${book}`, 'utf16le') })).toMatchInlineSnapshot(
      `"milkings/2026-05.csv  found text in UTF-16 ("Unicode"); expected text in UTF-8; do: open it in a spreadsheet or editor and save it again as "CSV UTF-8", or as text with the encoding UTF-8"`,
    );
    expect(told({ [BOOK]: Buffer.from(book, 'utf16le') })).toContain('UTF-16');
    expect(told({ [BOOK]: Buffer.from(`\ufeff${book}`, 'utf16le').swap16() })).toContain('UTF-16');
  });
  it('in farm.yaml', () => {
    const yaml = text(
      'name: Caf',
      `\n${String(SOUND_FARM['farm.yaml']).split('\n').slice(1).join('\n')}`,
      [0xe9],
    );
    expect(told({ 'farm.yaml': yaml })).toMatchInlineSnapshot(
      `"farm.yaml:1:10  found the byte E9, which Windows-1252 ("ANSI") reads as "é"; expected text in UTF-8; do: open it in a spreadsheet or editor and save it again as "CSV UTF-8", or as text with the encoding UTF-8"`,
    );
  });
});

describe('the whole list', () => {
  it('is counted, sorted by file, line and column, and says that nothing was changed', () => {
    const dir = farmWith({
      'farm.yaml': String(SOUND_FARM['farm.yaml']).replace('units: us', 'units: imperial'),
      'kiddings.csv': 'doe,date\nbel,2026-03-03\nclover,3 March\n',
      [BOOK]: `${HEADING}\n2026-05-20,am,clover,lots,,drunk,,\n2026-05-21,noon,clover,25,,,,\n`,
    });
    const read = readFarm(dir, { now_ms: NOW_MS });
    if (read.ok) throw new Error('read a farm with faults');
    expect(tellFaults(read.faults, dir).replace(dir, '/somewhere/farm')).toMatchInlineSnapshot(`
      "The milk book was not taken: 7 things need a hand. Nothing was changed.
      The farm folder is /somewhere/farm. Each line says file:line:column.

      farm.yaml:3:8  found "imperial" for units; expected us or metric; do: write one of the two

      kiddings.csv:2:1  found "bel"; expected the short name of a doe in does.csv; nearest "bell"; do: correct the name, or give her a row in does.csv
      kiddings.csv:3:8  found "3 March"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write the year, the month and the day with a hyphen between them

      milkings/2026-05.csv:2:22  found "lots"; expected a number such as 11, 11.5, 11 1/2 or 11½; do: write the number alone; leave the cell empty to strike the entry out
      milkings/2026-05.csv:2:28  found "drunk"; expected one of kept, withheld, fed, lost; do: write what became of the milk, or leave the cell empty (kept); other words go under note
      milkings/2026-05.csv:3:12  found "noon"; expected am or pm; do: write am for the morning milking, pm for the evening one
      milkings/2026-05.csv:3:24  found 25 cup; expected at most 24 cup from one doe at one milking (largestMilking in farm.yaml); do: check: correct the amount or its unit; or, if she truly gave so much, make largestMilking larger in farm.yaml
      "
    `);
  });
  it('counts one thing as one', () => {
    const read = readFarm(farmWith({ 'does.csv': null }), { now_ms: NOW_MS });
    expect(read.ok ? '' : tellFaults(read.faults, '/x').split('\n')[0]).toBe('The milk book was not taken: 1 thing needs a hand. Nothing was changed.'); // prettier-ignore
  });
  it('has every row of a long book that is wrong throughout', () => {
    const rows = Array.from({ length: 3000 }, (_, index) => `2026-05-20,am,stranger${index},7`);
    expect(told({ [BOOK]: ['date,milking,doe,amount', ...rows].join('\n') }).split('\n')).toHaveLength(3000);
  });
});

describe('AS_OF', () => {
  it('that is no date', () => {
    expect(told({}, '2026-02-30')).toMatchInlineSnapshot(
      `"AS_OF  found "2026-02-30"; expected a day that exists: 2026-02 has 28 days; do: correct the day"`,
    );
    expect(told({}, 'June')).toMatchInlineSnapshot(
      `"AS_OF  found "June"; expected a date as YYYY-MM-DD, for instance 2026-05-21; do: write the year, the month and the day with a hyphen between them"`,
    );
  });
});
