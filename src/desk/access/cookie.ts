// The cookie by which a phone that has said the words is known again.
import { randomBytes } from 'node:crypto';
import type { Context } from 'hono';
import { getSignedCookie, setSignedCookie } from 'hono/cookie';
import type { Secrets } from './secrets.ts';

// No browser keeps a cookie for longer than 400 days; each month of use starts them anew.
const KEPT_s = 400 * 86_400;
const RENEW_s = 30 * 86_400;
// A clock that was set back must not end the cookies of phones that were let in before.
const AHEAD_s = 400 * 86_400;

const nameOf = (secrets: Secrets) => `pailside-${secrets.desk}`;

/** How old the asking phone's cookie is, s; null where it has none that holds. */
export async function cookieAge_s(c: Context, secrets: Secrets, now_ms: number): Promise<number | null> {
  const value = await getSignedCookie(c, secrets.key as BufferSource, nameOf(secrets));
  const given_s = typeof value === 'string' ? Number(/^1-(\d{1,12})-/.exec(value)?.[1] ?? Number.NaN) : Number.NaN; // prettier-ignore
  const age_s = Math.floor(now_ms / 1000) - given_s;
  return age_s >= -AHEAD_s && age_s <= KEPT_s ? Math.max(0, age_s) : null;
}

/** Whether it is time to give a phone its cookie anew. */
export const isOld = (age_s: number): boolean => age_s > RENEW_s;

/** Gives the phone that is being answered its cookie; scripts and other sites never get at it. */
export async function giveCookie(c: Context, secrets: Secrets, path: string, now_ms: number): Promise<void> {
  const value = `1-${Math.floor(now_ms / 1000)}-${randomBytes(9).toString('base64url')}`;
  await setSignedCookie(c, nameOf(secrets), value, secrets.key as BufferSource, {
    path,
    httpOnly: true,
    sameSite: 'Strict',
    maxAge: KEPT_s,
  });
}
