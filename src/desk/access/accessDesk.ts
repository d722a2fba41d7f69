// The desk's addresses about access: who asks, the words, and the invitation for other phones.
import type { Context, Hono } from 'hono';
import type { InvitationAnswer, WhoAnswer, WordsAnswer } from '../../../shared/book/access.ts';
import type { Access } from './access.ts';
import { hostPortOf, remoteOf } from './asked.ts';
import { cookieAge_s, giveCookie, isOld } from './cookie.ts';
import { invitationOf } from './invitation.ts';
import { areWords } from './secrets.ts';

const NO_INVITATION: InvitationAnswer = { words: [], ways: [] };

/**
 * Adds `desk/who`, `desk/words` and, for this machine alone, `desk/invitation` below `base`, which ends in `/`. `build` gives
 * the mark of the site that stands.
 */
export function addAccessDesk(app: Hono, base: string, access: Access, build: () => string | null): void {
  const { lan, now_ms } = access;

  app.get(`${base}desk/who`, async (c) => {
    const who = c.get('who');
    const age_s = lan && who === 'known' ? await cookieAge_s(c, lan.secrets, now_ms()) : null;
    if (lan && age_s !== null && isOld(age_s)) await giveCookie(c, lan.secrets, base, now_ms());
    return c.json({ who, lan: lan !== null, build: build() } satisfies WhoAnswer);
  });

  app.post(`${base}desk/words`, async (c) => {
    const words = await wordsIn(c);
    if (c.get('who') === 'here') return c.json({ ok: true, who: 'here' } satisfies WordsAnswer);
    if (!lan) return c.json({ ok: false, why: 'closed' } satisfies WordsAnswer, 403);
    const from = remoteOf(c);
    // Nothing is waited for from here to the count: many tries at once are looked at one by one.
    const wait_ms = lan.tries.wait_ms(from);
    if (wait_ms > 0) return tooMany(c, Math.ceil(wait_ms / 1000));
    if (words === null || !areWords(lan.secrets, words)) {
      lan.tries.wrong(from);
      return c.json({ ok: false, why: 'wrong' } satisfies WordsAnswer, 403);
    }
    lan.tries.right(from);
    await giveCookie(c, lan.secrets, base, now_ms());
    return c.json({ ok: true, who: 'known' } satisfies WordsAnswer);
  });

  app.get(`${base}desk/invitation`, (c) => {
    if (c.get('who') !== 'here') return c.json(NO_INVITATION, 403);
    return c.json(lan ? invitationOf(lan.secrets.words, { port: hostPortOf(c), base }) : NO_INVITATION);
  });
}

const tooMany = (c: Context, wait_s: number): Response =>
  c.json({ ok: false, why: 'wait', wait_s } satisfies WordsAnswer, 429, { 'Retry-After': String(wait_s) });

async function wordsIn(c: Context): Promise<string | null> {
  try {
    const { words } = await c.req.json<{ words?: unknown }>();
    return typeof words === 'string' ? words : null;
  } catch {
    return null;
  }
}
