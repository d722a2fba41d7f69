// What the page of the herd asks the desk.
import type { HerdAnswer, HerdBook, HerdPost } from '../../../../shared/book/herdBook.ts';
import { keepsBook } from '../store/deskTalk.ts';
import type { HerdStatus } from './herd.ts';

// The desk reads the whole book before it writes, which takes seconds in a very long one.
const LONGEST_ms = 30_000;

/** The herd as the desk has it, or why it is not to be had. */
export type HeardHerd =
  | { readonly ok: true; readonly herd: HerdBook }
  | { readonly ok: false; readonly status: Exclude<HerdStatus, 'opening' | 'open'> };

/** Asks for the herd, where the machine that serves this page is the desk. */
export async function askHerd(base: string): Promise<HeardHerd> {
  const keeps = await keepsBook(AbortSignal.timeout(LONGEST_ms));
  if (keeps !== true) return { ok: false, status: keeps === false ? 'no desk' : 'away' };
  try {
    const answer = await fetch(`${base}desk/herd`, {
      cache: 'no-store',
      signal: AbortSignal.timeout(LONGEST_ms),
    });
    if (answer.status === 403) return { ok: false, status: 'words wanted' };
    if (!answer.ok) return { ok: false, status: 'away' };
    return { ok: true, herd: (await answer.json()) as HerdBook };
  } catch {
    return { ok: false, status: 'away' };
  }
}

/** Sends a change; null where the desk gave no answer of its own. */
export async function postHerd(base: string, post: HerdPost): Promise<HerdAnswer | null> {
  try {
    const answer = await fetch(`${base}desk/herd`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(post),
      cache: 'no-store',
      signal: AbortSignal.timeout(LONGEST_ms),
    });
    const said = (await answer.json()) as Partial<HerdAnswer>;
    return 'ok' in said ? (said as HerdAnswer) : null;
  } catch {
    return null;
  }
}
