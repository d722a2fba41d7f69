// Takes the herd's new numbers from the desk while a page stands open, where there is a desk.
import type { BoardFarm } from '../../../../shared/board/types.ts';
import { askWorker } from '../../frame/askWorker.ts';
import { listenToDesk } from '../../frame/deskStream.ts';
import { watchRest } from './atRest.ts';
import { NEW_SITE } from './keepBoard.ts';

/** Sent on the document when the page has changed to new numbers; its detail is the BoardFarm. */
export const LIVE = 'board:live';

/** What the desk sends of a milk book. */
interface LiveBook {
  readonly fingerprint: string;
  readonly farm: BoardFarm;
}

const QUIET_ms = 3000;
const LOOK_AGAIN_ms = 500;

/** Listens to the desk's stream where there is one. */
export function wakeLive(page: Document): void {
  const view = page.defaultView;
  const { boardBase, book } = page.body.dataset;
  if (!view || !boardBase || book === undefined) return;
  const change = changer(page);
  listenToDesk(view, {
    hasDesk: () => hasDesk(view),
    address: () => `${boardBase}events?book=${page.body.dataset['book']}`,
    hear: {
      book: (told) => change(JSON.parse(told) as LiveBook),
      site: () => page.dispatchEvent(new CustomEvent(NEW_SITE)),
    },
  });
}

/** Changes the page to the newest book that came, once nothing plays and nobody has touched it for a moment. */
function changer(page: Document): (book: LiveBook) => void {
  const restless = watchRest(page, 'untouched');
  let next: LiveBook | null = null;
  let isUnderWay = false;
  const turn = async () => {
    while (next !== null) {
      const wait_ms = restless(QUIET_ms);
      if (wait_ms > 0) {
        await new Promise((done) => setTimeout(done, Math.min(wait_ms, LOOK_AGAIN_ms)));
        continue;
      }
      const { fingerprint, farm } = next;
      next = null;
      if (fingerprint === page.body.dataset['book']) continue;
      const show = await shower(page);
      // It took a moment to fetch; meanwhile a child may have come.
      if (restless(QUIET_ms) > 0) next ??= { fingerprint, farm };
      else {
        show?.(page, farm);
        page.body.dataset['book'] = fingerprint;
        page.dispatchEvent(new CustomEvent(LIVE, { detail: farm }));
      }
    }
  };
  return (book) => {
    next = book;
    if (isUnderWay) return;
    isUnderWay = true;
    // A page that cannot show the new numbers keeps the old ones whole.
    void turn()
      .catch(() => (next = null))
      .finally(() => (isUnderWay = false));
  };
}

/** How a page shows new numbers; null where it has none of its own. */
async function shower(page: Document): Promise<((page: Document, farm: BoardFarm) => void) | null> {
  if (!page.querySelector('main.answer, main.proof, main.home')) return null;
  const { liveShower } = await import('../live/showLive.ts');
  return liveShower(page.documentElement.lang, page.body.dataset['boardBase'] ?? '/');
}

/** Whether the machine that serves the board sends events. The worker asks if there is one: in vain it asks quietly. */
async function hasDesk({ navigator, location }: Window): Promise<boolean> {
  if (!navigator.onLine) return false;
  const worker = (navigator as Partial<Navigator>).serviceWorker?.controller;
  if (worker) return (await askWorker(worker, { ask: 'desk' })) === true;
  return fetch(location.href, { method: 'HEAD', cache: 'no-store' }).then(
    ({ headers }) => headers.get('Pailside-Live') === 'yes',
    () => false,
  );
}
