// The desk: it shows the site and the prints, read-only, and nothing that lies outside of them.
import { symlinkSync } from 'node:fs';
import { createServer, request, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { deskApp, folderPath, openDesk } from '../../../src/desk/serve.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

const SECRET = 'nobody may read this';

function site(basePath = '/') {
  const root = ownFolder();
  writeFiles(root, {
    'secret.txt': SECRET,
    'dist/index.html': '<!doctype html><title>front</title>',
    'dist/404.html': '<!doctype html><title>no such page</title>',
    'dist/barn/index.html': '<!doctype html><title>barn</title>',
    'dist/figures.json': '{}',
    'dist/icon.svg': '<svg/>',
    'dist/assets/andika.woff2': 'font',
    'dist/assets/site.css': 'body {}',
    'dist/.built': 'fingerprint',
    'prints/2026-05-21/sheet-3-5-en-letter.pdf': '%PDF-1.4',
    'prints/2026-05-21/.printed': 'fingerprint',
    'prints/2026-05-14/sheet-k-2-en-letter.pdf': '%PDF-1.4',
  });
  const settings = { dist: join(root, 'dist'), prints: join(root, 'prints'), basePath };
  return {
    root,
    settings,
    get: async (path: string, init?: RequestInit) => deskApp(settings).request(path, init),
  };
}

/** Asks with the path just as it stands: `fetch` and `URL` would tidy it up first. */
function rawGet(
  port: number,
  path: string,
): Promise<{ status: number; body: string; headers: IncomingHttpHeaders }> {
  return new Promise((done, failed) => {
    const asked = request({ host: '127.0.0.1', port, path, agent: false }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => (body += part.toString('latin1')));
      response.on('end', () => done({ status: response.statusCode ?? 0, body, headers: response.headers }));
    });
    asked.on('error', failed).end();
  });
}

describe('deskApp', () => {
  it.each([
    ['/', 'text/html; charset=utf-8'],
    ['/barn/', 'text/html; charset=utf-8'],
    ['/barn/?from=front', 'text/html; charset=utf-8'],
    ['/figures.json', 'application/json; charset=utf-8'],
    ['/icon.svg', 'image/svg+xml; charset=utf-8'],
    ['/assets/andika.woff2', 'font/woff2'],
    ['/assets/site.css', 'text/css; charset=utf-8'],
    ['/pdf/2026-05-21/sheet-3-5-en-letter.pdf', 'application/pdf'],
  ])('answers %s as %s', async (path, type) => {
    const response = await site().get(path);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe(type);
  });

  it('keeps pages to their own site by its policy, and asks again for each page', async () => {
    const { headers } = await site().get('/');
    expect(headers.get('content-security-policy')).toMatchInlineSnapshot(
      `"default-src 'self'; style-src 'self' 'unsafe-inline'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'self'"`,
    );
    expect(headers.get('cache-control')).toBe('no-cache');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('says "not modified" to a browser that has the page', async () => {
    const { get } = site();
    const etag = (await get('/')).headers.get('etag') ?? '';
    const again = await get('/', { headers: { 'If-None-Match': etag } });
    expect([again.status, await again.text()]).toEqual([304, '']);
  });

  it('presses pages for those who take them so, and knows a pressed page again', async () => {
    const { root, get } = site();
    const page = `<!doctype html><title>long</title>${'<p>milk</p>'.repeat(500)}`;
    writeFiles(root, { 'dist/long/index.html': page });
    const pressed = await get('/long/', { headers: { 'Accept-Encoding': 'gzip' } });
    expect(pressed.headers.get('Content-Encoding')).toBe('gzip');
    const bytes = Buffer.from(await pressed.arrayBuffer());
    expect(bytes.length).toBeLessThan(page.length / 4);
    expect(gunzipSync(bytes).toString()).toBe(page);
    const mark = pressed.headers.get('ETag') ?? '';
    const again = await get('/long/', { headers: { 'Accept-Encoding': 'gzip', 'If-None-Match': mark } });
    expect(again.status).toBe(304);
    const plain = await get('/long/', { headers: { 'Accept-Encoding': 'identity' } });
    expect([plain.headers.get('Content-Encoding'), await plain.text()]).toEqual([null, page]);
  });

  it('gives headers alone to HEAD', async () => {
    const response = await site().get('/barn/', { method: 'HEAD' });
    expect([response.status, await response.text()]).toEqual([200, '']);
  });

  it.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])('refuses %s', async (method) => {
    expect((await site().get('/', { method })).status).toBe(405);
  });

  it('sends an address of a folder without its slash on, with its question', async () => {
    const response = await site().get('/barn?seed=clover');
    expect([response.status, response.headers.get('location')]).toEqual([307, '/barn/?seed=clover']);
  });

  it.each([
    '/nope/',
    '/nope',
    '/.built',
    '/assets/',
    '/index.html/',
    '/%00',
    '/%E0%A4%A',
    '//barn/',
    '/pdf/.printed',
    '/pdf/2026-05-21/',
  ])('answers %s with the page for lost ways', async (path) => {
    const response = await site().get(path);
    expect(response.status).toBe(404);
    expect(await response.text()).toContain('no such page');
  });

  it('lists the prints, newest day first', async () => {
    const html = await (await site().get('/pdf/')).text();
    const links = [...html.matchAll(/<a href="([^"]+)"/g)].map((match) => match[1]);
    expect(links).toEqual(['2026-05-21/sheet-3-5-en-letter.pdf', '2026-05-14/sheet-k-2-en-letter.pdf']);
  });

  it('says how to print where nothing is printed yet', async () => {
    const { settings } = site();
    const app = deskApp({ ...settings, prints: join(settings.prints, 'none') });
    expect(await (await app.request('/pdf/')).text()).toContain('npm run print');
  });
});

