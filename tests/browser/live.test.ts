// Live numbers on the board: a row in the milk book changes an open page, number, words and drawing together.
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { answerTo, QUESTIONS } from '../../shared/board/answers.ts';
import { dayAmount, jarAmount } from '../../shared/board/shown.ts';
import { LEVEL_TEXTS, LEVELS, tell, tellLevel } from '../../shared/board/tell.ts';
import type { QuestionName } from '../../shared/board/topics.ts';
import type { Answer, BoardFarm } from '../../shared/board/types.ts';
import { readBoardBook } from '../../src/farm/boardBook.ts';
import { startChromium } from '../../src/print/chromium.ts';
import type { LiveWords } from '../../src/components/board/live/showLive.ts';
import { boardKept } from '../support/boardVisit.ts';
import { builtSite, type TestSite } from '../support/builtSite.ts';
import { serveCopy, type ServedCopy } from '../support/servedCopy.ts';

const SOON = { timeout: 30_000, interval: 20 };
const LONG_ms = 400_000;
const MOST_SCRIPT_BYTES = 15_000;
const WATCHING = { settle_ms: 200, look_ms: 60_000 };
// The last day of the demo's week.
const DAY = '2026-05-21';

let browser: Browser;
let site: TestSite;
let farm = '';
let copy: ServedCopy;
let context: BrowserContext;
let complaints: string[];

beforeAll(async () => {
  site = await builtSite('demo');
  browser = await startChromium();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  farm = mkdtempSync(join(tmpdir(), 'live-farm-'));
  cpSync(join('content', 'farm'), farm, { recursive: true });
  complaints = [];
  copy = await serveCopy(site, {
    live: {
      farm,
      now_ms: () => Date.now(),
      complain: (text) => void complaints.push(text),
      watching: WATCHING,
    },
  });
  context = await browser.newContext({ viewport: { width: 1080, height: 1920 }, hasTouch: true });
  context.on('page', (page) => {
    page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  });
});
afterEach(async () => {
  await context.close();
  await copy.close();
  rmSync(farm, { recursive: true, force: true });
});

/** The farm as the board is told of it now. */
function bookNow(): { farm: BoardFarm; fingerprint: string } {
  const reading = readBoardBook(farm, { now_ms: Date.now() });
  if (!reading.ok) throw new Error('The copy of the farm cannot be read.');
  return reading;
}

/** Corrects the last day of the book: every doe gives so many cups at each milking. The newest row of a milking counts. */
function correct(cups: number, entered = '2026-05-21T20:00:00-05:00'): void {
  const does = ['juniper', 'hester', 'tansy', 'maribel', 'pepita'];
  const rows = does.flatMap((doe) => ['am', 'pm'].map((milking) => `${DAY},${milking},${doe},${cups},,kept,,${entered}\n`)); // prettier-ignore
  appendFileSync(join(farm, 'milkings', '2026-05.csv'), rows.join(''));
}

const changedTo = (page: Page, fingerprint: string) =>
  expect.poll(() => page.locator('body').getAttribute('data-book'), SOON).toBe(fingerprint);
const inOneLine = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();
const textOf = async (page: Page, place: string) =>
  inOneLine(await page.locator(place).first().textContent());

async function open(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(copy.at(path));
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  return page;
}

const liveWords = (lang: string): LiveWords =>
  JSON.parse(readFileSync(join(copy.folder, 'barn', 'live', `${lang}.json`), 'utf8')) as LiveWords;

/** Everything that an answer says at both levels, and what it is drawn with. */
function toldBy(name: QuestionName, lang: string, words: LiveWords): { answer: Answer; texts: string[] } {
  const input = { ...bookNow().farm, lang, composition: words.composition };
  const answer = answerTo(name, input);
  const own = { lang, entries: words.questions[name] ?? {} };
  if (answer.missing) return { answer, texts: [tell(own, answer, 'missing')] };
  const levels = LEVELS.flatMap((level) =>
    LEVEL_TEXTS.flatMap((text) => tellLevel(own, answer, level, text) ?? []),
  );
  return { answer, texts: [answer.number, tell(own, answer, 'unit'), ...levels] };
}

