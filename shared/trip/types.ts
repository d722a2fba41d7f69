// What a trip is: what a teacher asks for, what the farm has, what the date allows, and the day that comes out.
import type { Band } from '../quantity/grade.ts';
import type { Grade } from '../tasks/grades.ts';

/** What a group brings along that changes plan, cautions or letters. No child is named, and none is counted. */
export const NEEDS = Object.freeze([
  'wheelchair',
  'milk-allergy',
  'asthma',
  'pregnant',
  'immune',
  'medicine',
  'quiet',
] as const);
/** One of them. */
export type Need = (typeof NEEDS)[number];

/** What a teacher fills in. Clock times are whole minutes after midnight on the farm's clock. */
export interface TripWish {
  /** ISO date. */
  readonly date: string;
  readonly grade: Grade;
  readonly children: number;
  /** Adults who can lead a group: drivers and aides of one child are not counted. */
  readonly adults: number;
  /** The buses stand at the gate. */
  readonly arrive: number;
  /** The buses leave with everybody on them. */
  readonly leave: number;
  readonly buses: number;
  /** The earliest that food may start; null where nobody eats on the farm. */
  readonly lunch: number | null;
  /** Ids of the stations that the group wants; empty leaves the choice to the farm. */
  readonly stations: readonly string[];
  readonly needs: readonly Need[];
  /** Whether the day is planned for rain: every outdoor station gives way to its roofed stand-in. */
  readonly rain: boolean;
  /** The class word, which picks the numbers of the sheets; no name. */
  readonly word: string;
}

/** Where a place lies: with animals, between (taps), or where people may eat. */
export type Zone = 'animal' | 'between' | 'clean';

/** A thing that a group can do on the farm. The farm lists them in the order of its one-way loop. */
export interface Station {
  /** Names its texts in `content/stations`. */
  readonly id: string;
  /** Whole minutes that it takes, by band. */
  readonly minutes: Readonly<Record<Band, number>>;
  /** Children who have room at a time. */
  readonly capacity: number;
  readonly zone: Zone;
  readonly roofed: boolean;
  readonly wheelchair: boolean;
  /** Whether children touch animals there. */
  readonly touch: boolean;
  /** Whether it shows a doe being milked, so that it needs one that is due. */
  readonly milking: boolean;
  /** Whether it is the kidding pen or beside it, so that it is closed near a kidding. */
  readonly kidding: boolean;
  /** The station that takes its place in rain, in the off-season, or where a wheelchair cannot go; null where none does. */
  readonly standIn: string | null;
  /** Whole minutes to walk here from the station before it on the loop (for the first one: from the last). */
  readonly walk_min: number;
}

/** The farm's thresholds for one band; each has a source in `usualRules.ts`. */
export interface BandRules {
  /** Children for one adult: what is aimed at, and what is never exceeded. */
  readonly perAdult: { readonly aim: number; readonly most: number };
  /** The largest group that one card is written for. */
  readonly groupMost: number;
  /** Seconds of one person at a tap, drying included. */
  readonly wash_s: number;
  /** Seconds of one child at a toilet. */
  readonly toilet_s: number;
  /** The longest time between two chances to go to the toilet, minutes. */
  readonly toiletWithin_min: number;
  /** Unloading, or loading, one bus, minutes. */
  readonly bus_min: number;
  /** Head count and getting ready at each change, minutes, without the walk. */
  readonly headCount_min: number;
  readonly lunch_min: number;
  readonly welcome_min: number;
}

/** What the farm has for visits, from `farm.yaml` or the usual. */
export interface TripFarm {
  /** In the order of the loop; stand-ins that are never chosen themselves included. */
  readonly stations: readonly Station[];
  /** Stations of a group that chooses none, by band. */
  readonly usual: Readonly<Record<Band, readonly string[]>>;
  readonly taps: number;
  readonly toilets: number;
  /** Buses that can be unloaded side by side. */
  readonly busesAtOnce: number;
  /** Walk from the buses to the first place, and from the taps to the buses, minutes. */
  readonly gateWalk_min: number;
  /** Walk from any station to the taps and the place to eat beside them, minutes. */
  readonly tapsWalk_min: number;
  /** Children and adults who can sit and eat at a time. */
  readonly seats: number;
  /** How long after the wish food may start, minutes. */
  readonly lunchSlack_min: number;
  /** Washing that takes longer than this is done by party, one after the other; minutes. */
  readonly washTogether_min: number;
  /** Added to washing for queues: 0.2 is a fifth. */
  readonly washSpare: number;
  /** Children for each adult who is kept free for first aid and toilet runs. */
  readonly childrenPerSpare: number;
  /** The fewest adults of a visit. */
  readonly leastAdults: number;
  /** Left between the last thing and the buses' leaving, beside loading; minutes. */
  readonly busSpare_min: number;
  /** Days before and after a kidding on which its pen is closed to visitors. */
  readonly kiddingDays: { readonly before: number; readonly after: number };
  readonly rules: Readonly<Record<Band, BandRules>>;
}

/** A span of clock time, whole minutes after midnight; `to` is the first minute after it. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Why no doe is milked on a date. */
export type NoMilking = 'dry' | 'with kids' | 'no does' | 'unknown';

