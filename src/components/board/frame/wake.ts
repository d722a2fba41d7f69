// Wakes what every page of the board has: the level, the way down, home when alone, the lock, the worker, live numbers.
import { goHomeWhenAlone } from './alone.ts';
import { keepBoard } from './keepBoard.ts';
import { countVisit } from './counts.ts';
import { wakeFarmKey } from './farmKey.ts';
import { wakeLevel } from './level.ts';
import { wakeListen } from './listen.ts';
import { lockBoard } from './locked.ts';
import { wakePager } from './pager.ts';

/** Called once on each page of the board; `isBuilt` is false on a site that is only being worked on. */
export function wakeBoard(page: Document, isBuilt: boolean): void {
  lockBoard(page);
  wakeLevel(page);
  countVisit(page);
  wakeFarmKey(page);
  wakePager(page);
  goHomeWhenAlone(page);
  void keepBoard(page, isBuilt);
  void wakeListen(page, isBuilt);
  if (isBuilt) whenComplete(page, () => void import('./live.ts').then(({ wakeLive }) => wakeLive(page)));
}

// A child is there first; whether there is a desk to listen to can wait until the page stands.
function whenComplete(page: Document, act: () => void): void {
  if (page.readyState === 'complete') act();
  else page.defaultView?.addEventListener('load', act, { once: true });
}
