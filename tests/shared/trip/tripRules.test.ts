// The checker of school days itself: a good day by hand, and the same day broken in every way that the checker knows.
import { describe, expect, it } from 'vitest';
import type { Slot } from '../../../shared/trip/types.ts';
import type { Checked } from '../../support/tripChecked.ts';
import { goodDay, type Loose } from '../../support/tripExample.ts';
import { brokenRules } from '../../support/tripRules.ts';

type Day = Loose<Checked>;
type Slots = Loose<Slot[]>;
const K = 'k-2' as const;

const party = (day: Day, at: number): Slots => day.day.parties[at] ?? [];
const both = (day: Day, change: (slots: Slots) => void) => day.day.parties.forEach(change);
const first = (slots: Slots, kind: Slot['kind'], count = 0) =>
  slots.filter((slot) => slot.kind === kind)[count]!;
const drop = (slots: Slots, kind: Slot['kind'], count = 0) => slots.splice(slots.indexOf(first(slots, kind, count)), 1, { ...first(slots, kind, count), kind: 'wait' }); // prettier-ignore
/** Moves the border between a slot and the one after it. */
const border = (slots: Slots, kind: Slot['kind'], count: number, by: number) => {
  const slot = first(slots, kind, count);
  const next = slots[slots.indexOf(slot) + 1];
  slot.to += by;
  if (next) next.from += by;
};
const stationOf = (day: Day, id: string) => day.farm.stations.find((one) => one.id === id)!;

