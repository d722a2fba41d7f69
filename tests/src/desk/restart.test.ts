// A desk that was killed comes up again without a person: same address, same words, all that was promised, nothing half.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { checkZip } from '../../../src/desk/backup/zipFolder.ts';
import { ownFolder, SMALL_FARM, writeFiles } from '../build/smallFarm.ts';

interface Running {
  readonly url: string;
  readonly said: () => string;
  kill(): Promise<void>;
}

/** Starts a desk and waits until it is open; throws with all that it said where it does not come up. */
async function start(root: string, port: string): Promise<Running> {
  const child = spawn(process.execPath, ['--disable-warning=ExperimentalWarning', join(import.meta.dirname, 'deskChild.ts'), root, port]); // prettier-ignore
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  child.stderr.on('data', (bytes: Buffer) => (said += bytes.toString()));
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  const opened = new Promise<string>((done) => child.stdout.once('data', (bytes: Buffer) => done(bytes.toString().trim()))); // prettier-ignore
  const url = await Promise.race([opened, ended.then(() => '')]);
  if (url === '') throw new Error(said);
  const kill = async () => {
    child.kill('SIGKILL');
    await ended;
  };
  return { url, said: () => said, kill };
}

interface Answer {
  readonly status: number;
  readonly body: string;
  readonly cookie: string;
}

/** Asks as a phone would: from another address of this machine than the usual one. */
function fromPhone(url: string, path: string, body?: unknown, cookie = ''): Promise<Answer> {
  const { port } = new URL(url);
  const own = { Host: `127.0.0.1:${port}`, Origin: `http://127.0.0.1:${port}`, Cookie: cookie, 'Content-Type': 'application/json' }; // prettier-ignore
  return new Promise((done, failed) => {
    const method = body === undefined ? 'GET' : 'POST';
    const asked = request({ host: '127.0.0.1', port, path, method, localAddress: '127.0.0.9', headers: own, agent: false }, (response) => {
      let text = '';
      response.on('data', (part: Buffer) => (text += part.toString()));
      const given = response.headers['set-cookie']?.[0]?.split(';', 1)[0] ?? '';
      response.on('end', () => done({ status: response.statusCode ?? 0, body: text, cookie: given }));
      response.on('error', failed);
    }); // prettier-ignore
    asked.on('error', failed);
    asked.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

const entry = (turn: number) => ({
  id: Buffer.alloc(16, turn).toString('base64url'),
  doe: 'clover',
  date: '2026-05-20',
  milking: 'am',
  amount: String(1 + (turn % 9)),
  unit: 'cup',
  use: 'kept',
  note: '',
  sure: true,
  saw: null,
  entered_ms: turn,
});

describe('a desk that is killed', () => {
  it('comes up again at its address, knows its phones, and has all that it promised', async () => {
    const root = ownFolder();
    const farm = join(root, 'farm');
    writeFiles(farm, SMALL_FARM);
    writeFiles(root, { 'dist/index.html': 'x', 'dist/.built': 'mark' });
    let port = '0';
    let cookie = '';
    let words = '';
    const promised: string[] = [];
    for (let life = 0; life < 4; life += 1) {
      const desk = await start(root, port);
      if (port !== '0') expect(new URL(desk.url).port).toBe(port);
      port = new URL(desk.url).port;
      if (life === 0) {
        words = (JSON.parse(readFileSync(join(root, '.pailside', 'access.json'), 'utf8')) as { words: string[] }).words.join(' '); // prettier-ignore
        cookie = (await fromPhone(desk.url, '/desk/words', { words })).cookie;
      }
      expect((await fromPhone(desk.url, '/desk/who', undefined, cookie)).body).toContain('"who":"known"');
      // Killed in the midst of writing, once some answers are there: others never come.
      let answered = () => undefined as void;
      const some = new Promise<void>((done) => (answered = done));
      const before = promised.length;
      const writing = Array.from({ length: 12 }, async (_, turn) => {
        const one = entry(life * 12 + turn);
        const answer = await fromPhone(desk.url, '/desk/entries', { sent_ms: one.entered_ms, entries: [one] }, cookie); // prettier-ignore
        if (answer.body.includes('"kept":true')) promised.push(one.id);
        if (promised.length - before > life * 2) answered();
      });
      const settled = Promise.allSettled(writing);
      await some;
      await desk.kill();
      await settled;
      expect(desk.said()).not.toMatch(new RegExp(`\\b${words.split(' ')[0] ?? ''}\\b`));
    }
    // What a power cut may leave: half a line, half a copy, a lock of a process that is gone, an empty one.
    const year = new Date().getFullYear();
    const journal = join(farm, 'desk', `entries-${year}.jsonl`);
    writeFileSync(journal, '{"id":"half', { flag: 'a' });
    const copies = join(root, '.pailside', 'backups', 'stony-brook');
    writeFileSync(join(copies, '.2026-05-20.1.part'), 'PK half');
    writeFileSync(join(root, '.pailside', 'build.lock'), '{"pid":4194305,"began":"1 gone"}');
    const last = await start(root, port);
    const book = await fromPhone(last.url, '/desk/book', undefined, cookie);
    expect(book.status).toBe(200);
    const kept = readFileSync(journal, 'utf8');
    expect(promised.length).toBeGreaterThan(0);
    for (const id of promised) expect(kept).toContain(id);
    expect(kept).not.toContain('half');
    for (const name of readdirSync(copies).filter((one) => one.endsWith('.zip')))
      await checkZip(join(copies, name));
  }, 60_000);

  it('lets no second desk write the same book, and says who does', async () => {
    const root = ownFolder();
    writeFiles(join(root, 'farm'), SMALL_FARM);
    writeFiles(root, { 'dist/index.html': 'x' });
    await start(root, '0');
    await expect(start(root, '0')).rejects.toThrow(/Another desk that writes this farm's milk book is running \(process \d+\)/); // prettier-ignore
  }, 30_000);
});
