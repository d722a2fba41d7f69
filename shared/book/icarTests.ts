// Test days of the ICAR exchange as rows of the farm's milk tests.
import { dayNumber, isoDate } from '../calendar/day.ts';
import type { MilkTest } from '../herd/types.ts';
import { readNumber } from '../quantity/amount.ts';
import type { LocalTime, AnimalDoes } from './icarVisits.ts';
import type { ImportFarm } from './importRows.ts';
import type { ImportFault, LeftOut, PlannedTest, TestColumn, Told } from './importTypes.ts';
import { animalName, type IcarTest } from './icarTypes.ts';

/** What a laboratory's value may be; the farm folder's reader has the same limits. */
export interface TestLimits {
  readonly percent: Readonly<
    Record<Exclude<TestColumn, 'scc'>, { readonly least: number; readonly most: number }>
  >;
  readonly cells_thousand: number;
}

// Names by icarMilkCharacteristicsType, and the unit codes that mean what the schema has as default. P1 is per cent.
const COLUMN_OF: Readonly<Record<string, { column: TestColumn; units: readonly string[] }>> = {
  FAT: { column: 'fat_pct', units: ['VP', 'P1'] },
  PROTEIN: { column: 'protein_pct', units: ['VP', 'P1'] },
  LAC: { column: 'lactose_pct', units: ['VP', 'P1'] },
  SCC: { column: 'scc', units: ['NCL'] },
};

/** What would become of the file's test days. */
export interface FoundTests {
  readonly tests: readonly PlannedTest[];
  readonly faults: readonly ImportFault[];
  readonly left: readonly LeftOut[];
}

/** Lays test days beside the tests that the farm has: a doe has one a day, and only a person may change one. */
export function findTests(
  found: readonly IcarTest[],
  before: readonly MilkTest[],
  farm: ImportFarm,
  animals: AnimalDoes,
  localTime: LocalTime,
  limits: TestLimits,
): FoundTests {
  const tests: PlannedTest[] = [];
  const faults: ImportFault[] = [];
  const left: LeftOut[] = [];
  const seen = new Map<string, number>();
  for (const one of found) {
    const leave = (key: string, slots: Told['slots'] = {}) =>
      left.push({ line: one.place, column: null, told: { key, slots } });
    const wrong = (key: string, text: string, slots: Told['slots'] = {}) =>
      faults.push({ line: one.place, column: null, found: text, told: { key, slots } });
    const doe = one.deleted ? null : animals.of(one.animal);
    const local = one.at === null ? null : localTime(one.at);
    const day = local && dayNumber(local.date);
    const values = valuesOf(one, limits, wrong);
    if (one.deleted) leave('left.deleted');
    else if (doe === 'leave') leave('left.doe', { doe: animalName(one.animal) });
    else if (doe === null) wrong('fault.animal', animalName(one.animal));
    else if (one.at === null) wrong('fault.noDate', '');
    else if (day === null) wrong('fault.date', one.at);
    else if (day > farm.today) wrong('fault.ahead', one.at);
    else if (values && Object.values(values).every((value) => value === null)) leave(emptyReason(one));
    else if (values) {
      const key = `${day} ${doe.doe}`;
      const twin = seen.get(key);
      if (twin !== undefined) wrong('fault.twin', animalName(one.animal), { line: twin });
      else {
        seen.set(key, one.place);
        tests.push(planned(one, doe.doe, day, values, before));
      }
    }
  }
  return { tests, faults, left };
}

const emptyReason = ({ code }: IcarTest) =>
  code === null
    ? 'left.noResult'
    : `left.code.${code === 'Dry' ? 'dry' : code === 'Sick' ? 'sick' : 'noSample'}`;

type Values = Record<TestColumn, string | null>;

function valuesOf(
  one: IcarTest,
  limits: TestLimits,
  wrong: (key: string, text: string, slots?: Told['slots']) => void,
): Values | null {
  const values: Values = { fat_pct: null, protein_pct: null, lactose_pct: null, scc: null };
  let sound = true;
  for (const { name, value, unit } of one.characteristics) {
    const known = Object.hasOwn(COLUMN_OF, name) ? COLUMN_OF[name] : undefined;
    if (!known) continue;
    const told = `${name} ${value}${unit ? ` ${unit}` : ''}`;
    const read = readNumber(value);
    const number = read.ok ? read.num / read.den : null;
    const { least, most } =
      known.column === 'scc' ? { least: 0, most: limits.cells_thousand } : limits.percent[known.column];
    if (unit !== null && !known.units.includes(unit))
      wrong('fault.testUnit', told, { units: known.units.join(', ') });
    else if (number === null) wrong('fault.testNumber', told);
    // A zero is a laboratory's way to say that it was not tested.
    else if (number === 0) continue;
    else if (number < least || number > most) wrong('fault.testRange', told, { least, most });
    else {
      values[known.column] = value.trim();
      continue;
    }
    sound = false;
  }
  return sound ? values : null;
}

function planned(
  one: IcarTest,
  doe: string,
  day: number,
  values: Values,
  before: readonly MilkTest[],
): PlannedTest {
  const stands = before.find((test) => test.doe === doe && test.day === day);
  const warnings: Told[] = [];
  if (one.code === 'Sick') warnings.push({ key: 'warn.sickTest', slots: {} });
  if (one.weight24h_kg !== null) warnings.push({ key: 'warn.weight24', slots: { kg: one.weight24h_kg } });
  const kind = !stands ? 'new' : saysTheSame(stands, values) ? 'known' : 'other';
  return { key: `${one.place}:test`, line: one.place, kind, doe, date: isoDate(day), ...values, warnings };
}

function saysTheSame(test: MilkTest, values: Values): boolean {
  const number = (text: string | null) => {
    const read = text === null ? null : readNumber(text);
    return read?.ok ? read.num / read.den : null;
  };
  const cells = number(values.scc);
  return (
    test.fat_pct === number(values.fat_pct) &&
    test.protein_pct === number(values.protein_pct) &&
    test.lactose_pct === number(values.lactose_pct) &&
    test.cells_perML === (cells === null ? null : cells * 1000)
  );
}
