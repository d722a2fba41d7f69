// The guard before the desk: whose name was asked for, who asks, from which page, with what and how much.
import { request } from 'node:http';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openDesk } from '../../../../src/desk/serve.ts';
import { cookieOf, deskOnLan, PHONE } from './onLan.ts';

// What is kept for those who are let in: the addresses of the Milk book.
const KEPT = ['desk/book', 'desk/entries', 'desk/month?month=2026-05', 'desk/export.csv', 'desk/state', 'desk/invitation', 'desk/none']; // prettier-ignore

describe('the guard', () => {
  it('shows the site to visitors and keeps the Milk book from them', async () => {
    const { ask, post } = deskOnLan();
    for (const page of ['', 'book/', 'desk/', 'desk/index.html']) expect((await ask(page)).status).toBe(200);
    for (const kept of KEPT) {
      for (const answer of [await ask(kept), await post(kept, {})]) {
        expect([answer.status, await answer.json()]).toEqual([403, { why: 'visitor' }]);
        expect(answer.headers.get('Cache-Control')).toBe('no-store');
      }
    }
    expect(await (await ask('desk/who')).json()).toEqual({ who: 'visitor', lan: true, build: 'mark-of-the-build' }); // prettier-ignore
  });

  it('lets this machine write without words, by its own names alone', async () => {
    const { ask } = deskOnLan();
    const here = { from: '127.0.0.1', at: '127.0.0.1' };
    for (const host of ['localhost:4173', '127.0.0.1:4173', '[::1]:4173', 'LOCALHOST:4173'])
      expect(await (await ask('desk/who', { ...here, host })).json()).toMatchObject({ who: 'here' });
    expect(await (await ask('desk/who', { ...here, from: '::ffff:127.0.0.1', host: 'localhost' })).json()).toMatchObject({ who: 'here' }); // prettier-ignore
    // A request of a phone that calls itself local, one that came in at the network's address, one that was handed on.
    expect(await (await ask('desk/who', { host: 'localhost:4173' })).json()).toMatchObject({
      who: 'visitor',
    });
    expect(await (await ask('desk/who', { from: '192.168.1.5' })).json()).toMatchObject({ who: 'visitor' });
    for (const header of ['Forwarded', 'X-Forwarded-For', 'X-Real-IP', 'Via', 'X-Forwarded-Host']) {
      const asked = await ask('desk/who', { ...here, host: 'localhost:4173', headers: { [header]: 'x' } });
      expect(await asked.json()).toMatchObject({ who: 'visitor' });
    }
  });

  it('answers to its own names and addresses and to no name that somebody made point here', async () => {
    const { ask } = deskOnLan();
    for (const host of ['192.168.1.5:4173', 'localhost', 'barn.farm:4173', '127.0.0.1:4173'])
      expect((await ask('', { host })).status).toBe(200);
    expect((await ask('', { host: '[fd00::5]:4173', at: 'FD00::5' })).status).toBe(200);
    for (const host of ['evil.example', '192.168.1.5.evil.example', 'localhost.evil.example', 'localhost.', '192.168.1.6:4173', '10.0.0.1', 'evil.example:4173']) {
      for (const page of ['', 'book/', 'desk/who', 'desk/book', 'events'])
        expect((await ask(page, { host, from: '127.0.0.1', at: '192.168.1.5' })).status).toBe(421);
    }
  }); // prettier-ignore

  it('takes what its own pages send and nothing of other sites', async () => {
    const { post, ask, words } = deskOnLan();
    const cookie = cookieOf(await post('desk/words', { words: words.join(' ') }));
    const sent = (headers: Record<string, string>) =>
      ask('desk/none', { method: 'POST', body: '{}', headers: { 'Content-Type': 'application/json', Cookie: cookie, ...headers } }); // prettier-ignore
    const own = 'http://192.168.1.5:4173';
    // Past the guard nobody answers this address.
    expect((await sent({ Origin: own })).status).toBe(404);
    expect((await sent({ Origin: own, 'Sec-Fetch-Site': 'same-origin' })).status).toBe(404);
    expect((await sent({ 'Sec-Fetch-Site': 'same-origin' })).status).toBe(404);
    for (const headers of [
      {},
      { Origin: 'null' },
      { Origin: 'http://evil.example' },
      { Origin: 'https://192.168.1.5:4173' },
      { Origin: 'http://192.168.1.5:4174' },
      { Origin: 'http://192.168.1.5' },
      { 'Sec-Fetch-Site': 'cross-site' },
      { 'Sec-Fetch-Site': 'same-site', Origin: own },
      { 'Sec-Fetch-Site': 'none', Origin: own },
    ] as Record<string, string>[]) {
      const answer = await sent(headers);
      expect([answer.status, await answer.json()]).toEqual([403, { why: 'elsewhere' }]);
    }
    const read = (headers: Record<string, string>) => ask('desk/none', { headers: { Cookie: cookie, ...headers } }); // prettier-ignore
    expect((await read({ 'Sec-Fetch-Site': 'none' })).status).toBe(404);
    expect((await read({ 'Sec-Fetch-Site': 'same-site' })).status).toBe(403);
    expect((await read({ Origin: 'http://evil.example' })).status).toBe(403);
    const answer = await read({});
    expect(answer.headers.get('Access-Control-Allow-Origin')).toBeNull();
  });

  it('takes the types that an address is made for, and no form of a page', async () => {
    const { ask } = deskOnLan();
    const here = { from: '127.0.0.1', at: '127.0.0.1', host: 'localhost:4173', method: 'POST', body: '{}' };
    const kind = async (inner: string, type: string | null) => {
      const headers = { Origin: 'http://localhost:4173', ...(type === null ? {} : { 'Content-Type': type }) };
      return (await ask(inner, { ...here, headers })).status;
    };
    expect(await kind('desk/none', 'application/json; charset=utf-8')).toBe(404);
    expect(await kind('desk/import/none', 'text/csv')).toBe(404);
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'text/csv', 'application/jsonx', null])
      expect(await kind('desk/none', type)).toBe(415);
    for (const type of ['text/plain', 'multipart/form-data; boundary=x', 'text/html'])
      expect(await kind('desk/import/none', type)).toBe(415);
  }); // prettier-ignore

  it('reads no more than an address needs', async () => {
    const { ask } = deskOnLan();
    const here = { from: '127.0.0.1', at: '127.0.0.1', host: 'localhost:4173', method: 'POST' };
    const headers = { Origin: 'http://localhost:4173', 'Content-Type': 'application/json' };
    const sent = async (inner: string, bytes: number) =>
      (await ask(inner, { ...here, headers, body: `"${'x'.repeat(bytes - 2)}"` })).status;
    expect(await sent('desk/words', 1_000)).toBe(200);
    expect(await sent('desk/words', 1_001)).toBe(413);
    expect(await sent('desk/none', 1_000_000)).toBe(404);
    expect(await sent('desk/none', 1_000_001)).toBe(413);
    expect(await sent('desk/import', 1_000_001)).toBe(404);
    expect(await sent('desk/import', 5_000_001)).toBe(413);
  });

  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS'])('refuses %s wherever it goes', async (method) => {
    const { ask } = deskOnLan();
    for (const path of ['', 'desk/', 'desk/book', 'desk/words'])
      expect((await ask(path, { method, from: '127.0.0.1', host: 'localhost' })).status).toBe(405);
    expect((await ask('desk/', { method: 'POST', from: '127.0.0.1', host: 'localhost' })).status).toBe(405);
  });

  it('puts its rules for browsers on every answer', async () => {
    const { ask } = deskOnLan();
    for (const path of ['', 'nope', 'desk/who', 'desk/book']) {
      const { headers } = await ask(path);
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
      expect(headers.get('Referrer-Policy')).toBe('same-origin');
      expect(headers.get('Cross-Origin-Resource-Policy')).toBe('same-origin');
      expect(headers.get('Cross-Origin-Opener-Policy')).toBeNull();
      const local = await ask(path, { host: 'localhost:4173' });
      expect(local.headers.get('Cross-Origin-Opener-Policy')).toBe('same-origin');
      expect(headers.get('Permissions-Policy')).toContain('geolocation=()');
      expect(headers.get('Content-Security-Policy')).toMatch(/frame-ancestors/);
    }
  });

  it('lets no spelling of an address past', async () => {
    const { ask } = deskOnLan('/visit');
    const piece = fc.constantFrom('desk', 'Desk', '%64esk', 'd%65sk', '/', '//', '/./', '/../', '%2f', 'book', 'b%6fok', 'invitation', '%2e%2e', '?', '#', ';'); // prettier-ignore
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 7 }), async (pieces) => {
        const answer = await ask(pieces.join(''));
        const text = await answer.text();
        if (answer.status === 200) expect(text).toMatch(/<title>(front|book|desk)<|"who":"visitor"/);
        else expect([301, 307, 403, 404]).toContain(answer.status);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a desk with a socket', () => {
  // Every address of 127.0.0.0/8 is this machine; the guard takes only the usual one for "here".
  const from = (port: string, localAddress: string, host: string) =>
    new Promise<string>((done, failed) => {
      const asked = request({ host: '127.0.0.1', port, path: '/desk/who', localAddress, headers: { Host: host }, agent: false }, (response) => {
        let body = '';
        response.on('data', (part: Buffer) => (body += part.toString()));
        response.on('end', () => done(body));
      }); // prettier-ignore
      asked.on('error', failed).end();
    });

  it('knows by the socket who asks', async () => {
    const { root, access } = deskOnLan();
    const settings = { dist: join(root, 'dist'), prints: join(root, 'prints'), basePath: '/', access };
    const desk = await openDesk(settings, 0, '0.0.0.0');
    onTestFinished(() => desk.close());
    const { port } = new URL(desk.url);
    expect(JSON.parse(await from(port, '127.0.0.1', `localhost:${port}`))).toMatchObject({ who: 'here' });
    expect(JSON.parse(await from(port, '127.0.0.9', `127.0.0.1:${port}`))).toMatchObject({ who: 'visitor' });
    expect(await from(port, '127.0.0.9', PHONE)).toContain('does not go by the name');
  });
});
