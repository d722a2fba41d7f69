// How long a class washes its hands: the formula against numbers worked out by hand for taps and seconds that farms have.
import { describe, expect, it } from 'vitest';
import { USUAL_FARM, USUAL_RULES } from '../../shared/trip/usualRules.ts';
import { washMinutes } from '../../shared/trip/wash.ts';

// T = ceil(N / B) x t: N people at B taps, t seconds each. The turns are whole, so that 90 people at 4 taps wash in 23.
// Minutes to one place, worked out by hand. No source gives basins per visitor: NASPHV asks for facilities "sufficient
// for the maximum anticipated attendance" (CDC, MMWR 58 RR-5; from memory). Seconds: a whole wash with drying takes 40
// to 60 (CDC and WHO), young children longer (common practice, no source).
const TABLE: readonly (readonly [
  people: number,
  seconds: number,
  four: number,
  six: number,
  eight: number,
])[] = [
  [24, 45, 4.5, 3, 2.3],
  [24, 60, 6, 4, 3],
  [24, 75, 7.5, 5, 3.8],
  [48, 45, 9, 6, 4.5],
  [48, 60, 12, 8, 6],
  [48, 75, 15, 10, 7.5],
  [60, 45, 11.3, 7.5, 6],
  [60, 60, 15, 10, 8],
  [60, 75, 18.8, 12.5, 10],
  [90, 45, 17.3, 11.3, 9],
  [90, 60, 23, 15, 12],
  [90, 75, 28.8, 18.8, 15],
];

const minutes = (people: number, taps: number, wash_s: number, washSpare: number) =>
  washMinutes(people, { ...USUAL_FARM, taps, washSpare }, { ...USUAL_RULES['k-2'], wash_s });
// Halves up, as the table rounds; a hair keeps 11.25 from being a little less.
const oneDecimal = (value: number) => Math.floor(value * 10 + 0.5 + 1e-9) / 10;

describe('hand washing', () => {
  it.each(TABLE)('of %i people at %i seconds is as the formula says', (people, seconds, four, six, eight) => {
    for (const [taps, expected] of [
      [4, four],
      [6, six],
      [8, eight],
    ] as const)
      // prettier-ignore
      expect(oneDecimal(minutes(people, taps, seconds, 0)), `${taps} taps`).toBe(expected);
  });

  it('takes a fifth longer with the time for queues', () => {
    // 60 people at 6 taps, 10 turns of a minute.
    expect(minutes(60, 6, 60, 0.2)).toBeCloseTo(12, 12);
    expect(minutes(60, 6, 60, 0.5)).toBeCloseTo(15, 12);
  });

  it('needs B = ceil(N t / (60 x minutes)) taps, and one fewer is too few', () => {
    // 54 children and 7 adults at 75 seconds within 12 minutes: 61 x 75 / 720 = 6.4, so 7.
    expect(Math.ceil((61 * 75) / (60 * 12))).toBe(7);
    expect(minutes(61, 7, 75, 0)).toBeLessThanOrEqual(12);
    expect(minutes(61, 6, 75, 0)).toBeGreaterThan(12);
  });
});
