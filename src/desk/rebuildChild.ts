// Makes the site and prints in a process of its own, of low priority: entries are answered meanwhile.
import { spawn, type ChildProcess } from 'node:child_process';
import { statSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { join, relative } from 'node:path';
import { FINGERPRINT_FILE } from '../build/fingerprint.ts';
import type { Places } from '../build/places.ts';
import { brokenEnd, type Rebuilder, type Rebuilt, type RebuildWork } from './rebuild.ts';
import { watchFolder } from './watchFolder.ts';

/** What the process tells when it is through. */
export type RebuildReport = Rebuilt;

/** How the process is run, so that a test can run another. */
export interface RebuildChild {
  /** The script, its options after it. */
  readonly script: readonly string[];
  readonly cwd: string;
  readonly env: NodeJS.ProcessEnv;
  /** How long it may take to go when it is asked to, ms. */
  readonly grace_ms: number;
}

// What was said last is enough to find out more.
const KEPT_WORDS = 2_000;
const GRACE_ms = 5_000;
const WATCHING = { settle_ms: 400, look_ms: 60_000 };

/** The work of a rebuilder on this machine. With `prints` the week's sheets are printed as well. */
export function childWork(places: Places, env: NodeJS.ProcessEnv, prints: boolean): RebuildWork {
  const script = join(places.root, 'src', 'commands', 'rebuild.ts');
  // A relative FARM_DIR counts from where the desk was started.
  const own = { cwd: places.root, env: { ...env, FARM_DIR: places.farm }, grace_ms: GRACE_ms };
  const child = (...options: string[]) => ({ ...own, script: [script, ...options] });
  return {
    build: (signal) => runRebuild(child(), signal),
    print: prints ? async (signal) => lackOf(await runRebuild(child('--print'), signal)) : undefined,
    stands_ms: () =>
      statSync(join(places.dist, FINGERPRINT_FILE), { throwIfNoEntry: false })?.mtimeMs ?? null,
    now_ms: () => Date.now(),
  };
}

/** Makes the site anew when sheets, lessons or words change as well; the farm folder is watched by the stream. */
export function watchContent({ root, farm }: Places, rebuild: Pick<Rebuilder, 'changed'>): () => void {
  const content = join(root, 'content');
  return watchFolder(content, WATCHING, () => rebuild.changed(), relative(content, farm));
}

const lackOf = (end: Rebuilt) => (end.ok ? null : end.failure.faults.map(({ text }) => text).join('\n'));

/** Runs one making; when the signal stops it, it and all that it has started are gone once this is through. */
export function runRebuild(
  { script, cwd, env, grace_ms }: RebuildChild,
  signal: AbortSignal,
): Promise<Rebuilt> {
  return new Promise((done) => {
    if (signal.aborted) return done(brokenEnd('The desk is closing.'));
    const child = spawn(process.execPath, script, {
      cwd,
      env,
      // A group of its own, so that what it starts can be ended with it.
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    });
    lower(child);
    let report: Rebuilt | null = null;
    let said = '';
    const hear = (part: Buffer) => (said = `${said}${part.toString('utf8')}`.slice(-KEPT_WORDS));
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.on('message', (told) => (report = told as RebuildReport));
    let last: NodeJS.Timeout | undefined;
    const stop = () => {
      endGroup(child, 'SIGTERM');
      last = setTimeout(() => endGroup(child, 'SIGKILL'), grace_ms);
    };
    signal.addEventListener('abort', stop, { once: true });
    const through = (otherwise: string) => {
      clearTimeout(last);
      signal.removeEventListener('abort', stop);
      done(report ?? brokenEnd(`${otherwise}\n${said.trim()}`.trim()));
    };
    child.on('error', (error) => through(`The making of the site could not be started (${error.message}).`));
    child.on('close', (code, by) => through(`The making of the site ended without a word (${by ?? code}).`));
  });
}

/** Whoever enters a milking comes first. */
function lower({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) setPriority(pid, constants.priority.PRIORITY_LOW);
  } catch {
    // It has ended already, or this system has no such thing.
  }
}

function endGroup(child: ChildProcess, by: NodeJS.Signals): void {
  try {
    if (child.pid !== undefined) process.kill(-child.pid, by);
  } catch {
    child.kill(by);
  }
}
