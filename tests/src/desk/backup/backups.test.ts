// The daily copies: whole, read back, in the right place, told when they fail and never a reason to stop.
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs'; // prettier-ignore
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it, onTestFinished } from 'vitest';
import { copyTrouble, openBackups } from '../../../../src/desk/backup/backups.ts';
import { copiesIn, copyPlace, folderName, makeCopy } from '../../../../src/desk/backup/copies.ts';
import { checkZip } from '../../../../src/desk/backup/zipFolder.ts';
import { contentsOf, ownFolder, SMALL_FARM, writeFiles } from '../../build/smallFarm.ts';

const HOUR_ms = 3_600_000;

function farmAndShed(more: Readonly<Record<string, string>> = {}) {
  const root = ownFolder();
  const farm = join(root, 'farm');
  writeFiles(farm, { ...SMALL_FARM, 'desk/entries-2026.jsonl': '{"id":"a"}\n', 'sound/año/ñandú.txt': 'x'.repeat(70_000), ...more }); // prettier-ignore
  mkdirSync(join(farm, 'photos'));
  const workshop = join(root, '.pailside');
  // A quarter past eleven in the evening at the farm, the day after by the machine's own clock.
  const clock = { ms: Date.UTC(2026, 4, 22, 4, 15) };
  const told: string[] = [];
  const open = () => {
    const backups = openBackups({ farm, workshop, now_ms: () => clock.ms, complain: (text) => void told.push(text) }); // prettier-ignore
    onTestFinished(() => backups.close());
    return backups;
  };
  return { root, farm, workshop, clock, told, open, folder: join(workshop, 'backups', 'stony-brook') };
}

