// What wakes the phone's store: the network, a look at the page, another page of this phone, the desk's stream.
import type { EntryEvent } from '../../../../shared/book/types.ts';

/** Who is told. */
export interface Woken {
  /** The network or the milker may be back. */
  hurry(): void;
  /** The desk has something new. */
  news(): void;
  row(told: EntryEvent): void;
  /** The site was built anew. */
  site(): void;
  /** Another page of this phone has changed what is kept. */
  changed(): void;
}

/** What wakes, and how other pages of this phone are told. */
export interface Waking {
  listens(): boolean;
  /** Tells the phone's other pages that something was kept. */
  tellOthers(): void;
  /** The desk has answered: from now on it is worth listening to. */
  answered(): void;
  close(): void;
}

/** Whether somebody can see the page. */
export const isSeen = (): boolean => document.visibilityState === 'visible';

/** Starts to wake. */
export function openWaking(base: string, woken: Woken): Waking {
  const ending = new AbortController();
  const { signal } = ending;
  const stream = openStream(base, woken);
  const others =
    typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`pailside book ${base}`);
  const back = () => {
    if (!isSeen()) return stream.close();
    woken.hurry();
  };
  window.addEventListener('online', () => woken.hurry(), { signal });
  window.addEventListener('focus', () => woken.hurry(), { signal });
  // Nothing reaches a desk that is not there; the stream would only say so late.
  window.addEventListener('offline', () => stream.close(), { signal });
  window.addEventListener('pageshow', (event) => (event.persisted ? back() : undefined), { signal });
  document.addEventListener('visibilitychange', back, { signal });
  if (others) others.onmessage = () => woken.changed();
  return {
    listens: () => stream.isOpen(),
    tellOthers: () => others?.postMessage('kept'),
    answered: () => {
      if (isSeen()) stream.open();
    },
    close() {
      ending.abort();
      stream.close();
      others?.close();
    },
  };
}

/** The desk's stream, opened only once the desk has answered, so that no other host hears of it. */
function openStream(base: string, woken: Woken) {
  let stream: EventSource | null = null;
  const close = () => {
    stream?.close();
    stream = null;
  };
  const open = () => {
    if (stream) return;
    const own = new EventSource(`${base}events?for=page`);
    stream = own;
    let wasOpen = false;
    own.onopen = () => {
      // What happened in between was not heard.
      if (wasOpen) woken.news();
      wasOpen = true;
    };
    own.onerror = () => {
      // The courier finds out what is wrong, and opens it again when there is an answer.
      close();
      if (wasOpen) woken.hurry();
    };
    own.addEventListener('entry', ({ data }: MessageEvent<string>) =>
      woken.row(JSON.parse(data) as EntryEvent),
    );
    own.addEventListener('book', () => woken.news());
    own.addEventListener('site', () => woken.site());
  };
  return { open, close, isOpen: () => stream?.readyState === EventSource.OPEN };
}
