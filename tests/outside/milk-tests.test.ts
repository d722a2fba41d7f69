// Milk tests against official test days of a real herd, sums made by SQL, and published tables.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isoDate } from '../../shared/calendar/day.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { ecm_kg, ecmTyrrellReid_kg, fcm_kg, fpcm_kg, fpcmGleam_kg, goatFcm35_kg, goatMilkEnergy_MJPerKg } from '../../shared/milk/tests/correctedMilk.ts'; // prettier-ignore
import { doeTests, herdTestDays, type HerdTestDay } from '../../shared/milk/tests/summary.ts';
import { testedDays, type TestedDays } from '../../shared/milk/tests/testedDays.ts';
import { readFarm } from '../../src/farm/readFarm.ts';
import { NOT_HERE, openData, plainCsv } from '../support/handouts.ts';

// One French herd, 97 cows, 55 official monthly test days 2006-2010: DairyHerdData (MIT), read where it
// lies. Its reference sums were made with sqlite3 and confirmed with R. A fat of 0 means "not tested".
const folder = openData('test-days');
// The reference row of this day contradicts itself and the raw tests: see the check below.
const FAULTY_DAY = '2009-01-30';
const raw = () => plainCsv(join(folder ?? '', 'rec_herd_FR000001.csv'));
const made: string[] = [];
afterAll(() => {
  for (const dir of made) rmSync(dir, { recursive: true, force: true });
});

// The herd as a farm folder: one milking a test day, so every cow is one that is milked in the morning alone.
function farmFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'test-days-'));
  made.push(dir);
  mkdirSync(join(dir, 'milkings'));
  const rows = raw();
  const unique = (lines: string[]) => [...new Set(lines)];
  const write = (file: string, lines: string[]) => writeFileSync(join(dir, file), `${lines.join('\n')}\n`);
  write('farm.yaml', ['name: Test days', 'timeZone: Europe/Paris', 'units: metric', 'recordUnit: kg', "milkings: { am: '06:00', pm: '17:00' }", 'largestMilking: { amount: 60, unit: kg }']); // prettier-ignore
  write('does.csv', ['doe', ...unique(rows.map((row) => row['anim_id'] ?? ''))]);
  write('kiddings.csv', ['doe,date,apart', ...unique(rows.map((row) => `${row['anim_id']},${row['calv_date']},${row['calv_date']}`))]); // prettier-ignore
  write('milkings/all.csv', ['date,milking,doe,amount', ...rows.map((row) => `${row['ctrl_date']},am,${row['anim_id']},${row['milk']}`)]); // prettier-ignore
  write('milk-tests.csv', ['date,doe,fat_pct,protein_pct,scc', ...rows.map((row) => `${row['ctrl_date']},${row['anim_id']},${row['fat']},${row['prot']},${row['scc']}`)]); // prettier-ignore
  return dir;
}

const close = (actual: number | null, expected: number, digits: number, what: string) =>
  expect(Math.abs((actual ?? NaN) - expected), `${what}: ${actual} for ${expected}`).toBeLessThan(0.51 * 10 ** -digits); // prettier-ignore

