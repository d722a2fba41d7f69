// One question to the desk and its answer: what waits is sent, or the book is fetched.
import { ended, lastTurn, nextPost, sent, settled, EMPTY_QUEUE, type Queue } from '../../../../shared/book/queue.ts'; // prettier-ignore
import type { EntryAnswer, EntryEvent } from '../../../../shared/book/types.ts';
import { askBook, keepsBook, postEntries, type Lack } from './deskTalk.ts';
import type { Held, Shelf } from './shelf.ts';
import { inTurn } from './turns.ts';
import type { DeskStatus } from './types.ts';

/** What the rounds are made for. */
export interface RoundSettings {
  readonly base: string;
  readonly shelf: Shelf;
  /** What is held as the page knows it. */
  readonly held: () => Held;
  /** Done before each question. */
  readonly ready: () => Promise<void>;
  /** Hears of every change of what is held, and of how things stand. */
  readonly told: (news: { held?: Held; status?: DeskStatus; sending?: boolean }) => void;
}

// At most so many entries in one message: some 15 kB, which passes even a poor network.
const MOST = 40;

/** Rounds to the desk, each made when the one before it has ended. */
export class Rounds {
  readonly #on: RoundSettings;
  #ways: Pick<Queue, 'out' | 'tries'> = EMPTY_QUEUE;
  #most = MOST;
  #isStale = true;
  #isKnown: boolean;
  #lack: Lack | null = null;
  #rows: EntryEvent[] = [];

  constructor(settings: RoundSettings) {
    this.#on = settings;
    this.#isKnown = settings.held().book !== null;
  }

  /** Whether something waits to be sent. */
  waits(): boolean {
    return nextPost(this.#queue(), 1).length > 0;
  }

  /** The book may have changed: the next round fetches it, unless it sends something. */
  stale(): void {
    this.#isStale = true;
  }

  /** A row that the stream has told of; the next round fetches the book where it does not show it. */
  row(told: EntryEvent): void {
    this.#rows.push(told);
  }

  /** Whether asking again will change nothing until somebody has done something. */
  isIdle(): boolean {
    return this.#lack === 'words wanted' || (this.#lack === 'not it' && !this.#isKnown);
  }

  /** One round; false where it came to nothing. */
  async make(signal: AbortSignal): Promise<boolean> {
    const well = (await this.#isThere(signal)) && (await this.#ask(signal));
    if (well) this.#lack = null;
    return well;
  }

  #queue = (): Queue => ({ ...this.#ways, all: this.#on.held().all });

  async #isThere(signal: AbortSignal): Promise<boolean> {
    if (!this.#isKnown) {
      const keeps = await keepsBook(signal);
      if (keeps === null) return this.lacks('no answer');
      if (!keeps) return this.lacks('not it');
      this.#isKnown = true;
    }
    await this.#on.ready();
    return true;
  }

  #ask(signal: AbortSignal): Promise<boolean> {
    const { base, shelf, held, told } = this.#on;
    return inTurn(`pailside book ${base}`, async () => {
      // What another page has sent meanwhile is not sent again.
      told({ held: await shelf.change(() => ({})) });
      if (this.#rows.splice(0).some((one) => !shows(held(), one))) this.#isStale = true;
      if (this.waits()) return this.#post(signal);
      return this.#isStale ? this.#fetch(signal) : true;
    });
  }

  async #post(signal: AbortSignal): Promise<boolean> {
    const { base, shelf, told } = this.#on;
    const entries = nextPost(this.#queue(), this.#most);
    this.#ways = sent(this.#queue(), entries);
    told({ sending: true });
    this.#isStale = false;
    const heard = await postEntries(base, entries, signal);
    const answers: readonly EntryAnswer[] = heard.ok ? heard.said.answers : [];
    this.#ways = ended(this.#queue(), entries, answers);
    if (!heard.ok) {
      // What is wrong may lie in one entry: sent one by one, it holds up no other.
      if (heard.why === 'not taken') this.#most = 1;
      return this.lacks(heard.why);
    }
    const { state } = heard.said;
    const now_ms = Date.now();
    const after = await shelf.change(({ all, book }) => {
      const turn = lastTurn(all, book?.turn ?? 0) + 1;
      return { put: settled(all, answers, { now_ms, turn }), book: { state, turn, heard_ms: now_ms } };
    });
    told({ held: after, status: 'online' });
    if (!this.waits()) this.#most = MOST;
    // A desk that answers and names none of what was sent has not taken a step.
    return entries.some(({ id }) => answers.some((one) => one.id === id));
  }

  async #fetch(signal: AbortSignal): Promise<boolean> {
    const { base, shelf, held, told } = this.#on;
    this.#isStale = false;
    const turn = lastTurn(held().all, held().book?.turn ?? 0);
    const heard = await askBook(base, signal);
    if (!heard.ok) return this.lacks(heard.why);
    const book = { state: heard.said, turn, heard_ms: Date.now() };
    // Another page of this phone may have heard something newer meanwhile.
    const after = await shelf.change((now) => ((now.book?.turn ?? 0) > turn ? {} : { book }));
    told({ held: after, status: 'online' });
    return true;
  }

  /** Tells why there is no answer; false, as a round that came to nothing. */
  lacks(why: Lack): false {
    this.#isStale = true;
    this.#lack = why;
    if (why === 'words wanted') this.#on.told({ status: 'words wanted' });
    // A page that a network puts before its log-in is no sign that the desk is gone for good.
    else this.#on.told({ status: why === 'not it' && !this.#isKnown ? 'no desk' : 'offline' });
    return false;
  }
}

/** Whether the book as it was heard holds a row that the stream tells of. */
function shows({ book }: Held, told: EntryEvent): boolean {
  const row = book?.state.rows.find(
    (one) => one.doe === told.doe && one.date === told.date && one.milking === told.milking,
  );
  if (!row || !told.amount) return !row && !told.amount;
  const { num, den, unit } = told.amount;
  const { amount } = row;
  return num === amount.num && den === amount.den && unit === amount.unit && row.use === told.use;
}