/** What the farm's book says of a date, as far as the plan needs it. */
export interface DayGround {
  /** When does are milked that day and may be watched, in order; empty where none is due. */
  readonly milkings: readonly Span[];
  /** Set where `milkings` is empty. */
  readonly noMilking: NoMilking | null;
  /** Does due at the fullest milking of the day. */
  readonly doesDue: number;
  /** Whether the kidding pen is closed: a kidding is due or has been near the date. */
  readonly kiddingNear: boolean;
  /** What the farm chooses for a group on that date, where it differs from its usual: other stations when there are no kids or no milk. */
  readonly usual?: TripFarm['usual'];
}

/** Children with the adults who lead them. Groups of a trip differ by one child at most. */
export interface Group {
  /** Counts from 1. */
  readonly id: number;
  readonly children: number;
  readonly adults: number;
  /** The party that it walks with, from 0: parties change station together, one party a station at a time. */
  readonly party: number;
  /** Whether the wheelchair goes with it. */
  readonly wheelchair: boolean;
}

/** What a group does for a span. */
export type SlotKind =
  'unload' | 'welcome' | 'toilets' | 'station' | 'walk' | 'wash' | 'lunch' | 'wait' | 'load';

/** A party's span. Slots of a party follow each other without a gap from `arrive` to `leave`. */
export interface Slot extends Span {
  readonly kind: SlotKind;
  /** The id of the station, for `station` and for the walk that leads there; else null. */
  readonly station: string | null;
  /** The station whose place it takes; else null. */
  readonly for: string | null;
}

/** A day that keeps every rule. */
export interface DayPlan {
  readonly groups: readonly Group[];
  /** Adults who are kept free. */
  readonly spare: number;
  /** Slots by party. */
  readonly parties: readonly (readonly Slot[])[];
  /** The stations that every party meets once, in the order of the loop, stand-ins in place. */
  readonly stations: readonly string[];
  /** How many rounds of stations come before the food; all of them where nobody eats. */
  readonly roundsBefore: number;
  /** The loop in step (`loop`), or each party at its own time, where only that fits (`own`). */
  readonly manner: 'loop' | 'own';
  /** Washing of everybody before food and before leaving, minutes, as the formula gives it; not rounded. */
  readonly wash_min: number;
}

/** A change that the plan made by itself and that the teacher must hear of. */
export type TripNote =
  | { readonly kind: 'stand-in'; readonly station: string; readonly by: string; readonly why: 'rain' | 'no milking' | 'kidding' | 'wheelchair' } // prettier-ignore
  | { readonly kind: 'left out'; readonly station: string; readonly why: 'rain' | 'no milking' | 'kidding' | 'wheelchair' } // prettier-ignore
  /** A milking is due that day, but not while the group is here: what is shown instead is told by `stand-in` or `left out`. */
  | { readonly kind: 'milking at another time'; readonly milkings: readonly Span[] }
  /** Fewer adults than aimed at, though not too few. */
  | { readonly kind: 'few adults'; readonly perAdult: number; readonly aim: number }
  | { readonly kind: 'wash by party'; readonly minutes: number }
  /** The stations that the farm chose, since the group chose none; or that it had to leave out of its choice for want of time. */
  | { readonly kind: 'farm chose'; readonly stations: readonly string[] };

/** Why there is no such day. Numbers are what there is (`is`) and what it would take (`needs`). */
export type TripWhy =
  | { readonly kind: 'wish'; readonly field: keyof TripWish }
  | { readonly kind: 'no station' }
  | { readonly kind: 'adults'; readonly is: number; readonly needs: number; readonly most: number }
  | { readonly kind: 'capacity'; readonly station: string; readonly is: number; readonly needs: number }
  | { readonly kind: 'time'; readonly is_min: number; readonly needs_min: number }
  /** Food cannot start in time: `earliest` is when it could; null where the wish lies too late for the leaving. */
  | { readonly kind: 'lunch'; readonly at: number; readonly earliest: number | null }
  | { readonly kind: 'seats'; readonly is: number; readonly needs: number }
  | { readonly kind: 'toilets'; readonly within_min: number; readonly longest_min: number };

/**
 * A smallest change of one kind that was planned again and holds; two kinds together where no single one does.
 * Leaving out several stations is several changes of one kind. `withChanges` puts them on a wish and a farm.
 */
export interface TripWay {
  readonly changes: readonly TripChange[];
}

/** One change. */
export type TripChange =
  | { readonly kind: 'adults'; readonly more: number }
  | { readonly kind: 'longer'; readonly minutes: number; readonly end: 'arrive' | 'leave' }
  | { readonly kind: 'lunch'; readonly at: number | null }
  | { readonly kind: 'without'; readonly station: string }
  /** The number of children to come with, not how many stay at school. */
  | { readonly kind: 'fewer children'; readonly children: number }
  | { readonly kind: 'taps'; readonly more: number }
  | { readonly kind: 'toilets'; readonly more: number };

/** The answer to a wish. */
export type TripPlan =
  | { readonly ok: true; readonly day: DayPlan; readonly notes: readonly TripNote[] }
  | {
      readonly ok: false;
      readonly whys: readonly TripWhy[];
      readonly ways: readonly TripWay[];
      readonly notes: readonly TripNote[];
    };
