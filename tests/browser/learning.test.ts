// Every page of a sheet or a lesson, as it is built, describes itself as a learning resource.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { expandJsonLd, learningFaults } from '../support/jsonLd.ts';
import { pagePaths } from '../support/openPages.ts';

const CARRIED = /<script type="application\/ld\+json"[^>]*>([\s\S]*?)<\/script>/g;
let site: TestSite;
let paths: string[];

beforeAll(async () => {
  site = await builtSite('demo');
  paths = pagePaths(site);
});

/** What is wrong with the data on a page. */
async function pageFaults(path: string): Promise<string[]> {
  const html = readFileSync(join(site.dist, path, 'index.html'), 'utf8');
  const carried = [...html.matchAll(CARRIED)].map((match) => match[1] ?? '');
  if (carried.length !== 1) return [`/${path} carries ${carried.length} descriptions`];
  const nodes = await expandJsonLd(JSON.parse(carried[0] ?? ''));
  const lang = path.startsWith('es/') ? 'es' : 'en';
  return learningFaults(nodes, lang).map((fault) => `/${path} ${fault}`);
}

describe('learning resources', () => {
  it.each(['sheets', 'lessons'])('stand on every page of %s, in both languages', async (room) => {
    const own = paths.filter((path) => new RegExp(`^(es/)?${room}/[^/]+/$`).test(path));
    expect(own.filter((path) => path.startsWith('es/')).length).toBeGreaterThanOrEqual(12);
    expect(own.length % 2).toBe(0);
    expect((await Promise.all(own.map(pageFaults))).flat()).toEqual([]);
  });

  it('stand nowhere else', () => {
    const others = paths.filter((path) => !/(^|\/)(sheets|lessons)\/./.test(path));
    const carrying = others.filter((path) => {
      const file = path.endsWith('.html') ? path : `${path}index.html`;
      return readFileSync(join(site.dist, file), 'utf8').includes('application/ld+json');
    });
    expect(carrying).toEqual([]);
  });
});
