// Makes the site anew behind the desk's back when files have changed: after some quiet, never two at once.
import type { RebuildFailure, RebuildState } from '../../shared/book/deskState.ts';

/**
 * How one making of the site ended. `fresh`: the site that stands was made from the very same files already.
 * `again`: the reason may be gone in a while, though no file changes.
 */
export type Rebuilt =
  | { readonly ok: true; readonly fresh: boolean }
  | { readonly ok: false; readonly again: boolean; readonly failure: Omit<RebuildFailure, 'at_ms'> };

/** What a rebuilder sets to work; a test stands in for it. */
export interface RebuildWork {
  /** Makes the site and swaps it in, or leaves the old one. What the signal stops has ended when the promise does. */
  readonly build: (signal: AbortSignal) => Promise<Rebuilt>;
  /** Prints the week's sheets of the site that stands; null, or why it could not. Absent without a printer. */
  readonly print?: ((signal: AbortSignal) => Promise<string | null>) | undefined;
  /** When the site that stands was put in place, ms; null where none stands. */
  readonly stands_ms: () => number | null;
  readonly now_ms: () => number;
}

/** How long a rebuilder holds still. All in ms. */
export interface RebuildTimes {
  /** Quiet after the last change before the site is made. */
  readonly quiet: number;
  /** A change waits no longer than this for quiet: milking goes on for an hour. */
  readonly longest: number;
  /** From the end of one making to the begin of the next. */
  readonly apart: number;
  /** Quiet before the sheets are printed: a class may be printing now, and printing takes a while. */
  readonly printQuiet: number;
  /** Until a failure that may pass by itself is tried again. */
  readonly again: number;
}

/** Keeps the site as the farm folder. */
export interface Rebuilder {
  /** Something has changed that the site may show. */
  changed(): void;
  state(): RebuildState;
  /** Calls `hear` when a making has ended, well or not. Returns what ends that. */
  onEnd(hear: (isNew: boolean) => void): () => void;
  /** Ends what is under way and makes nothing more. */
  close(): Promise<void>;
}

/** The usual times. */
export const REBUILD_TIMES: RebuildTimes = { quiet: 4_000, longest: 30_000, apart: 10_000, printQuiet: 60_000, again: 60_000 }; // prettier-ignore

/** Opens a rebuilder; `began` is how the making of the site ended with which the desk was started, where it failed. */
export function openRebuilder(
  work: RebuildWork,
  began: RebuildFailure | null = null,
  times: RebuildTimes = REBUILD_TIMES,
): Rebuilder {
  const closing = new AbortController();
  const listeners = new Set<(isNew: boolean) => void>();
  let phase: RebuildState['phase'] = 'still';
  // How often something has changed; since when the site is behind; the last change of those that it is behind by.
  let changes = 0;
  let first_ms: number | null = began ? began.at_ms : null;
  let last_ms = work.now_ms();
  let ended_ms = Number.NEGATIVE_INFINITY;
  let took_ms: number | null = null;
  let failed = began;
  let unprinted: string | null = null;
  let isToPrint = false;
  let timer: NodeJS.Timeout | undefined;
  let running: Promise<void> = Promise.resolve();

  const isBusy = () => phase === 'building' || phase === 'printing';
  const wait = (ms: number, then: () => Promise<void>, at: 'waiting' | 'still') => {
    clearTimeout(timer);
    if (closing.signal.aborted) return;
    phase = at;
    timer = setTimeout(() => (running = then()), Math.max(0, ms));
    timer.unref();
  };
  const waitToBuild = () => {
    const now_ms = work.now_ms();
    const byQuiet_ms = Math.min(last_ms + times.quiet, (first_ms ?? last_ms) + times.longest);
    wait(Math.max(byQuiet_ms, ended_ms + times.apart) - now_ms, make, 'waiting');
  };
  const waitToPrint = () => {
    if (isToPrint && work.print) wait(ended_ms + times.printQuiet - work.now_ms(), print, 'still');
  };

  async function make(): Promise<void> {
    phase = 'building';
    const began_ms = work.now_ms();
    const [seen, before_ms] = [changes, first_ms ?? began_ms];
    // What changes from here on may be in the site or not: it is made once more.
    first_ms = null;
    const end = await attempt(() => work.build(closing.signal));
    ended_ms = work.now_ms();
    phase = 'still';
    if (closing.signal.aborted) return;
    if (end.ok) {
      failed = null;
      if (!end.fresh) [took_ms, isToPrint] = [ended_ms - began_ms, true];
    } else {
      failed = { ...end.failure, at_ms: ended_ms };
      first_ms = before_ms;
    }
    for (const hear of [...listeners]) hear(end.ok);
    if (changes !== seen) waitToBuild();
    else if (end.ok) waitToPrint();
    else if (end.again) wait(times.again, make, 'waiting');
  }

  async function print(): Promise<void> {
    phase = 'printing';
    const seen = changes;
    unprinted = await attemptToPrint(work, closing.signal);
    phase = 'still';
    if (closing.signal.aborted) return;
    isToPrint = false;
    if (changes !== seen) waitToBuild();
  }

  return {
    changed() {
      changes += 1;
      last_ms = work.now_ms();
      first_ms ??= last_ms;
      // Who is at work looks by itself when that is through.
      if (!isBusy()) waitToBuild();
    },
    state: () => ({ phase, behind_ms: first_ms, stands_ms: work.stands_ms(), took_ms, failed, unprinted }),
    onEnd(hear) {
      listeners.add(hear);
      return () => void listeners.delete(hear);
    },
    async close() {
      closing.abort();
      clearTimeout(timer);
      await running;
    },
  };
}

/** A making that throws is a fault of ours: it is kept like any other, and the desk goes on. */
async function attempt(build: () => Promise<Rebuilt>): Promise<Rebuilt> {
  try {
    return await build();
  } catch (error) {
    return brokenEnd(error instanceof Error ? error.message : String(error));
  }
}

/** An end that nobody can explain, with the last that was heard. */
export function brokenEnd(text: string): Rebuilt {
  const faults = [{ file: null, line: null, column: null, text }];
  return { ok: false, again: true, failure: { why: 'broken', faults } };
}

async function attemptToPrint({ print }: RebuildWork, signal: AbortSignal): Promise<string | null> {
  try {
    return (await print?.(signal)) ?? null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
