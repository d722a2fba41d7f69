// The desk killed in the midst of its writing: the table is the old one or the new one, whole, and the journal knows both.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { farmWith } from '../../farm/farmFolder.ts';

const KILLS = 6;
const ROWS = Array.from({ length: 119 }, (_, index) => `bell,${1900 + index}-05-01,1,,,`);
const HEAD = 'doe,date,kids,apart,weaned,dry';

/** Lets a writer go on for some time and kills it; the changes that it told of. */
async function killed(farm: string, start: number, after_ms: number): Promise<string[]> {
  const child = spawn(process.execPath, ['tests/support/changeHerd.ts', farm, String(start)]);
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
  const ended = once(child, 'close');
  while (!said.includes('\n') && child.exitCode === null) await sleep(5);
  await sleep(after_ms);
  child.kill('SIGKILL');
  await ended;
  return said.split('\n').slice(0, -1);
}

describe('kill -9 at any moment', () => {
  it(
    'leaves a whole table with the last change that was told of, or the one after it',
    async () => {
      const farm = farmWith({ 'kiddings.csv': `${HEAD}\nclover,2026-03-03,2,2026-03-24,2026-05-09,\n${ROWS.join('\n')}\n` });
      let start = 1;
      for (let kill = 0; kill < KILLS; kill += 1) {
        const told = await killed(farm, start, (kill * 37) % 90);
        expect(told.filter((line) => !line.startsWith('kept '))).toEqual([]);
        start += told.length;
        const dates = [start - 1, start].map((n) => new Date(Date.UTC(2027, 0, 1 + n)).toISOString().slice(0, 10));
        const text = readFileSync(join(farm, 'kiddings.csv'), 'utf8');
        const [head, first = '', ...rest] = text.split('\n');
        expect([head, ...rest]).toEqual([HEAD, ...ROWS, '']);
        expect(dates.map((dry) => `clover,2026-03-03,2,2026-03-24,2026-05-09,${dry}`)).toContain(first);
        // Every line that ever stood is in the journal; only its last line may be torn.
        const journal = readFileSync(join(farm, 'desk/herd-2026.jsonl'), 'utf8').split('\n').slice(0, -1);
        const lines = journal.map((line) => (JSON.parse(line) as { new: string }).new);
        expect(lines).toContain(first);
        expect(lines.length).toBeGreaterThanOrEqual(start - 1);
        // What was acknowledged and what was written are the same but for the one in the air.
        if (first.endsWith(dates[1] ?? '')) start += 1;
      }
      expect(start).toBeGreaterThan(KILLS);
      expect(readdirSync(farm).filter((name) => name.startsWith('.') && name !== '.kiddings.csv.part')).toEqual([]);
    },
    60_000,
  ); // prettier-ignore
});
