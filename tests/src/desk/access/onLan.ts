// A desk on a farm's network, asked by phones that are not there.
import { join } from 'node:path';
import { openAccess, type Access } from '../../../../src/desk/access/access.ts';
import { deskApp, folderPath } from '../../../../src/desk/serve.ts';
import { ownFolder, writeFiles } from '../../build/smallFarm.ts';

/** How a request comes in. */
export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: BodyInit;
  /** The address of the other end. */
  readonly from?: string;
  readonly host?: string;
  /** The address at which it came in. */
  readonly at?: string;
}

export const DESK_HOST = '192.168.1.5:4173';
export const PHONE = '192.168.1.20';

/** A desk below `base`, on a clock of its own, with routes that a keeper would add. */
export function deskOnLan(
  base = '/',
  opening: { lang?: string; newWords?: boolean; workshop?: string } = {},
) {
  const root = opening.workshop ?? ownFolder();
  writeFiles(root, {
    'dist/index.html': '<!doctype html><title>front</title>',
    'dist/book/index.html': '<!doctype html><title>book</title>',
    'dist/desk/index.html': '<!doctype html><title>desk</title>',
    'dist/.built': 'mark-of-the-build',
  });
  const clock = { ms: Date.UTC(2026, 4, 21, 12) };
  const access: Access = openAccess({
    workshop: join(root, '.pailside'),
    lang: opening.lang ?? 'en',
    newWords: opening.newWords ?? false,
    env: { PAILSIDE_NAMES: 'Barn.Farm , ' },
    now_ms: () => clock.ms,
  });
  const app = deskApp({ dist: join(root, 'dist'), prints: join(root, 'prints'), basePath: base, access });
  const path = folderPath(base);
  const ask = (inner: string, asking: Asking = {}) => {
    const { host = DESK_HOST, from = PHONE, at = '192.168.1.5', method = 'GET', headers = {}, body } = asking;
    const env = { incoming: { socket: { remoteAddress: from, localAddress: at } } };
    const request = { method, headers: { Host: host, ...headers }, ...(body === undefined ? {} : { body }) };
    return Promise.resolve(app.request(`http://${host}${path}${inner}`, request, env));
  };
  const post = (inner: string, body: unknown, asking: Asking = {}) =>
    ask(inner, {
      method: 'POST',
      ...asking,
      body: JSON.stringify(body),
      headers: {
        'Content-Type': 'application/json',
        Origin: `http://${asking.host ?? DESK_HOST}`,
        ...asking.headers,
      },
    });
  const words = access.lan?.secrets.words ?? [];
  return { root, app, ask, post, clock, words, access };
}

/** The cookie that an answer gives, as a browser sends it back. */
export const cookieOf = (answer: Response): string =>
  (answer.headers.get('Set-Cookie') ?? '').split(';', 1)[0] ?? '';
