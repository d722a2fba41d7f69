// Whether the machine that serves a page sends events, and what else its answer tells of the page.
import { askWorker } from './askWorker.ts';

/** What the head of a page's own address says. */
export interface DeskHead {
  /** The desk sends events. */
  readonly live: boolean;
  /** It makes the site anew when the book has changed. */
  readonly rebuilds: boolean;
  /** When the page was made, ms; null where nobody says. */
  readonly modified_ms: number | null;
}

/** What the offline worker answers. */
interface ToldHead {
  readonly live: string | null;
  readonly rebuilds: string | null;
  readonly modified: string | null;
}

/** Asks the machine that serves the page; null without a network. The worker asks if there is one: in vain it asks quietly. */
export async function askDesk({ navigator, location }: Window): Promise<DeskHead | null> {
  if (!navigator.onLine) return null;
  const worker = (navigator as Partial<Navigator>).serviceWorker?.controller;
  const told = worker
    ? ((await askWorker(worker, { ask: 'head', address: location.href })) as ToldHead | null)
    : await headOf(location.href);
  if (!told) return null;
  const modified_ms = Date.parse(told.modified ?? '');
  return {
    live: told.live === 'yes',
    rebuilds: told.rebuilds === 'yes',
    modified_ms: Number.isNaN(modified_ms) ? null : modified_ms,
  };
}

async function headOf(address: string): Promise<ToldHead | null> {
  try {
    const response = await fetch(address, { method: 'HEAD', cache: 'no-store' });
    // An answer that nobody reads to its end counts as broken off.
    await response.text();
    const of = (name: string) => response.headers.get(name);
    if (!response.ok) return null;
    return { live: of('Pailside-Live'), rebuilds: of('Pailside-Rebuilds'), modified: of('Last-Modified') };
  } catch {
    return null;
  }
}
