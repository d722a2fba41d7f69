// The thresholds that a farm's visits are planned by, as a table: its own values, what each rests on, and where one falls short.
import { BANDS, type Band } from '../quantity/grade.ts';
import { belowGuidance, type RuleName } from './ruleSources.ts';
import type { BandRules, TripFarm } from './types.ts';

/** A value, or the least and the most of several; a share of a whole where the rule says so. */
export type RuleValue = readonly [number, number];

/** One threshold. */
export interface RuleTold {
  readonly rule: RuleName;
  /** One value for each band, or a single one for the whole farm. */
  readonly values: readonly RuleValue[];
  /** Where the farm asks for less care than what is published or usual: the band, null for the whole farm, and that value. */
  readonly below: readonly { readonly band: Band | null; readonly guide: number }[];
}

const BAND_RULES: Readonly<Partial<Record<RuleName, (rules: BandRules) => number>>> = Object.freeze({
  most: ({ perAdult }: BandRules) => perAdult.most,
  aim: ({ perAdult }: BandRules) => perAdult.aim,
  group: ({ groupMost }: BandRules) => groupMost,
  wash: ({ wash_s }: BandRules) => wash_s,
  toilet: ({ toilet_s }: BandRules) => toilet_s,
  toiletWithin: ({ toiletWithin_min }: BandRules) => toiletWithin_min,
  change: ({ headCount_min }: BandRules) => headCount_min,
  bus: ({ bus_min }: BandRules) => bus_min,
  lunch: ({ lunch_min }: BandRules) => lunch_min,
});

/** Every threshold of a farm that has a source or is common practice: those that differ by grade first. */
export function rulesTold(farm: TripFarm): RuleTold[] {
  const below = belowGuidance(farm);
  const told = (rule: RuleName, values: readonly RuleValue[]): RuleTold => ({
    rule,
    values,
    below: below.filter((one) => one.rule === rule).map(({ band, guide }) => ({ band, guide })),
  });
  const one = (value: number): RuleValue => [value, value];
  const byBand = (rule: RuleName) => {
    const value = BAND_RULES[rule]!;
    return told(rule, BANDS.map((band) => one(value(farm.rules[band])))); // prettier-ignore
  };
  const stay = BANDS.map((band): RuleValue => {
    const minutes = farm.stations.map((station) => station.minutes[band]);
    return [Math.min(...minutes), Math.max(...minutes)];
  });
  const { before, after } = farm.kiddingDays;
  return [
    ...(['most', 'aim', 'group', 'wash', 'toilet', 'toiletWithin'] as const).map(byBand),
    ...(farm.stations.length > 0 ? [told('station', stay)] : []),
    ...(['change', 'bus', 'lunch'] as const).map(byBand),
    told('leastAdults', [one(farm.leastAdults)]),
    told('childrenPerSpare', [one(farm.childrenPerSpare)]),
    told('washSpare', [one(farm.washSpare)]),
    told('washTogether', [one(farm.washTogether_min)]),
    told('busSpare', [one(farm.busSpare_min)]),
    told('kiddingPen', [[before, after]]),
  ];
}
