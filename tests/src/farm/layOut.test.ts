// A new farm folder: it reads, it names what is still missing, and nothing is ever written over.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { layOutFarm } from '../../../src/farm/layOut.ts';
import { HEADINGS, howToText } from '../../../src/farm/layOutText.ts';
import { readFarm } from '../../../src/farm/readFarm.ts';
import { NOW_MS, temporaryFolder } from './farmFolder.ts';

const NOW = new Date(2026, 5, 1);

describe('layOutFarm', () => {
  it('lays out a folder that reads without a fault and says that it is empty', () => {
    const dir = join(temporaryFolder(), 'new', 'farm');
    expect(layOutFarm(dir, NOW)).toEqual({
      ok: true,
      files: ['README.txt', 'farm.yaml', 'does.csv', 'kiddings.csv', 'treatments.csv', 'milkings/2026.csv'],
    });
    const read = readFarm(dir, { now_ms: NOW_MS });
    expect(read).toMatchObject({
      ok: true,
      farm: { name: 'Our farm', recordUnit: 'cup', largestMilking: { amount: 10, unit: 'L' } },
      book: { does: [], kiddings: [], rows: [] },
      asOfFrom: 'clock',
      notices: [
        { file: 'does.csv', text: 'There is no doe yet: give each one a row.' },
        { file: 'milkings', text: 'There is no milking in the milk book yet.' },
      ],
    });
  });

  it('explains every column, with an example row that reads when it is put in', () => {
    const text = howToText('milkings/2026.csv');
    const columns = Object.values(HEADINGS).flatMap((heading) => heading.split(','));
    for (const column of columns) expect(text).toMatch(new RegExp(`^ {2}${column} `, 'm'));
    const [doe, kidding, treatment, milking] = [...text.matchAll(/^ {2}Example: +(.*)$/gm)].map(
      (match) => match[1],
    );
    const dir = join(temporaryFolder(), 'farm');
    layOutFarm(dir, NOW);
    const examples = [['does.csv', doe], ['kiddings.csv', kidding], ['treatments.csv', treatment], ['milkings/2026.csv', milking]] as const; // prettier-ignore
    for (const [file, row] of examples) writeFileSync(join(dir, file), `${row}\n`, { flag: 'a' });
    const read = readFarm(dir, { now_ms: NOW_MS });
    expect(read).toMatchObject({
      ok: true,
      book: { does: [{ id: 'clover', breed: 'Nubian' }], kiddings: [{ doe: 'clover' }], treatments: [{ doe: 'clover', what: 'medicine for her foot' }], rows: [{ doe: 'clover', amount: { num: 15, den: 2 } }] },
      notices: [],
    }); // prettier-ignore
  });

  it('says a word on every setting, and the lines that are remarks read too once they are none', () => {
    const dir = join(temporaryFolder(), 'farm');
    layOutFarm(dir, NOW);
    const yaml = readFileSync(join(dir, 'farm.yaml'), 'utf8');
    const blocks = yaml.split('\n\n').slice(1);
    for (const block of blocks) expect(block).toMatch(/^# \S.*[.:]\n/);
    const live = yaml.replace(/^# ((?:asOf|contact|stations|taps|visits):|  [-\w]+)/gm, '$1');
    expect(live).not.toBe(yaml);
    writeFileSync(join(dir, 'farm.yaml'), live);
    expect(readFarm(dir, { now_ms: NOW_MS })).toMatchObject({
      ok: true,
      asOfFrom: 'farm.yaml',
      farm: { trip: { farm: { taps: 4, stations: [{ id: 'goat-barn' }, { roofed: false }, {}] }, contact: { emergency: '911' } } },
    }); // prettier-ignore
  });

  it('uses an empty folder, and leaves one with anything in it as it is', () => {
    const dir = temporaryFolder();
    expect(layOutFarm(dir, NOW).ok).toBe(true);
    const full = temporaryFolder();
    writeFileSync(join(full, 'does.csv'), 'mine');
    expect(layOutFarm(full, NOW)).toEqual({
      ok: false,
      why: 'There is something in this folder already (does.csv). Name a new or an empty folder, so that nothing is written over.',
    });
    expect(readdirSync(full)).toEqual(['does.csv']);
    expect(readFileSync(join(full, 'does.csv'), 'utf8')).toBe('mine');
  });

  it('does not take a file for a folder', () => {
    const dir = temporaryFolder();
    writeFileSync(join(dir, 'farm'), 'mine');
    const why = 'There is a file of this name. Name a new or an empty folder.';
    expect(layOutFarm(join(dir, 'farm'), NOW)).toEqual({ ok: false, why });
    expect(layOutFarm(join(dir, 'farm', 'inner'), NOW)).toEqual({ ok: false, why });
  });
});

describe('the command', () => {
  // The tests may run on another Node than the project's own, which runs TypeScript as it is.
  const own = resolve('node_modules/.bin/node');
  const node = existsSync(own) ? own : process.execPath;
  const command = resolve('src/commands/farm.ts');

  it('lays out a folder named from where the person stands, and says what to do next', () => {
    const stand = temporaryFolder();
    const env = { ...process.env, INIT_CWD: stand };
    const said = execFileSync(node, [command, 'our farm'], { env, encoding: 'utf8' });
    expect(said).toContain(`A farm folder is laid out in ${join(stand, 'our farm')}`);
    expect(said).toContain(`FARM_DIR='${join(stand, 'our farm')}' npm start`);
    expect(existsSync(join(stand, 'our farm', 'farm.yaml'))).toBe(true);
    const again = spawnSync(node, [command, 'our farm'], { env, encoding: 'utf8' });
    expect([again.status, again.stdout]).toEqual([1, '']);
    expect(again.stderr).toContain('There is something in this folder already');
  });

  it('asks for a folder where none is named', () => {
    const { status, stderr } = spawnSync(node, [command], { encoding: 'utf8' });
    expect([status, stderr]).toEqual([2, 'Say where the farm folder should be, for instance:  npm run farm -- ../our-farm\n']); // prettier-ignore
  });

  it('keeps a folder that somebody made meanwhile', () => {
    const stand = temporaryFolder();
    mkdirSync(join(stand, 'x', 'milkings'), { recursive: true });
    expect(spawnSync(node, [command, join(stand, 'x')], { encoding: 'utf8' }).status).toBe(1);
  });
});
