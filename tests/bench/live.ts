// How long an entry takes from the phone to 200 open pages, and until one of them shows it.
import { fork } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { ROOT } from '../../src/build/places.ts';
import { startChromium } from '../../src/print/chromium.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';
import { timeText, type Line, type Part } from './line.ts';

const PAGES = 200;
const POSTS = 40;
const SHOWN_POSTS = 10;
// Between two entries: people who milk are no faster.
const BETWEEN_ms = 250;
/** What the Milk book promises on one machine, ms. */
const PROMISED_ms = 100;

interface Heard {
  readonly doe: string;
  readonly amount: string;
  readonly at_ms: number;
}
interface Sent {
  readonly amount: string;
  readonly sent_ms: number;
  readonly answered_ms: number;
}

const now_ms = () => performance.timeOrigin + performance.now();

/** Posts entries to a desk with 200 open streams, from another process than the desk's listeners. */
export const livePart: Part = async (say) => {
  const dist = join(ROOT, 'dist');
  const desk = await openBookDesk(existsSync(dist) ? { dist } : {});
  const listeners = fork(join(ROOT, 'tests', 'bench', 'liveListeners.ts'), [`${desk.url}events?for=page`, String(PAGES)]); // prettier-ignore
  try {
    await answerOf(listeners);
    say(`${PAGES} pages listen; posting ${POSTS} entries …`);
    const sent: Sent[] = [];
    for (let place = 0; place < POSTS; place += 1) {
      sent.push(await post(desk, place + 1));
      await sleep(BETWEEN_ms);
    }
    listeners.send('heard');
    const { heard } = (await answerOf(listeners)) as { heard: Heard[] };
    if (heard.length !== POSTS * PAGES)
      throw new Error(`${heard.length} of ${POSTS * PAGES} events were heard.`);
    const of = new Map(sent.map((one) => [one.amount, one]));
    const since = (from: 'sent_ms' | 'answered_ms') =>
      heard.map(({ amount, at_ms }) => at_ms - (of.get(amount)?.[from] ?? Number.NaN)).sort((a, b) => a - b);
    const lines = [
      ...linesOf(`entry to ${PAGES} open pages, from the post`, since('sent_ms')),
      ...linesOf(`entry to ${PAGES} open pages, from the desk's answer`, since('answered_ms')),
    ];
    if (!existsSync(dist)) return lines;
    say('Watching one page in a browser …');
    return [...lines, ...linesOf('entry shown on an open page (our does)', await shown(desk))];
  } finally {
    listeners.kill();
    await desk.close();
  }
};

function linesOf(what: string, times_ms: readonly number[]): Line[] {
  const at = (part: number) => times_ms[Math.ceil(part * times_ms.length) - 1] ?? Number.NaN;
  return ([['p50', at(0.5)], ['p95', at(0.95)]] as const).map(([name, ms]) => ({
    what: `${what}, ${name}`,
    ours: timeText(ms),
    beside: 'promised',
    theirs: timeText(PROMISED_ms),
    // Below 0 a page knew before whoever entered it had the answer.
    ratio: ms < 0 ? null : ms / PROMISED_ms,
  })); // prettier-ignore
}

const answerOf = (child: ReturnType<typeof fork>) =>
  new Promise<unknown>((done, failed) => {
    child.once('message', done);
    child.once('exit', (code) => failed(new Error(`The listeners ended (${code}).`)));
  });

/** Enters so many eighths of a cup for one doe, another number each time, so that the event is known again. */
async function post(desk: BookDesk, eighths: number): Promise<Sent> {
  const sent_ms = now_ms();
  const entry = { id: randomBytes(16).toString('base64url'), doe: 'juniper', date: '2026-05-21', milking: 'pm', amount: `${eighths}/97`, unit: 'cup', use: 'kept', note: '', sure: true, saw: null, entered_ms: Date.now() }; // prettier-ignore
  const answer = await fetch(`${desk.url}desk/entries`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: new URL(desk.url).origin },
    body: JSON.stringify({ sent_ms: Date.now(), entries: [entry] }),
  });
  const told = await answer.text();
  if (!answer.ok || !told.includes('"kept":true')) throw new Error(`The entry was not kept: ${told}`);
  return { amount: `${eighths}/97`, sent_ms, answered_ms: now_ms() };
}

/** From the post until the strip of a page has changed, by the browser's own clock, ms, shortest first. */
async function shown(desk: BookDesk): Promise<number[]> {
  const browser = await startChromium();
  try {
    const page = await browser.newPage();
    await page.goto(`${desk.url}herd/`, { waitUntil: 'load' });
    await page.evaluate(() => {
      const strip = document.querySelector('#live-strip');
      new MutationObserver(() => {
        document.body.dataset['at'] = String(performance.timeOrigin + performance.now());
      }).observe(strip as Element, { childList: true, subtree: true, characterData: true });
    });
    await sleep(2000);
    const times: number[] = [];
    for (let place = 0; place <= SHOWN_POSTS; place += 1) {
      await page.evaluate(() => delete document.body.dataset['at']);
      const { sent_ms } = await post(desk, POSTS + 1 + place);
      await page.waitForSelector('body[data-at]', { timeout: 10_000 });
      const at_ms = Number(await page.evaluate(() => document.body.dataset['at']));
      // The first also fetches the words.
      if (place > 0) times.push(at_ms - sent_ms);
      await sleep(BETWEEN_ms);
    }
    return times.sort((a, b) => a - b);
  } finally {
    await browser.close();
  }
}
