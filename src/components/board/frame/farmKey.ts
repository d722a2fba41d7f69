// The farm's own page on the board: a key of a plugged-in keyboard opens it, no touch does.

const OPENS = 'F2';
const LEAVES = 'Escape';

/** Opens the farm's page of this language on F2, and goes home from it on Escape. */
export function wakeFarmKey(page: Document): void {
  const { boardPath = '', boardHome } = page.body.dataset;
  page.addEventListener('keydown', (event) => {
    const view = page.defaultView;
    if (!view) return;
    if (event.key === OPENS) {
      event.preventDefault();
      // What stands before the page's own path is the same for all pages of its language.
      const { pathname } = view.location;
      const before = pathname.slice(0, pathname.length - boardPath.length);
      if (boardPath !== '' && pathname.endsWith(boardPath)) view.location.assign(`${before}/barn/farm/`);
    }
    if (event.key === LEAVES && boardPath === '/barn/farm/' && boardHome) view.location.assign(boardHome);
  });
}
