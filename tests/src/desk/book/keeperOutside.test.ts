// People and spreadsheets change the farm's files while the desk runs: every promised row is found again, none twice.
import { copyFileSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openKeeper, type Keeper } from '../../../../src/desk/book/keeper.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';
import { NOW_MS } from '../../farm/farmFolder.ts';
import { entryOf, HEADING_LINE, keeperOver, markIn, milkFarm, MONTH_FILE, plainRow, rowsIn, textOf, type TestKeeper } from './milkFarm.ts'; // prettier-ignore

const HAND_ROW = '2026-05-12,pm,bell,6.5,cup,fed,by hand,2026-05-12T17:44';

/** A desk with a hand-written row and these of its own: two milkings, one of them corrected at once, and a note. */
async function busyDesk() {
  const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: `${HEADING_LINE}${HAND_ROW}\n` }));
  const [first] = await keeper.enter(
    entryOf({ date: '2026-05-13', amount: '9.5', note: 'quiet, "at last"' }),
  );
  await keeper.enter(
    entryOf({ date: '2026-05-13', amount: '9', saw: markIn(first) }),
    entryOf({ date: '2026-05-14', doe: 'bell', amount: '1/2', use: 'lost' }),
  );
  return { keeper, path: join(keeper.farm, MONTH_FILE), before: plainRows(keeper.farm) };
}

/** Rows as people tell them apart, in order; the second at which one was entered may have been lost. */
const plainRows = (farm: string) => rowsIn(farm).map(plainRow).sort();

/** Writes a file as a spreadsheet saves it. */
function saveAs(path: string, change: (text: string) => string): void {
  writeFileSync(path, change(readFileSync(path, 'utf8')));
}

/** Times without seconds, as many spreadsheets show and then save them. */
const cutToMinute = (text: string) => text.replace(/T(\d\d:\d\d):\d\d\.\d+[+-]\d\d:\d\d/g, ' $1');

const semicolons = (text: string) =>
  text
    .split('\n')
    .map((line) => {
      const quoted = /"(?:[^"]|"")*"/.exec(line)?.[0] ?? '';
      return line
        .replace(quoted, '§')
        .replaceAll(',', ';')
        .replace(/(\d)\.(\d)/g, '$1,$2')
        .replace('§', quoted);
    })
    .join('\n');

const SPREADSHEETS: readonly (readonly [string, (text: string) => string])[] = [
  ['with Windows breaks and a byte-order mark', (text) => `\ufeff${text.replaceAll('\n', '\r\n')}`],
  ['with semicolons and decimal commas', semicolons],
  ['with times cut to the minute', cutToMinute],
  ['with all of it', (text) => `\ufeff${semicolons(cutToMinute(text)).replaceAll('\n', '\r\n')}`],
  ['with capitals in the heading', (text) => text.replace('date,milking', 'Date,Milking')],
  ['with its rows in another order', (text) => { const [heading = '', ...rows] = text.trimEnd().split('\n'); return [heading, ...rows.reverse(), ''].join('\n'); }],
  ['with columns in another order', (text) => text.trimEnd().split('\n').map((line) => { const cells = line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/); return [...cells.slice(1), cells[0]].join(','); }).join('\n')],
]; // prettier-ignore

