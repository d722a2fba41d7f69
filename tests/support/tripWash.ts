// How long washing and toilets take, worked out in whole seconds so that nothing is lost on the way.
import { peopleOf, rulesOf, type Checked } from './tripChecked.ts';

/**
 * Minutes of washing, not rounded: ceil(people / taps) turns of the band's seconds, and the farm's share for queues.
 * `party` null means everybody, with the adults who are kept free.
 */
export function wash_min(checked: Checked, party: number | null): number {
  const { wish, farm } = checked;
  const people = party === null ? wish.children + wish.adults : peopleOf(checked, party);
  return (Math.ceil(people / farm.taps) * rulesOf(checked).wash_s * (1 + farm.washSpare)) / 60;
}

/** Whole minutes that washing takes up in a day. A hair below a whole number is that number. */
export const washSlot_min = (checked: Checked, party: number | null) =>
  Math.ceil(wash_min(checked, party) - 1e-9);

/** Whole minutes of a chance to go to the toilet; a pause between stations also has one turn at the tap. */
export function toilets_min(checked: Checked, isPause: boolean): number {
  const { toilet_s, wash_s } = rulesOf(checked);
  const seconds = Math.ceil(checked.wish.children / checked.farm.toilets) * toilet_s;
  return Math.ceil((seconds + (isPause ? wash_s : 0)) / 60);
}
