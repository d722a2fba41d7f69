// Facts and claims as written, and how their loader refuses what is not whole.
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CALCIUM_NEED_FACT, CALCIUM_NEEDS } from '../../../shared/milk/calcium.ts';
import { COOLING_FACT } from '../../../shared/milk/cooling.ts';
import { KEPT_KINDS, RAW_CHEESE, useBy } from '../../../shared/milk/keeping.ts';
import { HEAT_FACTS } from '../../../shared/milk/pasteurizing.ts';
import { ICE_CREAM_FAT_PCT, HAND_OVERRUN, MIX_PER_MILK } from '../../../shared/milk/products/iceCream.ts';
import { productsOf } from '../../../shared/milk/products/products.ts';
import { LEAST_SPARE_OIL, LIQUID_PER_OIL, LYE_CAUTIONS } from '../../../shared/milk/products/soap.ts';
import { CASEIN_PART } from '../../../shared/milk/products/vanSlyke.ts';
import { CELL_LIMIT_FACTS, CELL_LIMITS_PERML } from '../../../shared/milk/tests/cells.ts';
import { goatAndCow } from '../../../shared/feed/goatAndCow.ts';
import { CONCENTRATE_PER_MILK, DRY_FEED_PART, HAY_KG, WATER_BASE_L, WATER_PER_MILK_LPERKG } from '../../../shared/feed/intake.ts'; // prettier-ignore
import { ANIMAL_UNIT_LB, ANIMAL_UNITS, GRAZED_PART } from '../../../shared/feed/land.ts';
import { NEEDS_FACTS } from '../../../shared/feed/needs.ts';
import { KIDDING_INTERVAL_DAYS, LACTATION_DAYS, NIGHTS_APART_DAYS, PEAK_DAYS, WITH_KIDS_DAYS, YEAR_FACTS } from '../../../shared/year/defaults.ts'; // prettier-ignore
import { DRY_DAYS, GESTATION_DAYS } from '../../../shared/year/gestation.ts';
import {
  allClaims,
  allFacts,
  claimOf,
  claimsIn,
  FACT_FILES,
  factOf,
  factsIn,
} from '../../../src/site/facts.ts';

const facts = [...allFacts()];
const claims = [...allClaims()];
// Spanish keeps digits; a number in one language alone is a slip.
const numbers = (text: string) => (text.replace(/(\d)[,\u00a0 ](?=\d{3}\b)/g, '$1').match(/\d+(?:\.\d+)?/g) ?? []).sort(); // prettier-ignore

describe('every fact', () => {
  it('is there in plenty, in files of which none is forgotten', () => {
    expect(facts.length).toBeGreaterThan(100);
    const own = readdirSync('content/facts').filter((file) => file.endsWith('.yaml'));
    const other = ['claims.yaml', 'milk-tables.yaml', 'outlook-backtest.yaml'];
    expect(own.filter((file) => !other.includes(file)).sort()).toEqual([...FACT_FILES].sort());
  });

  it('has a source that names somebody, or says that it has none', () => {
    for (const [id, { source, sure }] of facts) {
      if (sure === 'practice') expect(source, id).toMatch(/^common practice\b/);
      if (sure === 'seen') expect(source, id).toMatch(/\p{Lu}|\d{4}|pages|charts/u);
      expect(source.length, id).toBeGreaterThan(12);
    }
  });

  it('says the same in both languages: two sentences of their own with the same numbers', () => {
    for (const [id, { en, es }] of facts) {
      expect(en, id).not.toBe(es);
      for (const text of [en, es]) expect(text, id).toMatch(/[.!?]$/);
    }
    const differing = facts.filter(([, { en, es, unit }]) => unit === undefined && numbers(en).length + numbers(es).length > 0 && String(numbers(en)) !== String(numbers(es))); // prettier-ignore
    expect(differing.map(([id]) => id)).toEqual([]);
  });

  it('has a range that is sane, and percents within 100', () => {
    for (const [id, { value, range, unit }] of facts) {
      const all = [value, ...(range ?? [])].filter((one) => one !== undefined);
      for (const one of all) expect(one, id).toBeGreaterThanOrEqual(0);
      if (unit?.startsWith('%')) for (const one of all) expect(one, id).toBeLessThanOrEqual(100);
    }
  });
});

