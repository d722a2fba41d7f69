// How long milk and what is made of it keep, by kind and cold.

/** What is kept. */
export const KEPT_KINDS = [
  'raw milk',
  'pasteurized milk',
  'yogurt',
  'soft cheese',
  'cut hard cheese',
  'whole hard cheese',
  'frozen milk',
  'ice cream',
] as const;
/** One of those. */
export type KeptKind = (typeof KEPT_KINDS)[number];

/** 40 °F, the warmest a refrigerator may be, °C. Source: US Food and Drug Administration (from memory). */
export const FRIDGE_C = 40 / 1.8 - 32 / 1.8;
/** 0 °F, what a freezer holds, °C. A page prints it as −18 °C. */
export const FREEZER_C = -32 / 1.8;

interface KeepRule {
  readonly days: number;
  /** Warmest that the rule holds for. */
  readonly atMost_C: number;
  readonly fact: string;
}

// Careful figures of US food keeping guidance; each fact names its source and how sure it is.
const RULES: Readonly<Record<KeptKind, KeepRule>> = Object.freeze({
  'raw milk': { days: 3, atMost_C: FRIDGE_C, fact: 'raw-waits' },
  'pasteurized milk': { days: 7, atMost_C: FRIDGE_C, fact: 'milk-keeps' },
  yogurt: { days: 7, atMost_C: FRIDGE_C, fact: 'yogurt-keeps' },
  'soft cheese': { days: 7, atMost_C: FRIDGE_C, fact: 'soft-cheese-keeps' },
  'cut hard cheese': { days: 21, atMost_C: FRIDGE_C, fact: 'hard-cheese-keeps' },
  'whole hard cheese': { days: 180, atMost_C: FRIDGE_C, fact: 'hard-cheese-keeps' },
  'frozen milk': { days: 90, atMost_C: FREEZER_C, fact: 'frozen-keeps' },
  'ice cream': { days: 90, atMost_C: FREEZER_C, fact: 'frozen-keeps' },
});
// Thermometers and printed pairs round: 4.4 and 4.5 °C are both told as 40 °F, −17.8 as −18.
const ROUNDING_C = 0.1;

/** The last day to use it, or why there is none. */
export type UseBy =
  | {
      readonly ok: true;
      /** `pasteurize by` for raw milk, which nobody drinks. */
      readonly what: 'use by' | 'pasteurize by';
      readonly day: number;
      readonly days: number;
      readonly facts: readonly string[];
    }
  | {
      readonly ok: false;
      readonly why: 'too warm to keep';
      readonly atMost_C: number;
      readonly facts: readonly string[];
    };

/**
 * The last day for something made, or milked, on a day (day numbers) and kept at a temperature. Above
 * the cold that its rule holds for there is no date, only the two-hour rule. The farm's own rule and
 * the health department go first.
 */
export function useBy(kind: KeptKind, made: number, kept_C: number): UseBy {
  const rule = RULES[kind];
  if (!(kept_C <= rule.atMost_C + ROUNDING_C))
    return {
      ok: false,
      why: 'too warm to keep',
      atMost_C: rule.atMost_C,
      facts: [rule.fact, 'two-hour-rule'],
    };
  const isRaw = kind === 'raw milk';
  return {
    ok: true,
    what: isRaw ? 'pasteurize by' : 'use by',
    day: made + rule.days,
    days: rule.days,
    facts: isRaw ? [rule.fact, 'raw-milk'] : [rule.fact],
  };
}

/** Days that cheese from raw milk ripens, and the coldest that counts: 35 °F. Source: 7 CFR 58.439, 21 CFR 133. */
export const RAW_CHEESE = Object.freeze({ days: 60, atLeast_C: 1.7, fact: 'raw-cheese-60' });

/**
 * The first day on which cheese from raw milk may be sold: 60 days after it was made, ripened at 1.7 °C
 * (35 °F) or warmer. Only some kinds may be made so at all; fresh cheese never.
 */
export function rawCheeseFrom(
  made: number,
  ripened_C: number,
): { ok: true; day: number } | { ok: false; why: 'too cold to ripen' } {
  return ripened_C >= RAW_CHEESE.atLeast_C
    ? { ok: true, day: made + RAW_CHEESE.days }
    : { ok: false, why: 'too cold to ripen' };
}
