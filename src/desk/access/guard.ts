// What every request to the desk passes first: is this our name, may it write, is it short enough, who asks.
import type { Context, Hono, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { GuardAnswer, Who } from '../../../shared/book/access.ts';
import { hostNameOf, isHere, isLocalHost, isOurHost, isOwnPage, isSentByOwnPage } from './asked.ts';
import type { Access } from './access.ts';

declare module 'hono' {
  interface ContextVariableMap {
    /** Who asks, once the guard has let a request to `desk/…` through. */
    who: Who;
  }
}

/** What an address takes: its types of content, and how many bytes of them. */
interface Takes {
  readonly types: readonly string[];
  readonly most_bytes: number;
}

const JSON_TYPE = 'application/json';
const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const WORDS: Takes = { types: [JSON_TYPE], most_bytes: 1_000 };
const IMPORT: Takes = { types: [JSON_TYPE, 'text/csv', XLSX_TYPE], most_bytes: 5_000_000 };
// A day's entries of a phone that was offline are some 20 kB.
const USUAL: Takes = { types: [JSON_TYPE], most_bytes: 1_000_000 };
// Who may be told or do these is not asked.
const FOR_ALL = new Set(['who', 'words']);

const HEADERS: Readonly<Record<string, string>> = {
  'X-Content-Type-Options': 'nosniff',
  // A page's own requests must name their origin; with no-referrer some would say "null".
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy':
    'camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), hid=(), midi=(), display-capture=()',
};
const NO_PAGE_POLICY = "default-src 'none'; frame-ancestors 'none'";

/** Puts the guard before all that is added to `app` after it. `base` ends in `/`. */
export function addGuard(app: Hono, base: string, access: Access): void {
  const desk = `${base}desk/`;
  const limits = new Map([WORDS, IMPORT, USUAL].map((takes) => [takes, limitOf(takes)]));

  app.use(async (c, next) => {
    await next();
    for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
    const { headers } = c.res;
    // On plain http browsers take this one of their own machine alone, and complain of it elsewhere.
    if (isLocalHost(c)) headers.set('Cross-Origin-Opener-Policy', 'same-origin');
    // What brings no policy of its own is no page. A browser's own PDF viewer is one that a policy would stop.
    if (!headers.has('Content-Security-Policy') && headers.get('Content-Type') !== 'application/pdf')
      headers.set('Content-Security-Policy', NO_PAGE_POLICY);
    if (isDeskAddress(c, desk) && !headers.has('Cache-Control')) headers.set('Cache-Control', 'no-store');
  });

  app.use(async (c, next) => {
    if (!isOurHost(c, access.names)) return wrongHost(c);
    const isDesk = isDeskAddress(c, desk);
    const isReading = c.req.method === 'GET' || c.req.method === 'HEAD';
    if (!isReading && !(isDesk && c.req.method === 'POST'))
      return c.text('This server only shows pages.\n', 405, { Allow: 'GET, HEAD' });
    if (!isDesk) return next();
    if (!(isReading ? isOwnPage(c) : isSentByOwnPage(c))) return refused(c, 403, 'elsewhere');
    const inner = c.req.path.slice(desk.length);
    const who: Who = isHere(c) ? 'here' : (await access.isKnown(c)) ? 'known' : 'visitor';
    if (who === 'visitor' && !FOR_ALL.has(inner)) return refused(c, 403, 'visitor');
    c.set('who', who);
    if (isReading) return next();
    const takes = takesOf(inner);
    const type = (c.req.header('Content-Type') ?? '').split(';', 1)[0]?.trim().toLowerCase() ?? '';
    if (!takes.types.includes(type)) return refused(c, 415, 'kind');
    return limits.get(takes)?.(c, next);
  });
}

// The page `desk/` itself is as public as every page: it holds nothing until the desk has answered it.
const isDeskAddress = (c: Context, desk: string) => c.req.path.startsWith(desk) && !/^(index\.html)?$/.test(c.req.path.slice(desk.length)); // prettier-ignore

const takesOf = (inner: string): Takes =>
  inner === 'words' ? WORDS : /^import(\/|$)/.test(inner) ? IMPORT : USUAL;

const limitOf = ({ most_bytes }: Takes): MiddlewareHandler =>
  bodyLimit({ maxSize: most_bytes, onError: (c) => refused(c, 413, 'too long') });

const refused = (c: Context, status: 403 | 413 | 415, why: GuardAnswer['why']): Response =>
  c.json({ why } satisfies GuardAnswer, status);

const wrongHost = (c: Context): Response =>
  c.text(
    `This desk does not go by the name ${JSON.stringify(hostNameOf(c).slice(0, 100))}. If it should, start it with PAILSIDE_NAMES=that-name npm start\n`,
    421,
  );