describe('every claim', () => {
  it('rests on facts that are there, and is told in both languages', () => {
    expect(claims.length).toBeGreaterThanOrEqual(15);
    for (const [id, { claim, right, basis }] of claims) {
      for (const fact of basis) expect(() => factOf(fact), `${id}: ${fact}`).not.toThrow();
      for (const both of [claim, right]) {
        expect(both.en, id).not.toBe(both.es);
        for (const text of [both.en, both.es]) expect(text, id).toMatch(/\.$/);
      }
    }
  });

  it('that could do harm sends people to a doctor or a veterinarian, or says that it is pasteurized', () => {
    for (const [id, word] of [
      ['milk-allergy', 'doctor'],
      ['baby-food', 'doctor'],
      ['milking-hurts', 'veterinarian'],
      ['raw-is-healthier', 'pasteurized'],
      ['fresh-is-germ-free', 'pasteurized'],
    ] as const)
      expect(claimOf(id).right.en, id).toContain(word);
  });
});

describe('rules in code', () => {
  const value = (id: string) => factOf(id).value;
  const range = (id: string) => factOf(id).range;

  it.each([
    [value('cell-limit-goat'), CELL_LIMITS_PERML.goat],
    [value('cell-limit-cow'), CELL_LIMITS_PERML.cow],
    [range('calcium-need'), [CALCIUM_NEEDS[0]?.need_mg, CALCIUM_NEEDS.at(-1)?.need_mg]],
    [value('raw-cheese-60'), RAW_CHEESE.days],
    [value('casein-share'), CASEIN_PART.goat],
    [range('ice-cream-air'), [HAND_OVERRUN.low * 100, HAND_OVERRUN.high * 100]],
    [value('ice-cream-mix'), MIX_PER_MILK],
    [value('ice-cream-name'), ICE_CREAM_FAT_PCT],
    [value('soap-liquid'), LIQUID_PER_OIL],
    [value('lye-charts-differ'), LEAST_SPARE_OIL * 100],
    [range('dry-matter-milking'), [DRY_FEED_PART.milking.low * 100, DRY_FEED_PART.milking.high * 100]],
    [range('dry-matter-dry'), [DRY_FEED_PART.dry.low * 100, DRY_FEED_PART.dry.high * 100]],
    [range('water-base'), [WATER_BASE_L.low, Number(WATER_BASE_L.high.toFixed(9))]],
    [value('water-milk'), Number(WATER_PER_MILK_LPERKG.toFixed(4))],
    [range('concentrate'), [CONCENTRATE_PER_MILK.low, CONCENTRATE_PER_MILK.high]],
    [range('hay'), [HAY_KG.low, HAY_KG.high]],
    [value('animal-unit'), ANIMAL_UNIT_LB],
    [value('animal-unit-goat'), ANIMAL_UNITS.goat],
    [value('pasture-rule'), GRAZED_PART],
    [[value('gestation'), ...(range('gestation') ?? [])], [GESTATION_DAYS.usual, GESTATION_DAYS.low, GESTATION_DAYS.high]],
    [[value('dry-off'), range('dry-off')?.[0]], [DRY_DAYS.usual, DRY_DAYS.short]],
    [[range('lactation-length')?.[0], value('lactation-length')], [LACTATION_DAYS.low, LACTATION_DAYS.usual]],
    [range('peak-weeks'), [PEAK_DAYS.low, PEAK_DAYS.high]],
    [value('kids-with-mother'), WITH_KIDS_DAYS],
    [range('nights-apart'), [NIGHTS_APART_DAYS.low, NIGHTS_APART_DAYS.high]],
    [[value('once-a-year'), value('heat-cycle')], [KIDDING_INTERVAL_DAYS.usual, KIDDING_INTERVAL_DAYS.cycle]],
  ])('use what the fact says: %j', (written, used) => {
    expect(used).toEqual(written);
  }); // prettier-ignore

  it('keep as long as the facts say', () => {
    for (const kind of KEPT_KINDS) {
      const date = useBy(kind, 0, -30);
      if (!date.ok) throw new Error(date.why);
      const fact = factOf(date.facts[0] ?? '');
      expect([fact.value, ...(fact.range ?? [])], kind).toContain(date.days);
    }
  });

  it('name only facts that are there', () => {
    const products = productsOf(10, { fat_pct: 4, protein_pct: 3.5 });
    const compared = goatAndCow();
    const ids = [
      ...(products.ok ? products.made.flatMap(({ facts, cautions }) => [...facts, ...cautions]) : []),
      ...compared.rows.flatMap((row) => row.facts),
      ...compared.notes,
      ...NEEDS_FACTS,
      ...YEAR_FACTS,
      ...LYE_CAUTIONS,
      ...Object.values(HEAT_FACTS),
      ...Object.values(CELL_LIMIT_FACTS),
      ...KEPT_KINDS.flatMap((kind) => useBy(kind, 0, 99).facts),
      CALCIUM_NEED_FACT,
      COOLING_FACT,
      RAW_CHEESE.fact,
    ];
    expect(ids.length).toBeGreaterThan(60);
    for (const id of ids) expect(() => factOf(id), id).not.toThrow();
    for (const row of compared.rows)
      for (const id of row.what === 'methane' || row.what === 'climate' ? row.facts : []) {
        const side = id.endsWith('goat') ? row.goat : row.cow;
        const fact = factOf(id);
        expect(fact.range ?? [fact.value, fact.value], id).toEqual([side.low, side.high]);
      }
  });
});

