// The writer of the milk book: what it takes, how a row stands in the file, repeats, corrections, two people at once.
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markOf } from '../../../../shared/book/mark.ts';
import type { BookEntry } from '../../../../shared/book/types.ts';
import { standingRows } from '../../../../shared/herd/standing.ts';
import { openKeeper } from '../../../../src/desk/book/keeper.ts';
import { readFarm } from '../../../../src/farm/readFarm.ts';
import { NOW_MS } from '../../farm/farmFolder.ts';
import { entryOf, HEADING_LINE, keeperOver, markIn, marksIn, milkFarm, MONTH_FILE, newId, plainRow, rowsIn, textOf } from './milkFarm.ts'; // prettier-ignore

describe('a row', () => {
  it('stands at the end of its month with the time of entry on the farm, and reads back as it was answered', async () => {
    const keeper = await keeperOver(milkFarm());
    const [answer] = await keeper.enter(entryOf({ amount: '9½', note: 'quiet, for once' }));
    expect(textOf(keeper.farm, MONTH_FILE)).toBe(
      `${HEADING_LINE}2026-05-21,am,clover,9 1/2,cup,,"quiet, for once",2026-06-01T12:00:00.000-05:00\n`,
    );
    expect(marksIn(keeper.farm)).toEqual([markIn(answer)]);
    expect(keeper.state().rows).toMatchObject([
      { doe: 'clover', note: 'quiet, for once', mark: markIn(answer) },
    ]);
  });

  it('is as old as the phone says, whatever time the phone thinks it is', async () => {
    const keeper = await keeperOver(milkFarm());
    const phone_ms = Date.parse('1999-01-01T00:00:00Z');
    await keeper.write({ sent_ms: phone_ms + 600_000, entries: [entryOf({ entered_ms: phone_ms })] });
    expect(rowsIn(keeper.farm).map(({ entered_ms }) => entered_ms)).toEqual([NOW_MS - 600_000]);
  });

  it('goes to a file of the desk where the month is hand-written in another shape', async () => {
    const hand = 'date;milking;doe;amount;entered\n2026-05-20;am;bell;7,5;\n';
    const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: hand, 'milkings/2026-05-desk.csv': 'Doe,Date,Milking,Amount\n' })); // prettier-ignore
    await keeper.enter(entryOf());
    expect(textOf(keeper.farm, MONTH_FILE)).toBe(hand);
    expect(readdirSync(join(keeper.farm, 'milkings'))).toEqual(['2026-05-desk-2.csv', '2026-05-desk.csv', '2026-05.csv']); // prettier-ignore
    expect(rowsIn(keeper.farm)).toHaveLength(2);
  });

  it.each([
    ['without a break at its end', `${HEADING_LINE}2026-05-20,am,bell,7,,,,`],
    [
      'with Windows breaks and a mark',
      `\ufeff${HEADING_LINE}2026-05-20,am,bell,7,,,,\n`.replaceAll('\n', '\r\n'),
    ],
    ['with a heading alone that no break ends', HEADING_LINE.trimEnd()],
    ['that is empty', ''],
    ['that is not there', null],
  ])('joins a file %s', async (_, text) => {
    const keeper = await keeperOver(milkFarm({ [MONTH_FILE]: text }));
    await keeper.enter(entryOf(), entryOf({ milking: 'pm' }));
    expect(rowsIn(keeper.farm)).toHaveLength(text?.includes('bell') ? 3 : 2);
    expect(readdirSync(join(keeper.farm, 'milkings'))).toEqual(['2026-05.csv']);
  });

  it('keeps out of a file with a quote mark that is open: it could swallow the row', async () => {
    const keeper = await keeperOver(
      milkFarm({ [MONTH_FILE]: `${HEADING_LINE}2026-05-20,am,bell,7,,,"open,\n` }),
    );
    await keeper.enter(entryOf({ note: 'a "quoted" word' }));
    expect(textOf(keeper.farm, 'milkings/2026-05-desk.csv')).toContain('clover');
  });
});

