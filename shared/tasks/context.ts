// The week laid out for tasks: milkings, days of a doe and days of the herd, with the band's rounding at hand.
import Fraction from 'fraction.js';
import type { LactationWeeks } from '../lactation/lactationWeeks.ts';
import type { MilkingTime, UnitSystem } from '../herd/types.ts';
import type { DoeWeek, WeekView } from '../herd/week.ts';
import type { Amount } from '../quantity/amount.ts';
import { cupMeasure, measureOf, type Band, type Measure } from '../quantity/grade.ts';
import { chanceOf, type Chance } from '../sheet/chance.ts';
import { topGrade, type Grade } from './standards.ts';

/** One milking with milk in it. */
export interface Reading {
  readonly doe: DoeWeek;
  readonly date: string;
  readonly milking: MilkingTime;
  readonly amount_mL: number;
  readonly amount: Amount;
}

/** A doe's day on which every milking expected of her is entered, with milk. */
export interface DoeDay {
  readonly doe: DoeWeek;
  readonly date: string;
  readonly am: Reading | null;
  readonly pm: Reading | null;
  readonly readings: readonly Reading[];
  readonly total_mL: number;
}

/** A whole day of the herd in the window, with its rows. */
export interface HerdWholeDay {
  readonly date: string;
  readonly total_mL: number;
  readonly readings: readonly Reading[];
}

/** What a sheet is made from. */
export interface SheetSource {
  readonly week: WeekView;
  readonly units: UnitSystem;
  readonly jar_mL: number;
  /** Clock times of the milkings, `HH:MM`; without them no task asks about the clock. */
  readonly milkings?: Readonly<Record<MilkingTime, string>> | undefined;
  /** Lactations of the herd in weeks, for tasks about a whole curve; without them none is made from the book. */
  readonly curves?: readonly LactationWeeks[] | undefined;
  /** Earlier weeks, for the kinds of task that this one cannot carry. */
  readonly earlier?: EarlierWeeks | undefined;
}

/** Earlier weeks that carry what this week cannot, each the last one that does. */
export interface EarlierWeeks {
  readonly weeks: readonly WeekView[];
  /** Place in `weeks` by `KIND@GRADE`. */
  readonly carry: Readonly<Record<string, number>>;
}

/** The name under which an earlier week is kept for a kind and a grade. */
export function carryKey(kind: string, grade: Grade): string {
  return `${kind}@${grade}`;
}

/** The week as the tasks of one sheet see it. `used` counts what the sheet has used already. */
export interface TaskContext extends SheetSource {
  readonly band: Band;
  /** The oldest grade that a task may be for. */
  readonly grade: Grade;
  readonly measure: Measure;
  /** Whole cups, which every band can count. */
  readonly cups: Measure;
  /** Whole cups that fill the farm's jar; null where that is no whole number from 2 to 10. */
  readonly cupsPerJar: number | null;
  readonly readings: readonly Reading[];
  readonly doeDays: readonly DoeDay[];
  readonly herdDays: readonly HerdWholeDay[];
  readonly chance: Chance;
  readonly used: Map<string, number>;
}

/** Lays out a week for the tasks of one sheet. */
export function taskContext(
  source: SheetSource,
  band: Band,
  seed: string,
  grade: Grade = topGrade(band),
): TaskContext {
  const cups = cupMeasure(source.units);
  const readings = source.week.does.flatMap((doe) =>
    doe.milkings
      .filter((one) => one.amount_mL > 0)
      .map(({ date, milking, amount_mL, amount }): Reading => ({ doe, date, milking, amount_mL, amount })),
  );
  return {
    ...source,
    band,
    grade,
    measure: measureOf(band, source.units),
    cups,
    cupsPerJar: cupsPerJar(source.jar_mL, cups.unit_mL.valueOf()),
    readings,
    doeDays: doeDays(source.week, readings),
    herdDays: source.week.days
      .filter((day) => day.whole && day.total_mL > 0)
      .map((day) => ({
        date: day.date,
        total_mL: day.total_mL,
        readings: readings.filter((one) => one.date === day.date),
      })),
    chance: chanceOf(seed),
    used: new Map(),
  };
}

function cupsPerJar(jar_mL: number, cup_mL: number): number | null {
  const cups = Math.round(jar_mL / cup_mL);
  return Math.abs(jar_mL / cup_mL - cups) < 1e-6 && cups >= 2 && cups <= 10 ? cups : null;
}

function doeDays(week: WeekView, readings: readonly Reading[]): DoeDay[] {
  const days: DoeDay[] = [];
  for (const doe of week.does) {
    for (const { date } of week.days) {
      const own = readings.filter((one) => one.doe.id === doe.id && one.date === date);
      if (own.length === 0 || doe.missing.some((gap) => gap.date === date)) continue;
      const entries = doe.milkings.filter((one) => one.date === date);
      days.push({
        doe,
        date,
        am: own.find((one) => one.milking === 'am') ?? null,
        pm: own.find((one) => one.milking === 'pm') ?? null,
        readings: own,
        total_mL: entries.reduce((sum, one) => sum + one.amount_mL, 0),
      });
    }
  }
  return days;
}

/** Days of each doe, for those who have at least `least` of them. */
export function doesWithDays(context: TaskContext, least: number): { doe: DoeWeek; days: DoeDay[] }[] {
  return context.week.does
    .map((doe) => ({ doe, days: context.doeDays.filter((day) => day.doe.id === doe.id) }))
    .filter(({ days }) => days.length >= least);
}

/** Names that are told apart: no two does of a task may share a name. */
export function namesDiffer(does: readonly DoeWeek[]): boolean {
  return new Set(does.map((doe) => doe.name)).size === does.length;
}

/** The `size` of a list that the sheet has used least, in a chance order. */
export function leastUsed<T>(
  context: TaskContext,
  from: readonly T[],
  size: number,
  nameOf: (one: T) => string,
): T[] {
  return context.chance
    .shuffle(from)
    .map((one, index) => ({ one, index, uses: context.used.get(nameOf(one)) ?? 0 }))
    .sort((a, b) => a.uses - b.uses || a.index - b.index)
    .slice(0, size)
    .map(({ one }) => one);
}

/** Notes that a task has used these. */
export function use(context: TaskContext, names: readonly string[]): void {
  for (const name of names) context.used.set(name, (context.used.get(name) ?? 0) + 1);
}

/** Drops every one whose value stands in the list already. */
export function distinctBy<T>(from: readonly T[], valueOf: (one: T) => string | number): T[] {
  const met = new Set<string | number>();
  return from.filter((one) => !met.has(valueOf(one)) && met.add(valueOf(one)));
}

/** Sum of exact fractions. */
export function total(values: readonly Fraction[]): Fraction {
  return values.reduce((sum, one) => sum.add(one), new Fraction(0));
}
