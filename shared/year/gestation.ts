// From breeding to kidding, and when the rest before it begins. Days are day numbers.

/** Days that a doe carries. Source: Amoah and others 1996, Journal of Animal Science: 150.6 ± 2.6 days in 608 does. */
export const GESTATION_DAYS = Object.freeze({ low: 145, usual: 150, high: 155 });
/** Days of rest before kidding, and fewer than which is short. Source: extension pages (from memory). */
export const DRY_DAYS = Object.freeze({ usual: 60, short: 45 });

/** A day, with the earliest and latest it may well be. */
export interface DayRange {
  readonly day: number;
  readonly from: number;
  readonly to: number;
}

/**
 * When a doe bred on a day will kid: 150 days later, within 145 to 155.
 * @example dueFrom(0) // => { day: 150, from: 145, to: 155 }
 */
export function dueFrom(bred: number): DayRange {
  const { low, usual, high } = GESTATION_DAYS;
  return { day: bred + usual, from: bred + low, to: bred + high };
}

/** The day to breed for a wished day of kidding. */
export function bredFor(due: number): number {
  return due - GESTATION_DAYS.usual;
}

/** The last day on which she should be milked no more: 60 days before she is due. */
export function dryOffFor(due: number): number {
  return due - DRY_DAYS.usual;
}