describe('deskApp under a base path', () => {
  it.each([
    ['/visit/', 200, null],
    ['/visit/barn/', 200, null],
    ['/visit/pdf/2026-05-21/sheet-3-5-en-letter.pdf', 200, null],
    ['/', 307, '/visit/'],
    ['/visit', 307, '/visit/'],
    ['/visit/barn', 307, '/visit/barn/'],
    ['/barn/', 404, null],
    ['/visitor/barn/', 404, null],
  ])('answers %s with %i', async (path, status, location) => {
    const response = await site('/visit').get(path);
    expect([response.status, response.headers.get('location')]).toEqual([status, location]);
  });

  it.each([
    ['/', '/'],
    ['', '/'],
    ['visit', '/visit/'],
    ['/visit/', '/visit/'],
    ['/a/b', '/a/b/'],
  ])('takes %j for %j', (given, path) => {
    expect(folderPath(given)).toBe(path);
  });
});

describe('no way leads out', () => {
  const open = async () => {
    const { root, settings } = site();
    symlinkSync(join(root, 'secret.txt'), join(root, 'dist', 'link.txt'));
    symlinkSync(root, join(root, 'prints', 'up'));
    symlinkSync(root, join(root, 'dist', 'book'));
    writeFiles(root, { 'shelf/assets/old.12345678.js': 'x' });
    symlinkSync(join(root, 'secret.txt'), join(root, 'shelf', 'assets', 'link.12345678.js'));
    const desk = await openDesk({ ...settings, shelf: join(root, 'shelf') }, 0);
    onTestFinished(() => desk.close());
    return Number(new URL(desk.url).port);
  };

  it.each([
    '/../secret.txt',
    '/barn/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/%252e%252e%252fsecret.txt',
    '/..%5csecret.txt',
    '/pdf/../../secret.txt',
    '/pdf/..%2f..%2fsecret.txt',
    '/pdf/%2e%2e/secret.txt',
    '/link.txt',
    '/pdf/up/secret.txt',
    '/./.././secret.txt',
    '/book/secret.txt',
    '/secret.txt%00.html',
    '/%2e%2e%00/secret.txt',
    '/..\\secret.txt',
    '/barn\\..\\..\\secret.txt',
    '/%c0%ae%c0%ae/secret.txt',
    '/..%c0%afsecret.txt',
    '/%uff0e%uff0e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/%2e%2e/secret.txt',
    '/assets/link.12345678.js',
    '/desk/../../secret.txt',
    '/desk/%2e%2e/%2e%2e/secret.txt',
    '/..;/secret.txt',
    'http://localhost/../secret.txt',
    'http://localhost/%2e%2e%2fsecret.txt',
  ])('by %s', async (path) => {
    const { status, body } = await rawGet(await open(), path);
    expect(body).not.toContain(SECRET);
    // A backslash has no place in an address at all.
    expect(status).toBe(path.includes('\\') ? 400 : 404);
  });

  it('by any mix of dots, slashes and codes', async () => {
    const port = await open();
    const piece = fc.constantFrom(
      '..',
      '.',
      '/',
      '//',
      '%2e',
      '%2f',
      '%5c',
      '\\',
      'pdf',
      'barn',
      'secret.txt',
      'dist',
      'up',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(piece, { maxLength: 10 }), async (pieces) => {
        const { body } = await rawGet(port, `/${pieces.join('')}`);
        expect(body).not.toContain(SECRET);
      }),
      { numRuns: 200 },
    );
  });
});

describe('openDesk', () => {
  it('takes the next free port where the one asked for is taken', async () => {
    const other = createServer();
    await new Promise<void>((done) => void other.listen(0, '127.0.0.1', done));
    onTestFinished(() => void other.close());
    const { port } = other.address() as AddressInfo;
    const desk = await openDesk(site().settings, port);
    onTestFinished(() => desk.close());
    expect(Number(new URL(desk.url).port)).toBeGreaterThan(port);
    expect((await fetch(desk.url.replace('localhost', '127.0.0.1'))).status).toBe(200);
  });

  it('listens to this machine alone', async () => {
    const desk = await openDesk(site().settings, 0);
    onTestFinished(() => desk.close());
    const { port } = new URL(desk.url);
    // All of 127.0.0.0/8 is this machine, but only 127.0.0.1 was opened.
    await expect(fetch(`http://127.0.0.2:${port}/`)).rejects.toThrow();
  });
});
