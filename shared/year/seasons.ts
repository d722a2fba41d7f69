// The herd's seasons of milk that the book holds: when each started, peaked and stopped.
import { isoDate } from '../calendar/day.ts';
import { RECENT_DAYS } from '../herd/lastDay.ts';
import { isWhole, litres, type Ledger } from '../herd/ledger.ts';

const PEAK_SPAN_DAYS = 7;

/** The best seven days in a row, or why there are none. */
export type SeasonPeak =
  | { readonly ok: true; readonly from: number; readonly to: number; readonly mean_LPerDay: number }
  | { readonly ok: false; readonly why: 'no seven whole days in a row' };

/** A run of days on which milk was expected or written down, without two weeks of rest in it. */
export interface Season {
  /** First and last day that a milking was expected or written down. Day numbers. */
  readonly from: number;
  readonly to: number;
  /** First day with milk in the book; null where none is written down. */
  readonly firstMilk: number | null;
  /** Milking has stopped: nothing is expected any more on the ledger's day. */
  readonly ended: boolean;
  readonly total_L: number;
  readonly wholeDays: number;
  readonly peak: SeasonPeak;
}

/** Every season up to the ledger's day, oldest first. A herd that is milked all year has one long one. */
export function seasonsOf(ledger: Ledger): Season[] {
  const days = [...ledger.herdDays]
    .filter(([day, sum]) => day <= ledger.asOf && (sum.expected > 0 || sum.grains > 0n))
    .map(([day]) => day)
    .sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const day of days) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && before !== undefined && day - before <= RECENT_DAYS) run.push(day);
    else runs.push([day]);
  }
  return runs.map((run) => seasonOf(ledger, run));
}

function seasonOf(ledger: Ledger, run: readonly number[]): Season {
  const [from = 0, to = 0] = [run[0], run.at(-1)];
  const sums = run.flatMap((day) => ledger.herdDays.get(day) ?? []);
  const grains = sums.reduce((all, sum) => all + sum.grains, 0n);
  return {
    from,
    to,
    firstMilk: run.find((day) => (ledger.herdDays.get(day)?.grains ?? 0n) > 0n) ?? null,
    ended: to < ledger.asOf,
    total_L: litres(ledger, grains),
    wholeDays: sums.filter(isWhole).length,
    peak: peakOf(ledger, from, to),
  };
}

// Of two equal weeks the older one is the peak.
function peakOf(ledger: Ledger, from: number, to: number): SeasonPeak {
  let best: { from: number; grains: bigint } | null = null;
  for (let start = from; start + PEAK_SPAN_DAYS - 1 <= to; start += 1) {
    let grains: bigint | null = 0n;
    for (let day = start; day < start + PEAK_SPAN_DAYS && grains !== null; day += 1) {
      const sum = ledger.herdDays.get(day);
      grains = sum && isWhole(sum) ? grains + sum.grains : null;
    }
    if (grains !== null && grains > 0n && (best === null || grains > best.grains))
      best = { from: start, grains };
  }
  if (best === null) return { ok: false, why: 'no seven whole days in a row' };
  const mean_LPerDay = litres(ledger, best.grains) / PEAK_SPAN_DAYS;
  return { ok: true, from: best.from, to: best.from + PEAK_SPAN_DAYS - 1, mean_LPerDay };
}

/** A season's name: the year in which it starts. */
export function seasonName(season: Season): string {
  return isoDate(season.from).slice(0, 4);
}