describe('what is refused', () => {
  it.each<[string, Partial<BookEntry>]>([
    ['unknown doe', { doe: 'daisy' }],
    ['no date', { date: '2026-02-30' }],
    ['no date', { date: '1899-12-31' }],
    ['still to come', { date: '2026-06-02' }],
    ['no amount', { amount: 'a jug' }],
    ['no amount', { amount: '' }],
    ['no amount', { amount: '-1' }],
    ['too much', { amount: '24.001' }],
    ['too much', { amount: '7', unit: 'gal' }],
    ['treated', { doe: 'bell', date: '2026-05-30' }],
  ])('is told: %s', async (why, changes) => {
    const treatments = 'doe,from,until,what\nbell,2026-05-29,,for a warm half\n';
    const keeper = await keeperOver(milkFarm({ 'treatments.csv': treatments }));
    expect(await keeper.enter(entryOf(changes))).toMatchObject([{ kept: false, why }]);
    expect(textOf(keeper.farm, MONTH_FILE)).toBe(HEADING_LINE);
  });

  it('is not milk of a treated doe that is withheld, or of which somebody said "I know"', async () => {
    const keeper = await keeperOver(milkFarm({ 'treatments.csv': 'doe,from,until,what\nbell,2026-05-29,,for a warm half\n' })); // prettier-ignore
    const treated = { doe: 'bell', date: '2026-05-30' };
    await keeper.enter(
      entryOf({ ...treated, use: 'withheld' }),
      entryOf({ ...treated, milking: 'pm', sure: true }),
    );
    expect(rowsIn(keeper.farm).map(({ use, unsaid }) => [use, unsaid])).toEqual([['withheld', undefined], ['kept', undefined]]); // prettier-ignore
  });
});

describe('the same id', () => {
  it('is never a second row: within a post, in the next one, after the desk was opened again', async () => {
    const farm = milkFarm();
    const one = entryOf();
    const first = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
    const post = { sent_ms: NOW_MS, entries: [one, one] };
    const answers = [...(await first.write(post)), ...(await first.write(post))];
    await first.close();
    const again = await keeperOver(farm, { now_ms: () => NOW_MS + 86_400_000 });
    answers.push(...(await again.write(post)));
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
    expect(rowsIn(farm)).toHaveLength(1);
  });

  it('is one row where two phones send it at the same moment', async () => {
    const keeper = await keeperOver(milkFarm());
    const one = entryOf();
    const sent = Array.from({ length: 20 }, () => keeper.write({ sent_ms: NOW_MS, entries: [one] }));
    const marks = (await Promise.all(sent)).map(([answer]) => markIn(answer));
    expect(new Set(marks).size).toBe(1);
    expect(rowsIn(keeper.farm)).toHaveLength(1);
  });
});

describe('a correction', () => {
  it('stands over what it corrects though the clock was set back a year', async () => {
    const farm = milkFarm();
    let now_ms = NOW_MS;
    const keeper = await keeperOver(farm, { now_ms: () => now_ms });
    const [first] = await keeper.enter(entryOf());
    now_ms -= 365 * 86_400_000;
    // The farm's clock is behind the milking's day now, so that day is set.
    const [second] = await (
      await reopened(keeper, farm, now_ms)
    ).enter(entryOf({ amount: '8', saw: markIn(first) }));
    const standing = standingRows(rowsIn(farm)).rows;
    expect(standing.map((row) => markOf(row))).toEqual([markIn(second)]);
    expect(standing[0]?.amount).toMatchObject({ num: 8 });
  });

  it('leaves the old row where it was, and has a minute of its own', async () => {
    const keeper = await keeperOver(milkFarm());
    let saw: string | null = null;
    for (const amount of ['7', '7.5', null, '8']) {
      const [answer] = await keeper.enter(entryOf({ amount, saw }));
      saw = amount === null ? null : markIn(answer);
    }
    const rows = rowsIn(keeper.farm);
    expect(rows.map((row) => row.amount && row.amount.num / row.amount.den)).toEqual([7, 7.5, null, 8]);
    expect(new Set(rows.map((row) => plainRow(row).split(' ').at(-1))).size).toBe(4);
    expect(keeper.state().rows).toMatchObject([{ amount: { num: 8 }, corrects: 3 }]);
    expect(keeper.state().clashes).toEqual([]);
  });

  it('never comes to tie with another row, however many there are', async () => {
    const keeper = await keeperOver(milkFarm());
    const entries = Array.from({ length: 60 }, (_, index) => entryOf({ amount: String(index % 20) }));
    for (let from = 0; from < 60; from += 20) await keeper.write({ sent_ms: NOW_MS, entries: entries.slice(from, from + 20) }); // prettier-ignore
    expect(rowsIn(keeper.farm)).toHaveLength(60);
  });
});

