// Who listens to the desk's stream, and how they are told.

/** The board, which changes its own numbers, or any other page, which only needs to hear that there are new ones. */
export type ListenerKind = 'board' | 'page';

/** Who takes a seat, and the address it comes from. */
export interface Seat {
  readonly kind: ListenerKind;
  readonly from: string;
}

/** One open stream. */
export type Listener = ReadableStreamDefaultController<Uint8Array>;

/** All who listen. */
export interface Hall {
  /** How many listen, all together or from one address. */
  count(from?: string): number;
  /** Tells all, or all of a kind. */
  send(text: string, to?: ListenerKind): void;
  sendTo(one: Listener, text: string): void;
  /** A new listener's stream; it is let go when the signal says that nobody is there any more. */
  seat(seat: Seat, gone: AbortSignal, greet: (own: Listener) => void): ReadableStream<Uint8Array>;
  close(): void;
}

// A listener that takes nothing for so many messages has gone without a word.
const MOST_UNREAD = 8;

/** Opens a hall with nobody in it. */
export function openHall(): Hall {
  const listeners = new Map<Listener, Seat>();
  const drop = (one: Listener) => {
    if (!listeners.delete(one)) return;
    try {
      one.close();
    } catch {
      // It was closed from the other side.
    }
  };
  const give = (one: Listener, bytes: Uint8Array) => {
    if ((one.desiredSize ?? -Infinity) < -MOST_UNREAD) drop(one);
    else one.enqueue(bytes);
  };
  const bytesOf = (text: string) => new TextEncoder().encode(text);
  return {
    count: (from) =>
      from === undefined ? listeners.size : [...listeners.values()].filter((one) => one.from === from).length,
    send(text, to) {
      const bytes = bytesOf(text);
      for (const [one, { kind }] of [...listeners]) if (to === undefined || kind === to) give(one, bytes);
    },
    sendTo: (one, text) => give(one, bytesOf(text)),
    seat(seat, gone, greet) {
      let own: Listener | null = null;
      const leave = () => {
        if (own) drop(own);
      };
      gone.addEventListener('abort', leave, { once: true });
      return new ReadableStream<Uint8Array>({
        start: (listener) => {
          own = listener;
          listeners.set(listener, seat);
          greet(listener);
        },
        cancel: leave,
      });
    },
    close() {
      for (const one of [...listeners.keys()]) drop(one);
    },
  };
}
