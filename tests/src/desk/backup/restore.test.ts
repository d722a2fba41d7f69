// A copy comes back whole or not at all, wherever the restoring is cut off, and what stood is kept.
import { execFile } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'; // prettier-ignore
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { copiesIn, makeCopy } from '../../../../src/desk/backup/copies.ts';
import { mendRestore, restoreCopy, type SwapDisk } from '../../../../src/desk/backup/restore.ts';
import { openKeeper } from '../../../../src/desk/book/keeper.ts';
import { contentsOf, ownFolder, SMALL_FARM, writeFiles } from '../../build/smallFarm.ts';

/** A farm with a copy of its good days, and something else in its place now. */
async function farmAndCopy() {
  const root = ownFolder();
  const farm = join(root, 'here', 'farm');
  const folder = join(root, 'copies');
  writeFiles(farm, { ...SMALL_FARM, 'desk/entries-2026.jsonl': '{"id":"a"}\n', 'sound/año/ñ.txt': 'x' });
  mkdirSync(join(farm, 'photos'));
  const good = contentsOf(farm);
  await makeCopy(farm, folder, '2026-05-20', Date.UTC(2026, 4, 20));
  writeFiles(farm, { 'does.csv': 'broken', 'new.txt': 'since then', '.git/HEAD': 'ref: main' });
  const bad = contentsOf(farm);
  const restoring = { farm, folder, name: '2026-05-20', now_ms: Date.UTC(2026, 4, 21), today: '2026-05-21', time: '064012' }; // prettier-ignore
  const beside = () => readdirSync(dirname(farm)).filter((name) => name !== 'farm');
  return { root, farm, folder, good, bad, restoring, beside };
}

describe('restoreCopy', () => {
  it('puts the copy in place whole, keeps what stood as a copy, and carries version control over', async () => {
    const { farm, folder, good, bad, restoring, beside } = await farmAndCopy();
    expect(await restoreCopy(restoring)).toEqual({ before: '2026-05-21-064012-before-restore', files: Object.keys(good).length }); // prettier-ignore
    expect(contentsOf(farm)).toEqual({ ...good, '.git/HEAD': 'ref: main' });
    expect(readdirSync(join(farm, 'photos'))).toEqual([]);
    expect(beside()).toEqual([]);
    expect(copiesIn(folder).map(({ name }) => name)).toEqual(['2026-05-20', '2026-05-21-064012-before-restore']); // prettier-ignore
    await restoreCopy({ ...restoring, name: '2026-05-21-064012-before-restore', time: '064500' });
    expect(contentsOf(farm)).toEqual(bad);
  });

  it('restores where nothing is left of the farm folder', async () => {
    const { farm, good, restoring } = await farmAndCopy();
    rmSync(farm, { recursive: true });
    expect((await restoreCopy(restoring)).before).toBeNull();
    expect(contentsOf(farm)).toEqual(good);
  });

  it('goes through a link to where the folder truly is', async () => {
    const { root, farm, good, restoring } = await farmAndCopy();
    symlinkSync(farm, join(root, 'link'));
    await restoreCopy({ ...restoring, farm: join(root, 'link') });
    expect(contentsOf(farm)).toMatchObject(good);
    renameSync(farm, join(root, 'here', '.farm-replaced-1'));
    expect(mendRestore(join(root, 'link'))).toBe(true);
    expect(contentsOf(farm)).toMatchObject(good);
  });

  it('touches nothing where there is no such copy, or a damaged one, and says which there are', async () => {
    const { farm, folder, bad, restoring } = await farmAndCopy();
    for (const name of ['2026-05-19', '../2026-05-20', '', 'farm'])
      await expect(restoreCopy({ ...restoring, name })).rejects.toThrow(/There is no copy ".*"[^]*There are: 2026-05-20\./); // prettier-ignore
    const path = join(folder, '2026-05-20.zip');
    const bytes = readFileSync(path);
    // Within what farm.yaml holds: its name stands before it.
    const at = bytes.indexOf('farm.yaml') + 30;
    bytes[at] = (bytes[at] ?? 0) ^ 0xff;
    writeFileSync(path, bytes);
    await expect(restoreCopy(restoring)).rejects.toThrow('This copy is damaged');
    expect(contentsOf(farm)).toEqual(bad);
    expect(copiesIn(folder)).toHaveLength(1);
  });

  it('touches nothing where what stands cannot be copied first', async () => {
    const { farm, folder, bad, restoring } = await farmAndCopy();
    // The side file of the copy cannot be made where a folder of its name stands.
    mkdirSync(join(folder, `.2026-05-21-064012-before-restore.${process.pid}.part`, 'x'), {
      recursive: true,
    });
    await expect(restoreCopy(restoring)).rejects.toThrow('could not be copied first');
    expect(contentsOf(farm)).toEqual(bad);
  });

  it('comes out whole, old or new, wherever it is cut off', async () => {
    // Each act on the disk is the last one once.
    for (let acts = 0; acts < 6; acts += 1) {
      const { farm, good, bad, restoring, beside } = await farmAndCopy();
      let left = acts;
      const power = () => {
        if (left === 0) throw new Error('power cut');
        left -= 1;
      };
      const disk: SwapDisk = {
        rename: (from, to) => (power(), renameSync(from, to)),
        remove: (path) => (power(), rmSync(path, { recursive: true, force: true })),
      };
      const ended = await restoreCopy(restoring, disk).then(() => 'through', () => 'cut'); // prettier-ignore
      expect(ended).toBe(acts < 4 ? 'cut' : 'through');
      const back = mendRestore(farm);
      expect(back).toBe(acts === 1);
      expect(contentsOf(farm)).toEqual(acts < 2 ? bad : { ...good, '.git/HEAD': 'ref: main' });
      expect(beside()).toEqual([]);
    }
  });
});

