// The swap is whole: cut anywhere, either the old site stands or the new one, or the next build mends it.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { recover, sideFolder, swapIn, thisDisk } from '../../../src/build/swap.ts';
import { contentsOf, ownFolder, writeFiles } from './smallFarm.ts';

const OLD_SITE = { 'index.html': 'old', 'assets/a.css': 'old style' };
const NEW_SITE = { 'index.html': 'new', 'assets/b.css': 'new style' };

function twoSites() {
  const root = ownFolder();
  const dist = join(root, 'dist');
  const workshop = join(root, '.pailside');
  const side = sideFolder(workshop, '1-1');
  writeFiles(dist, OLD_SITE);
  writeFiles(side, NEW_SITE);
  return { root, dist, workshop, side };
}

/** A process that swaps and is killed, as by a power cut, right before its act number `last` on the disk. */
function killedSwap(sites: ReturnType<typeof twoSites>, last: number) {
  const swap = join(import.meta.dirname, '../../../src/build/swap.ts');
  const program = `
    import { swapIn, thisDisk } from ${JSON.stringify(swap)};
    let act = 0;
    const step = (work) => (...args) => {
      if ((act += 1) === ${last}) process.kill(process.pid, 'SIGKILL');
      work(...args);
    };
    const disk = { rename: step(thisDisk.rename), remove: step(thisDisk.remove) };
    swapIn(${JSON.stringify(sites.side)}, ${JSON.stringify(sites.dist)}, ${JSON.stringify(sites.workshop)}, '1-1', disk);
  `;
  writeFiles(sites.root, { 'swap.mjs': program });
  return spawnSync(process.execPath, [join(sites.root, 'swap.mjs')], { encoding: 'utf8' });
}

describe('swapIn', () => {
  it('puts the new site in the place of the old one and clears up', () => {
    const { dist, workshop, side } = twoSites();
    swapIn(side, dist, workshop, '1-1');
    expect(contentsOf(dist)).toEqual(NEW_SITE);
    expect(readdirSync(workshop)).toEqual([]);
  });

  it('works where no site stands yet', () => {
    const { root, workshop, side } = twoSites();
    swapIn(side, join(root, 'first'), workshop, '1-1');
    expect(contentsOf(join(root, 'first'))).toEqual(NEW_SITE);
  });

  it('brings the old site back when the new one cannot be moved', () => {
    const { dist, workshop, side } = twoSites();
    const disk = {
      ...thisDisk,
      rename: (from: string, to: string) => {
        if (from === side) throw new Error('no space left on device');
        thisDisk.rename(from, to);
      },
    };
    expect(() => swapIn(side, dist, workshop, '1-1', disk)).toThrow('no space left');
    expect(contentsOf(dist)).toEqual(OLD_SITE);
  });
});

describe('a swap that is killed', () => {
  it.each([
    [1, 'before the first rename', OLD_SITE, false],
    [2, 'between the two renames', OLD_SITE, true],
    [3, 'before the old site is cleared away', NEW_SITE, false],
  ])('at act %i, %s, leaves a whole site after the next build looks', (last, _, site, back) => {
    const sites = twoSites();
    const killed = killedSwap(sites, last);
    expect(killed.signal, killed.stderr).toBe('SIGKILL');
    expect(existsSync(sites.dist)).toBe(!back);
    expect(recover(sites.dist, sites.workshop)).toBe(back);
    expect(contentsOf(sites.dist)).toEqual(site);
    expect(readdirSync(sites.workshop)).toEqual([]);
  });

  it('does not pass for one when nothing cuts it', () => {
    const sites = twoSites();
    expect(killedSwap(sites, 4).status).toBe(0);
    expect(contentsOf(sites.dist)).toEqual(NEW_SITE);
  });
});

describe('recover', () => {
  it('has nothing to do where nothing was ever built', () => {
    const root = ownFolder();
    expect(recover(join(root, 'dist'), join(root, '.pailside'))).toBe(false);
  });

  it('leaves other things of the workshop alone', () => {
    const { dist, workshop } = twoSites();
    writeFiles(workshop, { 'test-dist/index.html': 'x', 'cache/y': 'y' });
    recover(dist, workshop);
    expect(readdirSync(workshop).sort()).toEqual(['cache', 'test-dist']);
  });
});