async function reopened(keeper: { close(): Promise<void> }, farm: string, now_ms: number) {
  await keeper.close();
  return keeperOver(farm, { now_ms: () => now_ms, asOf: '2026-06-01' });
}

describe('two people', () => {
  it('who did not see one another make a clash, until somebody enters having seen the later one', async () => {
    const farm = milkFarm();
    const keeper = await keeperOver(farm);
    const [one, other] = await keeper.enter(entryOf(), entryOf({ amount: '9' }));
    const clash = { doe: 'clover', date: '2026-05-21', milking: 'am', amounts: [{ mark: markIn(one) }, { mark: markIn(other) }] }; // prettier-ignore
    expect(keeper.state().clashes).toMatchObject([clash]);
    const again = await reopened(keeper, farm, NOW_MS);
    expect(again.state().clashes).toMatchObject([clash]);
    await again.enter(entryOf({ amount: '9', saw: markIn(other) }));
    expect(again.state().clashes).toEqual([]);
  });

  it('who did not see one another stand in the order in which they entered, whoever comes to the desk first', async () => {
    const keeper = await keeperOver(milkFarm());
    const at = (amount: string, age_ms: number) => entryOf({ amount, entered_ms: NOW_MS - age_ms });
    // 20 s older than the one that is there, in the same minute; then between the two.
    const answers = await keeper.enter(at('9', 5_000), at('7', 25_000), at('8', 15_000));
    const moments = answers.map((answer) => Number(markIn(answer).split(' ')[0]));
    expect(moments[0]).toBe(NOW_MS - 5_000);
    expect(moments[1]).toBeLessThan(moments[2] ?? 0);
    expect(moments[2]).toBeLessThan(moments[0] ?? 0);
    expect(keeper.state().rows).toMatchObject([{ amount: { num: 9 } }]);
    expect(keeper.state().clashes).toHaveLength(1);
  });

  it('who say the same, in whatever unit, do not clash', async () => {
    const keeper = await keeperOver(milkFarm());
    await keeper.enter(entryOf({ amount: '8' }), entryOf({ amount: '2', unit: 'qt' }));
    expect(keeper.state().clashes).toEqual([]);
  });

  it('cannot write one book from two desks', async () => {
    const keeper = await keeperOver(milkFarm());
    const second = openKeeper({
      farm: keeper.farm,
      now_ms: () => NOW_MS,
      complain: () => undefined,
      wait_ms: 10,
    });
    await expect(second).rejects.toThrow(
      /Another desk that writes this farm's milk book is running \(process \d+\)/,
    );
  });
});

