// Brings the board home after a minute without touch, so that the next child starts fresh.

const ALONE_MS = 60_000;
const SIGNS_OF_LIFE = ['pointerdown', 'keydown', 'scroll', 'wheel'] as const;

/**
 * Goes to the address in `data-board-home` of the body when nothing was touched for a minute.
 * On the home page itself it only scrolls to the top, so that an idle board does not reload all night.
 */
export function goHomeWhenAlone(page: Document): void {
  const home = page.body.dataset['boardHome'];
  const view = page.defaultView;
  if (!home || !view) return;
  let waiting = 0;
  const leave = () => {
    if (view.location.pathname === new URL(home, view.location.href).pathname) view.scrollTo(0, 0);
    else view.location.replace(home);
  };
  const wait = () => {
    view.clearTimeout(waiting);
    waiting = view.setTimeout(leave, ALONE_MS);
  };
  for (const sign of SIGNS_OF_LIFE) view.addEventListener(sign, wait, { passive: true, capture: true });
  wait();
}
