// The store's view: made anew only when something has changed, and told to all who listen.
import { laidOver, refusedOf, waitingOf } from '../../../../shared/book/queue.ts';
import type { Held } from './shelf.ts';
import type { StoreView } from './types.ts';

/** What may change in it. */
export interface ShownChange {
  readonly held?: Held;
  readonly status?: StoreView['status'];
  readonly sending?: boolean;
}

/** Starts with what is held. */
export function openShown(start: Held, keeps: () => StoreView['keeps']) {
  let held = start;
  let view: StoreView = { status: 'opening', sending: false, ...partsOf(start), keeps: keeps() };
  const listeners = new Set<(view: StoreView) => void>();
  return {
    view: () => view,
    change({ held: now, ...rest }: ShownChange) {
      const isNew = now !== undefined && now !== held;
      const next = { ...view, ...rest, ...(isNew ? partsOf(now) : {}), keeps: keeps() };
      if (isNew && sameBook(now, held)) next.book = view.book;
      held = now ?? held;
      if (Object.entries(next).every(([name, value]) => view[name as keyof StoreView] === value)) return;
      view = next;
      for (const told of [...listeners]) told(view);
    },
    subscribe(told: (view: StoreView) => void) {
      listeners.add(told);
      told(view);
      return () => void listeners.delete(told);
    },
  };
}

function partsOf({ all, book }: Held) {
  return {
    book: book && laidOver(book.state, all, book.turn),
    waiting: waitingOf({ all }),
    refused: refusedOf({ all }),
    heard_ms: book?.heard_ms ?? null,
  };
}

/** Whether two states of what is held are the same in all that matters. */
export function sameHeld(a: Held, b: Held): boolean {
  return a.book?.heard_ms === b.book?.heard_ms && sameBook(a, b);
}

/** Whether two states show the same book. */
function sameBook(a: Held, b: Held): boolean {
  return (
    a.book?.state.fingerprint === b.book?.state.fingerprint &&
    a.book?.turn === b.book?.turn &&
    a.all.length === b.all.length &&
    a.all.every(({ seq, outcome }, at) => {
      const other = b.all[at];
      return other?.seq === seq && JSON.stringify(other.outcome) === JSON.stringify(outcome);
    })
  );
}
