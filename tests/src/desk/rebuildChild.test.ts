// The process that makes the site: its word comes back, its crash is told, and when the desk closes it is gone whole.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { runRebuild } from '../../../src/desk/rebuildChild.ts';
import { ownFolder } from '../build/smallFarm.ts';

const soon = { timeout: 10_000, interval: 20 };

/** Runs a script of these lines as the making of a site. */
function run(lines: readonly string[], signal = new AbortController().signal, grace_ms = 5_000) {
  const folder = ownFolder();
  const script = join(folder, 'making.mjs');
  writeFileSync(script, lines.join('\n'));
  const ended = runRebuild({ script: [script, '--print'], cwd: folder, env: process.env, grace_ms }, signal);
  return { ended, said: (name: string) => Number(readFileSync(join(folder, name), 'utf8')) };
}
const isAlive = (pid: number) => {
  try {
    process.kill(pid, 0);
    // A process that has ended and that nobody has asked for yet is a zombie.
    return !/^State:\s+Z/m.test(readFileSync(`/proc/${pid}/status`, 'utf8'));
  } catch {
    return false;
  }
};
const HOLD = 'setInterval(() => {}, 1000);';
const PARENT = [
  "import { spawn } from 'node:child_process';",
  "import { writeFileSync } from 'node:fs';",
  "const child = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);",
  "writeFileSync('child', String(child.pid)); writeFileSync('own', String(process.pid));",
];

describe('a making in a process of its own', () => {
  it('gives back what it tells, whatever else it says', async () => {
    const report = { ok: false, again: false, failure: { why: 'book', faults: [{ file: 'does.csv', line: 2, column: 1, text: 'found …' }] } }; // prettier-ignore
    const { ended } = run([`console.log('Making the pages');`, `process.send(${JSON.stringify(report)}, () => process.disconnect());`]); // prettier-ignore
    expect(await ended).toEqual(report);
  });

  it('is told with its last words where it breaks, and may be tried again', async () => {
    const { ended } = run(["throw new Error('the disk is full');"]);
    const end = await ended;
    expect(end).toMatchObject({ ok: false, again: true, failure: { why: 'broken' } });
    expect(JSON.stringify(end)).toContain('the disk is full');
  });

  it('has a lower priority than the desk', async () => {
    const { ended, said } = run([
      "import { getPriority } from 'node:os'; import { writeFileSync } from 'node:fs';",
      // It is lowered just after it was started.
      "setTimeout(() => { writeFileSync('priority', String(getPriority())); process.send({ ok: true, fresh: true }, () => process.disconnect()); }, 300);",
    ]);
    expect(await ended).toEqual({ ok: true, fresh: true });
    expect(said('priority')).toBeGreaterThan(0);
  });

  it('ends with all that it has started when it is stopped, and only then is it through', async () => {
    const closing = new AbortController();
    const { ended, said } = run([...PARENT, HOLD], closing.signal);
    await vi.waitFor(() => expect(said('own')).toBeGreaterThan(0), soon);
    expect([isAlive(said('own')), isAlive(said('child'))]).toEqual([true, true]);
    closing.abort();
    expect(await ended).toMatchObject({ ok: false });
    expect(isAlive(said('own'))).toBe(false);
    await vi.waitFor(() => expect(isAlive(said('child'))).toBe(false), soon);
  });

  it('that does not go when it is asked to is ended', async () => {
    const closing = new AbortController();
    const { ended, said } = run([...PARENT, "process.on('SIGTERM', () => {});", HOLD], closing.signal, 200);
    await vi.waitFor(() => expect(said('own')).toBeGreaterThan(0), soon);
    closing.abort();
    await ended;
    expect(isAlive(said('own'))).toBe(false);
  });

  it('is not started once the desk is closing', async () => {
    const closing = new AbortController();
    closing.abort();
    const { ended, said } = run(PARENT, closing.signal);
    expect(await ended).toMatchObject({ ok: false });
    expect(() => said('own')).toThrow();
  });
});
