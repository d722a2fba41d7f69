// The same sums by Node's own sqlite: an outside measure for the engine's speed and its results.
import { DatabaseSync } from 'node:sqlite';
import type { MilkingRow } from '../../shared/herd/types.ts';
import { amount_mL } from '../../shared/quantity/amount.ts';
import { civilFromDay, dayFromCivil } from '../../shared/calendar/day.ts';
import type { LargeBook } from './largeBook.ts';

/** Sums in litres. */
export interface Sums {
  readonly week_L: number;
  readonly year_L: number;
  readonly bestDay_L: number;
  readonly perDoe_L: ReadonlyMap<string, number>;
}

/** The book in a table in memory, and the milkings expected of the herd each day. */
export function openSql({ book }: LargeBook): DatabaseSync {
  const db = new DatabaseSync(':memory:');
  db.exec(`CREATE TABLE rows (doe TEXT, day INTEGER, milking TEXT, volume_mL REAL, use TEXT, entered INTEGER);
    CREATE TABLE expected (day INTEGER PRIMARY KEY, milkings INTEGER)`);
  const insert = db.prepare('INSERT INTO rows VALUES (?, ?, ?, ?, ?, ?)');
  const volumes = new Map<string, number>();
  db.exec('BEGIN');
  for (const row of book.rows)
    insert.run(row.doe, row.day, row.milking, volumeOf(row, volumes), row.use, row.entered_ms ?? -1);
  const day = db.prepare(
    'INSERT INTO expected VALUES (?, ?) ON CONFLICT DO UPDATE SET milkings = milkings + 2',
  );
  for (const kidding of book.kiddings)
    for (let at = kidding.day + 1; at < (kidding.dry ?? 0); at += 1) day.run(at, 2);
  db.exec('COMMIT');
  return db;
}

function volumeOf({ amount }: MilkingRow, known: Map<string, number>): number {
  if (amount === null) return 0;
  const key = `${amount.num}/${amount.den} ${amount.unit}`;
  let volume = known.get(key);
  if (volume === undefined) known.set(key, (volume = amount_mL(amount).valueOf()));
  return volume;
}

/** Standing rows first, then the sums, all from scratch, as the engine does it. */
export function sqlSums(db: DatabaseSync, { asOf }: LargeBook): Sums {
  // With max() the other columns come from the row that holds it: sqlite's documented rule.
  db.exec(`DROP TABLE IF EXISTS standing;
    CREATE TEMP TABLE standing AS
    SELECT doe, day, milking, volume_mL, use, max(entered) FROM rows WHERE day <= ${asOf} GROUP BY doe, day, milking`);
  const one = (sql: string, ...given: number[]) =>
    Number(Object.values(db.prepare(sql).get(...given) ?? {})[0]) / 1000;
  db.exec(`DROP TABLE IF EXISTS days;
    CREATE TEMP TABLE days AS SELECT day, sum(volume_mL) AS total, count(*) AS milkings FROM standing GROUP BY day`);
  const whole = 'FROM days JOIN expected USING (day) WHERE days.milkings = expected.milkings';
  const lastDay = Number(Object.values(db.prepare(`SELECT max(day) ${whole}`).get() ?? {})[0]);
  const week = db
    .prepare('SELECT doe, sum(volume_mL) / 1000 AS milk FROM standing WHERE day BETWEEN ? AND ? GROUP BY doe')
    .all(lastDay - 6, lastDay);
  return {
    week_L: one('SELECT sum(total) FROM days WHERE day BETWEEN ? AND ?', lastDay - 6, lastDay),
    year_L: one('SELECT sum(total) FROM days WHERE day >= ?', dayFromCivil(civilFromDay(lastDay).year, 1, 1)),
    bestDay_L: one(`SELECT max(total) ${whole}`),
    perDoe_L: new Map(week.map(({ doe, milk }) => [String(doe), Number(milk)])),
  };
}
