// What most of some days rest on, so that a page says it once.
import type { YearEvent } from './doeYear.ts';
import type { Basis } from './nextKidding.ts';

/** The basis that most events share, the surest of equals; null where there is none. */
export function mostlyOn(events: readonly YearEvent[]): Basis | null {
  const count = (basis: Basis) => events.filter((event) => event.basis === basis).length;
  const surest: readonly Basis[] = ['book', 'counted', 'common practice'];
  const [first] = [...surest].sort((a, b) => count(b) - count(a));
  return events.length > 0 && first ? first : null;
}
