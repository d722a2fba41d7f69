// Every rule that a planned school day must keep, told in words where one is broken; written from the rules, not from the planner.
import type { Checked } from './tripChecked.ts';
import { clockFaults } from './tripClock.ts';
import { mealFaults } from './tripMeal.ts';
import { noteFaults } from './tripNotes.ts';
import { placeFaults } from './tripPlaces.ts';
import { sizeFaults } from './tripSizes.ts';

/**
 * Every rule that the day breaks, one sentence each; none for a good day. The rules are the invariants of a
 * rotation of groups (Latin property, capacity, an adult in each group every minute, a demonstration within its
 * time, contact before washing before food, no food among animals, accessible stations, buses, toilets within the
 * time of the band) and the shape of the day that farm and school agree on. Supervision and hygiene: HSE AIS23 and
 * the NASPHV compendium (from memory); lengths of time are common practice, no source.
 */
export function brokenRules(checked: Checked): string[] {
  return [
    ...sizeFaults(checked),
    ...placeFaults(checked),
    ...noteFaults(checked),
    ...clockFaults(checked),
    ...mealFaults(checked),
  ];
}
