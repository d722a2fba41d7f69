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
  return new QuietRebuilder(work, began, times);
}

class QuietRebuilder implements Rebuilder {
  readonly #work: RebuildWork;
  readonly #times: RebuildTimes;
  readonly #closing = new AbortController();
  readonly #listeners = new Set<(isNew: boolean) => void>();
  #phase: RebuildState['phase'] = 'still';
  #behind_ms: number | null;
  // Of the changes that no making has taken up: how many, and when the first and the last were.
  #changes = 0;
  #first_ms = 0;
  #last_ms = 0;
  #ended_ms = Number.NEGATIVE_INFINITY;
  #took_ms: number | null = null;
  #failed: RebuildFailure | null;
  #unprinted: string | null = null;
  #isToPrint = false;
  #timer: NodeJS.Timeout | undefined;
  #running: Promise<void> = Promise.resolve();

  constructor(work: RebuildWork, began: RebuildFailure | null, times: RebuildTimes) {
    this.#work = work;
    this.#times = times;
    this.#failed = began;
    this.#behind_ms = began ? began.at_ms : null;
  }

  changed(): void {
    this.#last_ms = this.#work.now_ms();
    if (this.#changes === 0) this.#first_ms = this.#last_ms;
    this.#changes += 1;
    this.#behind_ms ??= this.#last_ms;
    // Who is at work looks by itself when that is through.
    if (this.#phase === 'still' || this.#phase === 'waiting') this.#waitToBuild();
  }

  state(): RebuildState {
    return {
      phase: this.#phase,
      behind_ms: this.#behind_ms,
      stands_ms: this.#work.stands_ms(),
      took_ms: this.#took_ms,
      failed: this.#failed,
      unprinted: this.#unprinted,
    };
  }

  onEnd(hear: (isNew: boolean) => void): () => void {
    this.#listeners.add(hear);
    return () => void this.#listeners.delete(hear);
  }

  async close(): Promise<void> {
    this.#closing.abort();
    clearTimeout(this.#timer);
    await this.#running;
  }

  #waitToBuild(): void {
    const { quiet, longest, apart } = this.#times;
    const due_ms = Math.max(
      Math.min(this.#last_ms + quiet, this.#first_ms + longest),
      this.#ended_ms + apart,
    );
    this.#wait(due_ms - this.#work.now_ms(), longest, 'waiting', () => this.#build());
  }

  #waitToPrint(): void {
    const { printQuiet } = this.#times;
    if (this.#isToPrint && this.#work.print)
      this.#wait(this.#ended_ms + printQuiet - this.#work.now_ms(), printQuiet, 'still', () => this.#print());
  }

  /** Waits, no longer than `most_ms`: a clock that was set back must not hold a site up. */
  #wait(ms: number, most_ms: number, at: 'waiting' | 'still', then: () => Promise<void>): void {
    clearTimeout(this.#timer);
    if (this.#closing.signal.aborted) return;
    this.#phase = at;
    this.#timer = setTimeout(() => void (this.#running = then()), Math.min(most_ms, Math.max(0, ms)));
    this.#timer.unref();
  }

  async #build(): Promise<void> {
    this.#phase = 'building';
    const began_ms = this.#work.now_ms();
    // What changes from here on may be in the site or not: it is made once more.
    this.#changes = 0;
    const end = await attempt(() => this.#work.build(this.#closing.signal));
    this.#ended_ms = this.#work.now_ms();
    this.#phase = 'still';
    if (this.#closing.signal.aborted) return;
    if (end.ok) {
      this.#failed = null;
      this.#behind_ms = this.#changes > 0 ? this.#first_ms : null;
      if (!end.fresh) [this.#took_ms, this.#isToPrint] = [this.#ended_ms - began_ms, true];
    } else this.#failed = { ...end.failure, at_ms: this.#ended_ms };
    for (const hear of [...this.#listeners]) hear(end.ok);
    if (this.#changes > 0) this.#waitToBuild();
    else if (end.ok) this.#waitToPrint();
    else if (end.again) this.#wait(this.#times.again, this.#times.again, 'waiting', () => this.#build());
  }

  async #print(): Promise<void> {
    this.#phase = 'printing';
    this.#unprinted = await attemptToPrint(this.#work, this.#closing.signal);
    this.#phase = 'still';
    if (this.#closing.signal.aborted) return;
    this.#isToPrint = false;
    if (this.#changes > 0) this.#waitToBuild();
  }
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
