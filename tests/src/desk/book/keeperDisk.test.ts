// A full or failing disk: nothing half written stays, nobody is promised what is not there, and it all works again afterwards.
import { chmodSync, existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markOf } from '../../../../shared/book/mark.ts';
import { thisDisk, isFull } from '../../../../src/desk/book/disk.ts';
import { openKeeper } from '../../../../src/desk/book/keeper.ts';
import { NOW_MS } from '../../farm/farmFolder.ts';
import { smallDisk, systemError } from './failingDisk.ts';
import { entryOf, keeperOver, markIn, marksIn, milkFarm, MONTH_FILE, rowsIn, textOf } from './milkFarm.ts';

const JOURNAL = 'desk/entries-2026.jsonl';

describe('a full disk', () => {
  it(
    'leaves both files as they were, wherever it filled up, and the entry is taken once there is room',
    { timeout: 120_000 },
    async () => {
      const disk = smallDisk();
      const keeper = await keeperOver(milkFarm(), { disk });
      const marks = (await keeper.enter(entryOf())).map(markIn);
      const [book, journal] = [textOf(keeper.farm, MONTH_FILE), textOf(keeper.farm, JOURNAL)];
      const one = entryOf({ date: '2026-05-20', note: 'niña, 8 "tazas"' });
      // Journal and file take some 350 bytes; with each number less it fills up at another one.
      for (let room = 0; ; room += 1) {
        disk.room = room;
        const before = disk.failures;
        const answers = await keeper.enter(one).catch((error: unknown) => error);
        if (disk.failures === before) {
          marks.push(...(answers as Awaited<ReturnType<typeof keeper.enter>>).map(markIn));
          break;
        }
        expect(isFull(answers)).toBe(true);
        expect(textOf(keeper.farm, MONTH_FILE)).toBe(book);
        expect(textOf(keeper.farm, JOURNAL)).toBe(journal);
      }
      expect(disk.failures).toBeGreaterThan(250);
      expect(marksIn(keeper.farm)).toEqual(marks);
      expect(keeper.state().rows).toHaveLength(2);
    },
  );

  it('makes no file that it cannot fill', async () => {
    const disk = smallDisk(0);
    const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: null }), { disk });
    await expect(keeper.enter(entryOf())).rejects.toThrow('ENOSPC');
    expect(existsSync(join(keeper.farm, MONTH_FILE))).toBe(false);
    expect(existsSync(join(keeper.farm, JOURNAL))).toBe(false);
  });

  it('keeps the months that went well, and says so when the post comes again', async () => {
    const disk = smallDisk();
    const keeper = await keeperOver(milkFarm(), { disk });
    await keeper.enter(entryOf({ date: '2026-04-01' }), entryOf({ date: '2026-05-01' }));
    const entries = [entryOf({ date: '2026-04-02' }), entryOf({ date: '2026-05-02' })];
    const before = disk.room;
    // Both lines of the journal find room, and the first of the two rows.
    disk.room = Buffer.byteLength(textOf(keeper.farm, JOURNAL)) + 90;
    await expect(keeper.write({ sent_ms: NOW_MS, entries })).rejects.toThrow('ENOSPC');
    expect(rowsIn(keeper.farm)).toHaveLength(3);
    disk.room = before;
    const answers = await keeper.write({ sent_ms: NOW_MS, entries });
    expect(rowsIn(keeper.farm)).toHaveLength(4);
    expect(marksIn(keeper.farm)).toEqual(expect.arrayContaining(answers.map(markIn)));
  });

  it('that cannot even take back what it wrote: it is taken back before anything else is written', async () => {
    const disk = smallDisk();
    const keeper = await keeperOver(milkFarm(), { disk });
    const [first] = await keeper.enter(entryOf({ date: '2026-05-01' }));
    for (const room of [40, Buffer.byteLength(textOf(keeper.farm, JOURNAL)) + 30]) {
      Object.assign(disk, { room, isStuck: true });
      await expect(keeper.enter(entryOf({ date: '2026-05-02' }))).rejects.toThrow();
      await expect(keeper.enter(entryOf({ date: '2026-05-03' }))).rejects.toThrow();
      Object.assign(disk, { room: 10_000, isStuck: false });
    }
    const [second] = await keeper.enter(entryOf({ date: '2026-05-04' }));
    expect(marksIn(keeper.farm)).toEqual([markIn(first), markIn(second)]);
  });

  it('never makes two rows of one entry, though the desk is opened again right after it was stuck', async () => {
    const farm = milkFarm();
    const disk = smallDisk();
    const one = entryOf({ date: '2026-05-02' });
    const keeper = await openKeeper({ farm, disk, now_ms: () => NOW_MS, complain: () => undefined });
    await keeper.write({ sent_ms: NOW_MS, entries: [entryOf({ date: '2026-05-01' })] });
    // The line of the journal finds room, and half of the row.
    Object.assign(disk, { room: Buffer.byteLength(textOf(farm, JOURNAL)) + 30, isStuck: true });
    await expect(keeper.write({ sent_ms: NOW_MS, entries: [one] })).rejects.toThrow();
    await keeper.close();
    const again = await keeperOver(farm, { now_ms: () => NOW_MS + 5_000 });
    const answers = await again.enter(one);
    expect(marksIn(farm)).toEqual([expect.any(String), markIn(answers[0])]);
  });

  // Linux has a device that is always full.
  it.skipIf(!existsSync('/dev/full'))('of the system itself is told as one', async () => {
    const error = await thisDisk
      .append('/dev/full', Buffer.from('milk'), 0)
      .catch((reason: unknown) => reason);
    expect(isFull(error)).toBe(true);
  });
});

