// How long a browser may keep what the desk sends: nothing without asking, but for what a phone in the barn cannot do without.
import { copyFileSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';

const ASSETS = 'assets';
// The name of such a file holds a mark of what is in it, so that it is never another file.
const MARKED = /\.[\w-]{8}\.\w+$/;
const FOR_GOOD = 'public, max-age=31536000, immutable';
// On plain http a phone keeps no worker, so the browser's own cache must open the page where there is no Wi-Fi. It holds no
// numbers, and looks by itself for a newer one.
const SHELL = 'max-age=86400, stale-while-revalidate=604800';
/** A rebuild changes pages under the same address: always ask, mostly hear "not modified". */
export const ASK = 'no-cache';
const SHELF_ms = 14 * 86_400_000;

/** What the answer to an address within the site may be kept for; the address begins with `/`. */
export function cachingOf(address: string): string {
  if (isAsset(address) && MARKED.test(address)) return FOR_GOOD;
  return isShell(address) ? SHELL : ASK;
}

/** Whether a phone may open the page at an address without asking: the Milk book's own, in any language. */
export const isShell = (address: string): boolean => /^\/(?:[a-z]{2,3}(?:-[\w-]+)?\/)?book\/$/.test(address);

/** Whether an address is one of the scripts, styles and fonts that pages are made with. */
export const isAsset = (address: string): boolean => address.startsWith(`/${ASSETS}/`);

/** The assets of earlier builds, for pages that browsers have kept. */
export interface AssetShelf {
  /** Puts the assets of the build that stands on the shelf, if they are not there yet, and takes off those of old. */
  fill(): void;
  /** The folder whose `assets/` it is. */
  readonly folder: string;
}

/** A shelf in the workshop; `build` tells which build stands. */
export function openShelf(dist: string, folder: string, build: () => string | null, now_ms = () => Date.now()): AssetShelf {
  let filled: string | null = null;
  return {
    folder,
    fill() {
      const mark = build();
      if (mark === null || mark === filled) return;
      try {
        putOnShelf(join(dist, ASSETS), join(folder, ASSETS), now_ms());
        filled = mark;
      } catch {
        // In the moment of a swap, or on a full disk: the next page tries again, and this one is as good as before.
      }
    },
  };
} // prettier-ignore

function putOnShelf(from: string, to: string, now_ms: number): void {
  mkdirSync(to, { recursive: true });
  const now = new Set(readdirSync(from).filter((name) => MARKED.test(name)));
  const there = new Set(readdirSync(to));
  for (const name of now) {
    const kept = join(to, name);
    if (!there.has(name)) copyFileSync(join(from, name), kept);
    // From the day on which it is gone from the site its time on the shelf is counted.
    utimesSync(kept, now_ms / 1000, now_ms / 1000);
  }
  for (const name of there)
    if (!now.has(name) && now_ms - statSync(join(to, name)).mtimeMs > SHELF_ms) rmSync(join(to, name));
}