describe('a farm with faults elsewhere', () => {
  it.each([
    ['kiddings.csv', 'doe,date\nnobody,someday\n'],
    ['farm.yaml', 'name: [torn'],
    ['milkings/2025-01.csv', 'date,milking,doe,amount\n01/02/2025,am,clover,7\n'],
  ])('takes entries while %s cannot be read', async (file, text) => {
    const keeper = await keeperOver(milkFarm({ [file]: text }));
    expect(await keeper.enter(entryOf())).toMatchObject([{ kept: true }]);
    expect(textOf(keeper.farm, MONTH_FILE)).toContain('2026-05-21,am,clover,7,cup,,,');
    expect(keeper.state().faults).toContain(file);
  });

  it('goes on with the does from before while does.csv is torn', async () => {
    const keeper = await keeperOver(milkFarm());
    writeFileSync(join(keeper.farm, 'does.csv'), 'PK\u0003\u0004');
    expect(await keeper.enter(entryOf(), entryOf({ doe: 'daisy' }))).toMatchObject([{ kept: true }, { why: 'unknown doe' }]); // prettier-ignore
    expect(keeper.state().rows).toHaveLength(1);
  });

  it('asks to wait where does.csv has never been readable', async () => {
    const keeper = await keeperOver(milkFarm({ 'does.csv': 'PK\u0003\u0004' }));
    await expect(keeper.enter(entryOf())).rejects.toThrow();
    expect(existsSync(join(keeper.farm, 'desk/entries-2026.jsonl'))).toBe(false);
  });
});

describe('any entries of any people', () => {
  const amounts = fc.oneof(fc.constantFrom('7', '9 1/2', '½', '3/4', '19/2', '.5', '12.125', '+3', '0', '1/3', '999999999999'), fc.string({ maxLength: 8 })); // prettier-ignore
  const entry = fc.record({
    doe: fc.constantFrom('clover', 'bell', 'nobody'),
    date: fc.constantFrom('2026-05-21', '2026-05-22', '2026-04-30', '2026-06-01', '2026-06-02', '2026-13-01'),
    milking: fc.constantFrom('am' as const, 'pm' as const),
    amount: fc.option(amounts),
    unit: fc.constantFrom('cup' as const, 'L' as const, 'lb' as const, 'fl oz' as const),
    use: fc.constantFrom('kept' as const, 'withheld' as const, 'fed' as const, 'lost' as const),
    note: fc.oneof(fc.constantFrom('=1+1', '-2', '@x', '"', ',', "'=", '\u200f', 'ñ'), fc.string({ maxLength: 12, unit: 'grapheme' })).filter((text) => !/[\p{Cc}\u2028\u2029]/u.test(text)), // prettier-ignore
    age_ms: fc.integer({ min: 0, max: 300_000 }),
    known: fc.boolean(),
  });

  it(
    'leave a farm that reads, in which every answer that says kept is one row, and no other row is',
    { timeout: 120_000 },
    async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.array(entry, { maxLength: 6 }), { minLength: 1, maxLength: 5 }),
          async (posts) => {
            const farm = milkFarm({ [MONTH_FILE]: null });
            const keeper = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
            const marks = new Map<string, string>();
            const send = async (own: (typeof posts)[number]) => {
              const entries = own.map(({ age_ms, known, ...rest }) => {
                const saw = known ? (keeper.state().rows.find((row) => row.doe === rest.doe && row.date === rest.date && row.milking === rest.milking)?.mark ?? null) : null; // prettier-ignore
                return entryOf({
                  ...rest,
                  note: rest.note.trim(),
                  id: newId(),
                  saw,
                  entered_ms: NOW_MS - age_ms,
                });
              });
              const answers = await keeper.write({ sent_ms: NOW_MS, entries });
              for (const answer of answers) if (answer.kept) marks.set(answer.id, answer.mark);
            };
            await Promise.all(posts.map(send));
            const state = keeper.state();
            await keeper.close();
            const rows = rowsIn(farm);
            expect(rows.map((row) => markOf(row)).sort()).toEqual([...marks.values()].sort());
            const again = await openKeeper({ farm, now_ms: () => NOW_MS, complain: () => undefined });
            expect(again.state()).toEqual(state);
            await again.close();
            expect(readFarm(farm, { now_ms: NOW_MS }).ok).toBe(true);
          },
        ),
        { numRuns: 40 },
      );
    },
  );
});