describe('a row in the book', () => {
  it.each([
    ['en', 'barn/how-much/', 'how-much'],
    ['es', 'es/barn/whose-milk/', 'whose-milk'],
    ['en', 'barn/where-it-goes/', 'where-it-goes'],
  ] as const)('changes an open page in seconds (%s %s)', async (lang, path, name) => {
    const page = await open(path);
    const before = { number: await textOf(page, '#answer .big'), drawing: await page.locator('#answer .picture').innerHTML(), headline: await textOf(page, '#answer .headline') }; // prettier-ignore
    const from_ms = performance.now();
    correct(20);
    const { fingerprint } = bookNow();
    await changedTo(page, fingerprint);
    const took_ms = performance.now() - from_ms;
    console.log(`From the row to the page: ${Math.round(took_ms)} ms (/${path})`);
    expect(took_ms).toBeLessThan(5000);
    const { answer, texts } = toldBy(name, lang, liveWords(lang));
    expect(answer.number).not.toBe(before.number);
    expect(await textOf(page, '#answer .big')).toBe(answer.number);
    const told = await textOf(page, '#answer');
    for (const text of texts) expect(told).toContain(inOneLine(text));
    expect(await page.locator('#answer .picture').innerHTML()).not.toBe(before.drawing);
    if (answer.picture.kind === 'jars')
      expect(await page.locator('#answer .picture svg').first().getAttribute('aria-label')).toContain(dayAmount({ ...bookNow().farm, lang, composition: [] }, answer.picture.milk_mL).text); // prettier-ignore
    expect(await page.locator('#answer .told').count()).toBe(1);
    expect(complaints).toEqual([]);
  });

  it('changes the jars at the board’s home', async () => {
    const page = await open('barn/');
    const before = await textOf(page, '.total strong');
    correct(20);
    const { farm: now, fingerprint } = bookNow();
    await changedTo(page, fingerprint);
    const total_mL = (now.figures.figures['herd.week.total']?.value ?? 0) * 1000;
    const jars = jarAmount({ ...now, lang: 'en', composition: [] }, total_mL);
    expect(jars.text).not.toBe(before);
    expect(await textOf(page, '.total strong')).toBe(jars.text);
    expect([await page.locator('.total').count(), await page.locator('.week').count()]).toEqual([1, 1]);
  });

  it('changes the proof along with the answer: number, sums, rows and the place of each in the book', async () => {
    const page = await open('barn/how-much/proof/');
    await page.locator('summary').tap();
    correct(20);
    await changedTo(page, bookNow().fingerprint);
    const { answer } = toldBy('how-much', 'en', liveWords('en'));
    expect(await textOf(page, '.claim strong')).toBe(answer.number);
    expect((await page.locator('.sums dd').allTextContents()).map(inOneLine)).toEqual(answer.proof.steps.map(({ sum }) => sum)); // prettier-ignore
    const places = await page.locator('.rows tbody tr').evaluateAll((rows) => rows.map((row) => row.getAttribute('title'))); // prettier-ignore
    expect(places).toEqual(answer.proof.rows.map(({ place }) => place));
    expect(complaints).toEqual([]);
  });

  it('tells the page’s other scripts', async () => {
    const page = await open('barn/do/pour/');
    await page.evaluate(() =>
      document.addEventListener('board:live', (event) => {
        document.body.dataset['heard'] = (event as CustomEvent<{ units: string }>).detail.units;
      }),
    );
    correct(20);
    await expect.poll(() => page.locator('body').getAttribute('data-heard'), SOON).toBe('us');
  });

  it('changes nothing while a child touches the page, or while it speaks', async () => {
    const page = await open('barn/how-much/');
    const built = await page.locator('body').getAttribute('data-book');
    const stays = async () => expect(await page.locator('body').getAttribute('data-book')).toBe(built);
    await page.touchscreen.tap(5, 5);
    correct(20);
    for (let part = 0; part < 10; part += 1) {
      await page.touchscreen.tap(5, 5);
      await sleep(500);
      await stays();
    }
    await page.evaluate(() => (document.documentElement.dataset['busy'] = ''));
    await sleep(4500);
    await stays();
    await page.evaluate(() => delete document.documentElement.dataset['busy']);
    await changedTo(page, bookNow().fingerprint);
  });

  it(
    'is on every page that is opened afterwards, in both languages, in the words of the new numbers',
    async () => {
      correct(20);
      const { fingerprint } = bookNow();
      const page = await context.newPage();
      for (const lang of ['en', 'es'] as const) {
        const words = liveWords(lang);
        for (const name of QUESTIONS) {
          await page.goto(copy.at(`${lang === 'en' ? '' : 'es/'}barn/${name}/`));
          await changedTo(page, fingerprint);
          const told = await textOf(page, '#answer');
          for (const text of toldBy(name, lang, words).texts) expect(told, `${lang} ${name}`).toContain(inOneLine(text)); // prettier-ignore
        }
      }
      expect(complaints).toEqual([]);
    },
    LONG_ms,
  );

  it('that is faulty changes nothing; the coordinator is told', async () => {
    const page = await open('barn/how-much/');
    const built = await page.locator('body').getAttribute('data-book');
    appendFileSync(join(farm, 'milkings', '2026-05.csv'), `${DAY},am,nobody,8,,kept,,\n`);
    await expect.poll(() => complaints.length, SOON).toBe(1);
    expect(complaints[0]).toContain('found');
    await sleep(500);
    expect(await page.locator('body').getAttribute('data-book')).toBe(built);
  });
});

