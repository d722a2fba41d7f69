// Lengths of a doe's phases where the book does not say.

/** Kids stay with their mother so long before the first night apart, days. Common practice, no source. */
export const WITH_KIDS_DAYS = 21;
/** Nights apart, a.m. milking only, last six to eight weeks, days. Common practice, no source. */
export const NIGHTS_APART_DAYS = Object.freeze({ low: 42, usual: 49, high: 56 });
/** Days of milk that a lactation is counted as, and what house goats give. Sources: US dairy goat records; extension pages. */
export const LACTATION_DAYS = Object.freeze({ low: 240, usual: 305 });
/** Days after kidding between which does give the most. Sources: Peris and others 1997; Gipson and Grossman 1990 (from memory). */
export const PEAK_DAYS = Object.freeze({ low: 28, high: 56 });
/** Does kid about once a year; a cycle sooner or later, days. Common practice, no source; the cycle by extension pages. */
export const KIDDING_INTERVAL_DAYS = Object.freeze({ usual: 365, cycle: 21 });
// An own interval outside these is a season left out, or a slip, and tells nothing of the next.
export const OWN_INTERVAL_DAYS = Object.freeze({ low: 300, high: 430 });

/** Facts in content/facts that the year stands on. */
export const YEAR_FACTS = Object.freeze([
  'gestation',
  'dry-off',
  'lactation-length',
  'peak-weeks',
  'kids-with-mother',
  'nights-apart',
  'once-a-year',
  'heat-cycle',
] as const);
