// The visits over the desk's own address: who may, what is written, and that nothing is ever written over.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { VisitAnswer, VisitsBook } from '../../../../shared/trip/visits/deskVisits.ts';
import { visitText } from '../../../../shared/trip/visits/visitText.ts';
import { openVisits } from '../../../../src/desk/visits/visitKeeper.ts';
import { OtherTable, replaceTable } from '../../../../src/desk/book/replaceTable.ts';
import { openBookDesk, type BookDesk } from '../../../support/openBookDesk.ts';

let desk: BookDesk;
beforeAll(async () => {
  desk = await openBookDesk();
});
afterAll(() => desk.close());

const read = async () => (await (await fetch(`${desk.url}desk/visits`)).json()) as VisitsBook;
const post = async (body: unknown, headers: Record<string, string> = {}) => {
  const answer = await fetch(`${desk.url}desk/visits`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: new URL(desk.url).origin, ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  });
  return { status: answer.status, said: (await answer.json()) as VisitAnswer };
};
const onDisk = (file: string) => readFileSync(join(desk.farm, file), 'utf8');
const names = () => readdirSync(join(desk.farm, 'visits')).sort();
const TEXT = visitText({
  school: 'Elm School',
  state: 'asked',
  note: '',
  wish: {
    date: '2026-06-02', grade: 3, children: 20, adults: 4, arrive: 570, leave: 720, buses: 1, lunch: null,
    stations: ['goat-barn'], needs: [], rain: false, word: 'elm',
  },
}); // prettier-ignore

describe('desk/visits', () => {
  it('gives the visits on file with their schools, kept by no cache', async () => {
    const answer = await fetch(`${desk.url}desk/visits`);
    expect(answer.headers.get('Cache-Control')).toBe('no-store');
    const { filed, faults } = (await answer.json()) as VisitsBook;
    expect(faults).toEqual([]);
    expect(filed.length).toBe(names().length);
    for (const { visit, mark } of filed) {
      expect(onDisk(visit.file)).toContain(visit.school);
      expect(mark).toMatch(/^[\w-]{22}$/);
    }
  });

  it('writes a new file of the very text, and a second one beside the first', async () => {
    expect(await post({ kind: 'add', text: TEXT })).toMatchObject({ status: 200, said: { ok: true, file: 'visits/2026-06-02-elm-school.yaml' } }); // prettier-ignore
    expect(onDisk('visits/2026-06-02-elm-school.yaml')).toBe(TEXT);
    const other = TEXT.replace('children: 20', 'children: 21');
    expect((await post({ kind: 'add', text: other })).said).toMatchObject({ file: 'visits/2026-06-02-elm-school-2.yaml' }); // prettier-ignore
    expect(onDisk('visits/2026-06-02-elm-school.yaml')).toBe(TEXT);
    expect(names().filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('changes the line of the state alone, and only in the file that the page saw', async () => {
    const file = 'visits/2026-06-02-elm-school.yaml';
    const remarked = `# call them on Monday\n${TEXT.replace('state: asked', 'state: asked   # by letter')}`;
    const seen = (await read()).filed.find(({ visit }) => visit.file === file)?.mark;
    writeFileSync(join(desk.farm, file), remarked);
    expect(await post({ kind: 'state', file, state: 'agreed', saw: seen })).toMatchObject({ status: 409, said: { why: 'changed' } }); // prettier-ignore
    expect(onDisk(file)).toBe(remarked);
    const now = (await read()).filed.find(({ visit }) => visit.file === file)?.mark;
    expect(await post({ kind: 'state', file, state: 'agreed', saw: now })).toMatchObject({ status: 200 });
    expect(onDisk(file)).toBe(remarked.replace('state: asked ', 'state: agreed '));
    // The mark that it had before is no longer good.
    expect((await post({ kind: 'state', file, state: 'held', saw: now })).status).toBe(409);
  });

  it('takes no text with a fault, and tells each at its place', async () => {
    const before = names();
    const { status, said } = await post({ kind: 'add', text: TEXT.replace('grade: 3', 'grade: 33').replace('goat-barn', 'goat-barm') }); // prettier-ignore
    expect({ status, why: 'why' in said && said.why }).toEqual({ status: 422, why: 'faulty' });
    expect('faults' in said && said.faults.map(({ line }) => line)).toEqual([4, 11]);
    expect(names()).toEqual(before);
  });

  it('takes nothing that is no change of a visit, wherever it points', async () => {
    const before = [names(), onDisk('farm.yaml'), onDisk('visits/2026-06-02-elm-school.yaml')];
    const saw = (await read()).filed[0]?.mark;
    const wrong: unknown[] = [
      '{', 'null', {}, { kind: 'add' }, { kind: 'add', text: '' }, { kind: 'add', text: 'x'.repeat(9_000) }, { kind: 'add', text: 7 },
      { kind: 'state', file: '../farm.yaml', state: 'held', saw }, { kind: 'state', file: 'visits/../farm.yaml', state: 'held', saw },
      { kind: 'state', file: 'farm.yaml', state: 'held', saw }, { kind: 'state', file: 'visits/x.yaml', state: 'gone', saw },
      { kind: 'state', file: 'visits/x.yaml', state: 'held' }, { kind: 'remove', file: 'visits/x.yaml', saw },
    ]; // prettier-ignore
    for (const body of wrong)
      expect(await post(body), JSON.stringify(body)).toMatchObject({
        status: 400,
        said: { why: 'malformed' },
      });
    expect([names(), onDisk('farm.yaml'), onDisk('visits/2026-06-02-elm-school.yaml')]).toEqual(before);
  });

  it('stands behind the guard: no other page, no form, nobody from elsewhere', async () => {
    const body = { kind: 'add', text: TEXT };
    expect((await post(body, { Origin: 'http://elsewhere.example' })).status).toBe(403);
    expect((await post(body, { 'Content-Type': 'text/plain' })).status).toBe(415);
    const handedOn = await fetch(`${desk.url}desk/visits`, { headers: { 'X-Forwarded-For': '192.0.2.7' } });
    expect(handedOn.status).toBe(403);
  });

  it('takes the next name where somebody else takes one in the same moment', async () => {
    let isFirst = true;
    const visits = openVisits(desk.farm, (path, bytes, was) => {
      if (isFirst) {
        isFirst = false;
        throw new OtherTable(path);
      }
      replaceTable(path, bytes, was);
    });
    const answer = await visits.change({ kind: 'add', text: TEXT.replace('Elm', 'Ash') });
    expect(answer).toMatchObject({ ok: true, file: 'visits/2026-06-02-ash-school-2.yaml' });
    expect(existsSync(join(desk.farm, 'visits/2026-06-02-ash-school.yaml'))).toBe(false);
  });

  it('says so where the disk takes nothing', async () => {
    const full = Object.assign(new Error('full'), { code: 'ENOSPC' });
    const visits = openVisits(desk.farm, () => {
      throw full;
    });
    expect(await visits.change({ kind: 'add', text: TEXT })).toEqual({ ok: false, why: 'not written', code: 'ENOSPC' }); // prettier-ignore
  });
});
