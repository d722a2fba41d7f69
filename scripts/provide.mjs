// Puts what is missing in place: Node packages, a browser, small programs. Runs on a bare Node 18.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { chooseNode, missingPackages, OLDEST_NODE } from './choose.mjs';
import { findBrowser, isProgram } from './findBrowser.mjs';
import { longStep } from './longStep.mjs';

const RETRY_ms = 24 * 60 * 60 * 1000;

const readJson = (path) => {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
};

/** Where a program lies on the PATH, or null. */
export function onPath(program, env) {
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean);
  return folders.map((folder) => join(folder, program)).find(isProgram) ?? null;
}

/** Runs a command quietly; its last lines come back for the case that it failed. */
function run(command, args, env, cwd) {
  return new Promise((done) => {
    let said = '';
    const child = spawn(command, args, { cwd, env, stdio: ['ignore', 'pipe', 'pipe'] });
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (text) => {
        said = (said + text).slice(-4000);
      });
    child.on('error', (error) => done({ ok: false, said: String(error.message) }));
    child.on('close', (code) => done({ ok: code === 0, said }));
  });
}

const lastLines = (said) =>
  said.trim().split('\n').slice(-12).map((line) => `    ${line}`).join('\n'); // prettier-ignore

/** The environment without this project's own programs on the PATH: they vanish while npm installs. */
function machineEnv(root, env) {
  const own = join(root, 'node_modules');
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => !folder.startsWith(own));
  return { ...env, PATH: folders.join(delimiter), NODE_ENV: 'development' };
}

/** Installs the Node packages of the lockfile unless they are all there. Throws what to do. */
export async function providePackages(root, env, say) {
  const lock = readJson(join(root, 'package-lock.json'));
  if (lock === null) throw new Error('package-lock.json is missing or cut short. Fetch the project again.');
  const installed = readJson(join(root, 'node_modules', '.package-lock.json'));
  const missing = missingPackages(lock, installed);
  if (missing.length === 0) return;
  const plain = machineEnv(root, env);
  const npm = onPath('npm', plain);
  if (npm === null)
    throw new Error(
      'npm is missing, and the packages cannot be installed without it.\n  On Debian: apt-get install npm',
    );
  const step = longStep(say, 'Installing what is missing', 'about a minute');
  const args = ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'];
  const result = await run(npm, args, plain, root);
  step.end(result.ok ? `${missing.length} packages` : 'failed');
  if (!result.ok)
    throw new Error(
      `"npm ci" did not get through. It said:\n${lastLines(result.said)}\n  Is there a network? Then try again: it goes on where it stopped.`,
    );
}

function versionOf(path) {
  const asked = spawnSync(path, ['--version'], { encoding: 'utf8' });
  return asked.status === 0 ? asked.stdout.trim() : '';
}

/** The Node to run with: the machine's own where it is new enough, else the one in node_modules. */
export function provideNode(root, env) {
  const local = join(root, 'node_modules', '.bin', 'node');
  const inside = process.execPath.startsWith(join(root, 'node_modules'));
  const machines = inside && env.npm_node_execpath ? [env.npm_node_execpath] : [];
  const probed = (path) => ({ path, version: isProgram(path) ? versionOf(path) : '' });
  const running = { path: process.execPath, version: process.version };
  const first = chooseNode([...machines.map(probed), running]);
  const chosen = first ?? chooseNode([probed(local)]);
  if (chosen) return chosen.path;
  throw new Error(
    `Node ${process.version} is too old, and none came with the packages for this kind of machine (${process.platform} ${process.arch}).\n` +
      `  Install Node ${OLDEST_NODE.join('.')} or newer (https://nodejs.org), then try again.`,
  );
}

const canApt = (env) => process.getuid?.() === 0 && onPath('apt-get', env) !== null;
let aptIsFresh = false;

/** Installs one Debian package; false where this machine or user cannot. */
async function aptInstall(name, purpose, env, say) {
  if (!canApt(env)) return false;
  const quiet = { ...env, DEBIAN_FRONTEND: 'noninteractive' };
  const step = longStep(say, `Installing Debian's ${name} ${purpose}`, 'about a minute');
  if (!aptIsFresh) aptIsFresh = (await run('apt-get', ['update', '-q'], quiet, '/')).ok;
  const args = ['install', '-y', '-q', '--no-install-recommends', name];
  const result = await run('apt-get', args, quiet, '/');
  step.end(result.ok ? 'done' : 'failed');
  if (!result.ok) say(lastLines(result.said));
  return result.ok;
}

// Remembers that something could not be installed, so that the next start does not try again at once.
const failureMarker = (root, name) => join(root, '.pailside', `no-${name}.json`);
const failedToday = (marker) => Date.now() - (readJson(marker)?.tried_ms ?? 0) < RETRY_ms;
function markFailure(marker) {
  mkdirSync(dirname(marker), { recursive: true });
  writeFileSync(marker, JSON.stringify({ tried_ms: Date.now() }));
}

/**
 * The browser that prints, installed where that is possible: its path, or `{ ok: false, why }`.
 * `patient` is false for a start that should not spend a minute on what failed within the last day.
 */
export async function provideBrowser(root, env, say, patient) {
  const found = findBrowser(env);
  if (found.ok || found.why !== null) return found;
  const marker = failureMarker(root, 'browser');
  if (!patient && failedToday(marker))
    return { ok: false, why: 'none could be installed today; "npm run print" tries again' };
  if (!(await aptInstall('chromium-headless-shell', 'to print with', env, say)))
    await download(root, env, say);
  const now = findBrowser(env);
  if (now.ok) rmSync(marker, { force: true });
  else markFailure(marker);
  return now.ok ? now : { ok: false, why: 'none is on this machine and none could be installed' };
}

async function download(root, env, say) {
  const cli = join(root, 'node_modules', 'playwright-core', 'cli.js');
  const step = longStep(say, "Downloading Playwright's Chromium to print with", 'about a minute');
  const result = await run(process.execPath, [cli, 'install', 'chromium-headless-shell'], env, root);
  step.end(result.ok ? 'done' : 'failed');
}

/**
 * Makes sure of a small program by its Debian package; false where it stays missing. `patient` is false for a start
 * that should not spend a minute on what failed within the last day.
 */
export async function provideProgram({ program, debian, why }, root, env, say, patient) {
  if (onPath(program, env) !== null) return true;
  if (!canApt(env)) return false;
  const marker = failureMarker(root, program);
  if (!patient && failedToday(marker)) return false;
  await aptInstall(debian, `(${why})`, env, say);
  const there = onPath(program, env) !== null;
  if (there) rmSync(marker, { force: true });
  else markFailure(marker);
  return there;
}
