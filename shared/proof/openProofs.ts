// Opens the proofs of a book: its entries laid by once, so that each proof takes only its own days.
import type { Entry } from '../herd/ledger.ts';
import { milkingsByDoe } from '../lactation/missedMilking.ts';
import type { ProofInput } from './types.ts';

/** The input of every proof, with its entries in order. */
export function openProofs(asked: Omit<ProofInput, 'entriesByDay' | 'milkings'>): ProofInput {
  const { book, ledger } = asked;
  const place = new Map(book.does.map((doe, index) => [doe.id, index]));
  const entriesByDay = new Map<number, Entry[]>();
  for (const entry of ledger.entries) {
    const sameDay = entriesByDay.get(entry.row.day);
    if (sameDay) sameDay.push(entry);
    else entriesByDay.set(entry.row.day, [entry]);
  }
  for (const entries of entriesByDay.values()) {
    entries.sort(
      (a, b) =>
        (place.get(a.row.doe) ?? 0) - (place.get(b.row.doe) ?? 0) ||
        a.row.milking.localeCompare(b.row.milking),
    );
  }
  return { ...asked, entriesByDay, milkings: milkingsByDoe(ledger) };
}