describe('a file that a spreadsheet saved again', () => {
  it.each(SPREADSHEETS)('%s holds every row once, and the next one joins', async (_, change) => {
    const { keeper, path, before } = await busyDesk();
    saveAs(path, change);
    await keeper.outsideChange();
    expect(plainRows(keeper.farm)).toEqual(before);
    expect(keeper.restored()).toEqual([]);
    const saved = readFileSync(path, 'utf8');
    await keeper.enter(entryOf({ date: '2026-05-15' }));
    expect(plainRows(keeper.farm)).toHaveLength(before.length + 1);
    expect(readFileSync(path, 'utf8').startsWith(saved)).toBe(true);
    await again(keeper);
    expect(plainRows(keeper.farm)).toHaveLength(before.length + 1);
  });

  it('over rows that came meanwhile: they are put back, and the coordinator is told', async () => {
    const { keeper, path } = await busyDesk();
    const opened = readFileSync(path, 'utf8');
    await keeper.enter(entryOf({ date: '2026-05-16' }), entryOf({ date: '2026-05-17' }));
    const before = plainRows(keeper.farm);
    writeFileSync(path, opened);
    await keeper.outsideChange();
    expect(plainRows(keeper.farm)).toEqual(before);
    expect(keeper.restored()).toMatchObject([
      { file: MONTH_FILE, doe: 'clover', date: '2026-05-16', milking: 'am' },
      { file: MONTH_FILE, doe: 'clover', date: '2026-05-17', milking: 'am' },
    ]);
    expect(keeper.told).toMatchInlineSnapshot(`
      [
        "2 rows that people had entered had gone from the milk book: a file was saved over, put back from an older copy or cut. Nothing is lost: they stand in milkings/2026-05.csv now.
        2026-05-16,am,clover,7,cup,,,2026-06-01T12:00:00.000-05:00
        2026-05-17,am,clover,7,cup,,,2026-06-01T12:00:00.000-05:00
      To take a row out for good, strike it out on the Milk book's page, or leave its line and make its amount empty.",
      ]
    `);
  });

  it('with US dates: nothing is doubled while it cannot be read, nor when it is mended; entries go on', async () => {
    const { keeper, path, before } = await busyDesk();
    const sound = readFileSync(path, 'utf8');
    const state = keeper.state();
    saveAs(path, (text) => text.replace(/2026-05-1(\d),/g, '5/1$1/2026,'));
    await keeper.outsideChange();
    expect(readFarm(keeper.farm, { now_ms: NOW_MS }).ok).toBe(false);
    expect(keeper.restored()).toEqual([]);
    // Phones go on with the rows from before, and hear why nothing is computed.
    expect(keeper.state().rows).toEqual(state.rows);
    expect(keeper.state().faults).toContain('5/13/2026');
    const [answer] = await keeper.enter(entryOf({ date: '2026-05-18' }));
    await again(keeper);
    const late = textOf(keeper.farm, MONTH_FILE).split('\n').filter((line) => line.startsWith('2026-05-18')); // prettier-ignore
    expect(late).toHaveLength(1);
    writeFileSync(path, `${sound}${late[0]}\n`);
    const mended = await keeperOver(keeper.farm);
    expect(plainRows(keeper.farm)).toHaveLength(before.length + 1);
    expect(mended.restored()).toEqual([]);
    expect(mended.state().rows.map(({ mark }) => mark)).toContain(markIn(answer));
  });

  it('with US dates, mended by throwing the rows out: then they are put back', async () => {
    const { keeper, path, before } = await busyDesk();
    saveAs(path, (text) => text.replace(/2026-05-1(\d),/g, '5/1$1/2026,'));
    await keeper.outsideChange();
    writeFileSync(path, `${HEADING_LINE}${HAND_ROW}\n`);
    await keeper.outsideChange();
    expect(plainRows(keeper.farm)).toEqual(before);
    expect(keeper.restored()).toHaveLength(3);
  });
});

async function again(keeper: TestKeeper): Promise<void> {
  await keeper.close();
  const next = await openKeeper({ farm: keeper.farm, now_ms: () => NOW_MS, complain: () => undefined });
  await next.close();
}

describe('a file that is gone', () => {
  it.each<[string, (path: string) => void]>([
    ['deleted', (path) => rmSync(path)],
    ['replaced by an older copy', (path) => { copyFileSync(path, `${path}.bak`); writeFileSync(`${path}.bak`, `${HEADING_LINE}${HAND_ROW}\n`); renameSync(`${path}.bak`, path); }],
    ['emptied', (path) => writeFileSync(path, '')],
    ['deleted with its folder', (path) => rmSync(join(path, '..'), { recursive: true })],
  ])('%s: the promised rows come back', async (_, remove) => {
    const { keeper, path, before } = await busyDesk();
    remove(path);
    await keeper.outsideChange();
    const found = plainRows(keeper.farm);
    expect(found).toEqual(before.filter((row) => found.includes(row)));
    expect(found.filter((row) => !row.includes('fed'))).toEqual(before.filter((row) => !row.includes('fed')));
  }); // prettier-ignore

  it('renamed within the milk book: nothing is written twice', async () => {
    const { keeper, path, before } = await busyDesk();
    renameSync(path, join(path, '..', 'May.csv'));
    await keeper.outsideChange();
    expect(plainRows(keeper.farm)).toEqual(before);
  });

  it('noticed by itself, without an entry', async () => {
    const keeper = await keeperOver(milkFarm(), { watching: { settle_ms: 20, look_ms: 100 } });
    await keeper.enter(entryOf());
    rmSync(join(keeper.farm, MONTH_FILE));
    await expect.poll(() => textOf(keeper.farm, MONTH_FILE), { timeout: 10_000 }).toContain('clover');
  });
});

describe('a row that a person changed by hand', () => {
  it('is respected: it is not put back beside the new one', async () => {
    const { keeper, path } = await busyDesk();
    saveAs(path, (text) => text.replace('bell,0 1/2,cup,lost', 'bell,2,cup,kept'));
    await keeper.outsideChange();
    expect(keeper.restored()).toEqual([]);
    expect(keeper.state().rows.find(({ doe, date }) => doe === 'bell' && date === '2026-05-14')).toMatchObject({ amount: { num: 2 }, use: 'kept' }); // prettier-ignore
  });

  it('settles a clash where it is another one that counts now', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf(), entryOf({ amount: '9' }));
    expect(keeper.state().clashes).toHaveLength(1);
    saveAs(
      join(keeper.farm, MONTH_FILE),
      (text) => `${text}2026-05-21,am,clover,8,cup,,asked both,2026-06-01T13:00\n`,
    );
    await keeper.outsideChange();
    expect(keeper.state().clashes).toEqual([]);
  });

  it('is not taken for another promised row of the same milking', async () => {
    const { keeper, path, before } = await busyDesk();
    // The correction to 9 is thrown out, the row of 9.5 that it corrected stays.
    saveAs(path, (text) =>
      text
        .split('\n')
        .filter((line) => !line.includes('clover,9,'))
        .join('\n'),
    );
    await keeper.outsideChange();
    expect(plainRows(keeper.farm)).toEqual(before);
  });
});

