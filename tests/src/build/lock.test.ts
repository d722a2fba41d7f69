// The lock: one holder at a time, and a dead holder is no holder.
import { existsSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { takeLock, theseProcesses, type Processes } from '../../../src/build/lock.ts';
import { ownFolder, writeFiles } from './smallFarm.ts';

const impatient = { most_ms: 0, every_ms: 5, say: () => undefined };
const machine = (began: Readonly<Record<number, string | undefined>>): Processes => ({
  me: 100,
  began: (pid) => began[pid] ?? null,
});

describe('takeLock', () => {
  it('holds until it is given back', async () => {
    const path = join(ownFolder(), 'new', 'build.lock');
    const giveBack = await takeLock(path, impatient);
    await expect(takeLock(path, impatient)).rejects.toThrow(`process ${process.pid}`);
    giveBack();
    expect(existsSync(path)).toBe(false);
    (await takeLock(path, impatient))();
  });

  it('says what to do when another build goes on for too long', async () => {
    const folder = ownFolder();
    writeFiles(folder, { 'build.lock': '{"pid":7,"began":"then"}' });
    const taken = takeLock(join(folder, 'build.lock'), impatient, machine({ 7: 'then', 100: 'now' }));
    await expect(taken).rejects.toThrowErrorMatchingInlineSnapshot(
      `[Error: Another build is running (process 7). Wait until it is through, then try again.]`,
    );
  });

  it('waits for another build, telling it once', async () => {
    const path = join(ownFolder(), 'build.lock');
    const giveBack = await takeLock(path, impatient);
    const said: string[] = [];
    const second = takeLock(path, { most_ms: 5000, every_ms: 5, say: (line) => void said.push(line) });
    setTimeout(giveBack, 40);
    (await second)();
    expect(said).toEqual(['Another build is running; waiting for it …']);
  });

  it.each([
    ['is gone', '{"pid":7,"began":"then"}', {}],
    ['has had its number given to a later one', '{"pid":7,"began":"then"}', { 7: 'much later' }],
  ])('takes a lock over whose process %s', async (_, lock, others) => {
    const folder = ownFolder();
    writeFiles(folder, { 'build.lock': lock });
    const giveBack = await takeLock(
      join(folder, 'build.lock'),
      impatient,
      machine({ ...others, 100: 'now' }),
    );
    giveBack();
    expect(existsSync(join(folder, 'build.lock'))).toBe(false);
  });

  it('takes over a lock that a power cut left empty, once it is old', async () => {
    const folder = ownFolder();
    writeFiles(folder, { 'build.lock': '' });
    const path = join(folder, 'build.lock');
    await expect(takeLock(path, impatient)).rejects.toThrow('process unknown');
    const aMinuteAgo = Date.now() / 1000 - 60;
    utimesSync(path, aMinuteAgo, aMinuteAgo);
    (await takeLock(path, impatient))();
  });

  it('goes to one alone of many who take a dead lock over at once', async () => {
    const folder = ownFolder();
    writeFiles(folder, { 'build.lock': '{"pid":7,"began":"then"}' });
    const path = join(folder, 'build.lock');
    const tries = Array.from({ length: 8 }, () => takeLock(path, impatient, machine({ 100: 'now' })));
    const settled = await Promise.allSettled(tries);
    expect(settled.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });
});

describe('theseProcesses', () => {
  it('knows its own process as alive and a number beyond all as gone', () => {
    expect(theseProcesses.began(process.pid)).not.toBeNull();
    expect(theseProcesses.began(process.pid)).toBe(theseProcesses.began(process.pid));
    // Linux numbers processes up to 2^22 at most.
    expect(theseProcesses.began(2 ** 22 + 1)).toBeNull();
  });
});
