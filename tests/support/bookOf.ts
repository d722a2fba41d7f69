// Books for example tests, written as short lines that read like the farm's own files.
import type { Book, Kidding, MilkingRow, MilkingTime, Use } from '../../shared/herd/types.ts';
import { readNumber } from '../../shared/quantity/amount.ts';
import { unitNamed } from '../../shared/quantity/units.ts';

/** The day number of a date, by the platform's own calendar. */
export function day(date: string): number {
  const ms = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(ms)) throw new Error(`not a date: ${date}`);
  return ms / 86_400_000;
}

const dayAfter = (text: string, word: string): number | null => {
  const date = new RegExp(`${word} (\\S+)`).exec(text)?.[1];
  return date === undefined ? null : day(date);
};

/** `clover 2026-03-01 apart 2026-03-20 weaned 2026-05-01 dry 2026-10-01`, any of the three left out. */
export function kidding(text: string): Kidding {
  const [doe = '', date = ''] = text.split(' ');
  const [apart, weaned, dry] = ['apart', 'weaned', 'dry'].map((word) => dayAfter(text, word));
  return { doe, day: day(date), kids: 2, apart: apart ?? null, weaned: weaned ?? null, dry: dry ?? null };
}

/** `2026-05-14 am clover 3 1/2 cup withheld @5`: date, milking, doe, amount or `-`, use, time of entry. */
export function row(text: string, line = 2): MilkingRow {
  const match = /^(\S+) (am|pm) (\S+) (?:-|([\d./ ]+?) (cup|pt|qt|gal|fl oz|mL|L|lb|oz|kg|g))(?: (kept|withheld|fed|lost))?(?: @(\d+))?$/.exec(text); // prettier-ignore
  if (!match) throw new Error(`not a row: ${text}`);
  const [, date = '', milking, doe = '', amount, unit, use, entered] = match;
  const read = amount === undefined ? null : readNumber(amount);
  if (read && !read.ok) throw new Error(`not an amount: ${text}`);
  const named = unit === undefined ? null : unitNamed(unit);
  return {
    doe,
    day: day(date),
    milking: milking as MilkingTime,
    amount: read && named ? { num: read.num, den: read.den, unit: named } : null,
    use: (use ?? 'kept') as Use,
    note: '',
    entered_ms: entered === undefined ? null : Number(entered),
    file: 'milkings/a.csv',
    line,
  };
}

/** A book of kidding lines and row lines; its does are all that they name. */
export function bookOf(kiddings: readonly string[], rows: readonly string[] = []): Book {
  const book = {
    kiddings: kiddings.map(kidding),
    rows: rows.map((text, index) => row(text, index + 2)),
  };
  const ids = [...new Set([...book.kiddings, ...book.rows].map((one) => one.doe))];
  return { ...book, does: ids.map((id) => ({ id, name: id, breed: '', born: null, weight_kg: null })) };
}

/** Both milkings of a doe on each date, one amount each. */
export function twice(doe: string, dates: readonly string[], amount = '2 L'): string[] {
  return dates.flatMap((date) => [`${date} am ${doe} ${amount}`, `${date} pm ${doe} ${amount}`]);
}

/** Dates from one to another, both included. */
export function dates(from: string, to: string): string[] {
  const count = day(to) - day(from) + 1;
  return Array.from({ length: count }, (_, index) =>
    new Date((day(from) + index) * 86_400_000).toISOString().slice(0, 10),
  );
}
