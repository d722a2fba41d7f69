// The phone's store of the Milk book: keeps what is entered, shows it at once, and carries it to the desk.
import { dealtWith, entered, forgettable } from '../../../../shared/book/queue.ts';
import type { BookEntry } from '../../../../shared/book/types.ts';
import { Courier } from './courier.ts';
import { openDatabase } from './database.ts';
import { postWords, staysKnown } from './deskTalk.ts';
import { newId } from './newId.ts';
import { watchNewer, type NewerPage } from './newerPage.ts';
import { Rounds, type RoundSettings } from './rounds.ts';
import { openShelf, type Change, type Held, type Shelf } from './shelf.ts';
import { openShown, sameHeld } from './shown.ts';
import type { BookStore, EntryDraft, OpenStore, StoreView, WordsAnswer } from './types.ts';
import { isSeen, openWaking, type Waking } from './wake.ts';
import { takeWords } from './wordsInAddress.ts';

export const openStore: OpenStore = async (base, { busy = () => false } = {}) => {
  // First of all: nobody looks over a shoulder at an address.
  const words = takeWords();
  const shelf = await openShelf(() => openDatabase(base));
  const held = await shelf.change(({ all }) => ({ drop: forgettable(all, Date.now()) }));
  return new PhoneStore({ base, words, shelf, held, busy });
};

interface Opened {
  readonly base: string;
  readonly words: string | null;
  readonly shelf: Shelf;
  readonly held: Held;
  readonly busy: () => boolean;
}

class PhoneStore implements BookStore {
  readonly #base: string;
  readonly #shelf: Shelf;
  readonly #shown: ReturnType<typeof openShown>;
  readonly #newer: NewerPage;
  readonly #waking: Waking;
  readonly #rounds: Rounds;
  readonly #courier: Courier;
  #words: string | null;
  #held: Held;
  /** How many writings are on their way to the phone's disk. */
  #keeping = 0;
  #isGreeted = false;
  #hasAskedToStay = false;

  constructor({ base, words, shelf, held, busy }: Opened) {
    [this.#base, this.#words, this.#shelf, this.#held] = [base, words, shelf, held];
    this.#shown = openShown(held, () => shelf.keeps);
    this.#newer = watchNewer(() => busy() || this.#wouldLose());
    this.#waking = openWaking(base, {
      hurry: () => this.#courier.hurry(),
      news: () => this.#news(() => this.#rounds.stale()),
      row: (told) => this.#news(() => this.#rounds.row(told)),
      site: () => void this.#newer.look(),
      changed: () => void shelf.change(() => ({})).then((now) => this.#keep(now)),
    });
    const ready = () => this.#handIn();
    this.#rounds = new Rounds({
      base,
      shelf,
      held: () => this.#held,
      ready,
      told: (news) => this.#hear(news),
    });
    this.#courier = new Courier({
      rounds: this.#rounds,
      isSeen,
      listens: () => this.#waking.listens(),
      rests: () => this.#shown.change({ sending: false }),
    });
  }

  view(): StoreView {
    return this.#shown.view();
  }

  subscribe(told: (view: StoreView) => void): () => void {
    return this.#shown.subscribe(told);
  }

  async enter(draft: EntryDraft): Promise<BookEntry> {
    const entry: BookEntry = { ...draft, id: newId(), entered_ms: Date.now() };
    await this.#change(({ all }) => {
      if (all.some((one) => one.entry.id === entry.id)) return {};
      const { added, dealt } = entered(all, entry);
      return { add: added, put: dealt };
    });
    this.#courier.entered();
    this.#askToStay();
    return entry;
  }

  dealWith(id: string): Promise<void> {
    return this.#change(({ all }) => ({ put: all.filter(({ entry }) => entry.id === id).map(dealtWith) }));
  }

  retry(): void {
    this.#courier.hurry();
  }

  async giveWords(words: string): Promise<WordsAnswer> {
    const said = await postWords(this.#base, words);
    if (said.ok) this.#courier.hurry();
    return said;
  }

  close(): void {
    this.#courier.close();
    this.#waking.close();
    this.#newer.close();
    this.#shelf.close();
  }

  /** Whether a page loaded anew now would lose something: what is kept in memory alone goes with its page. */
  #wouldLose(): boolean {
    const { sending, keeps, waiting, refused } = this.view();
    return sending || this.#keeping > 0 || (keeps === 'memory' && waiting.length + refused.length > 0);
  }

  #keep(now: Held): void {
    this.#held = now;
    this.#shown.change({ held: now });
  }

  async #change(plan: (held: Held) => Change): Promise<void> {
    this.#keeping += 1;
    try {
      this.#keep(await this.#shelf.change(plan));
      this.#waking.tellOthers();
    } finally {
      this.#keeping -= 1;
    }
  }

  #news(note: () => void): void {
    note();
    this.#courier.news();
  }

  /** What a round to the desk has brought. */
  #hear({ held: now, ...rest }: Parameters<RoundSettings['told']>[0]): void {
    const isNew = now !== undefined && !sameHeld(now, this.#held);
    if (isNew) this.#keep(now);
    this.#shown.change(rest);
    if (rest.status !== 'online') return;
    if (isNew) this.#waking.tellOthers();
    this.#waking.answered();
    if (this.#isGreeted) return;
    this.#isGreeted = true;
    void this.#newer.look();
    void staysKnown(this.#base);
  }

  /** The words of the address, handed in before the first question; kept in mind while the desk is silent. */
  async #handIn(): Promise<void> {
    if (this.#words === null) return;
    const said = await postWords(this.#base, this.#words);
    if (said.ok || said.why !== 'no answer') this.#words = null;
  }

  /** Asks the browser not to clear away what is kept; it decides by itself, and nothing depends on it. */
  #askToStay(): void {
    if (this.#hasAskedToStay) return;
    this.#hasAskedToStay = true;
    // Only where the browser trusts the address.
    const storage = (navigator as Partial<Navigator>).storage;
    void storage?.persist?.().catch(() => false);
  }
}
