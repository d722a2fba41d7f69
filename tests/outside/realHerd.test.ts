// The figures of a real herd, recomputed by SQL and by plain loops over the raw rows.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { computeFigures } from '../../shared/herd/figures.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { NOT_HERE, openData, plainCsv } from '../support/handouts.ts';

// Six dairy cows milked a.m. and p.m.: data set `milkman` of the R package doBy (GPL-2 or later), from
// Friggens et al. 2007, J. Dairy Sci. 90:5453; read where it lies, not carried. Calving dates are made up.
const folder = openData('herd-ampm');
const KG_PER_L = 1.03;

interface Raw {
  readonly date: string;
  readonly milking: string;
  readonly doe: string;
  readonly grams: number;
}

function rawRows(dir: string): Raw[] {
  return readdirSync(join(dir, 'milkings'))
    .flatMap((name) => plainCsv(join(dir, 'milkings', name)))
    .map(({ date = '', milking = '', doe = '', amount = '', unit }) => {
      if (unit !== 'kg') throw new Error(`a row in ${unit}`);
      return { date, milking, doe, grams: Math.round(Number(amount) * 1000) };
    });
}

function database(dir: string): DatabaseSync {
  const db = new DatabaseSync(':memory:');
  db.exec(
    'create table milking (date text, time text, cow text, grams integer, primary key (date, time, cow))',
  );
  db.exec('create table cow (cow text primary key, calved text)');
  const milking = db.prepare('insert into milking values (?, ?, ?, ?)');
  for (const row of rawRows(dir)) milking.run(row.date, row.milking, row.doe, row.grams);
  const cow = db.prepare('insert into cow values (?, ?)');
  for (const row of plainCsv(join(dir, 'kiddings.csv'))) {
    // The queries below know no phases: every cow is milked twice from the day after calving.
    if (row['apart'] || row['weaned'] || row['dry']) throw new Error('a cow with phases');
    cow.run(row['doe'] ?? '', row['date'] ?? '');
  }
  return db;
}

const DAYS = `
  with recursive cowday(cow, date) as (
    select cow, date(calved, '+1 day') from cow where date(calved, '+1 day') <= :asOf
    union all select cow, date(date, '+1 day') from cowday where date < :asOf),
  counted as (select * from milking where date <= :asOf),
  due as (select cow, date, time from cowday, (select 'am' as time union all select 'pm')),
  cowsum as (select due.cow, due.date, count(*) as expected, count(grams) as entered, sum(grams) as grams
    from due left join counted using (cow, date, time) group by due.cow, due.date),
  herdday as (select date, sum(expected) as expected, sum(entered) as entered, sum(grams) as grams,
    sum(expected) = sum(entered) as whole from cowsum group by date),
  lastday as (select coalesce(
    (select max(date) from herdday where whole and date >= date(:asOf, '-13 days')),
    (select max(date) from counted where date >= date(:asOf, '-13 days')),
    (select max(date) from herdday where whole)) as last),
  week as (select counted.* from counted, lastday where date between date(last, '-6 days') and last)
`;

const HERD = `${DAYS} select last,
  (select sum(grams) from counted where date = last) as "day.total",
  (select sum(grams) from week) as "week.total",
  (select count(*) from week) as rows,
  (select sum(expected - entered) from herdday where date between date(last, '-6 days') and last) as "week.missing",
  (select avg(grams) from herdday where whole and date between date(last, '-6 days') and last) as "week.dailyMean",
  (select count(distinct cow) from week where grams > 0) as "week.does",
  (select sum(grams) from counted where strftime('%Y', date) = strftime('%Y', last)) as "year.total",
  (select max(grams) from herdday where whole) as "best.day"
  from lastday`;

const COW = `${DAYS} select cow.cow,
  (select sum(grams) from week where week.cow = cow.cow) as "week.total",
  (select max(grams) from week where week.cow = cow.cow) as "week.best",
  (select avg(grams) from cowsum, lastday where cowsum.cow = cow.cow and expected = entered
    and date between date(last, '-6 days') and last) as "week.dailyMean",
  case when calved <= :asOf then julianday(:asOf) - julianday(calved) end as daysInMilk
  from cow`;

const litres = (grams: unknown) => (typeof grams === 'number' ? grams / 1000 / KG_PER_L : null);

function close(actual: number | null | undefined, expected: number | null, what: string): void {
  if (expected === null || typeof actual !== 'number') expect(actual ?? null, what).toBe(expected);
  else expect(Math.abs(actual / expected - 1), `${what}: ${actual} for ${expected}`).toBeLessThan(1e-14);
}

const asOfInFolder = folder ? readFileSync(join(folder, 'as-of'), 'utf8').trim() : '';
const AS_OFS = [asOfInFolder, '2025-02-02', '2025-02-20', '2025-03-01', '2025-05-09', '2025-06-30', '2025-09-15', '2025-11-30', '2025-12-10', '2026-01-02', '2026-06-01']; // prettier-ignore

function figuresBy(asOf: string) {
  const reading = readFarm(folder ?? '', { asOf, now_ms: 0 });
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return computeFigures(reading.book, reading.asOf);
}

describe.skipIf(!folder)(`a real herd of six, 3,510 milkings (${NOT_HERE})`, () => {
  it.each(AS_OFS)('has the herd figures that SQL gives for %s', (asOf) => {
    const { figures, window } = figuresBy(asOf);
    const told =
      database(folder ?? '')
        .prepare(HERD)
        .get({ asOf }) ?? {};
    expect(window?.to).toBe(told['last']);
    expect(figures['herd.week.total']?.rows).toBe(told['rows']);
    for (const id of ['day.total', 'week.total', 'week.dailyMean', 'year.total', 'best.day'])
      close(figures[`herd.${id}`]?.value, litres(told[id]), id);
    for (const id of ['week.missing', 'week.does']) expect(figures[`herd.${id}`]?.value, id).toBe(told[id]);
    expect(figures['herd.week.kept']?.value).toBe(figures['herd.week.total']?.value);
  });

  it.each(AS_OFS)('has the figures of every cow that SQL gives for %s', (asOf) => {
    const { figures } = figuresBy(asOf);
    const told = database(folder ?? '')
      .prepare(COW)
      .all({ asOf });
    expect(told).toHaveLength(6);
    for (const row of told) {
      const id = `doe.${String(row['cow'])}`;
      for (const name of ['week.total', 'week.best', 'week.dailyMean'])
        close(figures[`${id}.${name}`]?.value, litres(row[name]), `${id}.${name}`);
      expect(figures[`${id}.daysInMilk`]?.value, id).toBe(row['daysInMilk']);
    }
  });

  it('has the sums that plain loops over the raw rows give', () => {
    const rows = rawRows(folder ?? '');
    const { figures, window, wholeDay, state } = figuresBy(asOfInFolder);
    let week_g = 0;
    let year_g = 0;
    for (const row of rows) {
      if (row.date > asOfInFolder) continue;
      year_g += row.grams;
      if (window && window.from <= row.date && row.date <= window.to) week_g += row.grams;
    }
    expect([state, wholeDay]).toEqual(['milking', true]);
    close(figures['herd.week.total']?.value, litres(week_g), 'week');
    close(figures['herd.year.total']?.value, litres(year_g), 'year');
  });
});
