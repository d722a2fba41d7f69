// What people did to rows by hand is never undone by putting old ones back; what is doubtful stays in the journal, and is told.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { standingRows } from '../../../../shared/herd/standing.ts';
import { NOW_MS } from '../../farm/farmFolder.ts';
import { entryOf, HEADING_LINE, keeperOver, markIn, milkFarm, MONTH_FILE, plainRow, rowsIn, textOf, type TestKeeper } from './milkFarm.ts'; // prettier-ignore

const JOURNAL = 'desk/entries-2026.jsonl';
const HAND_HEADING = 'date,milking,doe,amount,unit,use\n';

/** Changes the month's file as a person does, and lets the desk look. */
async function byHand(keeper: TestKeeper, change: (text: string) => string): Promise<void> {
  const path = join(keeper.farm, MONTH_FILE);
  writeFileSync(path, change(readFileSync(path, 'utf8')));
  await keeper.outsideChange();
}

/** What counts of each milking, without the minute. */
const standing = (farm: string) =>
  standingRows(rowsIn(farm)).rows.map((row) => plainRow(row).replace(/ (?:no time|\d+)$/, ''));

/** Milk that was taken as kept and then withheld. */
async function withheldMilk(keeper: TestKeeper): Promise<void> {
  const [first] = await keeper.enter(entryOf({ amount: '3' }));
  await keeper.enter(entryOf({ amount: '3', use: 'withheld', note: 'clots', saw: markIn(first) }));
}

describe('withheld milk', () => {
  it('stays withheld where its row was copied into a file without times and the older row is gone', async () => {
    const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: HAND_HEADING }));
    await withheldMilk(keeper);
    rmSync(join(keeper.farm, 'milkings/2026-05-desk.csv'));
    await byHand(keeper, (text) => `${text}2026-05-21,am,clover,3,cup,withheld\n`);
    expect(standing(keeper.farm)).toEqual(['2026-05-21 am clover 3 cup withheld']);
    expect(keeper.restored()).toEqual([]);
    expect(keeper.told.join()).toMatch(/so that the older one would count again. It was not put back/);
    expect(keeper.told.join()).toContain('2026-05-21,am,clover,3,cup,');
    // Told once, and kept.
    await byHand(keeper, (text) => `${text}2026-05-21,pm,bell,3,cup,withheld\n`);
    expect(keeper.told).toHaveLength(1);
    expect(textOf(keeper.farm, JOURNAL).trimEnd().split('\n')).toHaveLength(2);
  });

  it('stays withheld where a person wrote so and left the time empty', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf({ amount: '3' }));
    await byHand(keeper, () => `${HEADING_LINE}2026-05-21,am,clover,5,cup,withheld,clots,\n`);
    expect(standing(keeper.farm)).toEqual(['2026-05-21 am clover 5 cup withheld']);
    expect(keeper.told.join()).toContain('was changed by hand, and its time (entered) is empty now');
  });

  it('comes back over a row without a time that stood before it', async () => {
    const hand = `${HEADING_LINE}2026-05-21,am,clover,3,cup,kept,,\n`;
    const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: hand }));
    const saw = keeper.state().rows[0]?.mark ?? null;
    await keeper.enter(entryOf({ amount: '2', use: 'withheld', saw }));
    await byHand(keeper, () => hand);
    expect(standing(keeper.farm)).toEqual(['2026-05-21 am clover 2 cup withheld']);
    expect(keeper.restored()).toHaveLength(1);
  });
});

