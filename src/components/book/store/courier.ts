// Makes rounds to the desk, one after the other, at once where there is a reason and now and then where there is none.
import { waitBefore_ms } from '../../../../shared/book/queue.ts';
import type { Rounds } from './rounds.ts';

/** What the courier goes by. */
export interface CourierSettings {
  readonly rounds: Rounds;
  /** Whether the page is seen: one that is not asks for nothing new. */
  readonly isSeen: () => boolean;
  /** Whether the desk's stream is open and will say what is new. */
  readonly listens: () => boolean;
  /** Everything that was to be sent has been, or cannot be just now. */
  readonly rests: () => void;
}

const HANGS_ms = 1_500;
// While the stream tells what is new; while it does not; while somebody has to do something first.
const LOOK_ms = { listening: 60_000, alone: 15_000, idle: 120_000 };

/** The way to the desk; it starts with a question. */
export class Courier {
  readonly #on: CourierSettings;
  #failures = 0;
  #isClosed = false;
  #again = false;
  #going: { readonly since_ms: number; readonly stop: AbortController } | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(settings: CourierSettings) {
    this.#on = settings;
    this.#start();
  }

  /** Something was entered. */
  entered(): void {
    this.#start();
  }

  /** There is something new at the desk. After a failure the next try is soon enough. */
  news(): void {
    if (this.#failures === 0) this.#start();
  }

  /** The network or the milker may be back: what hangs is given up, and all is asked anew. */
  hurry(): void {
    this.#on.rounds.stale();
    if (this.#going && performance.now() - this.#going.since_ms > HANGS_ms) this.#going.stop.abort();
    this.#start();
  }

  close(): void {
    this.#isClosed = true;
    clearTimeout(this.#timer);
    this.#going?.stop.abort();
  }

  #start(): void {
    if (this.#isClosed) return;
    if (this.#going) this.#again = true;
    else void this.#go();
  }

  async #go(): Promise<void> {
    const { rounds, rests } = this.#on;
    clearTimeout(this.#timer);
    let isWell = true;
    do {
      this.#again = false;
      const stop = new AbortController();
      this.#going = { since_ms: performance.now(), stop };
      isWell = await rounds.make(stop.signal).catch((error: unknown) => {
        // Nothing is lost: the same is sent again under the same names.
        console.warn('A round to the desk failed.', error);
        return rounds.lacks('no answer');
      });
      this.#failures = isWell ? 0 : this.#failures + 1;
    } while (!this.#isClosed && (this.#again || (isWell && rounds.waits())));
    this.#going = null;
    if (this.#isClosed) return;
    rests();
    this.#timer = setTimeout(() => this.#look(), this.#rest_ms(isWell));
  }

  #rest_ms(isWell: boolean): number {
    const { rounds, listens } = this.#on;
    if (!isWell) return rounds.isIdle() ? LOOK_ms.idle : waitBefore_ms(this.#failures, Math.random());
    return listens() ? LOOK_ms.listening : LOOK_ms.alone;
  }

  #look(): void {
    const { rounds, isSeen } = this.#on;
    rounds.stale();
    if (isSeen() || rounds.waits()) this.#start();
    else this.#timer = setTimeout(() => this.#look(), LOOK_ms.idle);
  }
}
