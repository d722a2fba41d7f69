// The numbers that tasks for the older grades carry of their own, beside the sources that print them.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { valueOf } from '../../shared/quantity/grade.ts';
import { COOLING } from '../../shared/tasks/cleanToCold.ts';
import { taskContext } from '../../shared/tasks/context.ts';
import { fiveNumbers } from '../../shared/tasks/doeMilkings.ts';
import { NUTRIENTS } from '../../shared/tasks/goatOrCow.ts';
import { onCurve, peakOf, printedCurves } from '../../shared/tasks/lactationCurves.ts';
import { COW_FAT_KG } from '../../shared/tasks/lactationSeries.ts';
import { bookOf } from '../support/bookOf.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { weekView } from '../../shared/herd/week.ts';

const empty = bookOf([]);
const week = weekView(empty, openLedger(empty, 20_594));
const curves = printedCurves(taskContext({ week, units: 'us', jar_mL: 946.35 }, '9-12', 'a'));
const curve = (id: string) => {
  const found = curves.find((one) => one.id === id);
  if (!found) throw new Error(`no curve ${id}`);
  return found;
};

describe('published lactation curves', () => {
  // Anim Biosci 34 (2021) 949: the parameters; day and height of the peak follow as b/c and a(b/c)^b e^(-b), Wood 1967.
  it.each([
    ['simmental-305', 68.6, 21.233],
    ['simmental-640', 60.3, 21.015],
    ['model-doe', 50, 3.5807],
  ])('%s peaks on day %d at %d kg', (id, day, height_kg) => {
    const one = curve(id);
    expect(valueOf(peakOf(one))).toBeCloseTo(day, 1);
    expect(onCurve(one, valueOf(one.b) / valueOf(one.c))).toBeCloseTo(height_kg, 3);
  });

  it('of the model doe stand at the values worked out beside our hand-outs', () => {
    const days = [1, 10, 30, 50, 100, 150, 200, 250, 305];
    const kg = [1.992, 3.0455, 3.5022, 3.5807, 3.3675, 2.99, 2.593, 2.2198, 1.8537];
    days.forEach((day, index) =>
      expect(onCurve(curve('model-doe'), day)).toBeCloseTo(kg[index] ?? Number.NaN, 4),
    );
  });
});

describe('the published weeks of one cow', () => {
  // Henderson & McCulloch 1990: 35 weeks, greatest in week 11; their sum is 13.95.
  it('are all there', () => {
    const kg = COW_FAT_KG.split(' ').map(Number);
    expect(kg.length).toBe(35);
    expect(kg.reduce((sum, one) => sum + one, 0)).toBeCloseTo(13.95, 9);
    expect(kg.indexOf(Math.max(...kg)) + 1).toBe(11);
  });
});

describe('milk in the tasks', () => {
  it('holds what the table of composition holds (USDA SR28)', () => {
    const rows = readFileSync('content/facts/milk-composition.csv', 'utf8')
      .split('\n')
      .map((line) => line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/));
    const nutrient: Readonly<Record<string, string>> = {
      protein: '203',
      fat: '204',
      carbohydrate: '205',
      calcium: '301',
      potassium: '306',
      sodium: '307',
    };
    const of = (food: string, name: string) =>
      Number(
        rows.find(
          ([source = '', id, , number]) =>
            source.startsWith('USDA SR28') && id === food && number === nutrient[name],
        )?.[6],
      );
    for (const { name, goat, cow } of NUTRIENTS)
      expect([of('01106', name), of('01077', name)], name).toEqual([Number(goat), Number(cow)]);
  });

  it('is cooled as the rule in the facts says', () => {
    const facts = parse(readFileSync('content/facts/handling.yaml', 'utf8')) as Record<
      string,
      { en: string }
    >;
    expect(facts['cooling-clock']?.en).toContain(
      `(${COOLING.first.celsius} °C) within four hours of the start`,
    );
    expect(facts['cooling-clock']?.en).toContain(
      `(${COOLING.second.celsius} °C) within two hours of its end`,
    );
    expect([COOLING.first.hours, COOLING.second.hours]).toEqual([4, 2]);
  });
});

describe('quartiles', () => {
  // Moore & McCabe, as school books take it (from memory): 1 to 7 has quartiles 2 and 6, 1 to 8 has 2.5 and 6.5.
  it.each([
    [7, 2, 6],
    [8, 2.5, 6.5],
  ])('of 1 to %d are %d and %d', (size, q1, q3) => {
    const five = fiveNumbers(Array.from({ length: size }, (_, index) => ({ num: index + 1, den: 1, places: 0 })), 0);
    expect([valueOf(five.q1), valueOf(five.q3)]).toEqual([q1, q3]);
  });
}); // prettier-ignore
