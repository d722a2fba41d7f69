// The table of a farm's thresholds: its own values, each with what it rests on, and a mark where one falls short.
import { describe, expect, it } from 'vitest';
import { RULE_NAMES, RULE_SOURCES } from '../../../shared/trip/ruleSources.ts';
import { rulesTold } from '../../../shared/trip/rulesTold.ts';
import type { TripFarm } from '../../../shared/trip/types.ts';
import { USUAL_FARM } from '../../../shared/trip/usualRules.ts';
import { wordsOf } from '../../../src/site/words.ts';

const told = (farm: Partial<TripFarm> = {}) =>
  new Map(rulesTold({ ...USUAL_FARM, ...farm }).map((one) => [one.rule, one]));

describe('rulesTold', () => {
  it('tells every threshold once, by grade or for the whole farm', () => {
    expect(rulesTold(USUAL_FARM).map(({ rule }) => rule).sort()).toEqual([...RULE_NAMES].sort()); // prettier-ignore
    for (const { values } of rulesTold(USUAL_FARM)) expect([1, 4]).toContain(values.length);
    // education.md 5.1, planner's defaults: never more than 8, 10, 12, 15 children for one adult; 6, 8, 10, 12 are better.
    expect(told().get('most')!.values.map(([most]) => most)).toEqual([8, 10, 12, 15]);
    expect(told().get('aim')!.values.map(([aim]) => aim)).toEqual([6, 8, 10, 12]);
  });

  it('tells the shortest and the longest stay at a station', () => {
    const [one, two] = USUAL_FARM.stations;
    const stations = [one!, { ...two!, minutes: { ...two!.minutes, '3-5': 45 } }];
    expect(told({ stations }).get('station')!.values[1]).toEqual([one!.minutes['3-5'], 45]);
    expect(told({ stations: [] }).has('station')).toBe(false);
  });

  it('marks only what asks for less care than the guidance', () => {
    for (const { below } of rulesTold(USUAL_FARM)) expect(below).toEqual([]);
    const rules = { ...USUAL_FARM.rules, 'k-2': { ...USUAL_FARM.rules['k-2'], perAdult: { aim: 9, most: 11 } } };
    const farm = told({ rules, leastAdults: 1, kiddingDays: { before: 20, after: 20 } });
    expect(farm.get('most')!.below).toEqual([{ band: 'k-2', guide: 8 }]);
    expect(farm.get('leastAdults')!.below).toEqual([{ band: null, guide: 2 }]);
    expect(farm.get('kiddingPen')!.below).toEqual([{ band: null, guide: 21 }]);
    expect(farm.get('wash')!.below).toEqual([]);
  });

  it('is told in the words of the sources themselves, in every language as often', () => {
    const rests = (lang: string) => wordsOf(lang).entries;
    for (const rule of RULE_NAMES) {
      const own = rests('en')[`trip-rules.rests.${rule}`];
      expect(own ?? rests('en')['trip-rules.rests.practice'], rule).toBe(RULE_SOURCES[rule].source);
      expect(Boolean(rests('es')[`trip-rules.rests.${rule}`]), rule).toBe(own !== undefined);
      for (const lang of ['en', 'es']) expect(rests(lang)[`trip-rules.name.${rule}`], rule).toBeTruthy();
    }
  });
}); // prettier-ignore
