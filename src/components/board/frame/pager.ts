// Leads on through a page that is longer than the screen by tapping, since nobody should have to drag.
import { LEVEL_CHANGED } from './level.ts';

const OVERLAP = 0.12;

/** Shows the band's "further down" where the stage is longer than its place; at the end it leads back up. */
export function wakePager(page: Document): void {
  const stage = page.querySelector<HTMLElement>('.stage');
  const button = page.querySelector<HTMLButtonElement>('[data-further]');
  if (!stage || !button) return;
  const atEnd = () => stage.scrollTop + stage.clientHeight >= stage.scrollHeight - 2;
  const look = () => {
    const isLong = stage.scrollHeight > stage.clientHeight + 2;
    button.hidden = !isLong;
    // By keyboard the arrows lead down, once the stage can be reached.
    if (isLong) stage.tabIndex = 0;
    else stage.removeAttribute('tabindex');
    button.dataset['further'] = atEnd() ? 'up' : 'down';
    button.setAttribute('aria-label', button.dataset[atEnd() ? 'upWord' : 'downWord'] ?? '');
  };
  button.addEventListener('click', () => {
    if (atEnd()) stage.scrollTo(0, 0);
    else stage.scrollBy(0, stage.clientHeight * (1 - OVERLAP));
    look();
  });
  stage.addEventListener('scroll', look, { passive: true });
  page.addEventListener(LEVEL_CHANGED, () => {
    stage.scrollTo(0, 0);
    look();
  });
  // What a tap brings may make the stage's own parts longer.
  const watcher = new ResizeObserver(look);
  for (const part of [stage, ...stage.children]) watcher.observe(part);
  look();
}
