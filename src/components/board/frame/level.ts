// The switch between few words and more: kept for this child, forgotten when the board goes home.
import type { Level } from '../../../../shared/board/tell.ts';
import { keepText } from '../keep/box.ts';
import { FORGET } from './alone.ts';

const KEY = 'pailside.level';
// Reached late: in a browser that keeps nothing the bare name already throws.
const passing = () => sessionStorage;
/** Sent on the document when the level has changed. */
export const LEVEL_CHANGED = 'board:level';

/** The level that the page is shown at. */
export function levelOf(page: Document): Level {
  return page.documentElement.dataset['level'] === 'older' ? 'older' : 'younger';
}

/** Makes the page's switch work. */
export function wakeLevel(page: Document): void {
  const show = (level: Level) => {
    page.documentElement.dataset['level'] = level;
    page.dispatchEvent(new CustomEvent(LEVEL_CHANGED));
  };
  page.querySelector('[data-level-switch]')?.addEventListener('click', () => {
    const level = levelOf(page) === 'younger' ? 'older' : 'younger';
    keepText(passing, KEY, level);
    show(level);
  });
  page.addEventListener(FORGET, () => {
    keepText(passing, KEY, null);
    show('younger');
  });
}
