// Asks "Still there?" when nobody touches the board, and then brings it home, so that the next child starts fresh.

const ALONE_ms = 90_000;
const LONGEST_ms = 180_000;
const ASKING_ms = 30_000;
// A slow reader takes a minute for this many words, and is given three times as long.
const SLOW_WORDS_PER_MIN = 60;
const PATIENCE = 3;
/** What somebody does who is there. */
export const SIGNS_OF_LIFE = ['pointerdown', 'keydown', 'scroll', 'wheel'] as const;

/** Set on the page's root by what speaks or plays: the board does not ask while it is there. */
export const BUSY = 'busy';
/** Sent on the document just before the board goes home: what one child has set is then forgotten. */
export const FORGET = 'board:forget';

/** How long a page of so many words may stand untouched, ms: a minute and a half, for long pages up to three. */
export function patience_ms(words: number): number {
  return Math.min(LONGEST_ms, Math.max(ALONE_ms, (words / SLOW_WORDS_PER_MIN) * PATIENCE * 60_000));
}

/**
 * Watches a page. After `patience_ms` without touch it asks; after half a minute more it forgets what the child has
 * chosen and goes to the address in `data-board-home`. At home it only forgets, so that an idle board does not
 * reload all night.
 */
export function goHomeWhenAlone(page: Document): void {
  const view = page.defaultView;
  const home = page.body.dataset['boardHome'];
  const asking = page.querySelector<HTMLElement>('.still-there');
  if (!home || !view || !asking) return;
  const words = (page.querySelector('main')?.innerText.match(/\p{L}+/gu) ?? []).length;
  let waiting = 0;
  const leave = () => {
    asking.hidden = true;
    page.dispatchEvent(new CustomEvent(FORGET));
    const isHome = view.location.pathname === new URL(home, view.location.href).pathname;
    if (isHome) view.scrollTo(0, 0);
    else view.location.replace(home);
  };
  const ask = () => {
    if (page.documentElement.dataset[BUSY] !== undefined) return wait();
    asking.hidden = false;
    asking.querySelector('button')?.focus();
    waiting = view.setTimeout(leave, ASKING_ms);
  };
  const wait = () => {
    view.clearTimeout(waiting);
    waiting = view.setTimeout(ask, patience_ms(words));
  };
  const alive = () => {
    // The touch that answers the question answers only that.
    if (asking.hidden) wait();
  };
  for (const sign of SIGNS_OF_LIFE) view.addEventListener(sign, alive, { passive: true, capture: true });
  asking.addEventListener('click', () => {
    asking.hidden = true;
    wait();
  });
  asking.addEventListener('keydown', () => {
    asking.hidden = true;
    wait();
  });
  wait();
}
