// Rules of a school day about time: slots without gaps, opening and end, walks, toilets, buses.
import type { Slot } from '../../shared/trip/types.ts';
import { atStations } from './tripPlaces.ts';
import { rulesOf, type Checked } from './tripChecked.ts';
import { toilets_min } from './tripWash.ts';

const length = (slot: Slot) => slot.to - slot.from;
const at = (slots: readonly Slot[], kind: Slot['kind']) => slots.filter((slot) => slot.kind === kind);

/** Broken rules about the clock, party by party. */
export function clockFaults(checked: Checked): string[] {
  return checked.day.parties.flatMap((slots, party) =>
    [
      ...gapFaults(slots, checked),
      ...openingFaults(slots, checked),
      ...walkFaults(slots, checked),
      ...toiletFaults(slots, checked),
      ...endFaults(slots, checked),
    ].map((fault) => `party ${party}: ${fault}`),
  );
}

function gapFaults(slots: readonly Slot[], { wish }: Checked): string[] {
  const faults: string[] = [];
  if (slots[0]?.from !== wish.arrive) faults.push('the day does not begin when the buses arrive');
  if (slots.at(-1)?.to !== wish.leave) faults.push('the day does not end when the buses leave');
  slots.forEach((slot, index) => {
    if (!Number.isInteger(slot.from) || !Number.isInteger(slot.to)) faults.push(`${slot.kind} is not in whole minutes`);
    if (length(slot) <= 0) faults.push(`${slot.kind} at ${slot.from} has no length`);
    const next = slots[index + 1];
    if (next && next.from !== slot.to) faults.push(`${next.kind} does not follow ${slot.kind} at ${slot.to}`);
    const placed = slot.kind === 'station' || (slot.kind === 'walk' && next?.kind === 'station');
    if (placed ? slot.station === null : slot.station !== null && slot.kind !== 'walk')
      faults.push(`${slot.kind} at ${slot.from} ${placed ? 'names no station' : 'names a station'}`);
    if (slot.kind === 'walk' && next?.kind === 'station' && next.station !== slot.station)
      faults.push(`the walk at ${slot.from} leads to ${slot.station}, and then comes ${next.station}`);
    if (slot.kind !== 'station' && slot.kind !== 'walk' && slot.for !== null)
      faults.push(`${slot.kind} at ${slot.from} stands in for ${slot.for}`);
  });
  return faults;
} // prettier-ignore

/** Unloading, the walk from the gate, the welcome and the toilets come first, each long enough. */
function openingFaults(slots: readonly Slot[], checked: Checked): string[] {
  const { wish, farm } = checked;
  const { bus_min, welcome_min } = rulesOf(checked);
  const unload = Math.ceil(wish.buses / farm.busesAtOnce) * bus_min;
  const needs: [Slot['kind'], number][] = [
    ['unload', unload],
    ['walk', farm.gateWalk_min],
    ['welcome', welcome_min],
    ['toilets', toilets_min(checked, false)],
  ];
  const first = slots.findIndex((slot) => slot.kind === 'station' || slot.kind === 'lunch');
  const opening = slots.slice(0, first < 0 ? slots.length : first).filter((slot) => slot.kind !== 'wait');
  const due = needs.filter(([, minutes]) => minutes > 0);
  const faults = due.flatMap(([kind, minutes], index) => {
    const slot = opening[index];
    if (slot?.kind !== kind) return [`${kind} is missing from the opening`];
    return length(slot) < minutes ? [`${kind} has ${length(slot)} minutes instead of ${minutes}`] : [];
  });
  for (const kind of ['unload', 'welcome'] as const)
    if (at(slots, kind).length !== (needs.find(([one]) => one === kind)?.[1] ? 1 : 0))
      faults.push(`${kind} comes ${at(slots, kind).length} times`);
  if (unload > 0 && slots[0]?.kind !== 'unload') faults.push('unloading does not begin on arrival');
  return faults;
}

/** Minutes on the one-way loop from one station forward to another: every station passed has its walk. */
export function forward_min({ farm }: Pick<Checked, 'farm'>, from: string, to: string): number {
  const count = farm.stations.length;
  const end = farm.stations.findIndex((one) => one.id === to);
  let minutes = 0;
  let place = farm.stations.findIndex((one) => one.id === from);
  if (place < 0 || end < 0) return Number.NaN;
  do {
    place = (place + 1) % count;
    minutes += farm.stations[place]?.walk_min ?? 0;
  } while (place !== end);
  return minutes;
}

