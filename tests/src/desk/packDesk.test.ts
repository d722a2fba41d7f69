// The desk's printer: for this site's pages on this machine, one pack at a time, never longer than it may.
import { request, type IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';
import { Hono } from 'hono';
import { describe, expect, it, onTestFinished } from 'vitest';
import { addPackDesk, type PackPrinter, type PrintPack } from '../../../src/desk/packDesk.ts';
import { openDesk } from '../../../src/desk/serve.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

interface Answer {
  readonly status: number;
  readonly body: string;
  readonly headers: IncomingHttpHeaders;
}

/** A printer whose packs the test finishes. */
function slowPrinter() {
  const running: { finish: () => void; fail: (why: string) => void; signal: AbortSignal; query: string }[] =
    [];
  const printer: PackPrinter = {
    read: (query) => {
      if (query.get('sheets') === null) return { ok: false, faults: ['No sheet is chosen.'] };
      const print: PrintPack = (tell, signal) =>
        new Promise((done, failed) => {
          tell(3, 30);
          running.push({
            finish: () => done({ pdf: Buffer.from('%PDF-1.4'), name: 'sheets-ñ.pdf' }),
            fail: (why) => failed(new Error(why)),
            signal,
            query: query.toString(),
          });
          signal.addEventListener('abort', () => failed(new Error('stopped')));
        });
      return { ok: true, print };
    },
  };
  return { printer, running };
}

async function deskWith(printer?: PackPrinter, basePath = '/') {
  const root = ownFolder();
  writeFiles(root, { 'dist/print/index.html': '<!doctype html><title>room</title>', 'dist/index.html': 'x' });
  const desk = await openDesk({ dist: join(root, 'dist'), prints: root, basePath, printer }, 0);
  onTestFinished(() => desk.close());
  const { port } = new URL(desk.url);
  const ask = (path: string, headers: Record<string, string> = {}, method = 'GET') =>
    new Promise<Answer>((done, failed) => {
      const asked = request({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
        let body = '';
        response.on('data', (part: Buffer) => (body += part.toString('latin1')));
        response.on('end', () => done({ status: response.statusCode ?? 0, body, headers: response.headers }));
      });
      asked.on('error', failed).end();
    });
  return { ask, own: { Host: `localhost:${port}`, 'Sec-Fetch-Site': 'same-origin' }, port };
}

const PACK = '/print/pack.pdf?sheets=cups';
const until = async (holds: () => boolean) => {
  for (let look = 0; look < 200 && !holds(); look += 1) await new Promise((done) => setTimeout(done, 10));
  expect(holds()).toBe(true);
};

describe('the printer of the desk', () => {
  it('prints the pack of a trip by the same rules, and never beside another pack', async () => {
    const { printer, running } = slowPrinter();
    const { ask, own, port } = await deskWith({ ...printer, readTrip: (query) => printer.read(query) });
    const trip = '/trip/pack.pdf?date=2026-05-27&sheets=x';
    const asked = ask(trip, own);
    await until(() => running.length === 1);
    expect(running[0]?.query).toBe('date=2026-05-27&sheets=x');
    expect(JSON.parse((await ask('/trip/pack-state.json', own)).body)).toEqual({ made: 3, of: 30 });
    for (const other of [PACK, trip]) expect((await ask(other, own)).status).toBe(503);
    running[0]?.finish();
    expect((await asked).status).toBe(200);
    expect((await ask('/trip/pack.pdf?date=2026-05-27', own)).status).toBe(400);
    const away = { Host: `localhost:${port}`, 'Sec-Fetch-Site': 'cross-site' };
    for (const path of [trip, '/trip/pack-state.json']) expect((await ask(path, away)).status).toBe(403);
    expect((await ask('/trip/pack/', own, 'HEAD')).headers['pailside-prints']).toBe('yes');
    expect((await ask('/trip/', own, 'HEAD')).headers['pailside-prints']).toBeUndefined();
    expect(running).toHaveLength(1);
  });

  it('has no pack of a trip where its printer prints none', async () => {
    const { ask, own } = await deskWith(slowPrinter().printer);
    expect((await ask('/trip/pack.pdf?date=2026-05-27&sheets=x', own)).status).toBe(404);
    expect((await ask('/trip/pack/', own, 'HEAD')).headers['pailside-prints']).toBeUndefined();
  });

  it('prints a pack for its own page, says how far it is, and names the file', async () => {
    const { printer, running } = slowPrinter();
    const { ask, own } = await deskWith(printer);
    const asked = ask(PACK, own);
    await until(() => running.length === 1);
    expect(JSON.parse((await ask('/print/pack-state.json', own)).body)).toEqual({ made: 3, of: 30 });
    running[0]?.finish();
    const { status, body, headers } = await asked;
    expect([status, body, headers['content-type']]).toEqual([200, '%PDF-1.4', 'application/pdf']);
    expect(headers['content-disposition']).toBe("inline; filename*=UTF-8''sheets-%C3%B1.pdf");
    expect(headers['cache-control']).toBe('no-store');
    expect(JSON.parse((await ask('/print/pack-state.json', own)).body)).toEqual({ made: 0, of: 0 });
  });

  it('tells the print room that it is there, and no other page', async () => {
    const { ask, own } = await deskWith(slowPrinter().printer);
    expect((await ask('/print/', own, 'HEAD')).headers['pailside-prints']).toBe('yes');
    expect((await ask('/', own)).headers['pailside-prints']).toBeUndefined();
    expect((await ask('/print/', { ...own, Host: 'elsewhere.example' })).headers['pailside-prints']).toBeUndefined();
  }); // prettier-ignore

  it('is not there without a printer', async () => {
    const { ask, own } = await deskWith();
    expect((await ask(PACK, own)).status).toBe(404);
    expect((await ask('/print/', own)).headers['pailside-prints']).toBeUndefined();
  });

  it.each([
    ['a page of another site', { 'Sec-Fetch-Site': 'cross-site' }],
    ['a page of another port', { 'Sec-Fetch-Site': 'same-site' }],
    ['a page of another origin', { Origin: 'http://elsewhere.example' }],
    ['a page without an origin', { Origin: 'null' }],
  ])('refuses %s, and prints nothing', async (_, headers) => {
    const { printer, running } = slowPrinter();
    const { ask, port } = await deskWith(printer);
    const host = { Host: `localhost:${port}` };
    for (const path of [PACK, '/print/pack-state.json'])
      expect((await ask(path, { ...host, ...headers })).status).toBe(403);
    expect(running).toEqual([]);
  });

  it('refuses another name of this machine, and prints nothing', async () => {
    const { printer, running } = slowPrinter();
    const { ask } = await deskWith(printer);
    for (const path of [PACK, '/print/pack-state.json'])
      expect((await ask(path, { Host: 'elsewhere.example' })).status).toBe(421);
    expect(running).toEqual([]);
  });

  it('refuses another machine', async () => {
    const { printer, running } = slowPrinter();
    const app = new Hono();
    addPackDesk(app, '/', printer);
    const env = { incoming: { socket: { remoteAddress: '192.168.1.20' } } };
    const answer = await app.request(PACK, { headers: { Host: 'localhost:4173' } }, env);
    expect(answer.status).toBe(403);
    expect(running).toEqual([]);
  });

  it('prints one pack at a time', async () => {
    const { printer, running } = slowPrinter();
    const { ask, own } = await deskWith(printer);
    const first = ask(PACK, own);
    await until(() => running.length === 1);
    const second = await ask(PACK, own);
    expect([second.status, second.headers['retry-after']]).toEqual([503, '5']);
    running[0]?.finish();
    expect((await first).status).toBe(200);
    const third = ask(PACK, own);
    await until(() => running.length === 2);
    running[1]?.fail('no browser');
    const { status, body } = await third;
    expect([status, body]).toEqual([500, 'The pack could not be printed: no browser\n']);
  });

  it('stops what takes too long, and is free again', async () => {
    const { printer, running } = slowPrinter();
    const app = new Hono();
    addPackDesk(app, '/', printer, 50);
    const env = { incoming: { socket: { remoteAddress: '127.0.0.1' } } };
    const ask = () => app.request(PACK, { headers: { Host: 'localhost:4173' } }, env);
    expect((await ask()).status).toBe(504);
    expect(running[0]?.signal.aborted).toBe(true);
    expect((await ask()).status).toBe(504);
  });

  it('stops when whoever asked has gone', async () => {
    const { printer, running } = slowPrinter();
    const { own, port } = await deskWith(printer);
    const asked = request({ host: '127.0.0.1', port, path: PACK, headers: own, agent: false });
    asked.on('error', () => undefined).end();
    await until(() => running.length === 1);
    asked.destroy();
    await until(() => running[0]?.signal.aborted === true);
  });

  it('takes no order that cannot be read, none that is too long, and no other method', async () => {
    const { printer, running } = slowPrinter();
    const { ask, own } = await deskWith(printer);
    expect(await ask('/print/pack.pdf?x=1', own)).toMatchObject({
      status: 400,
      body: 'No sheet is chosen.\n',
    });
    expect((await ask(`${PACK}&word=${'x'.repeat(2_000)}`, own)).status).toBe(414);
    expect((await ask(PACK, own, 'HEAD')).status).toBe(405);
    expect((await ask(PACK, own, 'POST')).status).toBe(405);
    expect(running).toEqual([]);
  });

  it('stands below the base path', async () => {
    const { printer, running } = slowPrinter();
    const { ask, own } = await deskWith(printer, '/hill/');
    const asked = ask(`/hill${PACK}`, own);
    await until(() => running.length === 1);
    running[0]?.finish();
    expect((await asked).status).toBe(200);
  });
});