describe('npm run restore', () => {
  const command = async (root: string, ...args: string[]) => {
    const env = { ...process.env, FARM_DIR: join(root, 'here', 'farm'), AS_OF: '', PAILSIDE_WORKSHOP: join(root, 'workshop') }; // prettier-ignore
    const script = join(import.meta.dirname, '..', '..', '..', '..', 'src', 'commands', 'restore.ts');
    const run = promisify(execFile)(process.execPath, ['--disable-warning=ExperimentalWarning', script, ...args], { env }); // prettier-ignore
    return run.then(
      ({ stdout }) => ({ code: 0, said: stdout }),
      (error: { code: number; stderr: string }) => ({ code: error.code, said: error.stderr }),
    );
  };

  it('lists, restores and refuses in plain words', async () => {
    const { root, farm, folder, good } = await farmAndCopy();
    const listed = await command(root, 'list', '--from', folder);
    expect(listed.said).toMatch(/Copies of the farm folder in .*, oldest first:\n\n {2}2026-05-20 +\d+ kB\n/);
    // A desk that is open writes into the folder.
    const keeper = await openKeeper({ farm, now_ms: () => Date.UTC(2026, 4, 21), complain: () => undefined });
    const refused = await command(root, '2026-05-20', '--from', folder);
    expect([refused.code, refused.said]).toEqual([1, 'The desk of this farm is open and writes into its folder. Stop it (Ctrl+C where it runs), then try again.\n']); // prettier-ignore
    await keeper.close();
    const done = await command(root, '2026-05-20.zip', '--from', folder);
    expect(done.said).toContain('The farm folder is the copy "2026-05-20" again');
    expect(done.said).toMatch(/To go back: npm run restore -- \d{4}-\d\d-\d\d-\d{6}-before-restore/);
    expect(contentsOf(farm)).toMatchObject(good);
    expect((await command(root, 'a', 'b')).said).toContain('One copy at a time');
    expect((await command(root, '--form', folder)).said).toContain('npm run restore -- list');
  }, 30_000);

  it('leaves a whole farm folder behind when it is killed at any moment', async () => {
    const { farm, folder, good, beside } = await farmAndCopy();
    const script = join(import.meta.dirname, 'restoreLoop.ts');
    const seen = new Set<string>();
    for (let kill = 0; kill < 5; kill += 1) {
      const child = execFile(process.execPath, [
        '--disable-warning=ExperimentalWarning',
        script,
        farm,
        folder,
      ]);
      const begun = new Promise((done) => child.stdout?.once('data', done));
      const ended = new Promise((done) => child.once('exit', done));
      await begun;
      await new Promise((done) => setTimeout(done, 5 + kill * 29));
      child.kill('SIGKILL');
      await ended;
      mendRestore(farm);
      const now = contentsOf(farm);
      expect(now['.git/HEAD']).toBe('ref: main');
      expect(now['farm.yaml']).toBe(good['farm.yaml']);
      // The loop goes back and forth between the two.
      seen.add(now['does.csv'] === 'broken' ? 'old' : 'new');
      expect(now['does.csv']).toBe(now['new.txt'] === undefined ? good['does.csv'] : 'broken');
      expect(beside()).toEqual([]);
    }
    expect(seen.size).toBeGreaterThan(0);
  }, 60_000);
});
