// Sheets as a coordinator writes them: what is wrong is told with its line, all at once.
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tellContentFaults } from '../../../src/content/contentFault.ts';
import { readSheetFile } from '../../../src/content/sheetFile.ts';
import { readSheetFiles } from '../../../src/content/sheetFiles.ts';

const FIGURES = ['herd.week.total', 'herd.day.total'];
const HEAD = 'title: Cups\nband: k-2\nwhen: before\nminutes: 20\nabout: Count cups.';
const sheet = (body: string, head = HEAD): string => `---\n${head}\n---\n${body}`;
const faultsOf = (written: string): string => {
  const reading = readSheetFile('content/sheets/en/new.md', 'new', written, FIGURES);
  return reading.ok
    ? 'no fault'
    : tellContentFaults(reading.faults).replace(/ has count-cups, .*/g, ' has …');
};

describe('readSheetFile', () => {
  it('reads tasks in order and the texts between them', () => {
    const reading = readSheetFile(
      'a.md',
      'a',
      sheet('\nLook at\nthe pail.\n\n- count-cups\nNow fill.\n- fill-jars\n\nDone.\n'),
      FIGURES,
    );
    if (!reading.ok) throw new Error('a sheet was expected');
    expect(reading.sheet.plan.tasks).toEqual(['count-cups', 'fill-jars']);
    expect(reading.sheet.texts).toEqual([
      { before: 0, text: 'Look at the pail.' },
      { before: 1, text: 'Now fill.' },
      { before: 2, text: 'Done.' },
    ]);
    expect(reading.sheet.taskLines).toEqual([12, 14]);
  });

  it('names everything at once: task, figure and standard, each with its line and the nearest name', () => {
    const head = `${HEAD}\nstandards:\n  - K.CC.B.5\n  - K.CC.B.55`;
    expect(
      faultsOf(
        sheet('{herd.weak.total} of milk.\n\n- count-cups\n- fil-jars\n- mean-week\n- count-cups\n', head),
      ),
    ).toMatchInlineSnapshot(`
      "content/sheets/en/new.md:9  there is no standard "K.CC.B.55" in our list; did you mean "K.CC.B.5"?
      content/sheets/en/new.md:11  there is no figure "herd.weak.total"; did you mean "herd.week.total"?
      content/sheets/en/new.md:14  there is no task "fil-jars"; did you mean "fill-jars"?
      content/sheets/en/new.md:15  "mean-week" is a task for another grade band; k-2 has …
      content/sheets/en/new.md:16  "count-cups" stands on this sheet twice; take one out."
    `);
  });

  it('takes no name for a standard that only the language of this program knows, and none for older children', () => {
    const head = `${HEAD}\nstandards: [constructor, HSS-ID.A.2]`;
    expect(faultsOf(sheet('- count-cups\n', head))).toMatchInlineSnapshot(`
      "content/sheets/en/new.md:7  there is no standard "constructor" in our list; the page of standards shows all.
      content/sheets/en/new.md:7  the standard "HSS-ID.A.2" is for older children than k-2; take it out or choose one of the band."
    `);
  });

  it('names fields that are missing, miswritten or unknown', () => {
    expect(faultsOf(sheet('- count-cups', 'title: Cups\nband: k-3\nminutes: soon\ncolor: red')))
      .toMatchInlineSnapshot(`
        "content/sheets/en/new.md:1  "when" is missing: one of before, at, after stands here.
        content/sheets/en/new.md:1  "about" is missing: write something here.
        content/sheets/en/new.md:3  "band": one of k-2, 3-5, 6-8, 9-12 stands here.
        content/sheets/en/new.md:4  "minutes": a whole number from 3 to 120 stands here.
        content/sheets/en/new.md:5  "color" is no field of this head; take it out or look for a slip of the pen."
      `);
  });

  it('names a head that is none or no YAML, and a sheet without a task', () => {
    expect([faultsOf('- count-cups'), faultsOf('---\nband: [k-2\n---\n'), faultsOf(sheet('Only text.'))])
      .toMatchInlineSnapshot(`
        [
          "content/sheets/en/new.md:1:1  the file begins with a head: a line "---", the fields, and a line "---" again.",
          "content/sheets/en/new.md:2:11  the head is no YAML here: Flow sequence in block collection must be sufficiently indented and end with a ].
        content/sheets/en/new.md:4  the sheet has no task; below its head each task stands on a line of its own, as "- count-cups".",
          "content/sheets/en/new.md:8  the sheet has no task; below its head each task stands on a line of its own, as "- count-cups".",
        ]
      `);
  });
});

describe('the head of a file', () => {
  it('says so where a value begins with a star, which YAML takes for a name that it must know', () => {
    expect(faultsOf('---\nband: k-2\ntitle: *Milk*\n---\n- count-cups\n')).toMatchInlineSnapshot(
      `"content/sheets/en/new.md:3:8  the head has a value that begins with a star; put it in quotation marks."`,
    );
  });
});

describe('readSheetFiles', () => {
  it('holds the languages against each other', () => {
    const dir = mkdtempSync(join(tmpdir(), 'sheets-'));
    for (const lang of ['en', 'es']) mkdirSync(join(dir, lang));
    writeFileSync(join(dir, 'en', 'a.md'), sheet('- count-cups\n- fill-jars\n'));
    writeFileSync(
      join(dir, 'es', 'a.md'),
      sheet('- count-cups\n- kids-milk\n', `${HEAD.replace('20', '25')}\nstandards: [K.CC.B.5]`),
    );
    writeFileSync(join(dir, 'en', 'b.md'), sheet('- count-cups\n'));
    const { faults, notices, sheets } = readSheetFiles(dir, ['en', 'es'], FIGURES);
    expect(sheets.map(({ plan }) => plan.name)).toEqual(['a', 'b']);
    expect(tellContentFaults(faults)).toMatchInlineSnapshot(`
      "content/sheets/es/a.md:1  "minutes" is 25 here and 20 in content/sheets/en/a.md; both languages need the same.
      content/sheets/es/a.md:1  "standards" is K.CC.B.5 here and empty in content/sheets/en/a.md; both languages need the same.
      content/sheets/es/a.md:10  task 2 is "kids-milk" here and "fill-jars" in content/sheets/en/a.md; both languages need the same tasks in the same order."
    `);
    expect(notices.map(({ file, text }) => `${file}  ${text}`)).toMatchInlineSnapshot(`
      [
        "content/sheets/en/b.md  This sheet is not written in "es" yet, so the pages in it leave it out.",
      ]
    `);
  });

  it('names a file whose name can be no address, and passes over hidden ones', () => {
    const dir = mkdtempSync(join(tmpdir(), 'sheets-'));
    mkdirSync(join(dir, 'en'));
    for (const name of ["Kids' milk.md", 'a,b.md', 'cups.txt', '.DS_Store', '-cups.md'])
      writeFileSync(join(dir, 'en', name), sheet('- count-cups\n'));
    const { faults, sheets } = readSheetFiles(dir, ['en'], FIGURES);
    expect(sheets).toEqual([]);
    expect(faults.map(({ file }) => file)).toEqual([
      'content/sheets/en/-cups.md',
      "content/sheets/en/Kids' milk.md",
      'content/sheets/en/a,b.md',
      'content/sheets/en/cups.txt',
    ]);
  });
});
