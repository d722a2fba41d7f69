// The herd's tables under the desk's hand: what is written, what is refused, and what is left of a change that failed.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { HerdChange, HerdFile } from '../../../../shared/book/herdBook.ts';
import { thisDisk, type Disk } from '../../../../src/desk/book/disk.ts';
import { openHerd } from '../../../../src/desk/book/herdKeeper.ts';
import { replaceTable } from '../../../../src/desk/book/replaceTable.ts';
import { BOOK, farmWith, HEADING, NOW_MS, temporaryFolder, type Files } from '../../farm/farmFolder.ts';

const openFarm = (files: Files = {}, disk: Disk = thisDisk, replace = replaceTable) => {
  const farm = farmWith(files);
  const herd = openHerd({ farm, now_ms: () => NOW_MS }, disk, replace);
  const text = (file: string) => readFileSync(join(farm, file), 'utf8');
  const change = (one: HerdChange, saw = herd.read().marks[one.file]) => herd.change({ change: one, saw });
  const journal = () =>
    existsSync(join(farm, 'desk/herd-2026.jsonl'))
      ? text('desk/herd-2026.jsonl').trimEnd().split('\n').map((line) => JSON.parse(line) as Record<string, unknown>)
      : []; // prettier-ignore
  return { farm, herd, text, change, journal };
};
const set = (file: HerdFile, line: number, cells: Record<string, string>): HerdChange => ({ kind: 'change', file, line, cells }); // prettier-ignore
const add = (file: HerdFile, cells: Record<string, string>): HerdChange => ({ kind: 'add', file, cells });
const KIDDINGS = 'doe,date,kids,apart,weaned,dry\nclover,2026-03-03,2,2026-03-24,2026-05-09,\n';

describe('reading', () => {
  it('gives rows as they are written, and what is wrong beside them', () => {
    const { herd } = openFarm({ 'kiddings.csv': 'Date;Doe\n3.3.2026;clover\n' });
    const book = herd.read();
    expect(book).toMatchObject({
      today: '2026-06-01',
      does: [{ doe: 'clover', name: 'Clover', weight_kg: '62', line: 2 }, { doe: 'bell', born: '', line: 3 }],
      kiddings: [{ doe: 'clover', date: '3.3.2026', dry: '', line: 2 }],
      treatments: [],
      marks: { 'treatments.csv': null },
      faults: [{ file: 'kiddings.csv', line: 2, column: 1 }],
    }); // prettier-ignore
  });

  it('tells of milkings under treatment that somebody wrote as kept or fed, newest first, corrections heeded', () => {
    const { herd } = openFarm({
      'treatments.csv': 'doe,from,until\nclover,2026-05-18,2026-05-22\n',
      [BOOK]: [
        HEADING,
        '2026-05-17,am,clover,1,,kept,,',
        '2026-05-18,am,clover,1,,kept,,',
        '2026-05-19,am,clover,1,,,,',
        '2026-05-20,am,clover,1,,kept,,',
        '2026-05-20,am,clover,1,,withheld,,2026-05-20T09:00',
        '2026-05-21,pm,clover,1,,fed,,',
        '2026-05-22,am,clover,1,,kept,,',
      ].join('\n'),
    });
    expect(herd.read().spoken).toEqual([
      { doe: 'clover', date: '2026-05-21', milking: 'pm', use: 'fed' },
      { doe: 'clover', date: '2026-05-18', milking: 'am', use: 'kept' },
    ]);
  });
});

