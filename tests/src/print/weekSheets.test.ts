// The week's sheets are printed once for a site, and again for another one or where a file is gone.
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { build } from '../../../src/build/build.ts';
import { deskSettings, openDesk } from '../../../src/desk/serve.ts';
import { printWeekSheets } from '../../../src/print/weekSheets.ts';
import { ownFolder, smallWorld, writeFiles } from '../build/smallFarm.ts';

const BANDS = ['3-5', '6-8', '9-12', 'k-2'];
const ROOM =
  '<!doctype html><html lang="en" data-sheet-ready="yes" data-pack-made="1/1"><head><title>room</title></head><body>x</body></html>';
const SHELF = {
  langs: ['en'],
  sheets: BANDS.map((band) => ({ name: `of-${band}`, band, when: 'before', minutes: 20, langs: ['en'] })),
  word: '2026-05-21',
  paper: 'letter',
};

async function builtWorld(shelf: typeof SHELF | null = SHELF) {
  const { world, heard } = smallWorld(ownFolder());
  const result = await build(world);
  if (!result.ok) throw new Error(heard.complaints.join());
  writeFiles(world.places.dist, {
    'index.html': '<!doctype html><html lang="en"><title>front</title></html>',
    ...(shelf === null ? {} : { 'print/index.html': ROOM, 'print/shelf.json': JSON.stringify(shelf) }),
  });
  const folder = join(world.places.prints, '2026-05-21');
  let served = 0;
  const serve = () => {
    served += 1;
    return openDesk(deskSettings(world.places, {}), 0);
  };
  return {
    folder,
    times: () => served,
    print: (fingerprint: string) => printWeekSheets(world, result.reading, fingerprint, serve),
  };
}

describe('printWeekSheets', () => {
  it('prints every band into the folder of the day, once for a site', async () => {
    const { folder, print, times } = await builtWorld();
    await print('one');
    expect(readdirSync(folder).sort()).toEqual([
      '.printed',
      ...BANDS.map((band) => `sheets-${band}-en-letter.pdf`),
    ]);
    await print('one');
    expect(times()).toBe(1);
    await print('two');
    expect(times()).toBe(2);
  });

  it('prints again where a sheet was thrown away', async () => {
    const { folder, print, times } = await builtWorld();
    await print('one');
    rmSync(join(folder, 'sheets-3-5-en-letter.pdf'));
    await print('one');
    expect(times()).toBe(2);
    expect(readdirSync(folder)).toContain('sheets-3-5-en-letter.pdf');
  });

  it('prints nothing of a site without sheets', async () => {
    const { print, times } = await builtWorld(null);
    await print('one');
    const none = await builtWorld({ ...SHELF, sheets: [] });
    await none.print('one');
    expect(times() + none.times()).toBe(0);
  });
});