describe.skipIf(!folder)(`a real herd's 55 test days, 1,837 tests (${NOT_HERE})`, () => {
  let tests: TestedDays;
  let days: Map<string, HerdTestDay>;
  const db = new DatabaseSync(':memory:');

  beforeAll(() => {
    const reading = readFarm(farmFolder(), { asOf: '2011-01-01', now_ms: 0 });
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults.slice(0, 5), null, 1));
    tests = testedDays(reading.book, openLedger(reading.book, reading.asOf));
    days = new Map(herdTestDays(tests.days).map((one) => [one.date, one]));
    db.exec('create table test (date text, cow text, parity int, calved text, milk real, fat real, protein real, scc real)'); // prettier-ignore
    const insert = db.prepare('insert into test values (?, ?, ?, ?, ?, ?, ?, ?)');
    for (const row of raw()) {
      const numbers = ['milk', 'fat', 'prot', 'scc'].map((name) => Number(row[name]));
      insert.run(row['ctrl_date'] ?? '', row['anim_id'] ?? '', Number(row['parity']), row['calv_date'] ?? '', ...numbers); // prettier-ignore
    }
  });

  it('has every test, and milk for each', () => {
    expect(tests.days).toHaveLength(1837);
    expect(tests.left).toEqual([]);
  });

  it('has the milk, the fat and the weighted fat percent of every reference day', () => {
    const reference = plainCsv(join(folder ?? '', 'reference_FR000001_by_testday.csv'));
    expect(reference).toHaveLength(55);
    for (const row of reference) {
      const date = row['ctrl_date'] ?? '';
      const day = days.get(date);
      if (!day?.fat_pct.ok) throw new Error(`no fat on ${date}`);
      expect(day.tests, date).toBe(Number(row['n_cows']));
      close(day.milk_kg, Number(row['herd_milk_kg']), 6, date);
      if (date === FAULTY_DAY) continue;
      close(day.fat_pct.mean, Number(row['weighted_fat_pct']), 6, date);
      close((day.fat_pct.mean * day.fat_pct.milk_kg) / 100, Number(row['fat_kg_tested']), 6, date);
    }
  });

  it('goes by the raw tests on the one day whose reference sum lost a cow', () => {
    const row = plainCsv(join(folder ?? '', 'reference_FR000001_by_testday.csv')).find((one) => one['ctrl_date'] === FAULTY_DAY); // prettier-ignore
    const bySql = db.prepare(`select sum(milk * fat) / sum(milk) as weighted, avg(fat) as plain, sum(milk * fat) / 100 as fat_kg,
      sum(milk * fat) filter (where cow = 'FR000059') / 100 as lost_kg from test where date = ? and fat > 0`).get(FAULTY_DAY); // prettier-ignore
    const day = days.get(FAULTY_DAY);
    expect(day?.fat_pct.ok && day.fat_pct.mean).toBeCloseTo(Number(bySql?.['weighted']), 12);
    // The row's own plain mean has all 42 cows; its sum of fat lacks exactly one of them.
    close(Number(bySql?.['plain']), Number(row?.['unweighted_fat_pct']), 6, 'plain mean');
    close(
      Number(bySql?.['fat_kg']) - Number(bySql?.['lost_kg']),
      Number(row?.['fat_kg_tested']),
      6,
      'sum of fat',
    );
  });

  it('does not have the mean of the percents, which differs on every one of the days', () => {
    const reference = plainCsv(join(folder ?? '', 'reference_FR000001_by_testday.csv'));
    const same = reference.filter((row) => {
      const fat = days.get(row['ctrl_date'] ?? '')?.fat_pct;
      return fat?.ok && Math.abs(fat.mean - Number(row['unweighted_fat_pct'])) < 1e-4;
    });
    expect(same).toEqual([]);
  });

  it('would be wrong with a fat of 0 counted as a test', () => {
    const zero = raw().find((row) => Number(row['fat']) === 0);
    const day = days.get(zero?.['ctrl_date'] ?? '');
    const counted = db.prepare('select sum(milk * fat) / sum(milk) as fat from test where date = ?').get(zero?.['ctrl_date'] ?? '')?.['fat']; // prettier-ignore
    expect(day?.fat_pct.ok && day.fat_pct.left).toBeGreaterThan(0);
    expect(day?.fat_pct.ok && day.fat_pct.mean - Number(counted)).toBeGreaterThan(0.01);
  });

  it('has the tests, the mean and the most milk, and the days in milk, of every cow and lactation', () => {
    const reference = plainCsv(join(folder ?? '', 'reference_FR000001_by_cow_lactation.csv'));
    expect(reference.length).toBeGreaterThan(200);
    const numberOf = (date: string | undefined) => Date.parse(`${date}T00:00:00Z`) / 86_400_000;
    for (const row of reference) {
      const [cow, calved] = [row['anim_id'] ?? '', numberOf(row['calv_date'])];
      const [first, last] = [calved + Number(row['first_dim']), calved + Number(row['last_dim'])];
      const own = doeTests(tests.days, cow, first, last);
      const what = `${cow} ${row['calv_date']}`;
      expect(own.tests, what).toBe(Number(row['n_tests']));
      close(own.milk_kg / own.tests, Number(row['mean_kg']), 6, what);
      close(own.most_kg, Number(row['max_kg']), 6, what);
      const ofCow = tests.days.filter(({ test }) => test.doe === cow).map(({ test }) => isoDate(test.day));
      for (const day of [first, last]) expect(ofCow, what).toContain(isoDate(day));
    }
  });

  it('has the protein, the cells and the corrected milk that SQL gives for each day', () => {
    const sums = db.prepare(`select date,
      sum(milk * protein) filter (where protein > 0) / sum(milk) filter (where protein > 0) as protein,
      sum(milk * scc) filter (where scc > 0) / sum(milk) filter (where scc > 0) * 1000 as cells,
      sum(0.4 * milk + 15 * milk * fat / 100) filter (where fat > 0) as fcm,
      sum(milk * (383 * fat + 242 * protein + 780.8) / 3140) filter (where fat > 0 and protein > 0) as ecm
      from test group by date`).all(); // prettier-ignore
    expect(sums).toHaveLength(55);
    for (const row of sums) {
      const day = days.get(String(row['date']));
      const near = (actual: number | null | undefined, name: string) =>
        expect(Math.abs((actual ?? NaN) / Number(row[name]) - 1), `${String(row['date'])} ${name}`).toBeLessThan(1e-12); // prettier-ignore
      near(day?.protein_pct.ok ? day.protein_pct.mean : null, 'protein');
      near(day?.cells_perML.ok ? day.cells_perML.mean : null, 'cells');
      near(day?.fcm4_kg, 'fcm');
      near(day?.ecm_kg, 'ecm');
    }
  });

  it('finds as many days over the limit for cows as SQL does', () => {
    const over = db.prepare('select count(*) as n from (select sum(milk * scc) / sum(milk) * 1000 as cells from test where scc > 0 group by date) where cells > 750000').get()?.['n']; // prettier-ignore
    const ours = [...days.values()].filter((day) => day.cells_perML.ok && day.cells_perML.mean > 750_000);
    expect(ours.length).toBe(over);
  });
});