describe('the loader', () => {
  const WHOLE = 'a: { en: A., es: B., source: Somebody 1999, sure: seen }\n';

  it('names the nearest id of an unknown one', () => {
    expect(() => factOf('raw-mlk')).toThrowErrorMatchingInlineSnapshot(
      `[Error: content/facts has no fact "raw-mlk"; the nearest is "raw-milk".]`,
    );
    expect(() => factOf('zzzzzzz')).toThrowErrorMatchingInlineSnapshot(
      `[Error: content/facts has no fact "zzzzzzz".]`,
    );
    expect(() => claimOf('lactose-fre')).toThrowErrorMatchingInlineSnapshot(
      `[Error: content/facts has no claim "lactose-fre"; the nearest is "lactose-free".]`,
    );
  });

  it('takes a whole fact', () => {
    expect(factsIn('x.yaml', WHOLE)['a']?.source).toBe('Somebody 1999');
    expect(factsIn('x.yaml', '')).toEqual({});
  });

  it.each([
    ['no source', WHOLE.replace('source: Somebody 1999, ', '')],
    ['a source of spaces', WHOLE.replace('Somebody 1999', "'  '")],
    ['one language alone', WHOLE.replace('es: B., ', '')],
    ['an odd sureness', WHOLE.replace('seen', 'hearsay')],
    ['a field that no page reads', WHOLE.replace('sure: seen', 'sure: seen, sorce: x')],
    ['a value without a unit', WHOLE.replace('sure: seen', 'sure: seen, value: 3')],
    ['a range that runs backwards', WHOLE.replace('sure: seen', 'sure: seen, range: [3, 2], unit: g')],
    [
      'a value outside its range',
      WHOLE.replace('sure: seen', 'sure: seen, value: 9, range: [2, 3], unit: g'),
    ],
  ])('refuses %s, naming file and fact', (_, yaml) => {
    expect(() => factsIn('x.yaml', yaml)).toThrow(/content\/facts\/x\.yaml is not right:\n {2}a/);
  });

  it('refuses a claim that rests on nothing', () => {
    const claim =
      'c: { claim: { en: A., es: B. }, verdict: misleading, right: { en: C., es: D. }, basis: [] }';
    expect(() => claimsIn('claims.yaml', claim)).toThrow('c.basis');
  });
});
