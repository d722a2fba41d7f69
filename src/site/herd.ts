// What the herd page is made of: each doe's week, lactations and outlook, in the farm's unit.
import { dayFromCivil, civilFromDay, isoDate } from '../../shared/calendar/day.ts';
import type { DoeWeek } from '../../shared/herd/week.ts';
import type { PhaseSpan } from '../../shared/herd/expected.ts';
import { curveView, type CurveView } from '../../shared/lactation/curveView.ts';
import { lactationsOf, type Lactation } from '../../shared/lactation/doeDays.ts';
import { openOutlook } from '../../shared/outlook/outlook.ts';
import type { DayOutlook, DoeOutlook } from '../../shared/outlook/outcome.ts';
import { UNIT_ML } from '../../shared/quantity/units.ts';
import { openSite } from './site.ts';

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
  readonly spans: readonly PhaseSpan[];
  /** The newest first, two at most, those with a day of full milking; empty where she has none. */
  readonly lactations: readonly LactationView[];
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
  /** Litres in one of the unit shown. */
  readonly perUnit_L: number;
}

let made: HerdView | null = null;

/** The herd page's content, computed once. */
export function herdView(): HerdView {
  if (made) return made;
  const { book, ledger, week, farm } = openSite();
  const { asOf } = ledger;
  const outlook = openOutlook(book, ledger);
  const days = AHEAD_DAYS.map((ahead) => outlook.on(asOf + ahead));
  const { year } = civilFromDay(asOf);
  const does = week.does.map((doe, index) => ({
    week: doe,
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
    outlook: days.map((day) => day.does[index]).filter((one): one is DoeOutlook => one !== undefined),
  }));
  made = {
    does,
    days,
    year: { from: dayFromCivil(year, 1, 1), to: dayFromCivil(year, 12, 31) },
    asOf,
    perUnit_L: UNIT_ML[farm.units === 'us' ? 'cup' : 'L'].valueOf() / 1000,
  };
  return made;
}

/** ISO date of a day of the outlook. */
export const dateOf = (day: DayOutlook): string => isoDate(day.day);
