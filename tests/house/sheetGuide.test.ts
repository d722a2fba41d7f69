// The author's guide says what is so: its examples are sheets, its lists are the code's, its faults are the real ones.
// Where tasks or figures came or went, `npx vitest run tests/house/sheetGuide.test.ts -u` writes its lists anew.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { BANDS } from '../../shared/quantity/grade.ts';
import { kindsOf } from '../../shared/tasks/kinds.ts';
import { readSheetFiles } from '../../src/content/sheetFiles.ts';
import { blockOf, FIGURE_IDS, renewGuide } from '../support/sheetGuide.ts';

const FILE = resolve('docs', 'add-a-sheet.md');
const guide = readFileSync(FILE, 'utf8');

describe('docs/add-a-sheet.md', () => {
  it('lists the tasks, figures and faults as they are', async () => {
    await expect(renewGuide(guide)).toMatchFileSnapshot(FILE);
  });

  it('names every task of every band, and no other', () => {
    for (const band of BANDS)
      for (const { name } of kindsOf(band)) expect(guide, `${band} ${name}`).toContain(`\`${name}\``);
    const [, listed = ''] = /<!-- tasks -->([\s\S]*?)<!-- \/tasks -->/.exec(guide) ?? [];
    const names = [...listed.matchAll(/^\| `([^`]+)`/gm)].map((one) => one[1]);
    expect(names.sort()).toEqual(BANDS.flatMap((band) => kindsOf(band).map(({ name }) => name)).sort());
  });

  it('has examples that are taken as they stand, in both languages', () => {
    const dir = mkdtempSync(join(tmpdir(), 'guide-'));
    onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
    for (const lang of ['en', 'es']) {
      mkdirSync(join(dir, lang));
      writeFileSync(join(dir, lang, 'my-first-sheet.md'), blockOf(guide, `example ${lang}`));
    }
    const { sheets, faults, notices } = readSheetFiles(dir, ['en', 'es'], FIGURE_IDS);
    expect({ faults, notices }).toEqual({ faults: [], notices: [] });
    expect(sheets.map(({ plan }) => [plan.name, plan.tasks.length])).toEqual([['my-first-sheet', 2]]);
  });
});
