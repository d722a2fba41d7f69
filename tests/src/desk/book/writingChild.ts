// A desk in a process of its own that a test kills: it writes entries and says which ones it has promised to keep.
import { openKeeper } from '../../../../src/desk/book/keeper.ts';
import type { BookEntry } from '../../../../shared/book/types.ts';

const [farm = '', firstText = '0', lastText = '0', nowText = '0'] = process.argv.slice(2);
const [first, last, now_ms] = [Number(firstText), Number(lastText), Number(nowText)];
// More than one post waits for the disk at any time, so that a kill meets batches.
const CLIENTS = 8;

/** The entry of a number: whoever sends it again, sends the same. */
function entryNumber(count: number): BookEntry {
  const amount = count % 7 === 6 ? null : String(1 + (count % 40) / 2);
  return {
    id: count.toString(36).padStart(22, '0'),
    doe: count % 2 === 0 ? 'clover' : 'bell',
    date: `2026-05-${String(1 + (count % 28)).padStart(2, '0')}`,
    milking: count % 3 === 0 ? 'pm' : 'am',
    amount,
    unit: 'cup',
    use: 'kept',
    // Letters of several bytes: a row may be torn within one.
    note: `niña ${count}, «tranquila» 🐐`,
    sure: true,
    saw: null,
    entered_ms: now_ms + count,
  };
}

const keeper = await openKeeper({
  farm,
  now_ms: () => now_ms + 1_000_000,
  complain: () => undefined,
  wait_ms: 5_000,
});
process.stdout.write('open\n');
let next = first;
const client = async () => {
  for (let count = next++; count <= last; count = next++) {
    const entry = entryNumber(count);
    const [answer] = await keeper.write({ sent_ms: now_ms + 1_000_000, entries: [entry] });
    const { date, milking, doe } = entry;
    if (answer?.kept) process.stdout.write(`${count} ${date} ${milking} ${doe} ${answer.mark}\n`);
  }
};
await Promise.all(Array.from({ length: CLIENTS }, client));
await keeper.close();
