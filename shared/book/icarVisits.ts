// Milking visits of the ICAR exchange as milkings of the farm: its days, its a.m. and p.m., its does.
import Fraction from 'fraction.js';
import { dayNumber } from '../calendar/day.ts';
import type { MilkingTime } from '../herd/types.ts';
import { importedAmount } from './importAmount.ts';
import { doeMeant } from './importColumns.ts';
import { LONGEST_NOTE, middleOf, oneLine, type ImportFarm } from './importRows.ts';
import type {
  Found,
  FoundMilking,
  ImportChoices,
  ImportFault,
  LeftOut,
  Told,
  UnknownDoe,
} from './importTypes.ts';
import { animalName, type IcarAnimal, type IcarVisit } from './icarTypes.ts';

/** Date and minutes after midnight by the farm's own clock at an RFC 3339 moment; null where the text is none. */
export type LocalTime = (at: string) => { readonly date: string; readonly minutes: number } | null;

// The parts of a visit are measured one by one; a scale's last digit may differ from the whole.
const PARTS_REACH_KG = 0.05;
/** The file says that this milk was kept apart, or that the animal was sick. */
const APART = new Set(['AnimalSick', 'MilkedSeparately']);

/** The does of animals, by choice or by an id that is a doe's; counts those that nobody has named yet. */
export class AnimalDoes {
  readonly #unknown = new Map<string, number>();
  readonly #farm: Pick<ImportFarm, 'does'>;
  readonly #choices: ImportChoices;

  constructor(farm: Pick<ImportFarm, 'does'>, choices: ImportChoices) {
    this.#farm = farm;
    this.#choices = choices;
  }

  /** Her id; `leave` where somebody left her out, null where nobody has said who she is. */
  of(animal: IcarAnimal): { doe: string } | 'leave' | null {
    const name = animalName(animal);
    const chosen = Object.hasOwn(this.#choices.does, name) ? (this.#choices.does[name] ?? null) : null;
    const own = chosen ?? doeMeant(animal.id, this.#farm.does);
    if (own !== null && chosen === null) return { doe: own };
    this.#unknown.set(name, (this.#unknown.get(name) ?? 0) + 1);
    if (own === '') return 'leave';
    return own !== null && this.#farm.does.some(({ id }) => id === own) ? { doe: own } : null;
  }

  unknown(): UnknownDoe[] {
    return [...this.#unknown].map(([text, rows]) => ({
      text,
      rows,
      chosen: Object.hasOwn(this.#choices.does, text) ? (this.#choices.does[text] ?? null) : null,
    }));
  }
}

interface Placed {
  readonly visit: IcarVisit;
  readonly doe: string;
  readonly day: number;
  readonly milking: MilkingTime;
}

/**
 * Makes milkings of visits: the day and the half of it by the farm's clock, with the middle between both milkings as
 * border. Visits of one doe in one half of a day are one milking, their weights summed.
 */
export function findVisits(
  visits: readonly IcarVisit[],
  farm: ImportFarm,
  animals: AnimalDoes,
  localTime: LocalTime,
): Pick<Found, 'milkings' | 'faults' | 'left'> {
  const faults: ImportFault[] = [];
  const left: LeftOut[] = [];
  const groups = new Map<string, Placed[]>();
  const middle = middleOf(farm.milkings);
  for (const visit of visits) {
    const leave = (key: string, slots: Told['slots'] = {}) =>
      void left.push({ line: visit.place, column: null, told: { key, slots } });
    const wrong = (key: string, found: string) =>
      void faults.push({ line: visit.place, column: null, found, told: { key, slots: {} } });
    if (visit.deleted) {
      leave('left.deleted');
      continue;
    }
    const doe = animals.of(visit.animal);
    if (doe === 'leave') leave('left.doe', { doe: animalName(visit.animal) });
    else if (doe === null) wrong('fault.animal', animalName(visit.animal));
    const local = localTime(visit.at);
    const day = local && dayNumber(local.date);
    if (local === null || day === null) wrong('fault.date', visit.at);
    else if (day > farm.today) wrong('fault.ahead', visit.at);
    else if (doe !== null && doe !== 'leave') {
      const milking = local.minutes < middle ? 'am' : 'pm';
      const key = `${day} ${milking} ${doe.doe}`;
      groups.set(key, [...(groups.get(key) ?? []), { visit, doe: doe.doe, day, milking }]);
    }
  }
  const milkings = [...groups.values()].flatMap((group) => milkingOf(group, farm, faults) ?? []);
  return { milkings, faults, left };
}

function milkingOf(group: readonly Placed[], farm: ImportFarm, faults: ImportFault[]): FoundMilking | null {
  const [first] = group;
  if (!first) return null;
  const sum = group.reduce((all, { visit }) => all.add(weightOf(visit.weight_kg)), new Fraction(0));
  const text = decimalOf(sum);
  const reading = { unit: 'kg', decimalComma: false, largest: farm.largestMilking } as const;
  const read = importedAmount(text, reading);
  if (!read.ok) {
    faults.push({ line: first.visit.place, column: null, found: `${text} kg`, told: read.told });
    return null;
  }
  const apart = group.some(({ visit }) => visit.remarks.some((remark) => APART.has(remark)));
  return {
    key: `${first.visit.place}:0`,
    line: first.visit.place,
    column: 0,
    doe: first.doe,
    day: first.day,
    milking: first.milking,
    amount: read.text,
    read: read.amount,
    unit: 'kg',
    use: apart ? 'withheld' : null,
    note: [...oneLine(noteOf(group))].slice(0, LONGEST_NOTE).join(''),
    entered_ms: null,
    warnings: warningsOf(group, apart),
  };
}

function warningsOf(group: readonly Placed[], apart: boolean): Told[] {
  const warnings: Told[] = [];
  if (group.length > 1) warnings.push({ key: 'warn.visits', slots: { n: group.length } });
  for (const { visit } of group) {
    if (!visit.complete || visit.remarks.includes('MilkingIncomplete'))
      warnings.push({ key: 'warn.incomplete', slots: {} });
    if (visit.parts_kg.length === 0) continue;
    const parts = visit.parts_kg.reduce((sum, part) => sum.add(weightOf(part)), new Fraction(0));
    const differ = parts.sub(weightOf(visit.weight_kg)).abs().valueOf() > PARTS_REACH_KG;
    if (differ)
      warnings.push({ key: 'warn.parts', slots: { parts: decimalOf(parts), whole: visit.weight_kg } });
  }
  if (apart) warnings.push({ key: 'warn.apart', slots: {} });
  return warnings;
}

const noteOf = (group: readonly Placed[]) =>
  [...new Set(group.flatMap(({ visit }) => [visit.remark, ...visit.remarks]).filter(Boolean))].join('; ');

/** A weight as the file writes it, free of what binary fractions add behind the twelfth digit. */
export function weightOf(value: number): Fraction {
  return new Fraction(Number(value.toPrecision(12)).toFixed(6));
}

function decimalOf(value: Fraction): string {
  return String(Number(value.valueOf().toFixed(6)));
}
