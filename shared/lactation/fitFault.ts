// Why a doe's days carry no curve, or a curve but no peak: with the numbers that a sentence needs.

/** How a curve without a highest point runs: from its first day downward, upward to its last, level, or sagging. */
export type Run = 'falling' | 'rising' | 'level' | 'sagging';

/** What keeps days from carrying a curve with a peak. Days count from kidding. */
export type FitFault =
  /** Fewer different days than a curve needs. */
  | { readonly kind: 'tooFew'; readonly days: number; readonly need: number }
  /** Nothing was milked on any of the days. */
  | { readonly kind: 'allZero'; readonly days: number }
  /** No finite curve fits best. */
  | { readonly kind: 'notConverged'; readonly days: number }
  /** b or c is not above 0. */
  | { readonly kind: 'noPeak'; readonly run: Run }
  /** The curve's highest point lies before the first or after the last day observed. */
  | {
      readonly kind: 'peakOutside';
      readonly side: 'before' | 'after';
      readonly peak_day: number;
      readonly first_day: number;
      readonly last_day: number;
    }
  /** The curve explains less of the ups and downs than `need` (both are parts of 1). */
  | { readonly kind: 'poorFit'; readonly r2: number; readonly need: number }
  /** The day of the peak is known too poorly, or too near the last day to be sure that it is passed. */
  | {
      readonly kind: 'peakUnsure';
      readonly peak_day: number;
      readonly peak_day_se: number;
      readonly first_day: number;
      readonly last_day: number;
    };

/** A message of `content/words/…/lactation.yaml`: its key and what fills its slots. */
export interface FaultMessage {
  readonly key: string;
  readonly slots: Readonly<Record<string, string | number>>;
}

/**
 * The words' key and slots for a fault, days and hundredths rounded to whole numbers.
 * @example faultMessage({ kind: 'tooFew', days: 1, need: 8 }) // => { key: 'lactation.fault.tooFew', slots: { n: 1, need: 8 } }
 */
export function faultMessage(fault: FitFault): FaultMessage {
  const key = (name: string) => `lactation.fault.${name}`;
  switch (fault.kind) {
    case 'tooFew':
      return { key: key('tooFew'), slots: { n: fault.days, need: fault.need } };
    case 'allZero':
      return { key: key('allZero'), slots: { n: fault.days } };
    case 'notConverged':
      return { key: key('notConverged'), slots: { n: fault.days } };
    case 'noPeak':
      return { key: key(`noPeak.${fault.run}`), slots: {} };
    case 'peakOutside':
      return {
        key: key(`peakOutside.${fault.side}`),
        slots: { first: Math.round(fault.first_day), last: Math.round(fault.last_day) },
      };
    case 'poorFit':
      return { key: key('poorFit'), slots: { percent: Math.round(fault.r2 * 100), need: Math.round(fault.need * 100) } }; // prettier-ignore
    case 'peakUnsure': {
      const two = 2 * fault.peak_day_se;
      const from = Math.max(1, Math.round(fault.peak_day - two));
      const to = Math.round(fault.peak_day + two);
      return { key: key('peakUnsure'), slots: { from, to, last: Math.round(fault.last_day) } };
    }
  }
}
