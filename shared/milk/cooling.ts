// The cooling clock: two deadlines, counted from the start and from the end of milking.

/** A temperature that the milk must have reached by a time of day. */
export interface CoolingDeadline {
  readonly from: 'start of milking' | 'end of milking';
  /** Minutes after midnight of the day on which milking began; 1440 and more is the next day. */
  readonly by_min: number;
  /** The printed pair. */
  readonly atMost_C: number;
  readonly atMost_F: number;
}

/** Fact in content/facts that carries the rule. */
export const COOLING_FACT = 'cooling-clock';
const DAY_MIN = 24 * 60;
// No milking of a herd lasts longer; what looks so is a slip of the clock.
const LONGEST_MILKING_MIN = 6 * 60;

/**
 * Both deadlines, the sooner one first: 10 °C within four hours of the start of milking, 7 °C within
 * two hours of its end. After a short milking the second one comes first. Minutes after midnight; an
 * end before the start is on the next day. Source: Grade A Pasteurized Milk Ordinance, table 1.
 */
export function coolingDeadlines(
  start_min: number,
  end_min: number,
): { ok: true; deadlines: CoolingDeadline[] } | { ok: false; why: 'a milking lasts at most six hours' } {
  const end = end_min < start_min ? end_min + DAY_MIN : end_min;
  if (!(end - start_min <= LONGEST_MILKING_MIN))
    return { ok: false, why: 'a milking lasts at most six hours' };
  const deadlines: CoolingDeadline[] = [
    { from: 'start of milking', by_min: start_min + 4 * 60, atMost_C: 10, atMost_F: 50 },
    { from: 'end of milking', by_min: end + 2 * 60, atMost_C: 7, atMost_F: 45 },
  ];
  return { ok: true, deadlines: deadlines.sort((a, b) => a.by_min - b.by_min) };
}

/** A reading of the thermometer. */
export interface MilkReading {
  readonly at_min: number;
  readonly milk_C: number;
}

/** What readings say of a deadline; `not known` where none was taken that could tell. */
export type DeadlineVerdict = 'met' | 'missed' | 'not known';

/**
 * Whether a deadline was met by the thermometer's readings: met where the last one up to it was cold
 * enough, missed where the first one at or after it was still too warm.
 */
export function judgeDeadline(deadline: CoolingDeadline, readings: readonly MilkReading[]): DeadlineVerdict {
  const inOrder = [...readings].sort((a, b) => a.at_min - b.at_min);
  const before = inOrder.findLast((one) => one.at_min <= deadline.by_min);
  if (before && before.milk_C <= deadline.atMost_C) return 'met';
  const after = inOrder.find((one) => one.at_min >= deadline.by_min);
  return after && after.milk_C > deadline.atMost_C ? 'missed' : 'not known';
}
