// The setup as it runs: in a small project of its own, with an npm that only pretends to install.
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ownFolder, writeFiles } from '../src/build/smallFarm.ts';

const SCRIPTS = join(import.meta.dirname, '../../scripts');
const LOCK = JSON.stringify({ packages: { '': {}, 'node_modules/milk': { version: '1.0.0' } } });
const INSTALLS = `#!/bin/sh
echo "$@" >> npm-was-called
mkdir -p node_modules
cp package-lock.json node_modules/.package-lock.json
`;
const FAILS = '#!/bin/sh\necho "network is unreachable" >&2\nexit 1\n';

/** A project with a command \`echo\` that tells what it was given and ends with 7. */
function project(npm: string | null) {
  const root = ownFolder();
  cpSync(SCRIPTS, join(root, 'scripts'), { recursive: true });
  writeFiles(root, {
    'package.json': '{"type":"module"}',
    'package-lock.json': LOCK,
    'src/commands/echo.ts': `const given: string[] = process.argv.slice(2);
console.log(JSON.stringify({ given, path: process.env.PATH, telemetry: process.env.ASTRO_TELEMETRY_DISABLED, cwd: process.cwd() }));
process.exit(7);`,
    'src/commands/wait.ts': `process.on('SIGTERM', () => process.exit(9)); console.log('ready'); setInterval(() => 0, 1000);`,
  });
  if (npm !== null) {
    writeFiles(root, { 'bin/npm': npm });
    chmodSync(join(root, 'bin/npm'), 0o755);
  }
  const path = npm === null ? '/nowhere' : `${join(root, 'bin')}:/usr/bin:/bin`;
  const env = { PATH: path, HOME: root };
  const args = (...words: string[]) => [join(root, 'scripts/setup.mjs'), ...words];
  const run = (...words: string[]) =>
    spawnSync(process.execPath, args(...words), { cwd: root, env, encoding: 'utf8' });
  return { root, env, args, run };
}

describe('setup', () => {
  it('installs once, then runs the command with its words, its place and its exit code', () => {
    const { root, run } = project(INSTALLS);
    const first = run('echo', '--band', '3-5', 'two words');
    expect(first.status, first.stderr).toBe(7);
    expect(first.stdout).toContain('Installing what is missing … (about a minute)');
    const told = JSON.parse(first.stdout.trim().split('\n').at(-1) ?? '') as Record<string, unknown>;
    expect(told).toMatchObject({ given: ['--band', '3-5', 'two words'], telemetry: '1', cwd: root });
    expect(String(told['path']).startsWith(join(root, 'node_modules/.bin'))).toBe(true);
    const second = run('echo');
    expect(second.status).toBe(7);
    expect(second.stdout).not.toContain('Installing');
    expect(readFileSync(join(root, 'npm-was-called'), 'utf8').trim().split('\n')).toHaveLength(1);
  });

  it('installs again once the lockfile asks for another version', () => {
    const { root, run } = project(INSTALLS);
    run('echo');
    writeFiles(root, { 'package-lock.json': LOCK.replace('1.0.0', '1.0.1') });
    expect(run('echo').stdout).toContain('Installing what is missing');
  });

  it('says what npm said where it fails, and does not go on', () => {
    const { run } = project(FAILS);
    const { status, stdout, stderr } = run('echo');
    expect(status).toBe(1);
    expect(stdout).not.toContain('given');
    expect(stderr).toContain('network is unreachable');
  });

  it('says so where npm is missing', () => {
    const { status, stderr } = project(null).run('echo');
    expect(status).toBe(1);
    expect(stderr).toContain('apt-get install npm');
  });

  it('names the commands that there are', () => {
    const { status, stderr } = project(INSTALLS).run('ehco');
    expect(status).toBe(1);
    expect(stderr.trim()).toBe('There is no command "ehco". There are: echo, wait.');
  });

  it('runs no file that is not a command', () => {
    const { root, run } = project(INSTALLS);
    writeFiles(root, { 'src/other.ts': 'console.log("ran")' });
    expect(run('../other').stderr).toContain('There is no command');
    expect(existsSync(join(root, 'npm-was-called'))).toBe(false);
  });

  it('hands signals on and ends as the command ends', async () => {
    const { root, env, args } = project(INSTALLS);
    const child = spawn(process.execPath, args('wait'), {
      cwd: dirname(root),
      env,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const code = new Promise((done) => child.on('exit', done));
    child.stdout.on('data', (text: Buffer) => {
      if (String(text).includes('ready')) child.kill('SIGTERM');
    });
    expect(await code).toBe(9);
  });
});