describe('makeCopy', () => {
  it('holds every file as it is, empty folders too, and nothing of version control or of a lock', async () => {
    const { root, farm } = farmAndShed({
      '.git/HEAD': 'ref',
      'desk/.writing': '{"pid":1}',
      '.hidden': 'yes',
    });
    await makeCopy(farm, root, '2026-05-21', Date.UTC(2026, 4, 21));
    const zip = await checkZip(join(root, '2026-05-21.zip'));
    const { files, folders } = zip;
    const wanted = contentsOf(farm);
    delete wanted['.git/HEAD'];
    delete wanted['desk/.writing'];
    expect(Object.fromEntries(files.map((file) => [file, Buffer.from(zip.read(file)).toString('latin1')]))).toEqual(wanted); // prettier-ignore
    expect(folders).toEqual(['desk/', 'milkings/', 'photos/', 'sound/', 'sound/año/']);
    // The farm's book is for the farm: no other user of the machine reads the copies.
    expect(statSync(join(root, '2026-05-21.zip')).mode & 0o777).toBe(0o600);
    expect(readdirSync(root).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('follows links to what they lead to, and not round in a circle', async () => {
    const { root, farm } = farmAndShed();
    writeFiles(root, { 'cloud/2026-06.csv': 'date,milking,doe,amount\n' });
    symlinkSync(join(root, 'cloud'), join(farm, 'more'));
    symlinkSync(farm, join(farm, 'round'));
    symlinkSync(join(root, 'nowhere'), join(farm, 'broken'));
    await makeCopy(farm, root, 'x', 0);
    const { files } = await checkZip(join(root, 'x.zip'));
    expect(files).toContain('more/2026-06.csv');
    expect(files.filter((file) => file.startsWith('round') || file.startsWith('broken'))).toEqual([]);
  });

  it.skipIf(!hasUnzip())('is a zip for other programs too (Info-ZIP, sha256sum)', async () => {
    const { root, farm } = farmAndShed();
    await makeCopy(farm, root, 'x', Date.UTC(1970, 0, 1));
    const env = { ...process.env, LC_ALL: 'C.UTF-8' };
    execFileSync('unzip', ['-q', 'x.zip', '-d', 'out'], { cwd: root, env });
    const checked = execFileSync('sha256sum', ['-c', '.sha256sums'], { cwd: join(root, 'out'), encoding: 'utf8' }); // prettier-ignore
    expect(checked.trim().split('\n')).toHaveLength(Object.keys(contentsOf(farm)).length);
    expect(readFileSync(join(root, 'out', 'farm.yaml'), 'utf8')).toBe(SMALL_FARM['farm.yaml']);
  });

  it('finds a copy damaged after any byte of a file in it has changed', async () => {
    const { root, farm } = farmAndShed();
    await makeCopy(farm, root, 'x', 0);
    const path = join(root, 'x.zip');
    const whole = readFileSync(path);
    const names = Object.keys(unzipSync(whole));
    expect(names.length).toBeGreaterThan(6);
    let found = 0;
    for (let at = 40; at < whole.length; at += 61) {
      const hurt = Buffer.from(whole);
      hurt[at] = (hurt[at] ?? 0) ^ 0x55;
      writeFileSync(path, hurt);
      const checked = await checkZip(path).catch(() => null);
      if (checked === null) found += 1;
      // Times and the like may change; what the files hold may not.
      else for (const file of checked.files) expect(Buffer.from(checked.read(file)).equals(readFileSync(join(farm, file)))).toBe(true); // prettier-ignore
    }
    expect(found).toBeGreaterThan(10);
    writeFileSync(path, whole.subarray(0, whole.length - 30));
    await expect(checkZip(path)).rejects.toThrow();
  });
});

describe('openBackups', () => {
  it("makes the day's copy at once, named by the day on the farm's clock, and none twice", async () => {
    const { open, folder, farm, told, workshop } = farmAndShed();
    const backups = open();
    await backups.look();
    expect(readdirSync(folder)).toEqual(['2026-05-21.zip']);
    const made_ms = statSync(join(folder, '2026-05-21.zip')).mtimeMs;
    await backups.look();
    expect(statSync(join(folder, '2026-05-21.zip')).mtimeMs).toBe(made_ms);
    expect(told).toEqual([]);
    expect(backups.state()).toEqual({ folder, sameDisk: true, copies: ['2026-05-21'], newest_ms: made_ms, failed: null }); // prettier-ignore
    expect(workshop.startsWith(farm)).toBe(false);
  });

  it('makes it anew after some hours, where something has been entered since, and another the day after', async () => {
    const { open, folder, farm, clock } = farmAndShed();
    const backups = open();
    await backups.look();
    const path = join(folder, '2026-05-21.zip');
    const early = (clock.ms - 7 * HOUR_ms) / 1000;
    utimesSync(path, early, early);
    writeFiles(farm, { 'milkings/2026-05.csv': 'date,milking,doe,amount\n2026-05-21,pm,clover,9\n' });
    await backups.look();
    expect(Buffer.from((await checkZip(path)).read('milkings/2026-05.csv')).toString()).toContain('clover,9');
    clock.ms += 24 * HOUR_ms;
    await backups.look();
    expect(copiesIn(folder).map(({ name }) => name)).toEqual(['2026-05-21', '2026-05-22']);
  });

  it('follows the rule, a few copies a day, and leaves files alone that are not its own', async () => {
    const { open, folder, clock } = farmAndShed();
    const old = Array.from({ length: 6 }, (_, at) => `2026-02-0${at + 1}.zip`);
    writeFiles(folder, { ...Object.fromEntries(old.map((name) => [name, 'PK'])), 'notes.zip': 'PK', 'list.txt': 'x', '2026-02-31.zip': 'PK' }); // prettier-ignore
    const backups = open();
    await backups.look();
    expect(readdirSync(folder)).toEqual(['2026-02-04.zip', '2026-02-05.zip', '2026-02-06.zip', '2026-02-31.zip', '2026-05-21.zip', 'list.txt', 'notes.zip']); // prettier-ignore
    await backups.look();
    expect(copiesIn(folder)).toHaveLength(4);
    clock.ms += 24 * HOUR_ms;
    await backups.look();
    expect(copiesIn(folder).map(({ name }) => name)).toEqual(['2026-02-06', '2026-05-21', '2026-05-22']);
  });

  it('goes to the folder that farm.yaml names; where that is not there, to the usual one, and says so once', async () => {
    const { open, folder, farm, root, told } = farmAndShed();
    const stick = join(root, 'stick');
    writeFiles(farm, { 'farm.yaml': `${SMALL_FARM['farm.yaml']}backups: ../stick\n` });
    const backups = open();
    await backups.look();
    await backups.look();
    expect(readdirSync(folder)).toEqual(['2026-05-21.zip']);
    expect(told).toEqual([`The folder for copies is not there: ${stick} (backups: in farm.yaml). The copy went to ${folder} instead.`]); // prettier-ignore
    expect(backups.state().failed).toBe(told[0]);
    mkdirSync(stick);
    await backups.look();
    expect(readdirSync(join(stick, 'stony-brook'))).toEqual(['2026-05-21.zip']);
    expect(backups.state()).toMatchObject({ folder: join(stick, 'stony-brook'), failed: null });
  });

  it('takes no folder within the farm folder: each copy would hold all before it', () => {
    const { farm, workshop } = farmAndShed({ 'kept/x': '' });
    for (const backups of ['kept', '.', join(farm, 'kept')]) {
      const place = copyPlace(farm, workshop, { name: 'Ñandú & Söhne!', timeZone: 'UTC', backups });
      expect(place.folder).toBe(join(workshop, 'backups', 'ñandú-söhne'));
      expect(place.aside).toContain('lies in the farm folder itself');
    }
  });

  it('goes on where it was when farm.yaml cannot be read any more', async () => {
    const { open, farm, folder, workshop, clock } = farmAndShed();
    const backups = open();
    await backups.look();
    writeFiles(farm, { 'farm.yaml': '{' });
    clock.ms += 24 * HOUR_ms;
    await backups.look();
    expect(copiesIn(folder)).toHaveLength(2);
    // A farm that never could be read goes by its folder's name.
    rmSync(join(workshop, 'backups'), { recursive: true });
    await backups.look();
    expect(copiesIn(join(workshop, 'backups', 'farm'))).toHaveLength(1);
  });

  it('tells a failure once, leaves nothing half, and makes the copy when it can', async () => {
    const { open, farm, folder, told, workshop } = farmAndShed();
    writeFiles(workshop, { backups: 'a file where the folder should be' });
    const backups = open();
    await backups.look();
    await backups.look();
    expect(told).toHaveLength(1);
    expect(told[0]).toContain("The day's copy of the farm folder could not be made.");
    expect(backups.state()).toMatchObject({ copies: [], newest_ms: null, failed: told[0] });
    rmSync(join(workshop, 'backups'));
    rmSync(farm, { recursive: true });
    await backups.look();
    expect(told).toHaveLength(2);
    expect(told[1]).toContain(farm);
    expect(Object.keys(contentsOf(workshop))).toEqual([]);
    writeFiles(farm, SMALL_FARM);
    await backups.look();
    expect([copiesIn(folder).length, backups.state().failed]).toEqual([1, null]);
  });

  it('tells where its folder has become a file, and still says the rest', async () => {
    const { open, folder } = farmAndShed();
    const backups = open();
    await backups.look();
    rmSync(folder, { recursive: true });
    writeFileSync(folder, 'a file where the folder was');
    expect(backups.state()).toMatchObject({ folder, copies: [], newest_ms: null });
    expect(backups.state().failed).toContain("The day's copy of the farm folder could not be made.");
    await backups.look();
    expect(backups.state()).toMatchObject({ copies: [], newest_ms: null });
    rmSync(folder);
    await backups.look();
    expect(backups.state()).toMatchObject({ copies: ['2026-05-21'], failed: null });
  });

  it('says what to do about a full disk', () => {
    expect(copyTrouble(Object.assign(new Error('x'), { code: 'ENOSPC' }))).toMatchInlineSnapshot(
      `"The day's copy of the farm folder could not be made. The disk for copies is full. Make room on it, or name another folder in farm.yaml (backups:). The desk goes on without it and tries again."`,
    );
  });

  // Root reads everything, so nothing can be kept from it.
  it.skipIf(process.getuid?.() === 0)('names a file that may not be read', async () => {
    const { open, farm, told } = farmAndShed();
    chmodSync(join(farm, 'does.csv'), 0o000);
    await open().look();
    expect(told.join()).toContain('does.csv');
  });

  it.each([
    ['Hobnail Hill Teaching Dairy', 'hobnail-hill-teaching-dairy'],
    ['  ../../etc  ', 'etc'],
    ['农场', '农场'],
    ['???', 'farm'],
    ['x'.repeat(90), 'x'.repeat(60)],
  ])('names the folder of %j %j', (name, folder) => {
    expect(folderName(name)).toBe(folder);
  });
});

function hasUnzip(): boolean {
  try {
    execFileSync('unzip', ['-v'], { stdio: 'ignore' });
    execFileSync('sha256sum', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
