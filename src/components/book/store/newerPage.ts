// Loads the page anew when the farm's machine has a newer one, as soon as nobody is in the middle of something.

/** What a page is made of: the names of its scripts and styles, which change with them, and what it carries. */
function madeOf(page: Document): string {
  const named = [...page.querySelectorAll('script[src], link[rel="stylesheet"]')].map(
    (one) => one.getAttribute('src') ?? one.getAttribute('href'),
  );
  const carried = [...page.querySelectorAll('script[type="application/json"]')].map((one) => one.textContent);
  return [...named, ...carried].join('\n');
}

const REST_ms = 20_000;
const LOOK_ms = 2_000;
const LOADED = 'pailside page loaded anew for';

/** Watches for a newer page. */
export interface NewerPage {
  /** Fetches the page past the browser's cache, which keeps what came, and compares. */
  look(): Promise<void>;
  close(): void;
}

/** `busy` says that the page must stay as it is just now; seen pages rest for a while before they are loaded anew. */
export function watchNewer(busy: () => boolean): NewerPage {
  const own = madeOf(document);
  let touched_ms = -Infinity;
  let looking: ReturnType<typeof setInterval> | undefined;
  const ending = new AbortController();
  const touch = () => (touched_ms = performance.now());
  for (const name of ['pointerdown', 'keydown', 'input'])
    document.addEventListener(name, touch, { signal: ending.signal, passive: true });
  const isResting = () => document.visibilityState === 'hidden' || performance.now() - touched_ms > REST_ms;
  const load = () => {
    if (!busy() && isResting()) location.reload();
  };
  return {
    async look() {
      if (looking) return;
      const answer = await fetch(location.pathname + location.search, { cache: 'reload' }).catch(() => null);
      if (!answer?.ok || !/html/.test(answer.headers.get('Content-Type') ?? '')) return;
      const newer = madeOf(new DOMParser().parseFromString(await answer.text(), 'text/html'));
      // A page that comes back older all the same is not loaded again and again.
      if (newer === own || !isNews(newer)) return;
      looking = setInterval(load, LOOK_ms);
    },
    close() {
      ending.abort();
      clearInterval(looking);
    },
  };
}

function isNews(newer: string): boolean {
  try {
    if (sessionStorage.getItem(LOADED) === newer) return false;
    sessionStorage.setItem(LOADED, newer);
    return true;
  } catch {
    return false;
  }
}
