// Where a request comes from: this machine or another, a page of this site or of another one.
import type { Context } from 'hono';

const NAMES_HERE = new Set(['localhost', '127.0.0.1', '[::1]']);
const REMOTES_HERE = new Set(['127.0.0.1', '::1']);
// Whoever hands a request on for somebody else says so; it then comes from this machine and yet not from here.
const HANDED_ON = ['Forwarded', 'X-Forwarded-For', 'X-Forwarded-Host', 'X-Real-IP', 'Via'];

interface Socket {
  readonly remoteAddress?: string | undefined;
  readonly localAddress?: string | undefined;
}

const socketOf = (c: Context): Socket =>
  ((c.env ?? {}) as { incoming?: { socket?: Socket } }).incoming?.socket ?? {};
const plainAddress = (address: string | undefined) => (address ?? '').replace(/^::ffff:/i, '').toLowerCase();

/** The address of the other end; empty where there is no socket. */
export const remoteOf = (c: Context): string => plainAddress(socketOf(c).remoteAddress);

/** The host that was asked for, as the request names it, with its port. */
const hostOf = (c: Context): string => (c.req.header('Host') ?? new URL(c.req.url).host).toLowerCase();

/** The host that was asked for, without its port. */
export const hostNameOf = (c: Context): string => hostOf(c).replace(/:\d+$/, '');

/** The port that was asked for. */
export const hostPortOf = (c: Context): number => Number(/:(\d+)$/.exec(hostOf(c))?.[1] ?? 80);

/** Whether the other end is this very machine, be it for itself or for somebody whose request it hands on. */
export const isFromThisMachine = (c: Context): boolean => REMOTES_HERE.has(remoteOf(c));

/** Whether the request was made on this very machine, under one of its own names: no other name may point here. */
export function isHere(c: Context): boolean {
  if (HANDED_ON.some((name) => c.req.header(name) !== undefined)) return false;
  return isFromThisMachine(c) && isLocalHost(c);
}

/** Whether this machine was asked for by a name that only it answers to itself, whoever asks. */
export const isLocalHost = (c: Context): boolean => NAMES_HERE.has(hostNameOf(c));

/**
 * Whether the host that was asked for is this machine: a name of its own, or the very address at which the request came in.
 * A name that somebody else made point here (DNS rebinding) is neither.
 */
export function isOurHost(c: Context, names: ReadonlySet<string>): boolean {
  const name = hostNameOf(c);
  const address = plainAddress(socketOf(c).localAddress);
  return isLocalHost(c) || names.has(name) || (address !== '' && name === (address.includes(':') ? `[${address}]` : address)); // prettier-ignore
}

/** Whether a page of this site asks, or somebody who typed the address: never a page from elsewhere. */
export function isOwnPage(c: Context): boolean {
  const site = c.req.header('Sec-Fetch-Site');
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
  return c.req.header('Origin') === undefined || isOwnOrigin(c);
}

/**
 * Whether a page of this site sends: its browser must say so. On plain http only `Origin` is sent; a request that names neither
 * is no page's.
 */
export function isSentByOwnPage(c: Context): boolean {
  const site = c.req.header('Sec-Fetch-Site');
  if (site !== undefined && site !== 'same-origin') return false;
  return c.req.header('Origin') === undefined ? site === 'same-origin' : isOwnOrigin(c);
}

const isOwnOrigin = (c: Context) => c.req.header('Origin') === `http://${hostOf(c)}`;
