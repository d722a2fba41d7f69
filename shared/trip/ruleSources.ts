// Where each threshold of a visit comes from, how sure that is, and which of a farm's own fall short of it.
import { BANDS, type Band } from '../quantity/grade.ts';
import type { TripFarm } from './types.ts';

/** Thresholds that have a source, or are common practice. */
export const RULE_NAMES = Object.freeze([
  'most',
  'aim',
  'group',
  'leastAdults',
  'childrenPerSpare',
  'wash',
  'washSpare',
  'washTogether',
  'toilet',
  'toiletWithin',
  'change',
  'bus',
  'busSpare',
  'lunch',
  'station',
  'kiddingPen',
] as const);
/** One of them. */
export type RuleName = (typeof RULE_NAMES)[number];

/** What a threshold rests on: `seen` in a copy of the source, from `memory`, or common `practice` without a source. */
export interface RuleSource {
  readonly source: string;
  readonly sure: 'seen' | 'memory' | 'practice';
}

const PRACTICE = 'common practice, no source';
const practice = (source = PRACTICE): RuleSource => ({ source, sure: 'practice' });

/** The source of each usual value. */
export const RULE_SOURCES: Readonly<Record<RuleName, RuleSource>> = Object.freeze({
  most: {
    source:
      'Health and Safety Executive (UK), AIS23 on farm visits: 1 adult for 8 children under 8; older children by US districts (1 for 10 in elementary, 1 for 15 in secondary grades) and Caring for Our Children (1 for 12 at 9 to 12 years, from memory)',
    sure: 'seen',
  },
  aim: {
    source: 'England, guide to school visits of 1998 (withdrawn, still cited): 1 adult for 6 children in years 1 to 3, 1 for 10 to 15 in years 4 to 6; from grade 3 on common practice',
    sure: 'seen',
  }, // prettier-ignore
  group: practice(),
  leastAdults: practice(),
  childrenPerSpare: practice(),
  wash: {
    source: 'CDC and WHO: scrub for 20 seconds or more, 40 to 60 seconds with drying; young children take longer (common practice)',
    sure: 'seen',
  }, // prettier-ignore
  washSpare: practice(),
  washTogether: practice(),
  // 8 children at each of 4 toilets for 12 minutes are 90 seconds a child; 10 and 8 minutes make 75 and 60.
  toilet: practice(
    'common practice: 10 to 15 minutes for 30 young children on 4 toilets, 8 to 10 for older ones',
  ),
  toiletWithin: practice(),
  // Head count and a walk of two minutes: 5 minutes from one station to the next for the youngest, 3 for the oldest.
  change: practice(),
  bus: practice(),
  busSpare: practice(),
  lunch: practice(),
  station: practice(),
  kiddingPen: practice(
    'common practice; CDC and NASPHV on Q fever advise to keep visitors from births and what follows them, and name no number of days',
  ),
});

/** A threshold of the farm that asks for less care than what is published or usual. */
export interface BelowGuidance {
  readonly rule: RuleName;
  readonly band: Band | null;
  readonly is: number;
  /** What is published or usual, and on which side of it the farm should stay. */
  readonly guide: number;
  readonly side: 'at most' | 'at least';
  readonly source: string;
  readonly sure: RuleSource['sure'];
}

/** Children for one adult at most, by band, with the source of each. */
const MOST_CHILDREN: Readonly<Record<Band, RuleSource & { readonly guide: number }>> = Object.freeze({
  'k-2': { guide: 8, source: 'Health and Safety Executive (UK), AIS23 on farm visits, for children under 8', sure: 'seen' },
  '3-5': { guide: 10, source: 'US school districts for elementary grades, for instance Wauwatosa and Hyde Park', sure: 'seen' },
  '6-8': { guide: 12, source: 'Caring for Our Children (US), children of 9 to 12 years', sure: 'memory' },
  '9-12': { guide: 15, source: 'US school districts for secondary grades, for instance Hyde Park', sure: 'seen' },
}); // prettier-ignore

/** The shortest whole hand wash, seconds: 20 of scrubbing, with wetting, rinsing and drying. Source: CDC and WHO (seen). */
const LEAST_WASH_S = 40;
const TOILET_WITHIN_MIN: Readonly<Record<Band, number>> = Object.freeze({
  'k-2': 60,
  '3-5': 90,
  '6-8': 90,
  '9-12': 90,
});
const LEAST = Object.freeze({ adults: 2, busSpare_min: 5, washSpare: 0.2, before: 14, after: 21 });
const MOST_PER_SPARE = 60;

/** Every threshold of a farm that asks for less care than what is published or, where nothing is, than what is usual. */
export function belowGuidance(farm: TripFarm): BelowGuidance[] {
  return [...BANDS.flatMap((band) => bandBelow(farm, band)), ...farmBelow(farm)];
}

function bandBelow({ rules }: TripFarm, band: Band): BelowGuidance[] {
  const { perAdult, wash_s, toiletWithin_min } = rules[band];
  const children = MOST_CHILDREN[band];
  return [
    ...(perAdult.most > children.guide
      ? [{ ...children, rule: 'most', band, is: perAdult.most, side: 'at most' } as const]
      : []),
    ...(wash_s < LEAST_WASH_S
      ? [{ rule: 'wash', band, is: wash_s, guide: LEAST_WASH_S, side: 'at least', source: 'CDC and WHO on hand washing, drying included', sure: 'seen' } as const]
      : []),
    ...(toiletWithin_min > TOILET_WITHIN_MIN[band]
      ? [{ rule: 'toiletWithin', band, is: toiletWithin_min, guide: TOILET_WITHIN_MIN[band], side: 'at most', ...practice() } as const]
      : []),
  ]; // prettier-ignore
}

function farmBelow(farm: TripFarm): BelowGuidance[] {
  const { leastAdults, childrenPerSpare, busSpare_min, washSpare, kiddingDays } = farm;
  const least = (rule: RuleName, is: number, guide: number): BelowGuidance[] =>
    is < guide ? [{ rule, band: null, is, guide, side: 'at least', ...RULE_SOURCES[rule] }] : [];
  return [
    ...least('leastAdults', leastAdults, LEAST.adults),
    ...(childrenPerSpare > MOST_PER_SPARE
      ? [{ rule: 'childrenPerSpare', band: null, is: childrenPerSpare, guide: MOST_PER_SPARE, side: 'at most', ...practice() } as const]
      : []),
    ...least('busSpare', busSpare_min, LEAST.busSpare_min),
    ...least('washSpare', washSpare, LEAST.washSpare),
    ...least('kiddingPen', kiddingDays.before, LEAST.before),
    ...least('kiddingPen', kiddingDays.after, LEAST.after),
  ]; // prettier-ignore
}
