// Due dates and dry-off against worked dates and sqlite's calendar.
import { DatabaseSync } from 'node:sqlite';
import { describe, expect, it } from 'vitest';
import { dayNumber, isoDate } from '../../shared/calendar/day.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { bredFor, dryOffFor, dueFrom } from '../../shared/year/gestation.ts';
import { seasonsOf } from '../../shared/year/seasons.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { factOf } from '../../src/site/facts.ts';
import { asDouble } from '../support/fraction.ts';
import { plainEntries } from '../support/plainHerd.ts';

const day = (date: string) => dayNumber(date) ?? NaN;

describe('a doe bred on 15 October 2026', () => {
  // Worked by the calendar from 150 days (145 to 155) and 60 days of rest.
  const due = dueFrom(day('2026-10-15'));

  it('is due on 14 March 2027, between the 9th and the 19th', () => {
    expect([due.day, due.from, due.to].map(isoDate)).toEqual(['2027-03-14', '2027-03-09', '2027-03-19']);
  });

  it('is dried off by 13 January', () => {
    expect(isoDate(dryOffFor(due.day))).toBe('2027-01-13');
  });
});

describe('gestation', () => {
  it('lies within the published mean, and its window within two deviations and the normal span', () => {
    // Amoah and others 1996: 150.6 ± 2.6 days in 608 does, 143 to 156 normal (abstract seen).
    const { value = NaN, range: [low, high] = [NaN, NaN] } = factOf('gestation');
    expect(Math.abs(value - 150.6)).toBeLessThan(2.6);
    expect(low).toBeGreaterThanOrEqual(143);
    expect(high).toBeLessThanOrEqual(156);
    expect(high - low).toBeGreaterThanOrEqual(2 * 2.6);
  });

  it('has the dates of sqlite for a breeding on every day of five years', () => {
    const db = new DatabaseSync(':memory:');
    const later = db.prepare("select date(?, '+150 days') as due, date(?, '+145 days') as early, date(?, '+155 days') as late, date(?, '+90 days') as dry, date(?, '-150 days') as bred"); // prettier-ignore
    for (let bred = day('2023-12-01'); bred < day('2028-12-01'); bred += 1) {
      const text = isoDate(bred);
      const due = dueFrom(bred);
      expect({
        due: isoDate(due.day),
        early: isoDate(due.from),
        late: isoDate(due.to),
        dry: isoDate(dryOffFor(due.day)),
        bred: isoDate(bredFor(bred)),
      }).toEqual({ ...later.get(text, text, text, text, text) });
    }
  });
});

describe("the demo farm's seasons, by sqlite", () => {
  it('start on the first day with milk, hold the milk of the year, and peak in the week that adds up so', () => {
    const reading = readFarm('content/farm', { asOf: '2026-05-21', now_ms: 0 });
    if (!reading.ok) throw new Error('the demo farm cannot be read');
    const seasons = seasonsOf(openLedger(reading.book, reading.asOf));
    const db = new DatabaseSync(':memory:');
    db.exec('create table entry (date text, litres real)');
    const insert = db.prepare('insert into entry values (?, ?)');
    for (const { date, litres } of plainEntries(reading.book.rows, reading.asOf))
      insert.run(date, asDouble(litres));
    const told = db
      .prepare(
        "select strftime('%Y', date) as year, min(date) as first, sum(litres) as litres from entry group by year order by year",
      )
      .all();
    const between = db.prepare('select sum(litres) / 7 as mean from entry where date between ? and ?');
    expect(seasons).toHaveLength(told.length);
    expect(seasons).toHaveLength(2);
    told.forEach((row, index) => {
      const season = seasons[index];
      expect(isoDate(season?.firstMilk ?? NaN)).toBe(row['first']);
      expect((season?.total_L ?? NaN) / Number(row['litres'])).toBeCloseTo(1, 12);
      if (!season?.peak.ok) throw new Error('no peak');
      const mean = between.get(isoDate(season.peak.from), isoDate(season.peak.to))?.['mean'];
      expect(season.peak.mean_LPerDay / Number(mean)).toBeCloseTo(1, 12);
    });
  });
});
