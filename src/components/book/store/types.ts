// What the phone's store gives to the Milk book's pages: the book as it stands with what waits, and how to enter.
import type { WordsAnswer as DeskWords } from '../../../../shared/book/access.ts';
import type { ShownBook, ShownRow } from '../../../../shared/book/queue.ts';
import type { BookEntry, Refusal } from '../../../../shared/book/types.ts';

/**
 * How the phone stands with the desk. `opening`: not heard yet. `online`: the desk has just answered. `offline`: it
 * does not answer, entries wait. `words wanted`: it answers, and wants the passphrase first. `no desk`: these pages
 * come from a host that keeps no book.
 */
export type DeskStatus = 'opening' | 'online' | 'offline' | 'words wanted' | 'no desk';

export type { ShownBook, ShownRow };

/** What a page hands in: the id and the time come from the store. */
export type EntryDraft = Omit<BookEntry, 'id' | 'entered_ms'>;
// `saw` is the `mark` of the ShownRow that the page showed when the milker entered (waiting rows have marks too), the
// mark of a clash's last amount where a clash is settled, null where no row was shown.

/** An entry that the desk has not taken, until a person has dealt with it. */
export interface RefusedEntry {
  readonly entry: BookEntry;
  readonly why: Refusal;
}

/** Everything at one moment; a new object whenever something changes. */
export interface StoreView {
  readonly status: DeskStatus;
  /** Null before the desk has ever been heard on this phone. */
  readonly book: ShownBook | null;
  /** On this phone and not yet at the desk, in the order they were entered. */
  readonly waiting: readonly BookEntry[];
  readonly refused: readonly RefusedEntry[];
  /** Whether something is on its way to the desk just now. */
  readonly sending: boolean;
  /** `memory`: this browser keeps nothing (a private window); what waits is lost when the page is closed. */
  readonly keeps: 'phone' | 'memory';
  /** When the desk last answered, ms by the phone's clock; null where it never has. */
  readonly heard_ms: number | null;
}

/** What came of a passphrase: as the desk says it, or nothing because it did not answer. */
export type WordsAnswer = DeskWords | { readonly ok: false; readonly why: 'no answer' };

/** What waits, what stands, and the way to the desk. */
export interface BookStore {
  view(): StoreView;
  /** Calls at once and at every change (a Svelte store's contract); returns what ends it. */
  subscribe(told: (view: StoreView) => void): () => void;
  /**
   * Keeps an entry; resolves once it is on the phone's disk and in the view, and goes on to send it by itself. Rejects
   * where the phone could not keep it: then nothing was entered, and the page says so. Entering a milking anew deals
   * with a refused entry for it.
   */
  enter(draft: EntryDraft): Promise<BookEntry>;
  /** Somebody has read why an entry was refused, and it need not be shown any longer. */
  dealWith(id: string): Promise<void>;
  /** Asks the desk at once. */
  retry(): void;
  giveWords(words: string): Promise<WordsAnswer>;
  close(): void;
}

/** What the store asks of its page. */
export interface StoreSettings {
  /** Something is half entered: the page is not to be loaded anew now. */
  readonly busy?: () => boolean;
}

/** `openStore` of `store.ts`: `base` is the site's path with its last slash. Opens at once, in `opening`. */
export type OpenStore = (base: string, settings?: StoreSettings) => Promise<BookStore>;
