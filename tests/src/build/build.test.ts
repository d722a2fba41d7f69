// The build as a story: what stands afterwards, after success and after every kind of failure.
import { existsSync, readdirSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { build } from '../../../src/build/build.ts';
import { contentsOf, ownFolder, smallWorld, writeFiles } from './smallFarm.ts';

const BROKEN_ROW = { 'milkings/2026-05.csv': 'date,milking,doe,amount\n2026-05-20,am,clovr,8\n' };

describe('build', () => {
  it('puts the new site in place and leaves nothing beside it', async () => {
    const root = ownFolder();
    const { world, heard } = smallWorld(root);
    expect(await build(world)).toMatchObject({ ok: true, fresh: false });
    expect(contentsOf(world.places.dist)).toMatchObject({
      'index.html': '<!doctype html><title>build 1 for the day in farm.yaml</title>',
    });
    expect(readdirSync(world.places.workshop)).toEqual([]);
    expect(heard.said).toMatchInlineSnapshot(`
      [
        "Book read: Stony Brook, 1 doe, 2 rows (0.0 s)",
        "Making the pages … (some seconds)",
        "Pages made: 2 (0.0 s)",
        "Site in place: dist/ (0.0 s)",
        "Done: 2 pages.",
      ]
    `);
  });

  it('replaces the site that stood, file by file', async () => {
    const { world } = smallWorld(ownFolder());
    writeFiles(world.places.dist, { 'gone.html': 'from an older build' });
    await build(world);
    expect(Object.keys(contentsOf(world.places.dist))).toEqual(['.built', 'barn/index.html', 'index.html']);
  });

  it('leaves the standing site byte for byte when the book has a fault, and makes no page', async () => {
    const { world, heard } = smallWorld(ownFolder());
    await build(world);
    const before = contentsOf(world.places.dist);
    writeFiles(world.places.farm, BROKEN_ROW);
    expect(await build(world)).toMatchObject({ ok: false, why: 'book' });
    expect(contentsOf(world.places.dist)).toEqual(before);
    expect(heard.pagesMade).toBe(1);
    expect(heard.complaints.join('\n')).toContain('milkings/2026-05.csv:2:15');
    expect(heard.complaints.join('\n')).toContain('"clover"');
    expect(heard.complaints.join('\n')).toMatch(/\nThe site that stands \(dist\/\) is left as it is\.$/);
  });

  it('leaves the standing site byte for byte when the pages cannot be made', async () => {
    const { world, heard } = smallWorld(ownFolder());
    await build(world);
    const before = contentsOf(world.places.dist);
    const failing = {
      ...world,
      makePages: (env: NodeJS.ProcessEnv) => {
        writeFiles(env['PAILSIDE_OUT'] ?? '', { 'index.html': 'half a site' });
        return Promise.resolve({ code: 1, said: 'src/pages/index.astro: something broke' });
      },
    };
    expect(await build(failing)).toMatchObject({ ok: false, why: 'pages' });
    expect(contentsOf(world.places.dist)).toEqual(before);
    expect(readdirSync(world.places.workshop)).toEqual([]);
    expect(heard.complaints).toMatchInlineSnapshot(`
      [
        "src/pages/index.astro: something broke

      The pages could not be made; the reason stands above. The site that stands (dist/) is left as it is.",
      ]
    `);
  });

  it('does not take pages for made when there is no front page', async () => {
    const { world } = smallWorld(ownFolder());
    const empty = { ...world, makePages: () => Promise.resolve({ code: 0, said: '' }) };
    expect(await build(empty)).toMatchObject({ ok: false, why: 'pages' });
    expect(existsSync(world.places.dist)).toBe(false);
  });

  it('runs one build at a time', async () => {
    const { world, heard } = smallWorld(ownFolder());
    let running = 0;
    let most = 0;
    const slow = {
      ...world,
      makePages: async (env: NodeJS.ProcessEnv) => {
        most = Math.max(most, (running += 1));
        await sleep(50);
        running -= 1;
        return world.makePages(env);
      },
    };
    const results = await Promise.all([build(slow), build(slow), build(slow)]);
    expect(results.map(({ ok }) => ok)).toEqual([true, true, true]);
    expect(most).toBe(1);
    expect(heard.pagesMade).toBe(3);
    expect(heard.said).toContain('Another build is running; waiting for it …');
  });

  it('brings the site back that a build cut off between its two renames had set aside', async () => {
    const { world, heard } = smallWorld(ownFolder());
    writeFiles(world.places.workshop, {
      'old-1-1/index.html': 'the site that stood',
      'build-1-1/index.html': 'the new one, not in place',
    });
    writeFiles(world.places.farm, BROKEN_ROW);
    await build(world);
    expect(contentsOf(world.places.dist)).toEqual({ 'index.html': 'the site that stood' });
    expect(heard.said[0]).toBe('A build was cut off earlier; the site from before is back.');
  });
});

describe('build unless fresh', () => {
  const again = async (change: (root: string) => void, env: NodeJS.ProcessEnv = {}) => {
    const root = ownFolder();
    writeFiles(root, { 'src/pages/index.astro': 'one', 'package-lock.json': '{}' });
    const { world } = smallWorld(root);
    await build(world);
    change(root);
    const second = await build({ ...world, env }, { unlessFresh: true });
    return second.ok && second.fresh;
  };

  it('leaves a site alone that was made from the very same files', async () => {
    expect(await again(() => undefined)).toBe(true);
  });

  it.each([
    [
      'a row of the book',
      { 'farm/milkings/2026-05.csv': 'date,milking,doe,amount\n2026-05-20,am,clover,9\n' },
    ],
    ['a new file of the book', { 'farm/milkings/2026-06.csv': 'date,milking,doe,amount\n' }],
    ['a page', { 'src/pages/index.astro': 'two' }],
    ['a word', { 'content/words/en/site.yaml': 'title: Milk' }],
    ['a picture', { 'public/icon.svg': '<svg/>' }],
    ['the packages', { 'package-lock.json': '{"packages":{}}' }],
  ])('builds again after a change of %s', async (_, files) => {
    expect(await again((root) => writeFiles(root, files))).toBe(false);
  });

  it('builds again for another day and for another base path', async () => {
    expect(await again(() => undefined, { AS_OF: '2026-05-20' })).toBe(false);
    expect(await again(() => undefined, { BASE_PATH: '/visit' })).toBe(false);
  });

  it('builds again on the next day when the clock sets the day', async () => {
    const root = ownFolder();
    const { world } = smallWorld(root);
    const yaml = contentsOf(world.places.farm)['farm.yaml'] ?? '';
    writeFiles(world.places.farm, { 'farm.yaml': yaml.replace(/^asOf.*\n/m, '') });
    await build(world);
    expect(await build(world, { unlessFresh: true })).toMatchObject({ fresh: true });
    const tomorrow = { ...world, now_ms: () => Date.UTC(2026, 4, 22, 15) };
    expect(await build(tomorrow, { unlessFresh: true })).toMatchObject({ fresh: false });
  });
});
