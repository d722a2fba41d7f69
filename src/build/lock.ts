// One at a time: two builds into one site would corrupt each other, and so would two writers of one book.
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { PlainError } from './plainError.ts';

// A lock is one short line; nobody takes so long to write it.
const UNREADABLE_MS = 5_000;

/** Who holds a lock: a process, told apart from a later one with the same number by when it began. */
interface Holder {
  readonly pid: number;
  readonly began: string | null;
}

/** What the lock needs to know of the machine. */
export interface Processes {
  readonly me: number;
  /** When a running process began, in any fixed form; null where there is no such process, '' where nobody can say. */
  began(pid: number): string | null;
}

/** The processes of this machine. */
export const theseProcesses: Processes = {
  me: process.pid,
  began(pid) {
    try {
      process.kill(pid, 0);
    } catch (error) {
      // Not ours to signal is still alive.
      if ((error as NodeJS.ErrnoException).code !== 'EPERM') return null;
    }
    try {
      // Field 22 is the start time; the name in field 2 may hold blanks, so count from its bracket.
      const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
      const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? '';
      // It counts from the machine's own start, and a machine that starts by itself often gives out the same numbers.
      return ticks === '' ? '' : `${ticks} ${readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()}`;
    } catch {
      return '';
    }
  },
};

/** How long to wait for another one, and how to tell that we do. */
export interface Waiting {
  /** Who it is that we wait for; `Another build` where nothing is said. */
  readonly who?: string;
  readonly most_ms: number;
  readonly every_ms: number;
  readonly say: (line: string) => void;
}

/**
 * Takes the lock, waiting for another holder to end; a lock whose process is gone is taken over.
 * Returns what gives it back. Throws PlainError when the wait is over.
 */
export async function takeLock(
  path: string,
  waiting: Waiting,
  processes = theseProcesses,
): Promise<() => void> {
  mkdirSync(dirname(path), { recursive: true });
  const mine: Holder = { pid: processes.me, began: processes.began(processes.me) };
  const until = Date.now() + waiting.most_ms;
  const { who = 'Another build' } = waiting;
  let told = false;
  for (;;) {
    if (create(path, mine)) return () => rmSync(path, { force: true });
    const holder = holderOf(path);
    // A lock that stays unreadable was cut off while it was written: a power cut, not a build.
    if (holder === null && isOld(path)) {
      rmSync(path, { force: true });
      continue;
    }
    if (holder !== null && !isAlive(holder, processes)) {
      setAside(path, holder, mine);
      continue;
    }
    if (Date.now() >= until)
      throw new PlainError(
        `${who} is running (process ${holder?.pid ?? 'unknown'}). Wait until it is through, then try again.`,
      );
    if (!told) waiting.say(`${who} is running; waiting for it …`);
    told = true;
    await sleep(waiting.every_ms);
  }
}

function create(path: string, mine: Holder): boolean {
  try {
    writeFileSync(path, JSON.stringify(mine), { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

function isOld(path: string): boolean {
  const age_ms = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
  // A lock from the future is one from before the clock was lost.
  return Math.abs(age_ms) > UNREADABLE_MS;
}

/** The holder; null where the lock has just gone or is being written this moment. */
function holderOf(path: string): Holder | null {
  try {
    return JSON.parse(readFileSync(path, 'utf8')) as Holder;
  } catch {
    return null;
  }
}

function isAlive(holder: Holder, processes: Processes): boolean {
  const began = processes.began(holder.pid);
  if (began === null) return false;
  return began === '' || holder.began === null || holder.began === '' || began === holder.began;
}

/** Moves a dead lock away; if another build was quicker and we caught its lock instead, it goes back. */
function setAside(path: string, dead: Holder, mine: Holder): void {
  const aside = `${path}.${mine.pid}`;
  try {
    renameSync(path, aside);
  } catch {
    return;
  }
  const caught = holderOf(aside);
  if (caught !== null && (caught.pid !== dead.pid || caught.began !== dead.began)) create(path, caught);
  rmSync(aside, { force: true });
}
