// Asks "Still there?" when nobody touches the board, and then brings it home, so that the next child starts fresh.

const ALONE_ms = 90_000;
const LONGEST_ms = 180_000;
const ASKING_ms = 30_000;
// No page is read aloud for so many rounds of waiting: a sound that never ends must not hold the board.
const MOST_BUSY_ROUNDS = 4;
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

/** Words that a page has to be read at the level that is shown; what is only tapped is not counted. */
function wordsToRead(page: Document): number {
  const texts = [...page.querySelectorAll<HTMLElement>('main p, main li, main dd, main dt, main td')];
  return texts
    .filter(
      (one) => one.checkVisibility() && !one.closest('a, button') && !one.querySelector('p, li, a, button'),
    )
    .reduce((sum, one) => sum + (one.textContent.match(/[\p{L}\p{N}]+/gu) ?? []).length, 0);
}

/**
 * Watches a page. After `patience_ms` without touch it asks; after half a minute more it forgets what the child has
 * chosen and goes to the address in `data-board-home`. At home there is nothing to ask: it only forgets, so that an
 * idle board neither blinks nor reloads all night.
 */
export function goHomeWhenAlone(page: Document): void {
  const view = page.defaultView;
  const home = page.body.dataset['boardHome'];
  const asking = page.querySelector<HTMLElement>('.still-there');
  if (!home || !view || !asking) return;
  const isHome = view.location.pathname === new URL(home, view.location.href).pathname;
  let waiting = 0;
  let busyRounds = 0;
  const after = (time_ms: number, act: () => void) => {
    view.clearTimeout(waiting);
    waiting = view.setTimeout(act, time_ms);
  };
  const leave = () => {
    asking.hidden = true;
    page.dispatchEvent(new CustomEvent(FORGET));
    if (isHome) view.scrollTo(0, 0);
    else view.location.replace(home);
  };
  const ask = () => {
    if (page.documentElement.dataset[BUSY] !== undefined && (busyRounds += 1) < MOST_BUSY_ROUNDS)
      return wait();
    if (isHome) return leave();
    asking.hidden = false;
    asking.querySelector('button')?.focus();
    after(ASKING_ms, leave);
  };
  // How much there is to read changes with the level, so it is counted only when it matters.
  const askLater = () => {
    const more_ms = patience_ms(wordsToRead(page)) - ALONE_ms;
    if (more_ms > 0) after(more_ms, ask);
    else ask();
  };
  const wait = () => after(ALONE_ms, askLater);
  const alive = () => {
    // The touch that answers the question answers only that.
    busyRounds = 0;
    if (asking.hidden) wait();
  };
  for (const sign of SIGNS_OF_LIFE) view.addEventListener(sign, alive, { passive: true, capture: true });
  for (const sign of ['click', 'keydown'])
    asking.addEventListener(sign, () => {
      asking.hidden = true;
      wait();
    });
  wait();
}
