// Rules of a school day about hands and food: washing after animals, washing before food, seats, the hour of the meal.
import type { Slot } from '../../shared/trip/types.ts';
import { peopleOf, rulesOf, type Checked } from './tripChecked.ts';
import { washSlot_min, wash_min } from './tripWash.ts';

const HAIR = 1e-9;
const at = (slots: readonly Slot[], kind: Slot['kind']) => slots.filter((slot) => slot.kind === kind);

/** Broken rules about washing and eating. */
export function mealFaults(checked: Checked): string[] {
  return [
    ...checked.day.parties.flatMap((slots, party) =>
      handFaults(slots, checked).map((fault) => `party ${party}: ${fault}`),
    ),
    ...lunchFaults(checked),
    ...turnFaults(checked),
    ...seatFaults(checked),
  ];
}

/** Last contact ends, then washing begins, then food; and whoever leaves has washed after the animals. */
function handFaults(slots: readonly Slot[], { wish, farm, day }: Checked): string[] {
  const faults: string[] = [];
  const isClean = (slot: Slot) => farm.stations.find((one) => one.id === slot.station)?.zone === 'clean';
  const lunches = at(slots, 'lunch');
  if (lunches.length !== (wish.lunch === null ? 0 : 1)) faults.push(`there is food ${lunches.length} times`);
  for (const lunch of lunches) {
    const before = slots.filter((slot) => slot.to <= lunch.from);
    const wash = at(before, 'wash').at(-1);
    const contact = at(before, 'station').at(-1);
    if (wash === undefined) faults.push('nobody washes before the food');
    else if (contact && contact.to > wash.from) faults.push('a station comes between washing and food');
    if (slots.some((slot) => slot.kind === 'station' && slot.from < lunch.to && slot.to > lunch.from))
      faults.push('somebody eats at a station');
    if (lunch.station !== null) faults.push(`food is placed at ${lunch.station}`);
  }
  const washed = at(slots, 'wash').at(-1)?.to ?? Number.NEGATIVE_INFINITY;
  const dirty = slots.filter((slot) => slot.kind === 'station' && !isClean(slot) && slot.from >= washed);
  if (dirty.length > 0) faults.push(`nobody washes after ${dirty.map((slot) => slot.station).join(', ')}`);
  if (day.parties.length > 0 && at(slots, 'wash').some((slot) => slot.station !== null))
    faults.push('washing is placed at a station');
  return faults;
}

function lunchFaults(checked: Checked): string[] {
  const { day, wish, farm } = checked;
  const faults: string[] = [];
  const minutes = rulesOf(checked).lunch_min;
  const lunches = day.parties.flatMap((slots) => at(slots, 'lunch'));
  for (const slot of lunches)
    if (slot.to - slot.from < minutes)
      faults.push(`food has ${slot.to - slot.from} minutes instead of ${minutes}`);
  if (wish.lunch === null || lunches.length === 0) return faults;
  const first = Math.min(...lunches.map((slot) => slot.from));
  if (first < wish.lunch) faults.push(`food starts at ${first}, before ${wish.lunch}`);
  if (first > wish.lunch + farm.lunchSlack_min)
    faults.push(`food starts at ${first}, more than ${farm.lunchSlack_min} minutes after ${wish.lunch}`);
  return faults;
}

/** Everybody washes at once where that is short enough, else party after party; each as long as the formula says. */
function turnFaults(checked: Checked): string[] {
  const { day, farm } = checked;
  const faults: string[] = [];
  const all_min = wash_min(checked, null);
  if (Math.abs(day.wash_min - all_min) > HAIR)
    faults.push(`washing is said to take ${day.wash_min} minutes, the formula says ${all_min}`);
  const washes = day.parties.flatMap((slots, party) => at(slots, 'wash').map((slot) => ({ ...slot, party })));
  washes.sort((a, b) => a.from - b.from);
  const isTogether = all_min <= farm.washTogether_min + HAIR;
  for (const { party, from, to } of washes) {
    const minutes = washSlot_min(checked, isTogether ? null : party);
    if (to - from < minutes) faults.push(`party ${party} washes ${to - from} minutes instead of ${minutes}`);
  }
  washes.forEach((wash, index) => {
    const before = washes[index - 1];
    if (before === undefined || wash.from >= before.to) return;
    const same = wash.from === before.from && wash.to === before.to;
    if (!isTogether) faults.push(`parties ${before.party} and ${wash.party} wash at once, and the taps are too few`);
    else if (!same) faults.push(`parties ${before.party} and ${wash.party} do not wash together`);
  });
  return faults;
} // prettier-ignore

function seatFaults(checked: Checked): string[] {
  const { day, farm } = checked;
  const eating = day.parties.map((slots) => at(slots, 'lunch'));
  const starts = [...new Set(eating.flatMap((slots) => slots.map((slot) => slot.from)))];
  return starts.flatMap((minute) => {
    const parties = eating.flatMap((slots, party) =>
      slots.some((slot) => slot.from <= minute && minute < slot.to) ? [party] : [],
    );
    const free = parties.length === day.parties.length ? day.spare : 0;
    const people = parties.reduce((sum, party) => sum + peopleOf(checked, party), free);
    return people > farm.seats ? [`${people} people eat at ${minute}, but ${farm.seats} can sit`] : [];
  });
}
