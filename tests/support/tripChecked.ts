// A planned school day with all that it was planned from, as the checker of its rules takes it.
import { bandOfGrade } from '../../shared/tasks/grades.ts';
import type { DayGround, DayPlan, TripFarm, TripNote, TripWish } from '../../shared/trip/types.ts';

/** A day to be checked, with all that it was planned from. */
export interface Checked {
  readonly day: DayPlan;
  readonly notes: readonly TripNote[];
  readonly wish: TripWish;
  readonly farm: TripFarm;
  readonly ground: DayGround;
}

/** The farm's thresholds for the children who come. */
export const rulesOf = ({ farm, wish }: Checked) => farm.rules[bandOfGrade(wish.grade)];

/** Children and adults of a party's groups. */
export const peopleOf = ({ day }: Checked, party: number) =>
  day.groups.filter((one) => one.party === party).reduce((sum, one) => sum + one.children + one.adults, 0);
