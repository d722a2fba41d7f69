// The herd as a page tells it: each doe's week, lactations and outlook, in the farm's unit.
import { dayFromCivil, civilFromDay } from '../calendar/day.ts';
import type { FiguresFile } from '../herd/figures.ts';
import type { Ledger } from '../herd/ledger.ts';
import { isTreated } from '../herd/treated.ts';
import type { Book, Farm, UnitSystem } from '../herd/types.ts';
import type { DoeWeek, WeekView } from '../herd/week.ts';
import { phaseOn, type Phase, type PhaseSpan } from '../herd/expected.ts';
import { curveView, type CurveView } from '../lactation/curveView.ts';
import { kidsTaken, type KidsTaken } from '../lactation/kidsAtFoot.ts';
import { lactationsOf, type Lactation } from '../lactation/doeDays.ts';
import { openOutlook } from './outlook.ts';
import type { DayOutlook, DoeOutlook } from './outcome.ts';
import { shownUnit, UNIT_ML, type VolumeUnit } from '../quantity/units.ts';

/** One lactation with its drawing. */
export interface LactationView {
  readonly lactation: Lactation;
  /** Year of the kidding. */
  readonly year: number;
  readonly view: CurveView;
}

/** One doe on the herd page. */
export interface DoeView {
  readonly week: DoeWeek;
  /** Her phase on the book's day, which may be later than the week. */
  readonly phase: Phase;
  /** Whether her latest kids were reared apart from her, so that she was milked from the next day on. */
  readonly byBottle: boolean;
  /** Whether her milk is kept apart on the book's day, since she is under treatment. */
  readonly treated: boolean;
  readonly spans: readonly PhaseSpan[];
  /** The newest first, two at most, those with a day of full milking; empty where she has none. */
  readonly lactations: readonly LactationView[];
  /** What the kids of her latest kidding likely took, an estimate; null where she has none on record. */
  readonly kidsTook: KidsTaken | null;
  /** In the order of the herd's outlook days. */
  readonly outlook: readonly DoeOutlook[];
}

/** Days ahead that the page tells. */
export const AHEAD_DAYS: readonly number[] = [1, 7, 14, 28];

/** The herd page's content. */
export interface HerdView {
  readonly does: readonly DoeView[];
  readonly days: readonly DayOutlook[];
  /** The calendar year of `asOf`, for the strips; day numbers. */
  readonly year: { readonly from: number; readonly to: number };
  readonly asOf: number;
  readonly units: UnitSystem;
  /** The unit shown, and its litres. */
  readonly unit: VolumeUnit;
  readonly perUnit_L: number;
  readonly figures: FiguresFile;
  readonly week: WeekView;
  readonly jar_mL: number;
}

/** What the herd page is computed from. */
export interface HerdInput {
  readonly farm: Farm;
  readonly book: Book;
  readonly ledger: Ledger;
  readonly figures: FiguresFile;
  readonly week: WeekView;
  readonly jar_mL: number;
}

/** Computes the herd page's content: every lactation with days of full milking is fitted, the newest two of a doe shown. */
export function herdView({ farm, book, ledger, figures, week, jar_mL }: HerdInput): HerdView {
  const { asOf } = ledger;
  const outlook = openOutlook(book, ledger);
  const days = AHEAD_DAYS.map((ahead) => outlook.on(asOf + ahead));
  const { year } = civilFromDay(asOf);
  const unit = shownUnit(farm.units);
  const does = week.does.map((doe, index) => ({
    week: doe,
    phase: phaseOn(ledger.phases.get(doe.id) ?? [], asOf),
    byBottle: rearedByBottle(book, asOf, doe.id),
    treated: isTreated(book.treatments ?? [], doe.id, asOf),
    spans: ledger.phases.get(doe.id) ?? [],
    lactations: lactationsOf(book, ledger, doe.id)
      .filter((lactation) => lactation.days.length > 0)
      .reverse()
      .slice(0, 2)
      .map((lactation) => ({
        lactation,
        year: civilFromDay(lactation.kidding.day).year,
        view: curveView(lactation),
      })),
    kidsTook: kidsTaken(book, ledger, doe.id).at(-1) ?? null,
    outlook: days.map((day) => day.does[index]).filter((one): one is DoeOutlook => one !== undefined),
  }));
  return {
    does,
    days,
    year: { from: dayFromCivil(year, 1, 1), to: dayFromCivil(year, 12, 31) },
    asOf,
    units: farm.units,
    unit,
    perUnit_L: UNIT_ML[unit].valueOf() / 1000,
    figures,
    week,
    jar_mL,
  };
}

function rearedByBottle(book: Book, asOf: number, doe: string): boolean {
  const kiddings = book.kiddings.filter((one) => one.doe === doe && one.day <= asOf);
  const latest = [...kiddings].sort((a, b) => b.day - a.day)[0];
  return latest !== undefined && latest.apart === null && latest.weaned === null;
}
