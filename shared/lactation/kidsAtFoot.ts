// What the kids likely took while they were with their mother: a range, and an estimate by its name.
import type { Ledger } from '../herd/ledger.ts';
import type { Book } from '../herd/types.ts';
import { milkingsByDoe, type DayMilkings } from './missedMilking.ts';
import { timelineOf, type LinedSpan } from './timeline.ts';

/** What is known of kids and milk, from which the range is made. */
export interface KidFacts {
  /** Milk that a kid takes a day, as a part of its weight. */
  readonly share_low: number;
  readonly share_high: number;
  /** Weight at birth, and the weight and age at which a kid is weaned; between them it grows evenly. */
  readonly birth_kg: number;
  readonly weaned_kg: number;
  readonly weaned_days: number;
  /** Part of the day's milk that a morning's milking takes after a night apart. */
  readonly harvest_low: number;
  readonly harvest_high: number;
  readonly milk_kgPerL: number;
}

/**
 * Values to use where a farm has none of its own. 15 to 20 % of body weight a day: extension advice (from
 * memory, fairly sure). 3.24 kg at birth: 608 does, Amoah et al. 1996, J. Anim. Sci. (abstract read). Weaning
 * at 9 kg or 8 weeks: Lu & Potchoiba, Langston (read). 40 to 60 % of the day's milk after about 12 hours
 * apart: practice of producers (from memory, not sure). 1.03 kg/L: Park & Haenlein (from memory, sure).
 */
export const KID_FACTS: KidFacts = Object.freeze({
  share_low: 0.15,
  share_high: 0.2,
  birth_kg: 3.24,
  weaned_kg: 9,
  weaned_days: 56,
  harvest_low: 0.4,
  harvest_high: 0.6,
  milk_kgPerL: 1.03,
});

/** How a stretch was estimated: by the kids' weight, or by what the morning's milking left them. */
export type KidMethod = 'appetite' | 'harvest';

/** A stretch of days with kids at foot. Day numbers, both included. */
export interface KidSpan {
  readonly phase: 'with kids' | 'nights apart';
  readonly from: number;
  readonly to: number;
  readonly open: boolean;
  /** Estimated: between `low_L` and `high_L` litres over the days below. */
  readonly low_L: number;
  readonly high_L: number;
  readonly days: Readonly<Record<KidMethod, number>>;
  /** Days of which nobody can say: past the weaning age, without a morning entry, or kids not counted. */
  readonly unknownDays: number;
}

/** What the kids of one kidding likely took; `low_L` and `high_L` are null where no day can be estimated. */
export interface KidsTaken {
  readonly estimate: true;
  readonly kiddingDay: number;
  readonly kids: number | null;
  readonly spans: readonly KidSpan[];
  readonly low_L: number | null;
  readonly high_L: number | null;
  readonly unknownDays: number;
  /** Why there are days that nobody can tell of; null where there are none. */
  readonly why: 'kidsNotCounted' | 'pastWeaning' | null;
}

/**
 * What one kid likely takes on a day of its life (0 for the day of its birth), L: a part of its weight.
 * Null past the weaning age, when hay and browse take over and nobody can say.
 * @example kidDay_L(70) // => null
 */
export function kidDay_L(
  age_days: number,
  facts: KidFacts = KID_FACTS,
): { low: number; high: number } | null {
  if (!(age_days >= 0 && age_days <= facts.weaned_days)) return null;
  const weight_kg = facts.birth_kg + ((facts.weaned_kg - facts.birth_kg) * age_days) / facts.weaned_days;
  const weight_L = weight_kg / facts.milk_kgPerL;
  return { low: weight_L * facts.share_low, high: weight_L * facts.share_high };
}

/**
 * What was left to the kids on a day when the morning's milking took `morning_L`: the rest of a day of
 * which the morning is `harvest_low` to `harvest_high`.
 * @example leftToKids_L(3, { ...KID_FACTS, harvest_low: 0.5, harvest_high: 0.75 }) // => { low: 1, high: 3 }
 */
export function leftToKids_L(morning_L: number, facts: KidFacts = KID_FACTS): { low: number; high: number } {
  const rest = (harvest: number) => (morning_L * (1 - harvest)) / harvest;
  return { low: rest(facts.harvest_high), high: rest(facts.harvest_low) };
}

/**
 * The kids' milk for each kidding of a doe up to the book's day. With kids all day: number of kids times
 * 15 to 20 % of a kid's weight. Nights apart: what her own morning milking left, and the kids' weight where
 * that morning has no entry. It is an estimate, never a sum of the book, and enters no total.
 */
export function kidsTaken(
  book: Pick<Book, 'kiddings'>,
  ledger: Ledger,
  doe: string,
  facts: KidFacts = KID_FACTS,
): KidsTaken[] {
  const milkings = milkingsByDoe(ledger).get(doe) ?? new Map<number, DayMilkings>();
  return timelineOf(book, doe, ledger.asOf).map(({ kidding, spans }) => {
    const { day, kids } = kidding;
    const told = spans.flatMap((span) =>
      span.phase === 'with kids' || span.phase === 'nights apart' ? [spanOf({ ...span, phase: span.phase }, day, kids, milkings, facts)] : [],
    ); // prettier-ignore
    const unknownDays = told.reduce((sum, one) => sum + one.unknownDays, 0);
    const known = told.some(({ days }) => days.appetite + days.harvest > 0);
    return {
      estimate: true,
      kiddingDay: day,
      kids,
      spans: told,
      low_L: known ? told.reduce((sum, one) => sum + one.low_L, 0) : null,
      high_L: known ? told.reduce((sum, one) => sum + one.high_L, 0) : null,
      unknownDays,
      why: unknownDays === 0 ? null : kids === null ? 'kidsNotCounted' : 'pastWeaning',
    };
  });
}

function spanOf(
  span: LinedSpan & { phase: KidSpan['phase'] },
  born: number,
  kids: number | null,
  milkings: ReadonlyMap<number, DayMilkings>,
  facts: KidFacts,
): KidSpan {
  let [low_L, high_L, unknownDays] = [0, 0, 0];
  const days = { appetite: 0, harvest: 0 };
  for (let day = span.from; day <= span.to; day += 1) {
    const morning = span.phase === 'nights apart' && kids !== 0 ? (milkings.get(day)?.am ?? null) : null;
    const left = morning === null ? null : leftToKids_L(morning, facts);
    const each = kids === null ? null : kidDay_L(day - born, facts);
    const eaten = each && kids !== null ? { low: each.low * kids, high: each.high * kids } : null;
    const range = left ?? eaten;
    if (!range) {
      unknownDays += 1;
      continue;
    }
    low_L += range.low;
    high_L += range.high;
    days[left ? 'harvest' : 'appetite'] += 1;
  }
  return {
    phase: span.phase,
    from: span.from,
    to: span.to,
    open: span.open,
    low_L,
    high_L,
    days,
    unknownDays,
  };
}
