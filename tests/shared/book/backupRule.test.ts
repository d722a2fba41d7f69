// Which copies of the farm folder stay: the rule, told a second way, over many years of copies.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { copiesToDrop, type FarmCopy } from '../../../shared/book/backupRule.ts';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';

const day = (iso: string) => dayNumber(iso) ?? Number.NaN;
const copyOf = (one: number): FarmCopy => ({ name: isoDate(one), day: one });
const daily = (from: string, to: string) =>
  Array.from({ length: day(to) - day(from) + 1 }, (_, after) => copyOf(day(from) + after));
const kept = (copies: readonly FarmCopy[], today: number) => {
  const dropped = new Set(copiesToDrop(copies, today));
  return copies.map(({ name }) => name).filter((name) => !dropped.has(name));
};

// Days from 2020 to 2030, some of them twice.
const someCopies = fc.array(
  fc.record({ at: fc.integer({ min: 18_262, max: 21_914 }), late: fc.boolean() }).map(({ at, late }) => ({
    name: late ? `${isoDate(at)}-101500-before-restore` : isoDate(at),
    day: at,
  })),
  { maxLength: 120 },
);
const someDay = fc.integer({ min: 18_262, max: 22_300 });

describe('copiesToDrop', () => {
  it('keeps days, then months, then years', () => {
    expect(kept(daily('2023-11-05', '2026-05-21'), day('2026-05-21'))).toEqual([
      '2023-12-31', '2024-12-31', '2025-06-30', '2025-07-31', '2025-08-31', '2025-09-30', '2025-10-31', '2025-11-30', '2025-12-31',
      '2026-01-31', '2026-02-28', '2026-03-31', '2026-04-30',
      '2026-05-08', '2026-05-09', '2026-05-10', '2026-05-11', '2026-05-12', '2026-05-13', '2026-05-14', '2026-05-15', '2026-05-16',
      '2026-05-17', '2026-05-18', '2026-05-19', '2026-05-20', '2026-05-21',
    ]); // prettier-ignore
  });

  it('keeps the only copy there is, however old', () => {
    expect(copiesToDrop([copyOf(day('1999-01-01'))], day('2026-05-21'))).toEqual([]);
    expect(copiesToDrop([], day('2026-05-21'))).toEqual([]);
  });

  it('keeps what a clock that ran ahead has made, and what it made as the newest of its month', () => {
    const copies = [...daily('2026-05-19', '2026-05-21'), copyOf(day('2031-02-03'))];
    expect(copiesToDrop(copies, day('2026-05-21'))).toEqual([]);
  });

  it('never drops what was asked to stay, and drops all else', () => {
    fc.assert(
      fc.property(someCopies, someDay, (listed, today) => {
        const copies = [...new Map(listed.map((one) => [one.name, one])).values()];
        const dropped = new Set(copiesToDrop(copies, today));
        const newestOf = (names: readonly string[]) => [...names].sort().at(-1);
        const monthsBack = (iso: string) => {
          const [year = 0, month = 0] = iso.split('-').map(Number);
          const [thisYear = 0, thisMonth = 0] = isoDate(today).split('-').map(Number);
          return (thisYear - year) * 12 + thisMonth - month;
        };
        for (const { name, day: at } of copies) {
          const inMonth = copies.map((one) => one.name).filter((one) => one.startsWith(name.slice(0, 7)));
          const inYear = copies.map((one) => one.name).filter((one) => one.startsWith(name.slice(0, 4)));
          const stays =
            today - at < 14 ||
            (monthsBack(name) < 12 && newestOf(inMonth) === name) ||
            newestOf(inYear) === name;
          expect([name, dropped.has(name)]).toEqual([name, !stays]);
        }
        if (copies.length > 0) expect(dropped.size).toBeLessThan(copies.length);
      }),
    );
  });

  it('asked again after its answer was followed, has nothing more to say', () => {
    fc.assert(
      fc.property(someCopies, someDay, (listed, today) => {
        const copies = [...new Map(listed.map((one) => [one.name, one])).values()];
        const dropped = copiesToDrop(copies, today);
        const left = copies.filter(({ name }) => !dropped.includes(name));
        expect(copiesToDrop(left, today)).toEqual([]);
        expect(copiesToDrop([...copies].reverse(), today)).toEqual(dropped);
      }),
    );
  });

  it('leaves the same years and no gap of a year, whether it was followed daily or once at the end', () => {
    let folder: FarmCopy[] = [];
    const from = day('2022-03-01');
    const to = day('2026-05-21');
    for (let today = from; today <= to; today += 1) {
      folder.push(copyOf(today));
      const dropped = new Set(copiesToDrop(folder, today));
      folder = folder.filter(({ name }) => !dropped.has(name));
      expect(folder.at(-1)?.day).toBe(today);
    }
    expect(folder.map(({ name }) => name)).toEqual(kept(daily('2022-03-01', '2026-05-21'), to));
  });
});
