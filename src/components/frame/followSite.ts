// Takes a page's new numbers from the site that has been swapped in, without losing the place of who reads it.

/** What stands in the way of changing a page under somebody's hands. */
export interface Hands {
  /** Something has been filled in or chosen, now or in the address that the page was opened by. */
  isTouched(): boolean;
  /** Text is selected, or a finger or button is down. */
  isBusy(): boolean;
}

/** Watches the hands on a page from now on. */
export function watchHands(page: Document): Hands {
  let isTouched = false;
  let isDown = false;
  for (const sign of ['input', 'change'])
    page.addEventListener(sign, () => (isTouched = true), { passive: true, capture: true });
  page.addEventListener('pointerdown', () => (isDown = true), { passive: true, capture: true });
  for (const sign of ['pointerup', 'pointercancel'])
    page.addEventListener(sign, () => (isDown = false), { passive: true, capture: true });
  return {
    isTouched: () => isTouched || page.location.search !== '',
    isBusy: () => isDown || page.getSelection()?.isCollapsed === false || page.querySelector('dialog[open]') !== null, // prettier-ignore
  };
}

/** The parts of a page that the build fills: what a script of its own is given, or all that is read. */
export function builtParts(page: Document): string {
  const carried = [...page.querySelectorAll('script[type="application/json"]:not(#live-words)')];
  const parts = carried.length > 0 ? carried : [...page.querySelectorAll('main, body > footer')];
  return parts.map(({ innerHTML }) => innerHTML).join('\n');
}

/** Whether a script of the page's own works on it, so that its parts cannot simply be changed. */
export const hasOwnScript = (page: Document): boolean =>
  page.querySelector('script[type="application/json"]:not(#live-words)') !== null;

/** The page as it stands on the site now; null where it cannot be fetched. */
export async function fetchAnew({ location, DOMParser: Parser }: Window & typeof globalThis): Promise<{
  page: Document;
  modified_ms: number;
} | null> {
  try {
    const response = await fetch(location.pathname, { cache: 'no-cache' });
    if (!response.ok) return null;
    const modified_ms = Date.parse(response.headers.get('Last-Modified') ?? '') || 0;
    return { page: new Parser().parseFromString(await response.text(), 'text/html'), modified_ms };
  } catch {
    return null;
  }
}

const sheetsOf = (page: Document) =>
  [...page.querySelectorAll('link[rel="stylesheet"]')].map((one) => one.getAttribute('href')).join(' ');

/** Puts the new page's main part and foot into the open one. False where only opening it again would do. */
export function swapIn(page: Document, next: Document): boolean {
  const [main, newMain] = [page.querySelector('main'), next.querySelector('main')];
  if (!main || !newMain || sheetsOf(page) !== sheetsOf(next)) return false;
  const place = placeIn(page, main);
  main.replaceWith(page.adoptNode(newMain));
  const [foot, newFoot] = [page.querySelector('body > footer'), next.querySelector('body > footer')];
  if (foot && newFoot) foot.replaceWith(page.adoptNode(newFoot));
  page.title = next.title;
  place(newMain);
  return true;
}

/** Remembers focus, what is folded out, how wide tables stand and how far the page is scrolled; gives back the way to it. */
function placeIn(page: Document, main: Element): (into: Element) => void {
  const active = main.contains(page.activeElement) ? pathTo(main, page.activeElement) : null;
  const open = [...main.querySelectorAll('details')].map((one) => one.open);
  const wide = [...main.querySelectorAll('.wide')].map((one) => one.scrollLeft);
  const headings = [...main.querySelectorAll('h1, h2, h3')];
  // What is read stands below the last heading above the middle of the screen.
  const half = (page.defaultView?.innerHeight ?? 0) / 2;
  const nearest = headings.findLastIndex((one) => one.getBoundingClientRect().top < half);
  const top = headings[nearest]?.getBoundingClientRect().top ?? 0;
  const scrolled = page.defaultView?.scrollY ?? 0;
  return (into) => {
    into.querySelectorAll('details').forEach((one, place) => (one.open = open[place] ?? one.open));
    into.querySelectorAll('.wide').forEach((one, place) => (one.scrollLeft = wide[place] ?? 0));
    const heading = into.querySelectorAll('h1, h2, h3')[nearest];
    page.defaultView?.scrollTo({ top: scrolled, behavior: 'instant' });
    if (heading) page.defaultView?.scrollBy({ top: heading.getBoundingClientRect().top - top, behavior: 'instant' }); // prettier-ignore
    const focused = active && elementAt(into, active);
    if (focused instanceof HTMLElement) focused.focus({ preventScroll: true });
  };
}

/** The way from an element to one inside it: the place of each child on it. */
function pathTo(from: Element, to: Element | null): number[] {
  const path: number[] = [];
  for (let at = to; at && at !== from; at = at.parentElement)
    path.unshift([...(at.parentElement?.children ?? [])].indexOf(at));
  return path;
}

function elementAt(from: Element, path: readonly number[]): Element | null {
  let at: Element | undefined = from;
  for (const place of path) at = at?.children[place];
  return at ?? null;
}
