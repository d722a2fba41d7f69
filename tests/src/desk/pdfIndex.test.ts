// The list of printed sheets: newest day first, by language, the youngest first.
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { pdfIndex } from '../../../src/desk/pdfIndex.ts';
import { describeFile } from '../../../src/desk/pdfNames.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

function listOf(files: readonly string[]) {
  const prints = ownFolder();
  writeFiles(prints, Object.fromEntries(files.map((file) => [file, '%PDF-1.4'])));
  return pdfIndex(prints);
}
const linksOf = (html: string) => [...html.matchAll(/<a href="([^"]+)">([^<]*)<\/a>(?: <small>([^<]*))?/g)].map(([, href, title, more]) => `${href} ${title} | ${more}`); // prettier-ignore

describe('pdfIndex', () => {
  it('lists days, languages and bands in their order', () => {
    const html = listOf([
      '2026-05-14/sheets-k-2-en-letter.pdf',
      '2026-05-21/sheets-9-12-en-letter.pdf',
      '2026-05-21/sheets-k-2-en-letter.pdf',
      '2026-05-21/sheets-3-5-es-a4.pdf',
      '2026-05-21/.printed',
    ]);
    expect(html.match(/<h[23]>[^<]*/g)).toEqual(['<h2>2026-05-21', '<h3>English', '<h3>Español', '<h2>2026-05-14', '<h3>English']); // prettier-ignore
    expect(linksOf(html)).toEqual([
      '2026-05-21/sheets-k-2-en-letter.pdf Grades K–2 | Letter',
      '2026-05-21/sheets-9-12-en-letter.pdf Grades 9–12 | Letter',
      '2026-05-21/sheets-3-5-es-a4.pdf Grados 3–5 | A4',
      '2026-05-14/sheets-k-2-en-letter.pdf Grades K–2 | Letter',
    ]);
  });

  it('is valid, whatever a file is called, and says in both languages where there is none', async () => {
    const validator = new HtmlValidate({ extends: ['html-validate:standard'], rules: { 'doctype-style': 'off', 'void-style': 'off', 'no-trailing-whitespace': 'off' } }); // prettier-ignore
    const odd = listOf([
      '2026-05-21/"><script>.pdf',
      '2026-05-21/sheets-grade-K-a-2-copies-ñu-es-a4-large.pdf',
    ]);
    for (const html of [odd, listOf([])]) {
      const { results } = await validator.validateString(html);
      expect(results.flatMap((one) => one.messages.map((message) => message.message))).toEqual([]);
    }
    expect(odd).not.toContain('<script>');
    expect(listOf([])).toMatch(/No sheets have been printed[\s\S]*lang="es">Todavía no hay hojas/);
  });
});

describe('describeFile', () => {
  it.each([
    ['sheets-grade-2-guess-the-pail-30-copies-fern-es-a4-large.pdf', 'es', 'Grado 2', 'guess-the-pail · 30 copias · fern · A4 · letra grande'],
    ['sheets-grade-K-30-copies-en-letter.pdf', 'en', 'Kindergarten', '30 copies · Letter'],
    ['sheets-3-5-clover-es-a4.pdf', 'es', 'Grados 3–5', 'clover · A4'],
    ['sheets-3-5-fr-a4.pdf', 'fr', 'Grades 3–5', 'A4'],
    ['notes.pdf', null, 'notes.pdf', ''],
  ])('reads %s', (file, lang, title, more) => {
    expect(describeFile(file)).toMatchObject({ file, lang, title, more });
  }); // prettier-ignore
});
