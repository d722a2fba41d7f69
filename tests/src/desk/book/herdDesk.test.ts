// The herd over the desk's own address: who may, what is answered, and that the Milk book hears of it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HerdAnswer, HerdBook } from '../../../../shared/book/herdBook.ts';
import type { BookState } from '../../../../shared/book/types.ts';
import { openBookDesk, type BookDesk } from '../../../support/openBookDesk.ts';

let desk: BookDesk;
beforeAll(async () => {
  desk = await openBookDesk();
});
afterAll(() => desk.close());

const read = async () => (await (await fetch(`${desk.url}desk/herd`)).json()) as HerdBook;
const post = async (body: unknown, headers: Record<string, string> = {}) => {
  const origin = new URL(desk.url).origin;
  const answer = await fetch(`${desk.url}desk/herd`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: origin, ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  });
  return { status: answer.status, said: (await answer.json()) as HerdAnswer };
};
const treatment = { kind: 'add', file: 'treatments.csv', cells: { doe: 'hester', from: '2026-05-20', what: 'drench' } }; // prettier-ignore

describe('desk/herd', () => {
  it('gives the herd, is not kept by any cache, and takes a change that the Milk book then knows', async () => {
    const answer = await fetch(`${desk.url}desk/herd`);
    expect(answer.headers.get('Cache-Control')).toBe('no-store');
    const herd = (await answer.json()) as HerdBook;
    expect(herd).toMatchObject({ today: '2026-05-21', faults: [], milkings: { am: '06:30', pm: '17:30' } });
    expect(herd.does.map(({ doe }) => doe)).toEqual(['juniper', 'hester', 'tansy', 'maribel', 'wren', 'pepita']); // prettier-ignore
    const taken = await post({ change: treatment, saw: herd.marks['treatments.csv'] });
    expect(taken).toMatchObject({ status: 200, said: { ok: true } });
    expect(readFileSync(join(desk.farm, 'treatments.csv'), 'utf8')).toMatch(
      /\nhester,2026-05-20,,drench,\n$/,
    );
    const state = (await (await fetch(`${desk.url}desk/book`)).json()) as BookState;
    expect(state.treatments).toContainEqual(expect.objectContaining({ doe: 'hester', until: null, what: 'drench' })); // prettier-ignore
  });

  it('says by its status why nothing was written', async () => {
    const { marks } = await read();
    expect(await post({ change: treatment, saw: 'another' })).toMatchObject({ status: 409, said: { why: 'changed' } }); // prettier-ignore
    expect(await post({ change: treatment, saw: marks['treatments.csv'] })).toMatchObject({ status: 422, said: { why: 'faulty' } }); // prettier-ignore
    expect((await read()).marks).toEqual(marks);
  });

  it('takes nothing that is no change of these tables', async () => {
    const { marks } = await read();
    const saw = marks['kiddings.csv'];
    const wrong: unknown[] = [
      '{', 'null', {}, { change: treatment },
      { saw, change: { ...treatment, file: 'farm.yaml' } },
      { saw, change: { ...treatment, file: '../does.csv' } },
      { saw, change: { ...treatment, file: 'toString' } },
      { saw, change: { ...treatment, cells: { from: '2026-05-20' } } },
      { saw, change: { ...treatment, cells: { doe: 'hester', from: '2026-05-20', note: 'two\nlines' } } },
      { saw, change: { ...treatment, cells: { doe: 'hester', from: '2026-05-20', note: 'x'.repeat(201) } } },
      { saw, change: { ...treatment, cells: { doe: 'hester', constructor: 'x' } } },
      { saw, change: { kind: 'change', file: 'kiddings.csv', line: 1, cells: { doe: 'x' } } },
      { saw, change: { kind: 'change', file: 'kiddings.csv', line: 999, cells: { kids: '1' } } },
      { saw, change: { kind: 'change', file: 'kiddings.csv', line: 2.5, cells: { kids: '1' } } },
      { saw: marks['does.csv'], change: { kind: 'remove', file: 'does.csv', line: 2 } },
    ]; // prettier-ignore
    for (const body of wrong)
      expect(await post(body)).toMatchObject({ status: 400, said: { why: 'malformed' } });
    expect(await read()).toMatchObject({ marks });
  });

  it('takes nothing from another page, or as a form', async () => {
    const { marks } = await read();
    const body = { change: { ...treatment, cells: { doe: 'wren', from: '2026-05-20' } }, saw: marks['treatments.csv'] }; // prettier-ignore
    expect((await post(body, { Origin: 'http://elsewhere.example' })).status).toBe(403);
    expect((await post(body, { 'Content-Type': 'text/plain' })).status).toBe(415);
    expect((await read()).marks).toEqual(marks);
  });
});
