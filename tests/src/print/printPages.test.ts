// Printing through a real Chromium: tagged, fonts inside, nothing asked of another machine, plain words on failure.
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openDesk } from '../../../src/desk/serve.ts';
import { openPrintContext, startChromium } from '../../../src/print/chromium.ts';
import { pageCount } from '../../../src/print/pageCount.ts';
import { printPage } from '../../../src/print/printPage.ts';
import { printPages } from '../../../src/print/printPages.ts';
import { ownFolder, writeFiles } from '../build/smallFarm.ts';

const ROOT = join(import.meta.dirname, '../../..');
const FONT = join(ROOT, 'node_modules/@fontsource/andika/files/andika-latin-400-normal.woff2');
// Scripts are files of their own, since the desk's policy lets no other script run.
const READY = '<script src="/ready.js"></script>';
const READY_SCRIPT = "setTimeout(() => (document.documentElement.dataset.sheetReady = 'yes'), 50)";
const SHEET = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>The week's milk</title><style>
@font-face { font-family: Andika; src: url(/andika.woff2) }
@page { size: 210mm 297mm; margin: 15mm }
@media print { body { font-family: Andika } }
/* A weight that no face has is made up by the browser, and goes into the PDF as loose outlines. */
h1, h2 { font-weight: 400 }
h2 { break-before: page }
</style></head><body><h1>How much milk?</h1><p>Clover gave 11 cups.</p><h2>Answer key</h2><p>Half: 5½ cups.</p>`;

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser.close());

async function deskOf(pages: Readonly<Record<string, string>>) {
  const root = ownFolder();
  const dist = join(root, 'dist');
  mkdirSync(dist);
  writeFiles(dist, { 'ready.js': READY_SCRIPT, ...pages });
  copyFileSync(FONT, join(dist, 'andika.woff2'));
  const desk = await openDesk({ dist, prints: join(root, 'prints'), basePath: '/' }, 0);
  onTestFinished(() => desk.close());
  return { root, url: desk.url };
}

const tell = (program: string, ...args: string[]) => spawnSync(program, args, { encoding: 'utf8' }).stdout;

describe('printPages', () => {
  it('prints tagged pages of the size that the page asks for, with its fonts inside', async () => {
    const { root, url } = await deskOf({ 'sheets/3-5/index.html': SHEET + READY });
    const job = { address: 'sheets/3-5/?paper=a4', file: 'sheet.pdf' };
    const [printed] = await printPages(browser, url, [job], join(root, 'out'));
    const file = printed?.file ?? '';
    const facts = tell('pdfinfo', file);
    expect(facts).toMatch(/^Tagged:\s+yes$/m);
    expect(facts).toMatch(/^Page size:\s+59[45]\.\d+ x 84[12]\.\d+ pts \(A4\)$/m);
    expect(pageCount(file)).toBe(2);
    const fonts = tell('pdffonts', file).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/Andika.*\byes\s+yes\s+yes\b/);
    expect(tell('pdftotext', file, '-')).toContain('Half: 5½ cups.');
    expect(readdirSync(join(root, 'out'))).toEqual(['sheet.pdf']);
  });

  it('prints many, each into its own file, in the order of the jobs', async () => {
    const names = ['a', 'b', 'c', 'd', 'e'];
    const pages = names.map((name) => [
      `${name}/index.html`,
      `<!doctype html><title>${name}</title>page ${name}${READY}`,
    ]);
    const { root, url } = await deskOf(Object.fromEntries(pages) as Record<string, string>);
    const jobs = names.map((name) => ({ address: `${name}/`, file: `${name}.pdf` }));
    const printed = await printPages(browser, url, jobs, root);
    expect(printed.map(({ file }) => file)).toEqual(names.map((name) => join(root, `${name}.pdf`)));
    for (const name of names)
      expect(tell('pdftotext', join(root, `${name}.pdf`), '-')).toContain(`page ${name}`);
  });

  it('stops what a page asks of another machine, and names it', async () => {
    let asked = 0;
    const other = createServer((_, response) => {
      asked += 1;
      response.end();
    });
    await new Promise<void>((done) => void other.listen(0, '127.0.0.1', done));
    onTestFinished(() => void other.close());
    const address = `http://127.0.0.1:${(other.address() as AddressInfo).port}/spy.png`;
    // Served without the desk, whose policy would stop the request even sooner.
    const plain = createServer((_, response) => {
      response.setHeader('Content-Type', 'text/html');
      response.end(
        `<!doctype html><title>x</title><img src="${address}" alt=""><script>${READY_SCRIPT}</script>`,
      );
    });
    await new Promise<void>((done) => void plain.listen(0, '127.0.0.1', done));
    onTestFinished(() => void plain.close());
    const url = `http://127.0.0.1:${(plain.address() as AddressInfo).port}/`;
    const [printed] = await printPages(browser, url, [{ address: 'x/', file: 'x.pdf' }], ownFolder());
    expect(printed?.stopped).toEqual([address]);
    expect(asked).toBe(0);
  });

  it('tells how far each page says that it is', async () => {
    const script = `let made = 0;
      const timer = setInterval(() => {
        made += 1;
        document.documentElement.dataset.packMade = made + '/3';
        if (made < 3) return;
        clearInterval(timer);
        document.documentElement.dataset.sheetReady = 'yes';
      }, 600);`;
    const { root, url } = await deskOf({ 'x/index.html': '<!doctype html><title>x</title><script src="/count.js"></script>', 'count.js': script }); // prettier-ignore
    const heard: string[] = [];
    await printPages(browser, url, [{ address: 'x/', file: 'x.pdf' }], root, 5000, (job, made, of) =>
      heard.push(`${job.file} ${made}/${of}`),
    );
    expect(heard).toEqual(['x.pdf 1/3', 'x.pdf 2/3', 'x.pdf 3/3']);
  });

  it('opens no page for an order that was taken back before', async () => {
    const { url } = await deskOf({ 'x/index.html': SHEET + READY });
    const context = await openPrintContext(browser);
    onTestFinished(() => context.close());
    const asked: string[] = [];
    context.on('request', (request) => asked.push(request.url()));
    const printing = printPage(context, `${url}x/`, { wait_ms: 5000, signal: AbortSignal.abort() });
    await expect(printing).rejects.toThrow('The printing was stopped.');
    expect(asked).toEqual([]);
  });

  it('says which page is missing, and writes nothing', async () => {
    const { root, url } = await deskOf({});
    const out = join(root, 'out');
    const printing = printPages(browser, url, [{ address: 'sheets/k-2/', file: 'x.pdf' }], out);
    await expect(printing).rejects.toThrow('/sheets/k-2/ answered 404; there is no page to print.');
    expect(existsSync(join(out, 'x.pdf'))).toBe(false);
  });

  it('says which page was never ready, and what the page itself says', async () => {
    const { root, url } = await deskOf({
      'x/index.html': '<!doctype html><script src="/fails.js"></script>',
      'fails.js': 'throw new Error("no milk")',
    });
    const printing = printPages(browser, url, [{ address: 'x/', file: 'x.pdf' }], root, 300);
    await expect(printing).rejects.toThrow(
      /x\/ was not ready to print after 0\.3 s\. The page itself says: no milk/,
    );
  });
});

describe('startChromium', () => {
  it('says what to do where CHROMIUM names no program', async () => {
    await expect(startChromium({ CHROMIUM: '/no/such/browser' })).rejects.toThrowErrorMatchingInlineSnapshot(`
      [Error: There is no browser to print with: CHROMIUM is "/no/such/browser", which is not a program on this machine.
        On Debian as root: apt-get update && apt-get install chromium-headless-shell
        Or name one that you have: CHROMIUM=/path/to/chromium]
    `);
  });

  it('says what to do where the program does not start', async () => {
    await expect(startChromium({ CHROMIUM: '/bin/false' })).rejects.toThrow(
      /The browser \/bin\/false does not start/,
    );
  });
});
