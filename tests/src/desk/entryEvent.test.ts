// An entry on the stream: every listener hears it at once, in the contract's numbers, and nobody hears its note.
import { get } from 'node:http';
import { appendFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import type { BoardFarm } from '../../../shared/board/types.ts';
import type { DeskState } from '../../../shared/book/deskState.ts';
import type { EntryEvent } from '../../../shared/book/types.ts';
import { readBoardBook } from '../../../src/farm/boardBook.ts';
import type { Rebuilder } from '../../../src/desk/rebuild.ts';
import { openBookDesk, type BookDesk } from '../../support/openBookDesk.ts';

const DAY = '2026-05-21';
const soon = { timeout: 8_000, interval: 20 };
// NIST Handbook 44, appendix C: a US cup is 0.2365882365 L.
const CUP_L = 0.2365882365;

/** A rebuilder that only counts. */
function counting() {
  let heard: ((isNew: boolean) => void) | null = null;
  const seen = { changes: 0 };
  const rebuild: Rebuilder = {
    changed: () => void (seen.changes += 1),
    state: () => ({
      phase: 'still',
      behind_ms: null,
      stands_ms: null,
      took_ms: null,
      failed: null,
      unprinted: null,
    }),
    onEnd: (hear) => {
      heard = hear;
      return () => (heard = null);
    },
    close: () => Promise.resolve(),
  };
  return { rebuild, seen, end: (isNew: boolean) => heard?.(isNew) };
}

async function openLive() {
  const { rebuild, seen, end } = counting();
  const desk = await openBookDesk({ more: { rebuild } });
  onTestFinished(() => desk.close());
  return { desk, seen, end };
}

async function listen(desk: BookDesk, query: string) {
  const events: { name: string; told: unknown; text: string }[] = [];
  await new Promise<void>((done) => {
    const asked = get(`${desk.url}events${query}`, { agent: false }, (response) => {
      let rest = '';
      response.setEncoding('utf8');
      response.on('data', (part: string) => {
        const blocks = (rest + part).split('\n\n');
        rest = blocks.pop() ?? '';
        for (const block of blocks) {
          const [, name = '', text = ''] = /^event: (\w+)\n(?:id: .*\n)?data: (.*)$/.exec(block) ?? [];
          if (name !== '') events.push({ name, told: JSON.parse(text), text });
          done();
        }
      });
      response.on('error', () => undefined);
    });
    onTestFinished(() => void asked.destroy());
  });
  return { events, of: (name: string) => events.filter((one) => one.name === name).map(({ told }) => told) };
}

const post = (desk: BookDesk, more: object = {}) =>
  desk.keeper.write({
    sent_ms: Date.now(),
    entries: [
      {
        id: Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64url'),
        doe: 'juniper',
        date: DAY,
        milking: 'pm',
        amount: '9 1/2',
        unit: 'cup',
        use: 'kept',
        note: 'lump on the left',
        sure: true,
        saw: null,
        entered_ms: Date.now(),
        ...more,
      },
    ],
  });
const weekOf = (farm: string) => {
  const reading = readBoardBook(farm, { now_ms: Date.now() });
  if (!reading.ok) throw new Error('The copy of the farm cannot be read.');
  return reading;
};

describe('an entry', () => {
  it('reaches board and page with the totals that the files give, without its note, and asks for a rebuild', async () => {
    const { desk, seen } = await openLive();
    const before = weekOf(desk.farm);
    const [board, page] = [
      await listen(desk, `?book=${before.fingerprint}`),
      await listen(desk, '?for=page'),
    ];
    await post(desk);
    await vi.waitFor(() => expect([board.of('entry').length, page.of('entry').length]).toEqual([1, 1]), soon);
    const after = weekOf(desk.farm);
    const figure = (id: string) => after.farm.figures.figures[id]?.value ?? null;
    expect(page.of('entry')[0]).toEqual({
      doe: 'juniper', name: 'Juniper', date: DAY, milking: 'pm', amount: { num: 19, den: 2, unit: 'cup' }, use: 'kept',
      dayTotal_L: figure('herd.day.total'), weekTotal_L: figure('herd.week.total'),
      window: after.farm.figures.window, today: after.farm.figures.asOf,
    } satisfies EntryEvent); // prettier-ignore
    await vi.waitFor(() => expect(board.of('book')).toHaveLength(1), soon);
    expect(board.of('book')[0]).toEqual({
      fingerprint: after.fingerprint,
      farm: JSON.parse(JSON.stringify(after.farm)) as BoardFarm,
    });
    expect(page.of('book')).toEqual([{ fingerprint: after.fingerprint }]);
    expect(readFileSync(join(desk.farm, 'milkings', '2026-05.csv'), 'utf8')).toContain('lump on the left');
    expect([...page.events, ...board.events].map(({ text }) => text).join()).not.toContain('lump');
    expect(seen.changes).toBeGreaterThan(0);
  });

  it('adds exactly its milk to the week', async () => {
    const { desk } = await openLive();
    const page = await listen(desk, '?for=page');
    await post(desk, { amount: '4' });
    await post(desk, { amount: '9', saw: null, entered_ms: Date.now() + 1 });
    await vi.waitFor(() => expect(page.of('entry')).toHaveLength(2), soon);
    const [four, nine] = page.of('entry') as [EntryEvent, EntryEvent];
    // Both may be told in one go, and then with the same total.
    const grown = (nine.weekTotal_L ?? 0) - (four.weekTotal_L ?? 0);
    expect([0, 5 * CUP_L].some((one) => Math.abs(grown - one) < 1e-9)).toBe(true);
    expect(nine.weekTotal_L).toBe(weekOf(desk.farm).farm.figures.figures['herd.week.total']?.value);
  });

  it('struck out says so', async () => {
    const { desk } = await openLive();
    const page = await listen(desk, '?for=page');
    await post(desk, { amount: null });
    await vi.waitFor(() => expect(page.of('entry')).toHaveLength(1), soon);
    expect((page.of('entry')[0] as EntryEvent).amount).toBeNull();
  });

  it('is told without totals while a file cannot be read', async () => {
    const { desk } = await openLive();
    const page = await listen(desk, '?for=page');
    appendFileSync(join(desk.farm, 'kiddings.csv'), 'nobody,2026-01-01,2,,,\n');
    await vi.waitFor(() => expect(desk.keeper.state().faults).not.toBeNull(), soon);
    await post(desk);
    await vi.waitFor(() => expect(page.of('entry')).toHaveLength(1), soon);
    expect(page.of('entry')[0]).toMatchObject({ name: 'Juniper', weekTotal_L: null, window: null });
  });
});

describe('the making of the site', () => {
  it('that failed is told to all who listen; the desk says so on its pages’ answers', async () => {
    const { desk, end } = await openLive();
    const page = await listen(desk, '?for=page');
    end(false);
    await vi.waitFor(() => expect(page.of('stays')).toHaveLength(1), soon);
    const { headers } = await fetch(`${desk.url}herd/`);
    expect([headers.get('Pailside-Live'), headers.get('Pailside-Rebuilds')]).toEqual(['yes', 'yes']);
    const state = (await (await fetch(`${desk.url}desk/state`)).json()) as DeskState;
    expect(state).toMatchObject({
      listeners: 1,
      book: { faults: null, putBack: [], clashes: [] },
      backups: null,
    });
  });
});