describe('a change', () => {
  it('changes its line alone, and is in the journal with the line as it was and as it became', async () => {
    const { change, text, journal } = openFarm();
    const answer = await change(set('kiddings.csv', 2, { dry: '2026-06-01' }));
    expect(answer).toMatchObject({ ok: true, herd: { kiddings: [{ dry: '2026-06-01' }] } });
    expect(text('kiddings.csv')).toBe(KIDDINGS.replace('05-09,\n', '05-09,2026-06-01\n'));
    expect(journal()).toMatchObject([
      { at: '2026-06-01T17:00:00.000Z', file: 'kiddings.csv', old: 'clover,2026-03-03,2,2026-03-24,2026-05-09,', new: 'clover,2026-03-03,2,2026-03-24,2026-05-09,2026-06-01' },
    ]); // prettier-ignore
  });

  it('makes treatments.csv with its first row, and takes a row out again', async () => {
    const { change, text, journal, herd } = openFarm();
    const row = { doe: 'clover', from: '2026-05-30', what: 'drench, white' };
    expect(await change(add('treatments.csv', row))).toMatchObject({ ok: true });
    expect(text('treatments.csv')).toBe(
      '\ufeffdoe,from,until,what,note\nclover,2026-05-30,,"drench, white",\n',
    );
    expect(herd.read().treatments).toMatchObject([{ doe: 'clover', until: '', what: 'drench, white', line: 2 }]); // prettier-ignore
    expect(await change({ kind: 'remove', file: 'treatments.csv', line: 2 })).toMatchObject({ ok: true });
    expect(herd.read().treatments).toEqual([]);
    expect(journal().map(({ old, new: line }) => [old, line])).toEqual([
      [null, 'clover,2026-05-30,,"drench, white",'],
      ['clover,2026-05-30,,"drench, white",', null],
    ]);
  });

  it('is none where the cells say so already', async () => {
    const { change, journal } = openFarm();
    expect(await change(set('kiddings.csv', 2, { kids: '2' }))).toMatchObject({ ok: true });
    expect(journal()).toEqual([]);
  });

  it('keeps the mode of the file, and a link goes on naming the file that it names', async () => {
    const { farm, change } = openFarm({ 'kiddings.csv': null });
    const elsewhere = join(temporaryFolder(), 'kept.csv');
    writeFileSync(elsewhere, KIDDINGS);
    chmodSync(elsewhere, 0o640);
    symlinkSync(elsewhere, join(farm, 'kiddings.csv'));
    expect(await change(set('kiddings.csv', 2, { kids: '1' }))).toMatchObject({ ok: true });
    expect(readFileSync(elsewhere, 'utf8')).toBe(KIDDINGS.replace(',2,', ',1,'));
    expect(statSync(elsewhere).mode & 0o777).toBe(0o640);
  });

  it('waits for the one before it, and two from the same page do not both win', async () => {
    const { change, herd, journal } = openFarm();
    const saw = herd.read().marks['kiddings.csv'];
    const answers = await Promise.all([
      change(set('kiddings.csv', 2, { dry: '2026-06-01' }), saw),
      change(set('kiddings.csv', 2, { kids: '3' }), saw),
    ]);
    expect(answers.map((one) => one.ok)).toEqual([true, false]);
    expect(answers[1]).toMatchObject({
      why: 'changed',
      herd: { kiddings: [{ kids: '2', dry: '2026-06-01' }] },
    });
    expect(journal()).toHaveLength(1);
  });
});

describe('a change that would make the book faulty', () => {
  it('is refused with the fault and its place, and nothing is written', async () => {
    const { farm, change, text } = openFarm();
    const wrong = [
      [set('kiddings.csv', 2, { weaned: '2026-03-20' }), /expected a date on or after 2026-03-24/],
      [set('does.csv', 2, { doe: 'Clover 2' }), /write it without spaces/],
      [set('does.csv', 2, { doe: 'cleo' }), /expected the short name of a doe/],
      [add('kiddings.csv', { doe: 'clover', date: '2026-03-03' }), /a second time/],
      [add('treatments.csv', { doe: 'clover', from: '2026-05-30', until: '2026-05-29' }), /on or after 2026-05-30/], // prettier-ignore
      [add('does.csv', { doe: 'cleo', born: '2026-06-02' }), /up to today/],
    ] as const;
    for (const [one, words] of wrong) {
      const answer = await change(one);
      expect(answer).toMatchObject({ ok: false, why: 'faulty' });
      expect(JSON.stringify(answer)).toMatch(words);
    }
    expect(text('kiddings.csv')).toBe(KIDDINGS);
    expect(readdirSync(farm).sort()).toEqual(['does.csv', 'farm.yaml', 'kiddings.csv', 'milkings']);
  });

  it('is told from a fault that the book had before, which it may even mend', async () => {
    const { change } = openFarm({
      'kiddings.csv': `${KIDDINGS}clover,2026-05-01,1,2026-04-01,,\n`,
      [BOOK]: `${HEADING}\n2026-05-20,am,clovr,1,,,,\n`,
    });
    const other = await change(set('kiddings.csv', 2, { kids: '1' }));
    expect(other).toMatchObject({ ok: true, herd: { faults: [{ file: 'kiddings.csv' }, { file: BOOK }] } });
    const mended = await change(set('kiddings.csv', 3, { apart: '2026-05-20' }));
    expect(mended).toMatchObject({ ok: true, herd: { faults: [{ file: BOOK }] } });
    expect(await change(set('kiddings.csv', 3, { kids: 'two' }))).toMatchObject({ ok: false, why: 'faulty', faults: [{ file: 'kiddings.csv', line: 3 }] }); // prettier-ignore
  });
});

