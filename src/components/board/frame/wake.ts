// Wakes what every page of the board has: the level, the way down, home when alone, the lock.
import { goHomeWhenAlone } from './alone.ts';
import { wakeLevel } from './level.ts';
import { lockBoard } from './locked.ts';
import { wakePager } from './pager.ts';

/** Called once on each page of the board. */
export function wakeBoard(page: Document): void {
  lockBoard(page);
  wakeLevel(page);
  wakePager(page);
  goHomeWhenAlone(page);
}
