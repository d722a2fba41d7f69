// The Milk book's addresses: what a phone is answered, and what it hears when nothing can be written.
import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../../shared/calendar/day.ts';
import type { BookState, EntryAnswer } from '../../../../shared/book/types.ts';
import { addBookDesk } from '../../../../src/desk/book/entriesDesk.ts';
import { MOST_ENTRIES } from '../../../../shared/book/entry.ts';
import { NOW_MS, SOUND_FARM } from '../../farm/farmFolder.ts';
import { openBookDesk } from '../../../support/openBookDesk.ts';
import { smallDisk, systemError } from './failingDisk.ts';
import { entryOf, keeperOver, markIn, milkFarm, rowsIn } from './milkFarm.ts';

async function desk(changes = {}, { disk = smallDisk(), now_ms = () => NOW_MS } = {}) {
  const keeper = await keeperOver(milkFarm(changes), { disk, now_ms });
  const app = new Hono();
  const told: string[] = [];
  addBookDesk(app, '/', keeper, (text) => void told.push(text));
  const post = (body: unknown) =>
    app.request('/desk/entries', {
      method: 'POST',
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  return { keeper, app, told, post, disk };
}

interface Answered {
  readonly answers: EntryAnswer[];
  readonly state: BookState;
}

describe('desk/book', () => {
  it('gives the book with its fingerprint as mark, and nothing where the phone has it', async () => {
    const { app, post } = await desk();
    const first = await app.request('/desk/book');
    const state = (await first.json()) as BookState;
    expect(first.headers.get('ETag')).toBe(`"${state.fingerprint}"`);
    const known = { headers: { 'If-None-Match': `W/"${state.fingerprint}"` } };
    expect((await app.request('/desk/book', known)).status).toBe(304);
    await post({ sent_ms: NOW_MS, entries: [entryOf()] });
    expect((await app.request('/desk/book', known)).status).toBe(200);
  });

  it('holds the farm, its does with their phases, three weeks of rows, treatments', async () => {
    const { app } = await desk({
      'milkings/2026-05.csv': 'date,milking,doe,amount\n2026-05-11,am,bell,4\n2026-05-12,am,bell,5\n',
      'treatments.csv': 'doe,from,until,what,note\nbell,2026-05-20,2026-05-24,for worms,\n',
    });
    const state = (await (await app.request('/desk/book')).json()) as BookState;
    expect(state.farm).toMatchObject({ name: 'Test farm', recordUnit: 'cup', fixedDay: null });
    expect(state.does.map(({ id, spans }) => [id, spans.length])).toEqual([['clover', 3], ['bell', 0]]); // prettier-ignore
    expect(state.rows.map(({ date }) => date)).toEqual(['2026-05-12']);
    expect(state.treatments).toEqual([{ doe: 'bell', from: 20593, until: 20597, what: 'for worms' }]);
    expect(state.today).toBe('2026-06-01');
  });
});

describe('desk/entries', () => {
  it('answers each entry in its place; a malformed one takes no other with it', async () => {
    const { post, keeper } = await desk();
    const good = entryOf();
    const entries = [{ id: 'short' }, good, null, entryOf({ doe: 'daisy' }), good];
    const { answers, state } = (await (await post({ sent_ms: NOW_MS, entries })).json()) as Answered;
    expect(answers.map((answer) => (answer.kept ? 'kept' : answer.why))).toEqual(['malformed', 'kept', 'malformed', 'unknown doe', 'kept']); // prettier-ignore
    expect(answers[0]?.id).toBe('short');
    expect(state.rows.map(({ mark }) => mark)).toEqual([markIn(answers[1])]);
    expect(rowsIn(keeper.farm)).toHaveLength(1);
  });

  it.each([
    ['no JSON', '{'],
    ['no object', '[]'],
    ['no time', { sent_ms: 'now', entries: [] }],
    ['no list', { sent_ms: 1, entries: {} }],
    ['too many', { sent_ms: 1, entries: Array.from({ length: MOST_ENTRIES + 1 }, () => entryOf()) }],
  ])('takes no post that is %s', async (_, body) => {
    const { post, keeper } = await desk();
    expect((await post(body)).status).toBe(400);
    expect(rowsIn(keeper.farm)).toHaveLength(0);
  });

  it('leaves unanswered what a desk whose clock is behind cannot know, tells why once, and takes it when the clock is right', async () => {
    const clock = { ms: NOW_MS - 86_400_000 };
    const { post, keeper, told } = await desk({}, { now_ms: () => clock.ms });
    const [today, before, ahead] = [entryOf({ date: '2026-06-01' }), entryOf(), entryOf({ date: '2026-06-02' })]; // prettier-ignore
    const body = { sent_ms: NOW_MS, entries: [today, before, ahead] };
    const { answers } = (await (await post(body)).json()) as Answered;
    expect(answers.map((one) => [one.id, one.kept])).toEqual([[before.id, true], [ahead.id, false]]); // prettier-ignore
    expect(((await (await post(body)).json()) as Answered).answers).toEqual(answers);
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('where today is 2026-05-31');
    clock.ms = NOW_MS;
    const { answers: later } = (await (await post(body)).json()) as Answered;
    expect(later.map(({ kept }) => kept)).toEqual([true, true, false]);
    expect(rowsIn(keeper.farm).map(({ day }) => isoDate(day)).sort()).toEqual(['2026-05-21', '2026-06-01']); // prettier-ignore
    expect(told).toHaveLength(1);
  });

  it('refuses for good a day that farm.yaml has not reached, whatever the clocks say', async () => {
    const { post, told } = await desk({
      'farm.yaml': `${String(SOUND_FARM['farm.yaml'])}asOf: 2026-05-25\n`,
    });
    const entries = [entryOf({ date: '2026-06-01' })];
    const { answers } = (await (await post({ sent_ms: NOW_MS, entries })).json()) as Answered;
    expect(answers).toMatchObject([{ kept: false, why: 'still to come' }]);
    expect(told).toEqual([]);
  });

  it('says 507 in plain words while the disk is full, to the coordinator once, and takes the same post later', async () => {
    const { post, told, disk, keeper } = await desk();
    const body = { sent_ms: NOW_MS, entries: [entryOf()] };
    disk.room = 50;
    const full = await post(body);
    expect(full.status).toBe(507);
    expect(await full.text()).toMatchInlineSnapshot(`
      "The disk of the desk is full, so nothing more can be written down there. Make room on it. The phones keep what was entered and send it again by themselves.
      "
    `);
    await post(body);
    expect(told).toHaveLength(1);
    disk.room = 10_000;
    expect((await post(body)).status).toBe(200);
    expect(rowsIn(keeper.farm)).toHaveLength(1);
  });

  it('says 503 and why where the disk fails otherwise', async () => {
    const { post, disk } = await desk();
    disk.append = () => Promise.reject(systemError('EROFS'));
    const failed = await post({ sent_ms: NOW_MS, entries: [entryOf()] });
    expect(failed.status).toBe(503);
    expect(await failed.text()).toContain('EROFS');
  });
});

describe('the whole desk over the demo farm', () => {
  it('takes two phones at once over the network, and both see the same book', async () => {
    const open = await openBookDesk();
    try {
      const send = async (amount: string) => {
        const entries = [entryOf({ doe: 'juniper', amount, entered_ms: Date.now() })];
        const headers = { 'Content-Type': 'application/json', Origin: new URL(open.url).origin };
        const answer = await fetch(`${open.url}desk/entries`, { method: 'POST', headers, body: JSON.stringify({ sent_ms: Date.now(), entries }) }); // prettier-ignore
        return (await answer.json()) as Answered;
      };
      const both = await Promise.all([send('9'), send('8')]);
      const marks = both.map(({ answers }) => markIn(answers[0]));
      const state = (await (await fetch(`${open.url}desk/book`)).json()) as BookState;
      const standing = state.rows.find(({ doe, date, milking }) => doe === 'juniper' && date === '2026-05-21' && milking === 'am'); // prettier-ignore
      expect(marks).toContain(standing?.mark);
      expect(state.clashes).toMatchObject([{ doe: 'juniper', date: '2026-05-21' }]);
      expect(state.clashes[0]?.amounts.at(-1)?.mark).toBe(standing?.mark);
      expect(open.complaints).toEqual([]);
    } finally {
      await open.close();
    }
  });
});
