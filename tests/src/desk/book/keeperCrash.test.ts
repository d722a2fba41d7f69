// The desk is killed at any moment: what it promised is found again, nothing is doubled, nothing is made up.
import { spawn } from 'node:child_process';
import { appendFileSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../../shared/calendar/day.ts';
import { markOf } from '../../../../shared/book/mark.ts';
import { openKeeper } from '../../../../src/desk/book/keeper.ts';
import { NOW_MS } from '../../farm/farmFolder.ts';
import { entryOf, HEADING_LINE, keeperOver, markIn, marksIn, milkFarm, MONTH_FILE, rowsIn, textOf } from './milkFarm.ts'; // prettier-ignore

const CHILD = join(import.meta.dirname, 'writingChild.ts');
const WRITES = 2_000;
const JOURNAL = 'desk/entries-2026.jsonl';

/** Lets a child write entries from `first` on and kills it after some answers and some time; gives what it promised. */
function killedChild(farm: string, first: number, { after, wait_ms }: { after: number; wait_ms: number }) {
  return new Promise<Map<number, string>>((done, failed) => {
    const child = spawn(process.execPath, [CHILD, farm, String(first), String(WRITES), String(NOW_MS)], { stdio: ['ignore', 'pipe', 'pipe'] }); // prettier-ignore
    const promised = new Map<number, string>();
    let [rest, errors] = ['', ''];
    let due: NodeJS.Timeout | undefined;
    child.stdout.on('data', (part: Buffer) => {
      const lines = (rest + part.toString('utf8')).split('\n');
      rest = lines.pop() ?? '';
      for (const line of lines) {
        const [, count, mark] = /^(\d+) (.+)$/.exec(line) ?? [];
        if (mark !== undefined) promised.set(Number(count), mark);
      }
      if (promised.size >= after) due ??= setTimeout(() => child.kill('SIGKILL'), wait_ms);
    });
    child.stderr.on('data', (part: Buffer) => (errors += part.toString('utf8')));
    child.on('close', () => {
      clearTimeout(due);
      if (errors === '') done(promised);
      else failed(new Error(errors));
    });
  });
}

describe('a desk that is killed', () => {
  const seed = Number(process.env['CRASH_SEED'] ?? Date.now() % 1_000_000);

  it(`keeps every promise over ${WRITES} writes (CRASH_SEED=${seed})`, { timeout: 240_000 }, async () => {
    const farm = milkFarm();
    const chance = fc.sample(fc.record({ after: fc.integer({ min: 0, max: 330 }), wait_ms: fc.integer({ min: 0, max: 12 }) }), { seed, numRuns: 200 }); // prettier-ignore
    const promised = new Map<number, string>();
    let [kills, first] = [0, 1];
    for (; promised.size < WRITES; kills += 1) {
      const now = await killedChild(farm, first, chance[kills] ?? { after: 100, wait_ms: 0 });
      for (const [count, mark] of now) {
        // What was promised before the kill is answered alike after it.
        if (promised.has(count)) expect(mark).toBe(promised.get(count));
        promised.set(count, mark);
      }
      // Phones send what they have no answer for again, and some of what they have.
      const open = Array.from({ length: WRITES }, (_, index) => index + 1).find(
        (count) => !promised.has(count),
      );
      first = Math.max(1, (open ?? WRITES) - 3);
    }
    expect(kills).toBeGreaterThan(8);
    // One more opening, which ends well.
    const last = await openKeeper({ farm, now_ms: () => NOW_MS + 1_000_000, complain: () => undefined });
    await last.close();
    const rows = rowsIn(farm);
    const found = rows.map((row) => `${isoDate(row.day)} ${row.milking} ${row.doe} ${markOf(row)}`);
    expect(promised.size).toBe(WRITES);
    expect(new Set(found).size).toBe(found.length);
    expect([...promised.values()].filter((mark) => !found.includes(mark))).toEqual([]);
    // As many rows as entries: none is doubled, and none that nobody sent.
    expect(found).toHaveLength(WRITES);
    for (const { note } of rows) expect(note).toMatch(/^niña \d+, «tranquila» 🐐$/);
    expect(new Set(rows.map(({ note }) => note)).size).toBe(WRITES);
  });
});

/** A farm with some rows of the desk, as it lies there after a desk was closed. */
async function writtenFarm(count: number) {
  const farm = milkFarm({ [MONTH_FILE]: null });
  const keeper = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
  const entries = Array.from({ length: count }, (_, index) => entryOf({ date: `2026-05-0${1 + index}`, note: 'Ñandú, "tranquila"' })); // prettier-ignore
  const answers = await keeper.write({ sent_ms: NOW_MS, entries });
  await keeper.close();
  return { farm, marks: answers.map(markIn) };
}

describe('a sudden stop', () => {
  it(
    'within the last row: wherever it tore the file, the row is completed',
    { timeout: 120_000 },
    async () => {
      const { farm, marks } = await writtenFarm(3);
      const whole = readFileSync(join(farm, MONTH_FILE));
      for (let size = 0; size < whole.length; size += 1) {
        writeFileSync(join(farm, MONTH_FILE), whole.subarray(0, size));
        const keeper = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
        await keeper.close();
        expect(marksIn(farm)).toEqual(marks);
      }
    },
  );

  it('within the journal: the torn line goes, since nobody was promised it', async () => {
    const { farm, marks } = await writtenFarm(2);
    const whole = readFileSync(join(farm, JOURNAL));
    appendFileSync(join(farm, JOURNAL), whole.subarray(0, 90));
    const keeper = await keeperOver(farm);
    expect(readFileSync(join(farm, JOURNAL)).equals(whole)).toBe(true);
    const [more] = await keeper.enter(entryOf({ date: '2026-05-09' }));
    expect(marksIn(farm)).toEqual([...marks, markIn(more)]);
  });

  it('between the journal and the file: the row is written, and its phone hears the same as ever', async () => {
    const { farm, marks } = await writtenFarm(3);
    const text = textOf(farm, MONTH_FILE);
    const one = entryOf({ date: '2026-05-08' });
    const keeper = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
    const [answer] = await keeper.write({ sent_ms: NOW_MS, entries: [one] });
    await keeper.close();
    writeFileSync(join(farm, MONTH_FILE), text);
    const again = await keeperOver(farm);
    expect(await again.enter(one)).toEqual([answer]);
    expect(marksIn(farm)).toEqual([...marks, markIn(answer)]);
  });

  it('that left zeros at the end of both files', async () => {
    const { farm, marks } = await writtenFarm(2);
    for (const file of [JOURNAL, MONTH_FILE]) appendFileSync(join(farm, file), new Uint8Array(3_000));
    await keeperOver(farm);
    expect(marksIn(farm)).toEqual(marks);
  });

  it('leaves what a person had half written to that person', async () => {
    const { farm, marks } = await writtenFarm(1);
    appendFileSync(join(farm, MONTH_FILE), '2026-05-20,am,bell,6,cup,,by hand,');
    const keeper = await keeperOver(farm);
    await keeper.enter(entryOf({ date: '2026-05-21' }));
    expect(textOf(farm, MONTH_FILE)).toContain('\n2026-05-20,am,bell,6,cup,,by hand,\n2026-05-21,');
    expect(rowsIn(farm)).toHaveLength(3);
    expect(marksIn(farm)[0]).toBe(marks[0]);
  });

  it('that lost the whole month: it is made again from the journal', async () => {
    const { farm, marks } = await writtenFarm(4);
    truncateSync(join(farm, MONTH_FILE), 0);
    await keeperOver(farm);
    expect(marksIn(farm)).toEqual(marks);
    expect(textOf(farm, MONTH_FILE)).toContain(HEADING_LINE);
  });

  it('tells of a journal that somebody has damaged, and goes on with the rest of it', async () => {
    const { farm, marks } = await writtenFarm(3);
    const lines = textOf(farm, JOURNAL).split('\n');
    lines[1] = '{"id": "spilt';
    writeFileSync(join(farm, JOURNAL), lines.join('\n'));
    const keeper = await keeperOver(farm);
    expect(keeper.told).toEqual([expect.stringContaining('damaged at desk/entries-2026.jsonl:2')]);
    expect(rowsIn(farm).map((row) => markOf(row))).toEqual(marks);
  });
});