describe('a file that a spreadsheet saves meanwhile', () => {
  it('stays as it was saved, and the page hears which lines have changed', async () => {
    const { farm, herd, change, text } = openFarm();
    const { marks } = herd.read();
    const saved =
      KIDDINGS.replace('clover,', 'Clover,').replaceAll('\n', '\r\n') + 'bell,2026-05-01,1,,,\r\n';
    writeFileSync(join(farm, 'kiddings.csv'), saved);
    expect(await change(set('kiddings.csv', 2, { kids: '3' }), marks['kiddings.csv'])).toMatchObject({
      ok: false, why: 'changed',
      gone: ['clover,2026-03-03,2,2026-03-24,2026-05-09,'],
      come: ['Clover,2026-03-03,2,2026-03-24,2026-05-09,', 'bell,2026-05-01,1,,,'],
      herd: { kiddings: [{ line: 2 }, { doe: 'bell', line: 3 }] },
    }); // prettier-ignore
    expect(text('kiddings.csv')).toBe(saved);
    expect(await change(set('kiddings.csv', 2, { kids: '3' }), 'a mark of long ago')).toMatchObject({ why: 'changed', gone: null, come: null }); // prettier-ignore
  });

  it('stays so even where it is saved in the moment before the new one takes its place', async () => {
    const saved = `${KIDDINGS}bell,2026-05-01,1,,,\n`;
    const late: typeof replaceTable = (path, bytes, was) => {
      writeFileSync(path, saved);
      replaceTable(path, bytes, was);
    };
    const { farm, change, text } = openFarm({}, thisDisk, late);
    expect(await change(set('kiddings.csv', 2, { kids: '3' }))).toMatchObject({ ok: false, why: 'changed', come: ['bell,2026-05-01,1,,,'] }); // prettier-ignore
    expect(text('kiddings.csv')).toBe(saved);
    expect(readdirSync(farm).filter((name) => name.startsWith('.'))).toEqual([]);
    // A file that was not there when the page looked is not written over either.
    const other: typeof replaceTable = (path, bytes, was) => {
      writeFileSync(path, 'doe,from\n');
      replaceTable(path, bytes, was);
    };
    const second = openFarm({}, thisDisk, other);
    expect(await second.change(add('treatments.csv', { doe: 'clover', from: '2026-05-30' }))).toMatchObject({ ok: false, why: 'changed' }); // prettier-ignore
    expect(second.text('treatments.csv')).toBe('doe,from\n');
  });

  it('is told as changed where it was moved away', async () => {
    const { farm, herd, change } = openFarm();
    const { marks } = herd.read();
    renameSync(join(farm, 'kiddings.csv'), join(farm, 'old kiddings.csv'));
    const answer = await change(set('kiddings.csv', 2, { kids: '3' }), marks['kiddings.csv']);
    expect(answer).toMatchObject({ ok: false, why: 'changed', come: [], herd: { kiddings: [] } });
  });
});

describe('a disk that is full', () => {
  const full = Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });

  it('at the journal: nothing is written, and half a record is cut before the next one', async () => {
    let isFull = true;
    const disk: Disk = {
      ...thisDisk,
      append: async (path, bytes, from) => {
        await thisDisk.append(path, isFull ? bytes.subarray(0, 20) : bytes, from);
        if (isFull) throw full;
      },
      cut: (path, to) => (isFull ? Promise.reject(full) : thisDisk.cut(path, to)),
    };
    const { change, text, journal } = openFarm({}, disk);
    const once = set('kiddings.csv', 2, { kids: '3' });
    expect(await change(once)).toEqual({ ok: false, why: 'not written', code: 'ENOSPC' });
    expect(text('kiddings.csv')).toBe(KIDDINGS);
    isFull = false;
    expect(await change(once)).toMatchObject({ ok: true });
    expect(journal()).toMatchObject([{ new: 'clover,2026-03-03,3,2026-03-24,2026-05-09,' }]);
  });

  it('at the table: the old one stands, nothing is left beside it, and the desk goes on', () => {
    // A limit on the length of files (2 kB in bash) stands for a full disk: the table is longer, the journal is not.
    const rows = Array.from({ length: 120 }, (_, index) => `bell,${1900 + index}-05-01,1,,,`);
    const kiddings = `${KIDDINGS}${rows.join('\n')}\n`;
    const farm = farmWith({ 'kiddings.csv': kiddings });
    const script = 'ulimit -f 2; exec "$0" tests/support/changeHerd.ts "$1" 1 2';
    const { stdout } = spawnSync('bash', ['-c', script, process.execPath, farm], { encoding: 'utf8' });
    expect(stdout.trim().split('\n')).toEqual([
      'not kept 2027-01-02: {"ok":false,"why":"not written","code":"EFBIG"}',
      'not kept 2027-01-03: {"ok":false,"why":"not written","code":"EFBIG"}',
    ]);
    expect(readFileSync(join(farm, 'kiddings.csv'), 'utf8')).toBe(kiddings);
    expect(readdirSync(farm).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it("and a folder that may not be written to: told by the system's own word", async () => {
    const { farm, change, text } = openFarm();
    writeFileSync(join(farm, 'desk'), 'a file where the folder should be');
    expect(await change(set('kiddings.csv', 2, { kids: '3' }))).toMatchObject({ ok: false, why: 'not written', code: 'ENOTDIR' }); // prettier-ignore
    expect(text('kiddings.csv')).toBe(KIDDINGS);
  });
});
