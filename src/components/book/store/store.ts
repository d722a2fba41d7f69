// The phone's store of the Milk book: keeps what is entered, shows it at once, and carries it to the desk.
import { dealtWith, entered, forgettable } from '../../../../shared/book/queue.ts';
import type { BookEntry } from '../../../../shared/book/types.ts';
import { Courier } from './courier.ts';
import { openDatabase } from './database.ts';
import { postWords } from './deskTalk.ts';
import { newId } from './newId.ts';
import { watchNewer } from './newerPage.ts';
import { Rounds, type RoundSettings } from './rounds.ts';
import { openShelf, type Held } from './shelf.ts';
import { openShown, sameHeld } from './shown.ts';
import type { BookStore, OpenStore } from './types.ts';
import { isSeen, openWaking } from './wake.ts';
import { takeWords } from './wordsInAddress.ts';

export const openStore: OpenStore = async (base, { busy = () => false } = {}) => {
  // First of all: nobody looks over a shoulder at an address.
  let words = takeWords();
  const shelf = await openShelf(() => openDatabase(base));
  let held: Held = await shelf.change(({ all }) => ({ drop: forgettable(all, Date.now()) }));
  const shown = openShown(held, () => shelf.keeps);

  const keep = (now: Held) => {
    held = now;
    shown.change({ held: now });
  };
  const reread = async () => keep(await shelf.change(() => ({})));
  let keeping = 0;
  const newer = watchNewer(() => busy() || shown.view().sending || keeping > 0);
  let looked = false;

  const waking = openWaking(base, {
    hurry: () => courier.hurry(),
    news() {
      rounds.stale();
      courier.news();
    },
    row(told) {
      rounds.row(told);
      courier.news();
    },
    site: () => void newer.look(),
    changed: () => void reread(),
  });
  const told: RoundSettings['told'] = ({ held: now, ...rest }) => {
    const isNew = now !== undefined && !sameHeld(now, held);
    if (isNew) keep(now);
    shown.change(rest);
    if (rest.status !== 'online') return;
    if (isNew) waking.tellOthers();
    waking.answered();
    if (!looked) void newer.look();
    looked = true;
  };
  const rounds = new Rounds({ base, shelf, held: () => held, ready: handIn, told });
  const courier = new Courier({
    rounds,
    isSeen,
    listens: () => waking.listens(),
    rests: () => shown.change({ sending: false }),
  });

  /** The words of the address, handed in before the first question; kept in mind while the desk is silent. */
  async function handIn(): Promise<void> {
    if (words === null) return;
    const said = await postWords(base, words);
    if (said.ok || said.why !== 'no answer') words = null;
  }

  const change = async (plan: Parameters<typeof shelf.change>[0]) => {
    keeping += 1;
    try {
      keep(await shelf.change(plan));
      waking.tellOthers();
    } finally {
      keeping -= 1;
    }
  };

  const store: BookStore = {
    view: () => shown.view(),
    subscribe: (told) => shown.subscribe(told),
    async enter(draft) {
      const entry: BookEntry = { ...draft, id: newId(), entered_ms: Date.now() };
      await change(({ all }) => {
        if (all.some((one) => one.entry.id === entry.id)) return {};
        const { added, dealt } = entered(all, entry);
        return { add: added, put: dealt };
      });
      courier.entered();
      askToStay();
      return entry;
    },
    dealWith: (id) =>
      change(({ all }) => ({ put: all.filter(({ entry }) => entry.id === id).map(dealtWith) })),
    retry: () => courier.hurry(),
    async giveWords(text) {
      const said = await postWords(base, text);
      if (said.ok) courier.hurry();
      return said;
    },
    close() {
      courier.close();
      waking.close();
      newer.close();
      shelf.close();
    },
  };
  return store;
};

let asked = false;

/** Asks the browser not to clear away what is kept; it decides by itself, and nothing depends on it. */
function askToStay(): void {
  if (asked) return;
  asked = true;
  // Only where the browser trusts the address.
  const storage = (navigator as Partial<Navigator>).storage;
  void storage?.persist?.().catch(() => false);
}
