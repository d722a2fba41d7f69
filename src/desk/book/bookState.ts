// The book as a phone holds it: the last three weeks, the does, what is wrong.
import { createHash } from 'node:crypto';
import { dayNumber, isoDate } from '../../../shared/calendar/day.ts';
import type { Clashes } from '../../../shared/book/clash.ts';
import { noteOf } from '../../../shared/book/csvRow.ts';
import { markOf } from '../../../shared/book/mark.ts';
import type { BookDoe, BookFarm, BookRow, BookState } from '../../../shared/book/types.ts';
import { phaseSpans } from '../../../shared/herd/expected.ts';
import { countedUse } from '../../../shared/herd/treated.ts';
import { latest, slotKey, standingMark, type Held } from './held.ts';

/** How many days of the book a phone holds, today counted in. */
const SHOWN_DAYS = 21;

/** The book as it stands on a day. */
export function bookState(held: Held, clashes: Clashes, today: number): BookState {
  const state = {
    farm: bookFarm(held),
    today: isoDate(today),
    does: bookDoes(held),
    rows: bookRows(held, today),
    treatments: (held.herd.treatments ?? []).map(({ doe, from, until, what }) => ({
      doe,
      from,
      until,
      what,
    })),
    clashes: clashes.list({
      mark: ({ doe, date, milking }) => {
        const day = dayNumber(date);
        return day === null ? null : standingMark(held, { doe, day, milking });
      },
      unsaid: ({ doe, date }) => countedUse(null, held.herd.treatments ?? [], doe, dayNumber(date) ?? 0),
    }),
    faults: held.faults,
  };
  const fingerprint = createHash('sha256').update(JSON.stringify(state)).digest('hex').slice(0, 16);
  return { ...state, fingerprint };
}

function bookFarm({ farm, fixedDay }: Held): BookFarm {
  const { name, timeZone, units, recordUnit, milkings, jar, largestMilking } = farm;
  const fixed = fixedDay === null ? null : isoDate(fixedDay);
  return { name, timeZone, units, recordUnit, milkings, jar, largestMilking, fixedDay: fixed };
}

function bookDoes({ herd }: Held): BookDoe[] {
  return herd.does.map(({ id, name, breed }) => {
    const spans = phaseSpans(herd.kiddings.filter(({ doe }) => doe === id));
    return { id, name, breed, spans };
  });
}

// In an order of their own: a row that is put into another file is still the same book.
function bookRows(held: Held, today: number): BookRow[] {
  const met = new Set<string>();
  return held.rows
    .filter(({ day }) => day <= today && day > today - SHOWN_DAYS)
    .sort((a, b) => a.day - b.day || byText(a.milking, b.milking) || byText(a.doe, b.doe))
    .flatMap((row) => {
      const key = slotKey(row);
      if (met.has(key)) return [];
      met.add(key);
      const own = held.slot(row);
      const last = latest(own);
      if (!last?.amount) return [];
      const { doe, day, milking, amount, use, note } = last;
      const mark = markOf(last) ?? '';
      return [
        { doe, date: isoDate(day), milking, amount, use, note: noteOf(note), mark, corrects: own.length - 1 },
      ];
    });
}

const byText = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);
