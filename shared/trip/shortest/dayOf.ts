// Lays a found day out as slots of each party, from arrival to the leaving of the buses.
import { bandOfGrade } from '../../tasks/grades.ts';
import type { DayPlan, Slot, SlotKind } from '../types.ts';
import type { Found } from './search.ts';
import type { SmallCase, SmallDay } from './smallDay.ts';

/** The slots of a party, written one after the other. */
class Slots {
  readonly all: Slot[] = [];
  now: number;

  constructor(arrive: number) {
    this.now = arrive;
  }

  add(
    kind: SlotKind,
    minutes: number,
    station: string | null = null,
    forStation: string | null = null,
  ): void {
    if (minutes <= 0) return;
    this.all.push({ kind, from: this.now, to: this.now + minutes, station, for: forStation });
    this.now += minutes;
  }

  waitUntil(minute: number): void {
    this.add('wait', minute - this.now);
  }
}

/** The plan of a found day. Its slots end when the buses can leave at the earliest. */
export function dayOf(small: SmallCase, day: SmallDay, found: Found): DayPlan {
  const { wish, farm } = small;
  const { wash_s } = farm.rules[bandOfGrade(wish.grade)];
  const parties = Array.from({ length: day.parties }, (_, party) => partySlots(small, day, found, party));
  const meal = found.commons.findIndex((one) => one.kind === 'meal');
  const before = found.split.map((masks) => bits(meal < 0 ? masks : masks.slice(0, meal + 1)));
  return {
    groups: small.groups,
    spare: small.spare,
    parties,
    stations: small.stations.map((one) => one.id),
    roundsBefore: Math.min(...before),
    manner: 'own',
    wash_min: (Math.ceil((wish.children + wish.adults) / farm.taps) * wash_s * (1 + farm.washSpare)) / 60,
  };
}

const bits = (masks: readonly number[]) =>
  masks.reduce((sum, mask) => sum + mask.toString(2).replaceAll('0', '').length, 0);

function partySlots(small: SmallCase, day: SmallDay, found: Found, party: number): Slot[] {
  const slots = new Slots(day.arrive);
  slots.add('unload', day.load_min);
  slots.add('walk', day.gateWalk_min);
  slots.add('welcome', day.firstChance - slots.now);
  slots.waitUntil(found.times.ready - (day.ready - day.firstChance));
  slots.add('toilets', day.ready - day.firstChance);
  found.visits.forEach((_, stretch) => {
    const wentOut = stretchSlots(slots, small, day, found, party, stretch);
    const needsTaps = wentOut || stretch === 0;
    const common = found.commons[stretch];
    if (common === undefined) return endSlots(slots, day, found, party, needsTaps);
    if (needsTaps) slots.add('walk', day.toTaps_min);
    const start = found.times.starts[stretch] ?? 0;
    slots.waitUntil(start + (common.comes[party] ?? 0));
    if (common.kind === 'pause') slots.add('toilets', common.chanceTo - common.chanceFrom);
    else mealSlots(slots, day, start, party);
  });
  return slots.all;
}

/** The visits of a stretch; whether there are any. */
function stretchSlots(slots: Slots, small: SmallCase, day: SmallDay, found: Found, party: number, stretch: number): boolean {
  const visits = [...(found.visits[stretch] ?? [])]
    .filter((one) => one.party === party)
    .sort((a, b) => a.from - b.from);
  let at: number | null = null;
  for (const { station, from, to } of visits) {
    const entry_min = stretch === 0 ? day.first_min : day.fromTaps_min;
    const walk_min = at === null ? entry_min : (day.between_min[at]?.[station] ?? 0);
    const { id, for: forStation } = small.stations[station] ?? { id: null, for: null };
    slots.waitUntil(from - walk_min);
    slots.add('walk', walk_min, id, forStation);
    slots.add('station', to - from, id, forStation);
    at = station;
  }
  return visits.length > 0;
} // prettier-ignore

function mealSlots(slots: Slots, day: SmallDay, start: number, party: number): void {
  const { meal } = day;
  if (meal === null || meal === 'no seats') return;
  slots.add('wash', (meal.washTo[party] ?? 0) - (meal.washFrom[party] ?? 0));
  slots.waitUntil(start + (meal.food[party] ?? 0));
  slots.add('lunch', (meal.leaves[party] ?? 0) - (meal.food[party] ?? 0));
}

/** Washing where it is due, the walk to the gate, loading, and the farm's spare minutes. */
function endSlots(slots: Slots, day: SmallDay, found: Found, party: number, needsTaps: boolean): void {
  const { load } = found.times;
  if (found.washesLast) {
    if (needsTaps) slots.add('walk', day.toTaps_min);
    slots.waitUntil(washStart(day, found, party));
    slots.add('wash', day.lastWash.minutes[party] ?? 0);
  }
  slots.waitUntil(load - day.gateWalk_min);
  slots.add('walk', day.gateWalk_min);
  slots.add('load', day.load_min);
  slots.waitUntil(load + day.load_min + day.busSpare_min);
}

/** When a party washes before leaving: as late as all together can, or in the order in which they come. */
function washStart(day: SmallDay, found: Found, party: number): number {
  const { together, minutes } = day.lastWash;
  const end = found.times.load - day.gateWalk_min;
  if (together) return end - (minutes[0] ?? 0);
  const stretch = found.visits.length - 1;
  const heads = found.times.heads[stretch] ?? [];
  const comes = heads.map((head, one) => {
    const last = (found.visits[stretch] ?? [])
      .filter((visit) => visit.party === one)
      .map((visit) => visit.to);
    return last.length > 0 ? Math.max(...last) + day.toTaps_min : head;
  });
  const order = comes.map((_, one) => one).sort((a, b) => (comes[a] ?? 0) - (comes[b] ?? 0) || a - b);
  let free = Number.NEGATIVE_INFINITY;
  for (const one of order) {
    const from = Math.max(free, comes[one] ?? 0);
    if (one === party) return from;
    free = from + (minutes[one] ?? 0);
  }
  return free;
}
