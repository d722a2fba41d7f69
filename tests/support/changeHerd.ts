// A desk's writer in a process of its own, to be killed: changes one cell of kiddings.csv again and again, and says so.
import { openHerd } from '../../src/desk/book/herdKeeper.ts';

const [, , farm = '', start = '1', count = '1000000'] = process.argv;
const herd = openHerd({ farm, now_ms: () => Date.parse('2026-06-01T17:00:00Z') });
for (let n = Number(start); n < Number(start) + Number(count); n += 1) {
  const book = herd.read();
  const line = book.kiddings[0]?.line ?? 0;
  // Dates of 1,000 days: each change is told apart from the one before it.
  const dry = new Date(Date.UTC(2027, 0, 1 + (n % 1000))).toISOString().slice(0, 10);
  const answer = await herd.change({
    change: { kind: 'change', file: 'kiddings.csv', line, cells: { dry } },
    saw: book.marks['kiddings.csv'],
  });
  process.stdout.write(`${answer.ok ? `kept ${dry}` : `not kept ${dry}: ${JSON.stringify(answer)}`}\n`);
}