describe('a row that was moved by hand', () => {
  it.each([
    ['another doe', 'am,clover', 'am,bell', '2026-05-21 am bell 7 cup kept'],
    ['the evening', 'am,clover', 'pm,clover', '2026-05-21 pm clover 7 cup kept'],
    ['another day', '2026-05-21', '2026-05-20', '2026-05-20 am clover 7 cup kept'],
  ])('to %s counts there, and once', async (_, from, to, row) => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf());
    await byHand(keeper, (text) => text.replace(from, to));
    expect(standing(keeper.farm)).toEqual([row]);
    expect(rowsIn(keeper.farm)).toHaveLength(1);
    expect(keeper.told.join()).toContain('somebody moved it by hand');
  });

  it('is not one that was itself promised where it stands, though entered in the same moment', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.write({ sent_ms: NOW_MS, entries: [entryOf(), entryOf({ doe: 'bell' })] });
    const before = standing(keeper.farm);
    await byHand(keeper, (text) => text.replace(/^.*am,clover.*\n/m, ''));
    expect(standing(keeper.farm)).toHaveLength(2);
    expect(standing(keeper.farm)).toEqual(expect.arrayContaining(before));
  });
});

describe('a doe that was taken out', () => {
  it('leaves a book that can be read; her rows wait in the journal until does.csv has her again', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf(), entryOf({ doe: 'bell' }));
    const does = textOf(keeper.farm, 'does.csv');
    const kiddings = textOf(keeper.farm, 'kiddings.csv');
    const without = (text: string) => text.replace(/^.*\bclover\b.*\n/gm, '');
    writeFileSync(join(keeper.farm, 'does.csv'), without(does));
    writeFileSync(join(keeper.farm, 'kiddings.csv'), without(kiddings));
    await byHand(keeper, without);
    expect(standing(keeper.farm)).toEqual(['2026-05-21 am bell 7 cup kept']);
    expect(keeper.state().faults).toBeNull();
    await byHand(keeper, (text) => `${text}2026-05-20,pm,bell,6,cup,,,\n`);
    expect(keeper.told).toHaveLength(1);
    expect(keeper.told[0]).toContain('its doe is not in does.csv. It was not put back');
    writeFileSync(join(keeper.farm, 'kiddings.csv'), kiddings);
    writeFileSync(join(keeper.farm, 'does.csv'), does);
    await keeper.outsideChange();
    expect(standing(keeper.farm)).toContain('2026-05-21 am clover 7 cup kept');
    expect(keeper.restored()).toHaveLength(1);
  });
});

describe('a file of another kind saved over ours', () => {
  it.each([
    ['a spreadsheet', Buffer.from([0x50, 0x4b, 0x03, 0x04, 0x14, 0x4d, 0x00, 0x00])],
    ['UTF-16', Buffer.from(`\ufeff${HEADING_LINE}2026-05-20,am,bell,7,cup,,,\n`, 'utf16le')],
    ['a text with another heading', Buffer.from('doe,date\nbell,2026-05-20\n\0\0')],
  ])('keeps every byte: %s', async (_, bytes) => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf());
    const path = join(keeper.farm, MONTH_FILE);
    writeFileSync(path, bytes);
    await keeper.outsideChange();
    expect(readFileSync(path)).toEqual(bytes);
  });

  it('is not our own with zeros of a power cut behind it, torn within a letter: that is made whole', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf({ note: 'niña' }));
    const path = join(keeper.farm, MONTH_FILE);
    const whole = readFileSync(path);
    const torn = whole.subarray(0, whole.indexOf(Buffer.from('ñ')) + 1);
    writeFileSync(path, Buffer.concat([torn, Buffer.alloc(64)]));
    await keeper.outsideChange();
    expect(readFileSync(path)).toEqual(whole);
  });
});

describe('what cannot be read just now', () => {
  it('keeps its corrections, and phones hear nothing of the machine', async () => {
    const keeper = await keeperOver(milkFarm());
    const hand =
      '2026-05-20,am,bell,7,cup,,,2026-05-20T07:00\n2026-05-20,am,bell,8,cup,withheld,,2026-05-20T08:00\n';
    await byHand(keeper, (text) => text + hand);
    const { rows } = keeper.state();
    expect(rows).toMatchObject([{ amount: { num: 8 }, use: 'withheld' }]);
    await byHand(keeper, (text) => text.replaceAll('2026-05-20,', '5/20/2026,'));
    expect(keeper.state().rows).toEqual(rows);
    expect(keeper.state().faults).toContain('5/20/2026');
    expect(keeper.stateText()).not.toContain(keeper.farm);
  });
});