/**
 * Does what the list of faults asks for where a row stands twice: the desk put it into a file of its own, and then
 * somebody brought the old file back in which it stood before.
 */
async function takeOutDoubles(keeper: Keeper, farm: string, now_ms: number): Promise<void> {
  for (;;) {
    const reading = readFarm(farm, { now_ms });
    const double = reading.ok
      ? undefined
      : reading.faults.find(({ found }) => found.includes('a second time'));
    if (!double?.line) return;
    const lines = textOf(farm, double.file).split(/(?<=\n)|(?<=\r)(?!\n)/);
    const first = /\(the first is (\S+):(\d+)\)/.exec(double.found);
    const other = textOf(farm, first?.[1] ?? '').split(/[\r\n]+/)[Number(first?.[2]) - 1];
    const moment = /T\d\d:\d\d:\d\d\.\d{3}/.exec(lines[double.line - 1] ?? '')?.[0];
    // It is the very same row, to the millisecond where that was not cut off.
    if (moment && other?.includes('T')) expect(other).toContain(moment);
    lines.splice(double.line - 1, 1);
    writeFileSync(join(farm, double.file), lines.join(''));
    await keeper.outsideChange();
  }
}

describe('whatever is done to the files', () => {
  const doing = fc.oneof(
    fc.record({ what: fc.constant('enter' as const), date: fc.integer({ min: 1, max: 4 }), amount: fc.integer({ min: 1, max: 40 }), knows: fc.boolean() }),
    fc.record({ what: fc.constant('save' as const), how: fc.integer({ min: 0, max: SPREADSHEETS.length - 1 }) }),
    fc.record({ what: fc.constantFrom('delete' as const, 'keep a copy' as const, 'put the copy back' as const, 'cut in half' as const, 'open again' as const) }),
  ); // prettier-ignore

  it('every promised row is found once at the end', { timeout: 240_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(doing, { minLength: 3, maxLength: 14 }), async (doings) => {
        const farm = milkFarm({ [MONTH_FILE]: null });
        const path = join(farm, MONTH_FILE);
        const promised: string[] = [];
        const settings = { farm, complain: () => undefined, quiet_ms: 1 };
        let now_ms = NOW_MS;
        let keeper = await openKeeper({ ...settings, now_ms: () => now_ms });
        let copy: string | null = null;
        for (const one of doings) {
          now_ms += 45_000;
          if (one.what === 'enter') {
            const date = `2026-05-1${one.date}`;
            const saw = one.knows
              ? (keeper.state().rows.find((row) => row.date === date)?.mark ?? null)
              : null;
            const entry = entryOf({ date, amount: String(one.amount / 2), saw, entered_ms: now_ms });
            const [answer] = await keeper.write({ sent_ms: now_ms, entries: [entry] });
            promised.push(
              `${date} ${one.amount / 2} ${Math.floor(Number(markIn(answer).split(' ')[0]) / 60_000)}`,
            );
          } else if (one.what === 'open again') {
            await keeper.close();
            keeper = await openKeeper({ ...settings, now_ms: () => now_ms });
          } else if (textOf(farm, MONTH_FILE) !== '') {
            const text = textOf(farm, MONTH_FILE);
            // Half a file is half its lines: a program that is cut off within one leaves what only a person can read.
            const half = text
              .split('\n')
              .slice(0, Math.ceil(text.split('\n').length / 2))
              .join('\n')
              .replace(/\r$/, '');
            if (one.what === 'save' && text.includes('date,milking'))
              saveAs(path, (saved) =>
                (SPREADSHEETS[one.how]?.[1] ?? String)(saved.replace(/[\r\ufeff]/g, '')),
              );
            else if (one.what === 'delete') rmSync(path);
            else if (one.what === 'keep a copy') copy = text;
            else if (one.what === 'put the copy back' && copy !== null) writeFileSync(path, copy);
            else if (one.what === 'cut in half') writeFileSync(path, half);
          }
        }
        await keeper.outsideChange();
        await takeOutDoubles(keeper, farm, now_ms);
        await keeper.close();
        const found = rowsIn(farm, now_ms).map((row) => {
          const parts = plainRow(row).split(' ');
          return `${parts[0]} ${parts[3]} ${parts.at(-1)}`;
        });
        expect(found.sort()).toEqual(promised.sort());
      }),
      { numRuns: 40 },
    );
  });
});