describe('a disk that fails now and then', () => {
  it('loses no promise and keeps nothing half', { timeout: 120_000 }, async () => {
    const step = fc.record({ room: fc.integer({ min: 0, max: 1_500 }), isStuck: fc.boolean(), entries: fc.integer({ min: 1, max: 3 }) }); // prettier-ignore
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
        const farm = milkFarm({ [MONTH_FILE]: null });
        const disk = smallDisk();
        const promised: string[] = [];
        const keeper = await openKeeper({ farm, disk, now_ms: () => NOW_MS, complain: () => undefined });
        for (const [index, { room, isStuck, entries }] of steps.entries()) {
          Object.assign(disk, { room, isStuck });
          const own = Array.from({ length: entries }, (_, count) => entryOf({ date: `2026-0${4 + (count % 2)}-0${1 + index}`, amount: String(1 + count) })); // prettier-ignore
          const answers = await keeper.write({ sent_ms: NOW_MS, entries: own }).catch(() => []);
          promised.push(...answers.map(markIn));
        }
        await keeper.close();
        const again = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
        await again.close();
        const found = rowsIn(farm).map((row) => markOf(row));
        for (const mark of promised) expect(found).toContain(mark);
      }),
      { numRuns: 60 },
    );
  });

  it('is told once to the coordinator, in plain words, when what is gone cannot be put back', async () => {
    const disk = smallDisk();
    const keeper = await keeperOver(milkFarm(), { disk });
    await keeper.enter(entryOf());
    writeFileSync(join(keeper.farm, MONTH_FILE), 'date,milking,doe,amount,unit,use,note,entered\n');
    disk.append = () => Promise.reject(systemError('ENOSPC'));
    await keeper.outsideChange();
    expect(keeper.told.join()).toContain('must be put back in the milk book and cannot: the disk is full');
    // The book in memory still has it.
    expect(keeper.state().rows).toHaveLength(1);
    disk.append = (...step) => thisDisk.append(...step);
    await keeper.outsideChange();
    expect(rowsIn(keeper.farm)).toHaveLength(1);
    expect(keeper.restored()).toHaveLength(1);
  });
});

describe('a file that does not let itself be written', () => {
  /** A desk whose disk refuses everything for one file, as another program that holds it does. */
  async function lockedDesk(code: string) {
    const disk = smallDisk();
    const keeper = await keeperOver(milkFarm(), { disk });
    const refuse = (path: string) => (path.endsWith(MONTH_FILE) ? Promise.reject(systemError(code)) : null);
    disk.append = (path, ...rest) => refuse(path) ?? thisDisk.append(path, ...rest);
    disk.cut = (path, ...rest) => refuse(path) ?? thisDisk.cut(path, ...rest);
    return keeper;
  }

  it.each(['EACCES', 'EPERM', 'EBUSY'])(
    'is passed over (%s): its rows go beside it, other months go on',
    async (code) => {
      const keeper = await lockedDesk(code);
      const entries = [entryOf({ date: '2026-04-30' }), entryOf(), entryOf({ date: '2026-03-31' })];
      const answers = await keeper.write({ sent_ms: NOW_MS, entries });
      answers.push(...(await keeper.enter(entryOf({ date: '2026-05-20' }))));
      expect(marksIn(keeper.farm).sort()).toEqual(answers.map(markIn).sort());
      expect(textOf(keeper.farm, 'milkings/2026-05-desk.csv')).toContain('2026-05-21,am,clover');
      expect(textOf(keeper.farm, JOURNAL).trimEnd().split('\n')).toHaveLength(4);
    },
  );

  it('does not keep a row that is gone from coming back', async () => {
    const keeper = await lockedDesk('EBUSY');
    await keeper.enter(entryOf());
    rmSync(join(keeper.farm, 'milkings/2026-05-desk.csv'));
    await keeper.outsideChange();
    expect(keeper.restored()).toMatchObject([{ file: 'milkings/2026-05-desk.csv' }]);
    expect(rowsIn(keeper.farm)).toHaveLength(1);
  });

  // The system's own lock; whoever may do everything may write it all the same.
  it.skipIf(process.getuid?.() === 0 || process.platform === 'win32')('by its rights, too', async () => {
    const keeper = await keeperOver(milkFarm());
    chmodSync(join(keeper.farm, MONTH_FILE), 0o444);
    await keeper.enter(entryOf());
    expect(textOf(keeper.farm, 'milkings/2026-05-desk.csv')).toContain('clover');
  });
});
