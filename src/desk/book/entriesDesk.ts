// The Milk book's two addresses: the book as a phone holds it, and the entries that phones send.
import type { Context, Hono } from 'hono';
import { readPost } from '../../../shared/book/entry.ts';
import type { EntryAnswer } from '../../../shared/book/types.ts';
import { isFull } from './disk.ts';
import type { Keeper } from './keeper.ts';
import { NoHerd } from './writePosts.ts';

const JSON_TYPE = 'application/json';

/**
 * Adds `desk/book` and `desk/entries` below `base` (it ends in `/`). Entries are answered once they are on disk, those
 * of a day that only the phone's clock has reached not yet; where writing fails the phone hears why and keeps them.
 */
export function addBookDesk(app: Hono, base: string, keeper: Keeper, complain: (text: string) => void): void {
  let told = '';
  let behindOn = '';
  // Once for each day that this clock shows: phones send again and again.
  const tellBehind = () => {
    const { today } = keeper.state();
    if (today !== behindOn) complain(behindWords(today));
    behindOn = today;
  };

  app.get(`${base}desk/book`, async (c) => {
    await keeper.outsideChange();
    const etag = `"${keeper.state().fingerprint}"`;
    const headers = { ETag: etag, 'Cache-Control': 'no-cache' };
    // A pressed answer carries the same mark as a weak one.
    if (c.req.header('If-None-Match')?.replace(/^W\//, '') === etag) return c.body(null, 304, headers);
    return c.body(keeper.stateText(), 200, { ...headers, 'Content-Type': JSON_TYPE });
  });

  app.post(`${base}desk/entries`, async (c) => {
    const read = readPost(await bodyOf(c));
    if (!read.ok) return c.text(`${read.why}\n`, 400);
    const sound = read.entries.flatMap((one) => (one.ok ? [one.entry] : []));
    try {
      const kept = sound.length > 0 ? await keeper.write({ sent_ms: read.sent_ms, entries: sound }) : [];
      told = '';
      const byId = new Map(kept.map((one) => [one.id, one]));
      const answers = read.entries.flatMap((one): EntryAnswer[] => {
        if (!one.ok) return [{ id: one.id, kept: false, why: 'malformed' }];
        const answer = byId.get(one.entry.id);
        return answer ? [answer] : [];
      });
      if (answers.length < read.entries.length) tellBehind();
      // The state is put into words once for all phones that are answered with it.
      const text = `{"answers":${JSON.stringify(answers)},"state":${keeper.stateText()}}`;
      return c.body(text, 200, { 'Content-Type': JSON_TYPE });
    } catch (error) {
      const { words, status } = refusal(error);
      // Phones try again and again; the coordinator is told once.
      if (words !== told) complain(words);
      told = words;
      return c.text(`${words}\n`, status, { 'Retry-After': '10' });
    }
  });
}

async function bodyOf(c: Context): Promise<unknown> {
  try {
    return await c.req.json();
  } catch {
    return undefined;
  }
}

const behindWords = (today: string) =>
  `A phone sends milk of a day that has not begun by the clock of this machine, where today is ${today}. That clock seems to be behind: set its date and time right. If it is right, look at the date of the phones. They keep what was entered and send it again by themselves.`;

function refusal(error: unknown): { words: string; status: 503 | 507 } {
  if (isFull(error))
    return {
      status: 507,
      words:
        'The disk of the desk is full, so nothing more can be written down there. Make room on it. The phones keep what was entered and send it again by themselves.',
    };
  const why =
    error instanceof NoHerd
      ? 'does.csv cannot be read, so that nobody can say who is a doe'
      : error instanceof Error
        ? error.message
        : String(error);
  return {
    status: 503,
    words: `The desk cannot write into the milk book just now: ${why}. The phones keep what was entered and send it again by themselves.`,
  };
}