// What is done to the good day, and what must then be told.
const BROKEN: readonly (readonly [string, (day: Day) => void, RegExp])[] = [
  ['a child too many', (d) => (d.day.groups[0]!.children = 9), /groups hold 16 children, but 15/],
  ['uneven groups', (d) => ((d.day.groups[0]!.children = 9), (d.day.groups[1]!.children = 6)), /differ by more than one/],
  ['an empty group', (d) => d.day.groups.push({ ...d.day.groups[0]!, id: 3, children: 0 }), /a group has no child/],
  ['a group too large', (d) => (d.farm.rules[K].groupMost = 7), /group 1 has 8 children, more than one card holds/],
  ['groups counted from 2', (d) => (d.day.groups[0]!.id = 2), /not counted from 1/],
  ['no wheelchair', (d) => (d.day.groups[1]!.wheelchair = false), /wheelchair goes with 0 groups instead of 1/],
  ['two wheelchairs', (d) => (d.day.groups[0]!.wheelchair = true), /wheelchair goes with 2 groups instead of 1/],
  ['a wheelchair that nobody brings', (d) => (d.wish.needs = []), /wheelchair goes with 1 groups instead of 0/],
  ['too few adults for any visit', (d) => (d.farm.leastAdults = 4), /fewer than any visit has/],
  ['no spare adult', (d) => (d.day.spare = 0), /0 adults are kept free instead of 1/],
  ['an adult who does not come', (d) => (d.day.groups[0]!.adults = 2), /make 4, but 3 adults come/],
  ['a group alone', (d) => (d.day.groups[1]!.adults = 0), /group 2 has no adult/],
  ['too many children for an adult', (d) => (d.farm.rules[K].perAdult.most = 7), /group 1 has 8 children for 1 adults/],
  ['half an adult', (d) => (d.day.groups[1]!.adults = 1.5), /not whole numbers/],
  ['a party too few', (d) => d.day.parties.pop(), /1 parties instead of 2/],
  ['a group without a party', (d) => (d.day.groups[1]!.party = 2), /walks with no party/],
  ['a party of nobody', (d) => (d.day.groups[1]!.party = 0), /party 1 is nobody/],
  ['a station too small', (d) => (stationOf(d, 'hay-loft').capacity = 7), /hay-loft has room for 7/],
  ['no station', (d) => (d.day.stations = []), /no station is met/],
  ['a station twice', (d) => (d.day.stations = ['milking-stand', 'hay-loft', 'hay-loft']), /listed twice/],
  ['stations out of order', (d) => d.day.stations.reverse(), /not in the order of the loop/],
  ['an unknown station', (d) => (d.day.stations[2] = 'pigsty'), /no station pigsty/],
  ['an outdoor station in rain', (d) => (stationOf(d, 'kid-table').roofed = false), /kid-table is in the plan though closed: rain/],
  ['a kidding pen near a kidding', (d) => ((stationOf(d, 'kid-table').kidding = true), (d.ground.kiddingNear = true)), /kid-table is in the plan though closed: kidding/],
  ['a station that no wheelchair reaches', (d) => (stationOf(d, 'hay-loft').wheelchair = false), /hay-loft is in the plan though closed: wheelchair/],
  ['a milking on a day without one', (d) => (d.ground.milkings = []), /milking-stand is in the plan though closed: no milking/],
  ['a milking before its time', (d) => (d.ground.milkings[0]!.from = 562), /shown when no doe is milked/],
  ['a milking after its time', (d) => (d.ground.milkings[0]!.to = 634), /shown when no doe is milked/],
  ['a milking in two times', (d) => (d.ground.milkings = [{ from: 560, to: 600 }, { from: 610, to: 640 }]), /shown when no doe is milked/],
  ['a station not met', (d) => (first(party(d, 0), 'station', 2).station = 'hay-loft'), /party 0 does not meet each station once/],
  ['a station cut short', (d) => both(d, (s) => border(s, 'station', 1, -1)), /party 1 has 9 minutes at kid-table, which takes 10/],
  ['two parties at a station', (d) => (d.day.parties[1] = structuredClone(party(d, 0))), /two parties are at milking-stand at once/],
  ['another way than the loop', (d) => d.day.parties.reverse(), /leaves the one-way loop/],
  ['parties out of step', (d) => border(party(d, 0), 'station', 1, 1), /not in step/],
  ['rounds miscounted', (d) => (d.day.roundsBefore = 1), /2 rounds before the food, but the plan says 1/],
  ['an asked station forgotten', (d) => d.wish.stations.push('kid-pen'), /kid-pen was asked for and nothing tells/],
  ['a station that nobody asked for', (d) => d.wish.stations.pop(), /kid-table is in the plan, but nobody asked/],
  ['a choice that the farm did not make', (d) => d.notes.push({ kind: 'farm chose', stations: [] }), /said to have chosen/],
  ['a choice that is not told', (d) => (d.wish.stations = []), /nothing tells that the farm chose/],
  ['a choice out of the blue', (d) => ((d.wish.stations = []), d.notes.push({ kind: 'farm chose', stations: d.day.stations })), /does not usually choose/],
  ['a stand-in that is not told', (d) => (d.notes = []), /pasture-rail was asked for and nothing tells|stands in for pasture-rail, and no note/],
  ['one stand-in for two', (d) => (d.wish.stations.push('kid-pen'), d.notes.push({ kind: 'stand-in', station: 'kid-pen', by: 'hay-loft', why: 'kidding' })), /same stand-in/],
  ['rain on a dry day', (d) => (d.wish.rain = false), /pasture-rail is stand-in for rain, which is not so/],
  ['a stand-in of our own making', (d) => (stationOf(d, 'pasture-rail').standIn = 'kid-pen'), /hay-loft is no stand-in of pasture-rail/],
  ['left out in haste', (d) => (d.wish.stations.push('kid-pen'), (d.ground.kiddingNear = true), (stationOf(d, 'kid-pen').standIn = 'fold'), d.farm.stations.push({ ...stationOf(d, 'kid-table'), id: 'fold' }), d.notes.push({ kind: 'left out', station: 'kid-pen', why: 'kidding' })), /kid-pen is left out, though fold could stand in/],
  ['a slot that does not say for whom', (d) => both(d, (s) => s.forEach((slot) => (slot.for = null))), /not told for what hay-loft stands in/],
  ['a slot that says too much', (d) => (first(party(d, 0), 'station').for = 'kid-pen'), /stands in for kid-pen, and no note/],
  ['few adults untold', (d) => (d.farm.rules[K].perAdult.aim = 7), /nothing tells that adults are few/],
  ['few adults told for nothing', (d) => d.notes.push({ kind: 'few adults', perAdult: 8, aim: 8 }), /adults enough/],
  ['long washing untold', (d) => (d.farm.washTogether_min = 5), /nothing tells that parties wash in turn/],
  ['long washing told for nothing', (d) => d.notes.push({ kind: 'wash by party', minutes: 6 }), /not too long to be done together/],
  ['a milking told away', (d) => d.notes.push({ kind: 'milking at another time', milkings: d.ground.milkings }), /another time is told, and one is in the plan/],
  ['wrong times of milking', (d) => d.notes.push({ kind: 'milking at another time', milkings: [] }), /not those of the day/],
  ['times of no milking', (d) => ((d.ground.milkings = []), d.notes.push({ kind: 'milking at another time', milkings: [] })), /told, but there is none/],
  ['a late start', (d) => (party(d, 0)[0]!.from = 541), /party 0: the day does not begin/],
  ['an early end', (d) => party(d, 0).pop(), /party 0: the day does not end/],
  ['half a minute', (d) => border(party(d, 0), 'toilets', 0, 0.5), /not in whole minutes/],
  ['a slot of no length', (d) => (party(d, 1).at(-1)!.from = 660), /wait at 660 has no length/],
  ['a gap', (d) => (first(party(d, 0), 'walk', 2).to = 572), /does not follow walk/],
  ['a station without a name', (d) => (first(party(d, 0), 'station').station = null), /station at 561 names no station/],
  ['a wash with a name', (d) => (first(party(d, 0), 'wash').station = 'hay-loft'), /wash at 594 names a station/],
  ['a wait that stands in', (d) => (first(party(d, 0), 'wait').for = 'kid-pen'), /wait at 650 stands in/],
  ['a walk astray', (d) => (first(party(d, 0), 'walk', 1).station = 'kid-table'), /leads to kid-table, and then comes milking-stand/],
  ['unloading too quick', (d) => (d.wish.buses = 2), /unload has 5 minutes instead of 10/],
  ['buses side by side too many', (d) => (d.farm.rules[K].bus_min = 6), /unload has 5 minutes instead of 6/],
  ['no welcome', (d) => both(d, (s) => drop(s, 'welcome')), /welcome is missing/],
  ['a welcome too short', (d) => border(party(d, 0), 'welcome', 0, -1), /welcome has 5 minutes instead of 6/],
  ['a gate too far', (d) => (d.farm.gateWalk_min = 3), /walk has 2 minutes instead of 3/],
  ['a walk from the gate left out', (d) => both(d, (s) => drop(s, 'walk')), /walk is missing from the opening/],
  ['toilets left out of the opening', (d) => both(d, (s) => drop(s, 'toilets')), /toilets is missing/],
  ['too few toilets', (d) => (d.farm.toilets = 4), /toilets has 3 minutes instead of 4/],
  ['two welcomes', (d) => (first(party(d, 0), 'wait').kind = 'welcome'), /welcome comes 2 times/],
  ['a walk to a station too short', (d) => both(d, (s) => border(s, 'lunch', 0, 1)), /walk to kid-table at 625 has 4 minutes instead of 5/],
  ['a longer loop', (d) => (stationOf(d, 'hay-loft').walk_min = 2), /walk to hay-loft at 561 has 5 minutes instead of 6/],
  ['a way across the loop', (d) => { d.day.manner = 'own'; stationOf(d, 'kid-table').walk_min = 3; const s = party(d, 0); drop(s, 'toilets', 1); for (const slot of s) if (slot.station === 'hay-loft') slot.station = 'kid-table'; }, /walk to kid-table at 582 has 7 minutes instead of 8/],
  ['head counts left out', (d) => (d.farm.rules[K].headCount_min = 3), /walk to milking-stand at 561 has 5 minutes instead of 6/],
  ['taps too far', (d) => (d.farm.tapsWalk_min = 3), /walk to wash at 594 has 2 minutes instead of 3/],
  ['taps too far after the food', (d) => (d.farm.tapsWalk_min = 4), /walk to kid-table at 625 has 5 minutes instead of 6/],
  ['no walk to the buses', (d) => both(d, (s) => (first(s, 'walk', 7).kind = 'wait')), /walk to load at 645 has 0 minutes instead of 2/],
  ['too long without a toilet', (d) => (d.farm.rules[K].toiletWithin_min = 39), /40 minutes without a toilet up to 660, more than 39/],
  ['too long before the first toilet', (d) => (d.farm.rules[K].toiletWithin_min = 12), /13 minutes without a toilet up to 553/],
  ['a pause left out', (d) => ((d.farm.rules[K].toiletWithin_min = 40), both(d, (s) => drop(s, 'toilets', 1))), /44 minutes without a toilet up to 600/],
  ['a pause too short', (d) => both(d, (s) => border(s, 'toilets', 1, -1)), /toilets at 573 have 3 minutes instead of 4/],
  ['a pause of one party', (d) => border(party(d, 0), 'walk', 2, 1), /not common to all/],
  ['no loading', (d) => both(d, (s) => drop(s, 'load')), /load comes 0 times/],
  ['loading too quick', (d) => border(party(d, 0), 'load', 0, -1), /load has 4 minutes instead of 5/],
  ['a walk after loading', (d) => (party(d, 0).at(-1)!.kind = 'walk'), /walk comes after the buses are loaded/],
  ['no spare time at the end', (d) => (d.farm.busSpare_min = 11), /load ends 10 minutes before the buses leave, less than 11/],
  ['food where nobody eats', (d) => (d.wish.lunch = null), /there is food 1 times/],
  ['no food', (d) => both(d, (s) => drop(s, 'lunch')), /there is food 0 times/],
  ['unwashed hands at table', (d) => both(d, (s) => drop(s, 'wash')), /nobody washes before the food/],
  ['animals between washing and food', (d) => { const s = party(d, 0); const [x, w] = [first(s, 'station', 1), first(s, 'wash')]; [x.kind, w.kind] = ['wash', 'station']; [x.station, w.station] = [null, 'hay-loft']; }, /a station comes between washing and food/],
  ['food among animals', (d) => (first(party(d, 1), 'lunch').station = 'milking-stand'), /food is placed at milking-stand/],
  ['a meal at a station', (d) => (first(party(d, 0), 'station', 1).to = 601), /somebody eats at a station/],
  ['unwashed hands on the bus', (d) => both(d, (s) => drop(s, 'wash', 1)), /party 1: nobody washes after milking-stand/],
  ['a meal too short', (d) => both(d, (s) => border(s, 'lunch', 0, -1)), /food has 19 minutes instead of 20/],
  ['food too early', (d) => (d.wish.lunch = 601), /food starts at 600, before 601/],
  ['food too late', (d) => (d.wish.lunch = 584), /more than 15 minutes after 584/],
  ['another formula', (d) => (d.day.wash_min = 5), /said to take 5 minutes, the formula says 6/],
  ['a tap too few', (d) => (d.farm.taps = 3), /party 0 washes 6 minutes instead of 8/],
  ['slower hands', (d) => (d.farm.rules[K].wash_s = 61), /washes 6 minutes instead of 7/],
  ['no queue', (d) => (d.farm.washSpare = 0.3), /washes 6 minutes instead of 7/],
  ['all at too few taps', (d) => (d.farm.washTogether_min = 5), /wash at once, and the taps are too few/],
  ['not together', (d) => border(party(d, 0), 'wash', 1, 1), /do not wash together/],
  ['a seat too few', (d) => (d.farm.seats = 17), /18 people eat at 600, but 17 can sit/],
]; // prettier-ignore

describe('the checker of school days', () => {
  it('finds nothing wrong with a good day made by hand', () => {
    expect(brokenRules(goodDay())).toEqual([]);
  });

  it.each(BROKEN)('tells of %s', (_, breakIt, told) => {
    const day = goodDay();
    breakIt(day);
    expect(brokenRules(day).join('\n')).toMatch(told);
  });

  it('lets pass what only looks broken: more time, more room, a day of no buses', () => {
    const day = goodDay();
    day.farm.rules[K].toilet_s = 50;
    day.farm.taps = 5;
    day.day.wash_min = 4.8;
    day.farm.seats = 100;
    expect(brokenRules(day)).toEqual([]);
    const walked = goodDay();
    walked.wish.buses = 0;
    both(walked, (slots) => {
      slots.splice(0, 2, { ...slots[1]!, from: 540 });
      slots.splice(-3, 2, { ...slots.at(-3)!, to: 650 });
    });
    expect(brokenRules(walked)).toEqual([]);
  });
});