describe('fat-corrected milk', () => {
  // B. Cassell, Virginia Tech Extension, table of milk and fat factors by base (seen in a copy).
  it.each([
    [2.5, 0.5161, 19.3548],
    [3.0, 0.4706, 17.6471],
    [3.5, 0.4324, 16.2162],
    [4.0, 0.4, 15.0],
    [4.5, 0.3721, 13.9535],
  ])('of base %s %% has the printed factors %s for milk and %s for fat', (base, milk, fat) => {
    const [skim, atOne] = [fcm_kg(1, 0, base), fcm_kg(1, 1, base)];
    close(skim, milk, 4, 'milk');
    close((atOne - skim) * 100, fat, 4, 'fat');
  });

  it.each([
    // Published answers: a veterinary study page (80 lb with 2.8 lb of fat), a calculator page (1000 kg).
    [80, 3.5, 74],
    [1000, 3.5, 925],
  ])('of %s at %s %% is the published %s', (milk, fat, published) => {
    expect(fcm_kg(milk, fat)).toBeCloseTo(published, 9);
  });

  it('leaves milk of its own base as it is', () => {
    for (const base of [2.5, 3, 3.5, 4, 4.5]) expect(fcm_kg(7.3, base, base)).toBeCloseTo(7.3, 12);
    // INRA form for goats, from memory: 0.634 + 0.1046 × 3.5 = 1.0001.
    expect(goatFcm35_kg(1, 3.5)).toBeCloseTo(1.0001, 12);
  });
});

