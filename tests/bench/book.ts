// The Milk book's desk: ten thousand rows from twenty phones with every row on disk, and an hour of events in a minute.
import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { Agent, get, request, type IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { csvRow } from '../../shared/book/csvRow.ts';
import { markOf } from '../../shared/book/mark.ts';
import type { BookEntry, EntryAnswer } from '../../shared/book/types.ts';
import { isoDate, dayNumber } from '../../shared/calendar/day.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { openBookDesk, type BookDesk } from '../support/openBookDesk.ts';
import { timeText, type Line, type Part } from './line.ts';

const ROWS = 10_000;
const PHONES = 20;
// A phone that was offline sends what it has in one go; the others send one milking at a time.
const ROWS_A_POST = [1, 10] as const;
const DOES = ['juniper', 'hester', 'tansy', 'pepita', 'maribel'];
const SAMPLE = 1_000;
const LISTENERS = 20;
// An entry every five seconds for an hour.
const EVENTS = 720;
const MINUTE_MS = 60_000;
const MB = 1_048_576;

/** Measures a desk over copies of the demo farm. */
export const bookPart: Part = async (say) => {
  const lines: Line[] = [];
  for (const size of ROWS_A_POST) lines.push(await rows(size, say));
  return [...lines, await memory(say)];
};

/** Entries of a milking each, on days before the demo farm's first one: nobody corrects anybody. */
function entriesOf(count: number, now_ms: number): BookEntry[] {
  const last = dayNumber('2025-03-10') ?? 0;
  return Array.from({ length: count }, (_, index) => ({
    id: randomBytes(16).toString('base64url'),
    doe: DOES[index % DOES.length] ?? '',
    date: isoDate(last - Math.floor(index / (DOES.length * 2))),
    milking: Math.floor(index / DOES.length) % 2 === 0 ? 'am' : 'pm',
    amount: String(1 + (index % 40) / 4),
    unit: 'cup',
    use: 'kept',
    note: '',
    sure: true,
    saw: null,
    entered_ms: now_ms,
  }));
}

async function rows(size: number, say: (line: string) => void): Promise<Line> {
  say(`${ROWS} rows from ${PHONES} phones, ${size} a post …`);
  const desk = await openBookDesk({ more: { live: undefined } });
  try {
    const entries = entriesOf(ROWS, Date.now());
    const posts = Array.from({ length: Math.ceil(ROWS / size) }, (_, at) =>
      entries.slice(at * size, (at + 1) * size),
    );
    const agent = new Agent({ keepAlive: true, maxSockets: PHONES });
    const marks: string[] = [];
    // Before and after: other work on the machine comes and goes.
    const before_ms = plainAppends(entries);
    const start_ms = performance.now();
    const phone = async () => {
      for (let post = posts.pop(); post; post = posts.pop())
        for (const answer of await send(desk, post, agent)) if (answer.kept) marks.push(answer.mark);
    };
    await Promise.all(Array.from({ length: PHONES }, phone));
    const ours_ms = performance.now() - start_ms;
    agent.destroy();
    const lost = lostOf(desk.farm, marks);
    const theirs_ms = (before_ms + plainAppends(entries)) / 2;
    return {
      what: `${ROWS} rows over HTTP, ${size} a post, every row on disk twice; lost: ${lost + ROWS - marks.length}`,
      ours: `${timeText(ours_ms)} (${Math.round((ROWS / ours_ms) * 1000)} rows/s)`,
      beside: 'the same rows appended one by one, each with fsync, no HTTP',
      theirs: `${timeText(theirs_ms)} (${Math.round((ROWS / theirs_ms) * 1000)} rows/s)`,
      ratio: ours_ms / theirs_ms,
    };
  } finally {
    await desk.close();
  }
}

function send(desk: BookDesk, entries: readonly BookEntry[], agent: Agent): Promise<readonly EntryAnswer[]> {
  const { origin } = new URL(desk.url);
  const headers = { 'Content-Type': 'application/json', Origin: origin };
  return new Promise((done, failed) => {
    const asked = request(`${desk.url}desk/entries`, { method: 'POST', agent, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => {
        if (response.statusCode !== 200) return failed(new Error(`${response.statusCode} ${text}`));
        done((JSON.parse(text) as { answers: EntryAnswer[] }).answers);
      });
    });
    asked.on('error', failed).end(JSON.stringify({ sent_ms: Date.now(), entries }));
  });
}

/** How many answers the farm's own reader does not find. */
function lostOf(farm: string, marks: readonly string[]): number {
  const reading = readFarm(farm, { now_ms: Date.now() });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults.slice(0, 3)));
  const found = Map.groupBy(reading.book.rows, (row) => markOf(row) ?? '');
  const wanted = Map.groupBy(marks, (mark) => mark);
  return [...wanted].filter(([mark, own]) => (found.get(mark)?.length ?? 0) < own.length).length;
}

/** How long all rows would take that are appended to one file and seen onto the disk one by one, ms. */
function plainAppends(entries: readonly BookEntry[]): number {
  const folder = mkdtempSync(join(tmpdir(), 'plain-'));
  const texts = entries
    .slice(0, SAMPLE)
    .map((entry) => `${csvRow(entry, new Date(entry.entered_ms).toISOString())}\n`);
  const file = openSync(join(folder, 'rows.csv'), 'a');
  try {
    const start_ms = performance.now();
    for (const text of texts) {
      writeSync(file, text);
      fsyncSync(file);
    }
    return ((performance.now() - start_ms) * entries.length) / texts.length;
  } finally {
    closeSync(file);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What the desk's memory does over an hour's worth of entries and listeners that come and go, in a minute. */
async function memory(say: (line: string) => void): Promise<Line> {
  say(`${EVENTS} entries and ${LISTENERS} listeners in a minute …`);
  const desk = await openBookDesk();
  const agent = new Agent({ keepAlive: true, maxSockets: PHONES });
  try {
    let heard = 0;
    const listeners = await Promise.all(
      Array.from({ length: LISTENERS }, () => listen(desk.url, () => (heard += 1))),
    );
    const entries = entriesOf(EVENTS, Date.now());
    const used: number[] = [];
    const start_ms = performance.now();
    for (const [index, entry] of entries.entries()) {
      await send(desk, [entry], agent);
      if (index % 12 === 0) {
        listeners.shift()?.destroy();
        listeners.push(await listen(desk.url, () => (heard += 1)));
      }
      if (index % 60 === 59) used.push(heapUsed());
      await sleep(Math.max(0, start_ms + (index * MINUTE_MS) / EVENTS - performance.now()));
    }
    for (const one of listeners) one.destroy();
    const [first, last] = [mean(used.slice(2, 5)), mean(used.slice(-3))];
    return {
      what: `memory after an hour's worth of entries (${EVENTS}, ${Math.round(heard / EVENTS)} hear each)`,
      ours: `${(last / MB).toFixed(1)} MB`,
      beside: 'after its first quarter',
      theirs: `${(first / MB).toFixed(1)} MB`,
      ratio: last / first,
    };
  } finally {
    agent.destroy();
    await desk.close();
  }
}

function listen(url: string, onEntry: () => void): Promise<IncomingMessage> {
  return new Promise((done, failed) => {
    const asked = get(`${url}events?for=page`, { agent: false }, (response) => {
      response.setEncoding('utf8').on('data', (part: string) => {
        part.match(/^event: entry$/gm)?.forEach(onEntry);
      });
      response.on('error', () => undefined);
      done(response);
    });
    asked.on('error', failed);
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Bytes of heap that are truly held. */
function heapUsed(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed;
}
