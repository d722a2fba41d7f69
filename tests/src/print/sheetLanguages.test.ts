// Which languages a built site has sheets in, told by the site itself.
import { describe, expect, it } from 'vitest';
import { sheetLanguages } from '../../../src/print/printSheets.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

const page = (lang: string) => `<!doctype html><html class="page" lang="${lang}"><title>x</title>`;

function site(files: Readonly<Record<string, string>>, languages: readonly string[]) {
  const dist = ownFolder();
  writeFiles(dist, files);
  return sheetLanguages(dist, languages);
}

describe('sheetLanguages', () => {
  it('puts the language at the root of the site first', () => {
    const files = { 'index.html': page('es'), 'sheets/3-5/index.html': page('es'), 'en/sheets/3-5/index.html': page('en') }; // prettier-ignore
    expect(site(files, ['en', 'es'])).toEqual(['es', 'en']);
  });

  it('leaves out a language of the farm that the site has no words in', () => {
    const files = { 'index.html': page('en'), 'sheets/3-5/index.html': page('en') };
    expect(site(files, ['fr', 'en'])).toEqual(['en']);
  });

  it('has none in a site without sheets', () => {
    expect(site({ 'index.html': page('en') }, ['en'])).toEqual([]);
    expect(site({}, ['en'])).toEqual([]);
  });
});
