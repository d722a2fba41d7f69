// The Word document of a lesson: whole, well-formed, with all that the plan says, and read by other programs.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { wordFile } from '../../../src/components/bench/wordFile.ts';
import { unzip } from '../../support/unzip.ts';
import { wordPlan } from '../../support/wordPlan.ts';

const has = (tool: string) => spawnSync('which', [tool]).status === 0;
const textOf = (xml: string) =>
  xml
    .replace(/<\/w:p>/g, '\n')
    .replace(/<[^>]+>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');

let folder = '';
let bytes: Buffer;
let parts: Map<string, Buffer>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'word-'));
  bytes = Buffer.from(await (await wordFile(wordPlan('en'))).arrayBuffer());
  writeFileSync(join(folder, 'plan.docx'), bytes);
  parts = unzip(bytes);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('wordFile', () => {
  it('is a package with the parts that Word asks for', () => {
    expect([...parts.keys()]).toEqual(expect.arrayContaining(['[Content_Types].xml', '_rels/.rels', 'word/document.xml', 'word/styles.xml', 'word/numbering.xml'])); // prettier-ignore
    expect(parts.get('[Content_Types].xml')?.toString()).toContain('wordprocessingml.document.main+xml');
  });

  it('says title, farm, clock, texts, materials, cautions and standards with their notices', () => {
    const lines = textOf(parts.get('word/document.xml')?.toString() ?? '').split('\n');
    expect(lines).toEqual(
      expect.arrayContaining([
        'Grade 2, 30 minutes, before the visit',
        'Hobnail & Hill',
        '42 × paper cup (2 for each child)',
        'pail: a bucket',
        '9:30',
        '1. Title of pail.hello',
        'What is in the pail? <Milk> & more.',
        'Count every cup. Slowly.',
        'Fill a jar.',
        'For the teacher: Four cups fill a quart.',
        'Tell a friend: «ñandú», “milk”.',
        '10:00',
        'Sheet · Sheet: Cups we can count',
      ]),
    );
    const text = lines.join('\n');
    expect(text).toMatch(/1-LS1-2\*: \S/);
    expect(text).toContain('registered trademark of WestEd');
    expect(text).toContain('National Governors Association');
    expect(text).toContain('Nobody has certified it');
  });

  it('carries title and language, on the paper of the farm', async () => {
    expect(parts.get('docProps/core.xml')?.toString()).toContain('<dc:title>Grade 2, 30 minutes, before the visit</dc:title>');
    expect(parts.get('word/document.xml')?.toString()).toMatch(/<w:pgSz w:w="12240" w:h="15840"/);
    const spanish = unzip(Buffer.from(await (await wordFile(wordPlan('es', 'a4'))).arrayBuffer()));
    expect(spanish.get('word/document.xml')?.toString()).toMatch(/<w:pgSz w:w="11906" w:h="16838"/);
    expect(spanish.get('word/styles.xml')?.toString()).toContain('w:val="es"');
    expect(textOf(spanish.get('word/document.xml')?.toString() ?? '')).toContain('Para el docente: ');
  }); // prettier-ignore

  it('names every style that it uses', () => {
    const used = [
      ...(parts
        .get('word/document.xml')
        ?.toString()
        .matchAll(/<w:pStyle w:val="([^"]+)"/g) ?? []),
    ];
    const styles = parts.get('word/styles.xml')?.toString() ?? '';
    expect(used.length).toBeGreaterThan(5);
    for (const [, name] of used) expect(styles).toContain(`w:styleId="${name}"`);
  });
});

describe('other programs', () => {
  it.skipIf(!has('xmllint'))('find every part well-formed (skipped without xmllint)', () => {
    for (const [name, content] of parts) {
      if (!/\.(xml|rels)$/.test(name)) continue;
      const { status, stderr } = spawnSync('xmllint', ['--noout', '--nonet', '-'], { input: content });
      expect(`${name} ${status} ${stderr.toString()}`).toBe(`${name} 0 `);
    }
  });

  it.skipIf(!has('pandoc'))('read headings, table and lists (skipped without pandoc)', () => {
    const text = execFileSync('pandoc', ['-f', 'docx', '-t', 'html', join(folder, 'plan.docx')], { encoding: 'utf8' }); // prettier-ignore
    expect(text).toMatch(/<h1[^>]*>(<strong>)?The steps/);
    expect(text).toMatch(/<h2[^>]*>(<strong>)?2\. Title of pail\.count/);
    expect(text).toMatch(/<ol[^>]*>\s*<li>(<p>)?Fill a jar\./);
    expect(text).toContain('<strong>every</strong>');
  });

  it.skipIf(!has('soffice'))(
    'lay it out on pages (skipped without LibreOffice)',
    { timeout: 120_000 },
    () => {
      const home = `-env:UserInstallation=file://${join(folder, 'office')}`;
      const told = spawnSync('soffice', [home, '--headless', '--convert-to', 'pdf', '--outdir', folder, join(folder, 'plan.docx')], { timeout: 110_000 }); // prettier-ignore
      expect(told.status).toBe(0);
      expect(existsSync(join(folder, 'plan.pdf'))).toBe(true);
      expect(readFileSync(join(folder, 'plan.pdf')).length).toBeGreaterThan(5_000);
      if (!has('pdftotext')) return;
      const text = execFileSync('pdftotext', ['-layout', join(folder, 'plan.pdf'), '-'], {
        encoding: 'utf8',
      });
      for (const line of ['9:30', '1. Title of pail.hello', 'Count every cup. Slowly.', '42 × paper cup']) expect(text).toContain(line); // prettier-ignore
    },
  );
});
