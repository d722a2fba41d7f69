// Listens to the desk's stream where there is a desk, and else asks again, ever more rarely.

/** How a page listens. */
export interface Listening {
  /** Whether the machine that serves the page sends events. */
  readonly hasDesk: () => Promise<boolean>;
  /** The address of the stream, as the page stands now. */
  readonly address: () => string;
  /** What is done with each event, by its name. */
  readonly hear: Readonly<Record<string, (told: string) => void>>;
  /**
   * A page that nobody sees lets the stream go and asks again when it is seen: a browser opens six connections to a
   * machine, and a teacher has ten pages open.
   */
  readonly whileSeen?: boolean;
}

const SOONEST_ms = 5000;
const LATEST_ms = 600_000;

/** Listens from when the page is complete until it goes. */
export function listenToDesk(view: Window, { hasDesk, address, hear, whileSeen }: Listening): void {
  const page = view.document;
  let stream: EventSource | null = null;
  let pause_ms = SOONEST_ms;
  let waiting = 0;
  const close = () => {
    view.clearTimeout(waiting);
    stream?.close();
    stream = null;
  };
  const later = () => {
    close();
    waiting = view.setTimeout(() => void open(), pause_ms);
    pause_ms = Math.min(LATEST_ms, pause_ms * 2);
  };
  const isUnseen = () => whileSeen === true && page.visibilityState === 'hidden';
  const open = async () => {
    close();
    if (isUnseen()) return;
    if (!(await hasDesk())) return later();
    close();
    if (isUnseen()) return;
    stream = new EventSource(address());
    stream.addEventListener('open', () => (pause_ms = SOONEST_ms));
    for (const [name, act] of Object.entries(hear))
      stream.addEventListener(name, ({ data }: MessageEvent<string>) => act(data));
    // Left to itself it would ask a desk that has gone every few seconds, and complain each time.
    stream.addEventListener('error', later);
  };
  view.addEventListener('pagehide', close);
  view.addEventListener('pageshow', ({ persisted }) => persisted && void open());
  if (whileSeen) page.addEventListener('visibilitychange', () => (isUnseen() ? close() : void open()));
  if (page.readyState === 'complete') void open();
  else view.addEventListener('load', () => void open(), { once: true });
}
