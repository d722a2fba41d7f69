// Treatments and the Milk book: what a slip in treatments.csv and a treatment written down late do to rows and entries.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { entryOf, keeperOver, markIn, marksIn, milkFarm, MONTH_FILE, rowsIn, textOf, type TestKeeper } from './milkFarm.ts'; // prettier-ignore

const HEADING = 'doe,from,until,what\n';
const CLOVER = 'clover,2026-05-20,2026-05-24,for her foot\n';
const treat = (keeper: Pick<TestKeeper, 'farm' | 'outsideChange'>, rows: string) => {
  writeFileSync(join(keeper.farm, 'treatments.csv'), HEADING + rows);
  return keeper.outsideChange();
};
const uses = (keeper: TestKeeper) => keeper.state().rows.map(({ use }) => use);
const change = (farm: string, file: string, by: (text: string) => string) => {
  const path = join(farm, file);
  writeFileSync(path, by(readFileSync(path, 'utf8')));
};

describe('a slip in treatments.csv', () => {
  it.each(['clover,2026-5-33,2026-05-24,', 'clover,,,', 'clover,2026-05-24,2026-05-20,'])(
    'leaves no treated milk kept, from the start: %s',
    async (row) => {
      const keeper = await keeperOver(milkFarm({ 'treatments.csv': `${HEADING}${row}\n` }));
      expect(keeper.state().faults).toContain('treatments.csv');
      // Of a treatment with its two dates turned round the later one is its first day.
      const date = row.startsWith('clover,2026-05-24') ? '2026-05-25' : '2026-05-21';
      expect(await keeper.enter(entryOf({ date }))).toMatchObject([{ kept: false, why: 'treated' }]);
      expect(await keeper.enter(entryOf({ date, doe: 'bell' }))).toMatchObject([{ kept: true }]);
    },
  );

  it('takes neither the sound row beside it nor the treatments of before', async () => {
    const keeper = await keeperOver(milkFarm({ 'treatments.csv': HEADING + CLOVER }));
    await treat(keeper, 'cloverr,2026-05-20,,\nbell,2026-05-21,,drench\n');
    const answers = await keeper.enter(entryOf(), entryOf({ doe: 'bell' }));
    expect(answers).toMatchObject([{ why: 'treated' }, { why: 'treated' }]);
    await treat(keeper, 'bell,2026-05-21,,drench\n');
    expect(keeper.state().faults).toBeNull();
    expect(await keeper.enter(entryOf(), entryOf({ doe: 'bell' }))).toMatchObject([{ kept: true }, { why: 'treated' }]); // prettier-ignore
  });
});

describe('a treatment that is written down late', () => {
  it('withholds what was put down as kept, but not where somebody knew of it', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf(), entryOf({ milking: 'pm', sure: true }));
    expect(uses(keeper)).toEqual(['kept', 'kept']);
    await treat(keeper, CLOVER);
    expect(uses(keeper)).toEqual(['withheld', 'kept']);
    expect(rowsIn(keeper.farm).map(({ use }) => use)).toEqual(['withheld', 'kept']);
    await treat(keeper, '');
    expect(uses(keeper)).toEqual(['kept', 'kept']);
  });

  it('changes no mark: who saw the row before corrects it without a clash, and nothing is put back', async () => {
    const farm = milkFarm();
    const keeper = await keeperOver(farm);
    const [first] = await keeper.enter(entryOf());
    await treat(keeper, CLOVER);
    expect(keeper.state().rows.map(({ mark }) => mark)).toEqual([markIn(first)]);
    const [second] = await keeper.enter(entryOf({ amount: '8', use: 'withheld', saw: markIn(first) }));
    expect(keeper.state().clashes).toEqual([]);
    await keeper.close();
    const again = await keeperOver(farm);
    expect([again.state().clashes, again.told, again.restored()]).toEqual([[], [], []]);
    expect(marksIn(farm)).toEqual([markIn(first), markIn(second)]);
  });

  it('is no reason to put a row back whose time a spreadsheet has lost', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf());
    change(keeper.farm, MONTH_FILE, (text) => text.replace(/2026-06-01T.*$/m, ''));
    await treat(keeper, CLOVER);
    expect([keeper.restored(), uses(keeper), rowsIn(keeper.farm).length]).toEqual([[], ['withheld'], 1]);
  });

  it('puts a row back as it was written, and so withheld', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf());
    const before = textOf(keeper.farm, MONTH_FILE);
    change(keeper.farm, MONTH_FILE, (text) => text.split('\n').slice(0, 1).join('') + '\n');
    await treat(keeper, CLOVER);
    expect(textOf(keeper.farm, MONTH_FILE)).toBe(before);
    expect(uses(keeper)).toEqual(['withheld']);
  });

  it('withholds the rows of a file that cannot be read just now', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf());
    change(keeper.farm, MONTH_FILE, (text) => text.replace('date,milking', 'date,milkin'));
    await treat(keeper, CLOVER);
    expect(keeper.state().faults).toContain(MONTH_FILE);
    expect(uses(keeper)).toEqual(['withheld']);
  });

  it('settles a clash of kept and withheld, and shows what each counts as', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf(), entryOf({ use: 'withheld' }));
    await keeper.enter(entryOf({ doe: 'bell' }), entryOf({ doe: 'bell', amount: '8' }));
    const clashing = () => keeper.state().clashes.map(({ doe, amounts }) => [doe, ...amounts.map(({ use }) => use)]);
    expect(clashing()).toEqual([['clover', 'kept', 'withheld'], ['bell', 'kept', 'kept']]);
    await treat(keeper, `${CLOVER}bell,2026-05-20,,drench\n`);
    expect(clashing()).toEqual([['bell', 'withheld', 'withheld']]);
  }); // prettier-ignore
});
