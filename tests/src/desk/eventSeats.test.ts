// Who may listen to the desk's stream: one machine in the visitors' network cannot take every seat.
import { join } from 'node:path';
import { Hono } from 'hono';
import { expect, it, onTestFinished } from 'vitest';
import { addEvents } from '../../../src/desk/events.ts';
import { ownFolder, SMALL_FARM, writeFiles } from '../build/smallFarm.ts';

it('leaves seats for others, however many streams one other machine opens; this machine is not held to it', async () => {
  const root = ownFolder();
  const farm = join(root, 'farm');
  writeFiles(farm, SMALL_FARM);
  const app = new Hono();
  const source = { farm, now_ms: () => Date.UTC(2026, 4, 21, 15), complain: () => undefined };
  const events = addEvents(app, '/', root, source, {
    beat_ms: 60_000,
    most: 300,
    mostFromOne: 3,
    site_ms: 60_000,
  });
  onTestFinished(() => events.close());
  const ask = async (remoteAddress: string) => {
    const answer = await app.request('/events', {}, { incoming: { socket: { remoteAddress } } });
    return answer.status;
  };
  const statuses = async (...addresses: string[]) => {
    const all: number[] = [];
    for (const one of addresses) all.push(await ask(one));
    return all;
  };
  const visitor = '::ffff:192.168.1.7';
  expect(await statuses(visitor, visitor, '192.168.1.7', visitor)).toEqual([200, 200, 200, 503]);
  expect(await statuses('192.168.1.8', ...Array.from({ length: 5 }, () => '127.0.0.1'))).toEqual([200, 200, 200, 200, 200, 200]); // prettier-ignore
});