describe('a desk that goes and comes back', () => {
  it('is missed without a complaint, and heard again', async () => {
    const page = await context.newPage();
    await page.goto(copy.at('barn/how-much/'));
    await boardKept(page);
    await copy.stop();
    await sleep(1000);
    correct(20);
    await sleep(12_000);
    // The browser itself says once that the stream was cut off; nobody says anything of the desk that is gone.
    expect(complaints.filter((text) => !text.endsWith('net::ERR_INCOMPLETE_CHUNKED_ENCODING'))).toEqual([]);
    expect(complaints.length).toBeLessThan(2);
    await copy.start();
    await changedTo(page, bookNow().fingerprint);
  });
});

describe('a host without a desk', () => {
  it('is asked for nothing that it does not have, and the page says nothing of it', async () => {
    await copy.close();
    copy = await serveCopy(site);
    const page = await open('barn/how-much/');
    await sleep(2000);
    await page.reload();
    await sleep(1000);
    expect(copy.asked.filter((path) => path.startsWith('events'))).toEqual([]);
    expect(complaints).toEqual([]);
    await boardKept(page);
    await context.setOffline(true);
    await page.goto(copy.at('barn/'));
    await sleep(7000);
    expect(complaints).toEqual([]);
  });

  it(`gives an answer page at most ${MOST_SCRIPT_BYTES} bytes of script, pressed`, async () => {
    await copy.close();
    copy = await serveCopy(site);
    await (await context.newPage()).goto(copy.at('barn/how-much/'), { waitUntil: 'networkidle' });
    // What the worker fetches to keep is not the page's.
    const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
    const bodies: Promise<Buffer>[] = [];
    page.on('response', (response) => {
      if (/\.js$/.test(new URL(response.url()).pathname)) bodies.push(response.body());
    });
    await page.goto(copy.at('barn/how-much/'), { waitUntil: 'networkidle' });
    const bytes = (await Promise.all(bodies)).map((body) => gzipSync(body).length);
    expect(bytes.length).toBeGreaterThan(0);
    expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThan(MOST_SCRIPT_BYTES);
    await page.context().close();
  });
});

describe('a new build', () => {
  it('is looked for at once when the desk tells of it and the board has stood untouched', async () => {
    const page = await context.newPage();
    await page.clock.install();
    await page.goto(copy.at('barn/'));
    await boardKept(page);
    await page.clock.runFor(65_000);
    await sleep(1500);
    copy.rebuild(['barn'], '</h1>', ' anew</h1>');
    writeFileSync(join(copy.folder, '.built'), 'another\n');
    const isNew = async () => {
      await page.clock.runFor(100);
      return (await textOf(page, 'h1')).endsWith(' anew');
    };
    await expect.poll(isNew, { timeout: 30_000, interval: 300 }).toBe(true);
  });
});
