// Keeps the board for times without a network, and lets a new build stand while nobody is there.
import { askWorker } from '../../frame/askWorker.ts';
import { FORGET } from './alone.ts';
import { watchRest } from './atRest.ts';

/** Sent on the document when the desk says that another build stands. */
export const NEW_SITE = 'board:site';

const UNTOUCHED_ms = 60_000;
const AGAIN_ms = 3_600_000;
// Names and address ranges that only a network of one's own has (RFC 1918, RFC 6762).
const NEAR = /^(?:localhost|127\.|\[::1\]|10\.|192\.168\.|172\.(?:1[6-9]|2\d|3[01])\.|.*\.local$)/;

/**
 * Registers the worker for the board of every language. At the board's home it looks for a newer build when the board
 * is forgotten or has stood untouched for a minute, then hourly; a build that is here whole is taken at such a moment.
 */
export async function keepBoard(page: Document, isBuilt: boolean): Promise<void> {
  const view = page.defaultView;
  const { boardBase, boardScopes, boardHome } = page.body.dataset;
  if (!isBuilt || !view || !boardBase || !boardScopes || !boardHome) return;
  // Not there on an address without https, other than this machine's own.
  const workers = (view.navigator as Partial<Navigator>).serviceWorker;
  const home = new URL(boardHome, view.location.href);
  if (view.location.pathname === home.pathname) renewAtHome(page, view, home.href, workers);
  if (!workers) return;
  if (page.readyState !== 'complete')
    await new Promise((done) => view.addEventListener('load', done, { once: true }));
  for (const scope of boardScopes.split(' '))
    await workers
      .register(`${boardBase}board-worker.js`, { scope, updateViaCache: 'none' })
      // A board that cannot be kept still works while the network does.
      .catch(() => undefined);
}

function renewAtHome(
  page: Document,
  view: Window,
  home: string,
  workers: ServiceWorkerContainer | undefined,
): void {
  const restless = watchRest(page, 'by a touch');
  const isAtRest = () => restless(UNTOUCHED_ms) === 0;
  let isNewSite = false;
  let isAnother = false;
  let waiting = 0;
  let isLooking = false;
  let isAskedAgain = false;
  const wait = (ms: number) => {
    view.clearTimeout(waiting);
    waiting = view.setTimeout(() => void look(), ms);
  };
  const look = async () => {
    // Of two builds in quick succession the first can no longer be fetched whole, and the second is told meanwhile.
    if (isLooking) return void (isAskedAgain = true);
    if (!isAtRest()) return wait(restless(UNTOUCHED_ms));
    isLooking = true;
    try {
      if (workers) isAnother = (await newer(view, workers, home, isAtRest)) || isAnother;
      else if (isNewSite) isAnother = await isThere(home);
      if (isAnother && isAtRest()) view.location.reload();
    } finally {
      isLooking = false;
      wait(isAnother || isAskedAgain ? UNTOUCHED_ms : AGAIN_ms);
      isAskedAgain = false;
    }
  };
  // Another window has let another build stand.
  let hadWorker = Boolean(workers?.controller);
  workers?.addEventListener('controllerchange', () => {
    if (hadWorker && !isLooking) {
      isAnother = true;
      wait(0);
    }
    hadWorker = true;
  });
  page.addEventListener(FORGET, () => wait(0));
  page.addEventListener(NEW_SITE, () => {
    isNewSite = true;
    wait(0);
  });
  wait(UNTOUCHED_ms);
}

/** Fetches what is newer and, if the board is still at rest then, lets it stand. Tells whether another build stands now. */
async function newer(
  view: Window,
  workers: ServiceWorkerContainer,
  home: string,
  isAtRest: () => boolean,
): Promise<boolean> {
  const board = new URL('board-worker.js', new URL(view.document.body.dataset['boardBase'] ?? '/', home));
  const all = await workers.getRegistrations();
  const ours = all.filter((one) => (one.active ?? one.waiting ?? one.installing)?.scriptURL === board.href);
  // One after the other: the second finds the files of the first.
  for (const one of ours) {
    if (view.navigator.onLine) await one.update().catch(() => undefined);
    await settled(one.installing);
  }
  if (!isAtRest()) return false;
  let isAnother = false;
  for (const { waiting, active } of ours) {
    const worker = waiting ?? active;
    if (worker) isAnother = (await askWorker(worker, { ask: 'take over', home })) === true || isAnother;
  }
  if (!isAnother && NEAR.test(view.location.hostname) && workers.controller)
    void askWorker(workers.controller, { ask: 'sounds' });
  return isAnother;
}

function settled(worker: ServiceWorker | null): Promise<void> {
  return new Promise((done) => {
    const look = () => {
      if (!worker || worker.state !== 'installing') done();
    };
    worker?.addEventListener('statechange', look);
    look();
  });
}

async function isThere(address: string): Promise<boolean> {
  return fetch(address, { cache: 'no-cache' }).then(
    ({ ok }) => ok,
    () => false,
  );
}