/** The longest walk between neighbours of the plan on the loop, from the last to the first included. */
export function longestWalk_min(checked: Checked): number {
  const { stations } = checked.day;
  return Math.max(...stations.map((id, index) => forward_min(checked, stations.at(index - 1) ?? id, id)));
}

/** How many minutes of walking must lie between two things that a party does. */
function needed_min(from: Slot, to: Slot, checked: Checked): number {
  const { farm, day } = checked;
  if (to.kind === 'station' && to.station !== null) {
    const headCount = rulesOf(checked).headCount_min;
    const step = headCount + longestWalk_min(checked);
    if (from.kind === 'station' && from.station !== null)
      return day.manner === 'loop' ? step : Math.max(step, headCount + forward_min(checked, from.station, to.station));
    return from.kind === 'welcome' ? step : Math.max(step, isOpening(from, checked) ? 0 : headCount + farm.tapsWalk_min);
  }
  if (from.kind === 'station' && (to.kind === 'wash' || to.kind === 'toilets' || to.kind === 'lunch'))
    return farm.tapsWalk_min;
  return to.kind === 'load' ? farm.gateWalk_min : 0;
} // prettier-ignore

// The first toilets lie at the place of the welcome, where the loop begins.
const isOpening = (from: Slot, { day }: Checked) =>
  from.kind === 'toilets' && day.parties.some((slots) => at(slots, 'toilets')[0]?.from === from.from);

function walkFaults(slots: readonly Slot[], checked: Checked): string[] {
  const faults: string[] = [];
  let before: Slot | null = null;
  let walked = 0;
  for (const slot of slots) {
    if (slot.kind === 'wait') continue;
    if (slot.kind === 'walk') {
      walked += length(slot);
      continue;
    }
    const needed: number = before === null ? 0 : needed_min(before, slot, checked);
    if (walked < needed)
      faults.push(`the walk to ${slot.station ?? slot.kind} at ${slot.from} has ${walked} minutes instead of ${needed}`);
    before = slot;
    walked = 0;
  }
  return faults;
} // prettier-ignore

function toiletFaults(slots: readonly Slot[], checked: Checked): string[] {
  const within = rulesOf(checked).toiletWithin_min;
  const faults: string[] = [];
  let since = checked.wish.arrive;
  const chances = slots.filter((slot) => slot.kind === 'toilets' || slot.kind === 'lunch');
  for (const { from, to } of [...chances, { from: checked.wish.leave, to: checked.wish.leave }]) {
    if (from - since > within)
      faults.push(`${from - since} minutes without a toilet up to ${from}, more than ${within}`);
    since = to;
  }
  at(slots, 'toilets').forEach((slot, index) => {
    const minutes = toilets_min(checked, index > 0);
    if (length(slot) < minutes)
      faults.push(`toilets at ${slot.from} have ${length(slot)} minutes instead of ${minutes}`);
  });
  const shared = (index: number) =>
    checked.day.parties.map((one) => at(one, 'toilets')[index]).map((slot) => `${slot?.from}-${slot?.to}`);
  if (at(slots, 'toilets').some((_, index) => new Set(shared(index)).size > 1))
    faults.push('toilet pauses are not common to all');
  return faults;
}

/** Nothing but waiting follows the loading, which leaves the farm's spare minutes before the buses go. */
function endFaults(slots: readonly Slot[], checked: Checked): string[] {
  const { wish, farm } = checked;
  const faults: string[] = [];
  const load = Math.ceil(wish.buses / farm.busesAtOnce) * rulesOf(checked).bus_min;
  const loads = at(slots, 'load');
  if (loads.length !== (load > 0 ? 1 : 0)) faults.push(`load comes ${loads.length} times`);
  if (loads[0] && length(loads[0]) < load)
    faults.push(`load has ${length(loads[0])} minutes instead of ${load}`);
  const doing = slots.filter((slot) => slot.kind !== 'wait');
  const last = doing.at(-1);
  if (load > 0 && last?.kind !== 'load') faults.push(`${last?.kind ?? 'nothing'} comes after the buses are loaded`);
  if (load === 0 && farm.gateWalk_min > 0 && (last?.kind !== 'walk' || length(last) < farm.gateWalk_min))
    faults.push('nobody walks to the gate');
  if (last && last.to > wish.leave - farm.busSpare_min)
    faults.push(`${last.kind} ends ${wish.leave - last.to} minutes before the buses leave, less than ${farm.busSpare_min}`);
  const lastMet = atStations(slots).at(-1);
  if (lastMet && loads[0] && lastMet.to > loads[0].from) faults.push('loading begins before the last station ends');
  return faults;
} // prettier-ignore
