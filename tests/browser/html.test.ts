// The built HTML against the standard, every link and file it names, in its folder or below a base path.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtSite, type SiteName, type TestSite } from '../support/builtSite.ts';
import { pagePaths } from '../support/openPages.ts';

const validator = new HtmlValidate({
  extends: ['html-validate:standard', 'html-validate:a11y'],
  rules: {
    // How the generator writes, not what it means.
    'void-style': 'off',
    'attr-quotes': 'off',
    'no-trailing-whitespace': 'off',
    'doctype-style': 'off',
    'no-inline-style': 'off',
    'attribute-boolean-style': 'off',
    'attribute-empty-style': 'off',
  },
});

const fileOf = (site: TestSite, path: string) =>
  join(site.dist, path.endsWith('.html') ? path : `${path}index.html`);

/** Addresses of a page that no file of the site answers, or that leave it. */
function deadLinks(site: TestSite, path: string): string[] {
  const html = readFileSync(fileOf(site, path), 'utf8');
  const named = [
    ...html.matchAll(/\s(?:href|src|component-url|renderer-url|before-hydration-url)="([^"]*)"/g),
  ].map((match) => match[1] ?? '');
  return named.flatMap((address) => {
    const inner = address.replace(/&amp;/g, '&').replace(/[?#].*$/, '');
    if (address.startsWith('#'))
      return html.includes(`id="${address.slice(1)}"`)
        ? []
        : [`/${path} names ${address}, which is nowhere on it`];
    if (/^(mailto|tel|data):/.test(address)) return [];
    if (!inner.startsWith(site.basePath)) return [`/${path} names ${address}, outside of ${site.basePath}`];
    const file = join(site.dist, inner.slice(site.basePath.length), inner.endsWith('/') ? 'index.html' : '');
    return existsSync(file) ? [] : [`/${path} names ${address}, which is no file`];
  });
}

describe.each(['demo', 'winter'] as SiteName[])('the built HTML of the site "%s"', (name) => {
  let site: TestSite;
  beforeAll(async () => {
    site = await builtSite(name);
  });

  it('is valid', async () => {
    const found: string[] = [];
    for (const path of pagePaths(site)) {
      const report = await validator.validateFile(fileOf(site, path));
      for (const { messages } of report.results)
        found.push(
          ...messages.map((one) => `/${path}:${one.line}:${one.column} ${one.ruleId}: ${one.message}`),
        );
    }
    expect(found).toEqual([]);
  });

  it('names only addresses that are there, below its base path', () => {
    const paths = pagePaths(site);
    expect(paths.length).toBeGreaterThan(20);
    expect(paths.flatMap((path) => deadLinks(site, path))).toEqual([]);
  });

  it('names no other machine in styles and scripts', () => {
    const html = pagePaths(site).map((path) => readFileSync(fileOf(site, path), 'utf8'));
    const outside = html.flatMap((text) => [...text.matchAll(/<(?:script|link|img|iframe|source)\b[^>]*?(?:src|href)="(?:https?:)?\/\/[^"]*"/g)].map((match) => match[0])); // prettier-ignore
    expect(outside).toEqual([]);
  });
});

describe('the rules themselves', () => {
  it('catch a paragraph that holds a block, a picture without words and a doubled id', async () => {
    const text =
      '<!doctype html><html lang="en"><head><title>x</title></head><body><p><div id="a"></div></p><img src="x.png"><b id="a"></b></body></html>';
    const { results } = await validator.validateString(text);
    const rules = results.flatMap((one) => one.messages.map((message) => message.ruleId));
    expect(rules).toEqual(expect.arrayContaining(['close-order', 'wcag/h37', 'no-dup-id']));
  });
});
