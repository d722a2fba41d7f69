// A doe's whole days, lactation by lactation: the days on which all that was expected of her is entered.
import { litres, type Ledger } from '../herd/ledger.ts';
import type { Kidding } from '../herd/types.ts';
import type { Way } from './outcome.ts';

/** A day on which every milking expected of a doe is entered. */
export interface WholeDay {
  readonly day: number;
  readonly way: Way;
  /** Milk of the expected milkings alone: what kids were on for is not her whole yield. */
  readonly amount_L: number;
}

/** A kidding and the whole days from it to the next one. */
export interface LactationDays {
  readonly kidding: Kidding;
  /** In order of time. */
  readonly days: readonly WholeDay[];
}

// Below this a double has fewer digits than it should: such grains go the exact way.
const LEAST_GRAIN_L = 1e-290;

/** Whole days of every doe in order of time, by id. */
export function wholeDays(ledger: Ledger): Map<string, WholeDay[]> {
  const sums = new Map<string, Map<number, bigint>>();
  for (const { row, grains, expected } of ledger.entries) {
    if (!expected) continue;
    let days = sums.get(row.doe);
    if (days === undefined) sums.set(row.doe, (days = new Map<number, bigint>()));
    days.set(row.day, (days.get(row.day) ?? 0n) + grains);
  }
  const grain_L = litres(ledger, 1n);
  const asLitres = (grains: bigint) => {
    const quick = Number(grains) * grain_L;
    return grain_L > LEAST_GRAIN_L && Number.isFinite(quick) ? quick : litres(ledger, grains);
  };
  const found = new Map<string, WholeDay[]>();
  for (const [doe, days] of sums) {
    const whole: WholeDay[] = [];
    for (const [day, grains] of days) {
      const sum = ledger.doeDays.get(doe)?.get(day);
      if (!sum || sum.entered !== sum.expected) continue;
      whole.push({ day, way: sum.expected === 1 ? 'am' : 'both', amount_L: asLitres(grains) });
    }
    found.set(
      doe,
      whole.sort((a, b) => a.day - b.day),
    );
  }
  return found;
}

/** A doe's kiddings in order of time, each with its whole days. A kidding written twice for a day is one. */
export function lactationsOf(
  kiddings: readonly Kidding[],
  doe: string,
  days: readonly WholeDay[],
): LactationDays[] {
  const own = kiddings.filter((one) => one.doe === doe).sort((a, b) => a.day - b.day);
  const apart = own.filter((one, index) => own[index + 1]?.day !== one.day);
  return apart.map((kidding, index) => {
    const next = apart[index + 1]?.day ?? Number.POSITIVE_INFINITY;
    return { kidding, days: days.filter(({ day }) => kidding.day <= day && day < next) };
  });
}