describe('energy-corrected and fat- and protein-corrected milk', () => {
  it('is 10.1065 kg of 10 kg with 3.5 % fat and 3.2 % protein, by Tyrrell and Reid', () => {
    // 3.27 + 12.95 × 0.35 + 7.2 × 0.32, worked by hand from the published coefficients.
    expect(ecmTyrrellReid_kg({ milk_kg: 10, fat_pct: 3.5, protein_pct: 3.2 })).toBeCloseTo(10.1065, 10);
  });

  it('is the standard milk again, within a thousandth, at 4.0 % fat and 3.3 % protein', () => {
    // IDF Bulletin 479/2015 and FAO GLEAM, from memory: 0.99988 and 0.999.
    const standard = { milk_kg: 1, fat_pct: 4, protein_pct: 3.3 };
    expect(fpcm_kg(standard)).toBeCloseTo(0.99988, 10);
    expect(fpcmGleam_kg(standard)).toBeCloseTo(0.999, 10);
  });

  it('is what a calculator gives for the formula of the milkman herd', () => {
    // bc: 20 * (383*4.2 + 242*3.4 + 780.8) / 3140 = 20.4598726114649...
    expect(ecm_kg({ milk_kg: 20, fat_pct: 4.2, protein_pct: 3.4 })).toBeCloseTo(20.4598726114649, 10);
  });
});

describe("energy of goat's milk", () => {
  // Nsahlai and others 2004, Small Ruminant Research 53:253 (abstract seen): efficiencies 0.61 and 0.59
  // follow from 5.017 and 5.195 MJ a kilogram of 4 % milk.
  it.each([
    [3, 2.6769],
    [4, 3.0794],
    [5, 3.4819],
  ])('at %s %% fat is %s MJ/kg', (fat, energy) => {
    expect(goatMilkEnergy_MJPerKg(fat)).toBeCloseTo(energy, 10);
  });

  it('gives the efficiencies that the paper prints', () => {
    expect((goatMilkEnergy_MJPerKg(4) / 5.017).toFixed(2)).toBe('0.61');
    expect((goatMilkEnergy_MJPerKg(4) / 5.195).toFixed(2)).toBe('0.59');
  });
});

describe('traps in published tables of breeds', () => {
  // Cornell, New York State 4-H, US figures of 1998: pounds in 305 days, and kilograms as printed beside them.
  const CORNELL = [
    ['Alpine', 1979, 900],
    ['LaMancha', 1771, 850],
    ['Nubian', 1618, 735],
    ['Oberhasli', 1663, 756],
    ['Saanen', 1979, 908],
    ['Toggenburg', 1710, 777],
  ] as const;
  // CDCB national herd averages 2024, through a relay: pounds of milk and of fat, and fat % as printed.
  const CDCB = [
    ['Saanen', 2837, 97, 3.42],
    ['Alpine', 2534, 87, 3.55],
    ['LaMancha', 2226, 76, 3.95],
    ['Toggenburg', 1913, 64, 3.29],
    ['Sable', 1487, 59, 4.53],
    ['Oberhasli', 1463, 60, 3.93],
    ['Nubian', 1376, 65, 4.57],
    ['Nigerian Dwarf', 562, 26, 4.7],
  ] as const;

  it('kilograms are converted from pounds, since two that are printed are slips', () => {
    const slips = CORNELL.filter(([, lb, kg]) => Math.abs(kg / (lb * 0.45359237) - 1) > 0.005);
    expect(slips.map(([breed]) => breed)).toEqual(['LaMancha', 'Saanen']);
  });

  it('percents are computed from weights, since printed ones are averaged apart', async () => {
    const { weightedMean } = await import('../../shared/milk/tests/weightedMean.ts');
    const own = CDCB.map(([breed, milk, fat]) => ({ breed, milk_kg: milk, value: (fat / milk) * 100 }));
    const agree = CDCB.filter(
      ([, , , printed], index) => own[index]?.value.toFixed(2) === printed.toFixed(2),
    );
    expect(agree.map(([breed]) => breed)).toEqual(['Saanen']);
    // All fat over all milk, added up by hand: 534 lb of 14,398 lb.
    const pooled = weightedMean(own);
    expect(pooled.ok && pooled.mean).toBeCloseTo((534 / 14398) * 100, 12);
    const meanOfPrinted = CDCB.reduce((sum, [, , , printed]) => sum + printed, 0) / CDCB.length;
    expect(Math.abs((pooled.ok ? pooled.mean : NaN) - meanOfPrinted)).toBeGreaterThan(0.2);
  });
});
