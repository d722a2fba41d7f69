// Rules of a school day about numbers of people: groups, adults, room at the stations.
import { peopleOf, rulesOf, type Checked } from './tripChecked.ts';

const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);

/** Broken rules about groups, their adults and the room at the stations. */
export function sizeFaults(checked: Checked): string[] {
  return [...groupFaults(checked), ...adultFaults(checked), ...partyFaults(checked)];
}

function groupFaults(checked: Checked): string[] {
  const { day, wish } = checked;
  const faults: string[] = [];
  const sizes = day.groups.map((one) => one.children);
  if (total(sizes) !== wish.children)
    faults.push(`groups hold ${total(sizes)} children, but ${wish.children} come`);
  if (Math.max(...sizes) - Math.min(...sizes) > 1)
    faults.push(`group sizes differ by more than one: ${sizes.join(', ')}`);
  if (sizes.some((size) => size < 1)) faults.push('a group has no child');
  const most = rulesOf(checked).groupMost;
  for (const { id, children } of day.groups)
    if (children > most)
      faults.push(`group ${id} has ${children} children, more than one card holds (${most})`);
  if (day.groups.some((one, at) => one.id !== at + 1)) faults.push('groups are not counted from 1');
  const chairs = day.groups.filter((one) => one.wheelchair).length;
  const needed = wish.needs.includes('wheelchair') ? 1 : 0;
  if (chairs !== needed) faults.push(`the wheelchair goes with ${chairs} groups instead of ${needed}`);
  return faults;
}

function adultFaults(checked: Checked): string[] {
  const { day, wish, farm } = checked;
  const faults: string[] = [];
  const spare = Math.floor(wish.children / farm.childrenPerSpare);
  if (wish.adults < farm.leastAdults)
    faults.push(`${wish.adults} adults come, fewer than any visit has (${farm.leastAdults})`);
  if (day.spare !== spare) faults.push(`${day.spare} adults are kept free instead of ${spare}`);
  const leading = total(day.groups.map((one) => one.adults));
  if (leading + day.spare !== wish.adults)
    faults.push(`groups and spare adults make ${leading + day.spare}, but ${wish.adults} adults come`);
  const most = rulesOf(checked).perAdult.most;
  for (const { id, children, adults } of day.groups) {
    if (adults < 1) faults.push(`group ${id} has no adult`);
    if (children > adults * most)
      faults.push(`group ${id} has ${children} children for ${adults} adults, more than ${most} each`);
  }
  const numbers = day.groups.flatMap((one) => [one.children, one.adults]);
  if (numbers.some((one) => !Number.isInteger(one) || one < 0)) faults.push('people are not whole numbers');
  return faults;
}

function partyFaults(checked: Checked): string[] {
  const { day, farm } = checked;
  const faults: string[] = [];
  const expected = Math.min(day.groups.length, day.stations.length);
  if (day.parties.length !== expected)
    faults.push(`there are ${day.parties.length} parties instead of ${expected}`);
  if (day.groups.some(({ party }) => !(party in day.parties))) faults.push('a group walks with no party');
  day.parties.forEach((_, party) => {
    if (peopleOf(checked, party) === 0) faults.push(`party ${party} is nobody`);
    const children = total(day.groups.filter((one) => one.party === party).map((one) => one.children));
    for (const id of day.stations) {
      const room = farm.stations.find((one) => one.id === id)?.capacity ?? 0;
      if (children > room)
        faults.push(`${id} has room for ${room}, but party ${party} is ${children} children`);
    }
  });
  return faults;
}
