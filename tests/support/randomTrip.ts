// Random wishes, farms and days for fast-check: most of them could be, many of them cannot.
import fc from 'fast-check';
import { bandOfGrade, type Grade } from '../../shared/tasks/grades.ts';
import type { SmallCase } from '../../shared/trip/shortest/smallDay.ts';
import {
  NEEDS,
  type BandRules,
  type DayGround,
  type NoMilking,
  type Span,
  type Station,
  type TripFarm,
  type TripWish,
  type Zone,
} from '../../shared/trip/types.ts';

/** All that a trip is planned from. */
export interface Asked {
  readonly wish: TripWish;
  readonly farm: TripFarm;
  readonly ground: DayGround;
}

/** How large a random trip may be. */
export interface Size {
  readonly children: number;
  readonly stations: number;
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const IDS =
  'milking-stand goat-barn kid-pen pasture-rail hay-loft coat board table practice kids window'.split(' ');

const rulesArb: fc.Arbitrary<BandRules> = fc
  .record({
    aim: whole(4, 9),
    over: whole(0, 4),
    groupMost: whole(5, 13),
    wash_s: whole(30, 90),
    toilet_s: whole(30, 100),
    toiletWithin_min: whole(45, 100),
    bus_min: whole(3, 10),
    headCount_min: whole(0, 4),
    lunch_min: whole(15, 35),
    welcome_min: whole(3, 10),
  })
  .map(({ aim, over, ...rest }) => ({ ...rest, perAdult: { aim, most: aim + over } }));

const by = <T>(value: T) => ({ 'k-2': value, '3-5': value, '6-8': value, '9-12': value });

/** Stations with stand-ins anywhere in the list, in chains and circles too. */
const stationsArb = (most: number): fc.Arbitrary<Station[]> =>
  fc.tuple(whole(1, Math.min(most + 3, IDS.length)), whole(8, 40)).chain(([count, room]) =>
    fc
      .array(
        fc.record({
          minutes: whole(5, 20),
          more: fc.nat(8),
          zone: fc.constantFrom<Zone>('animal', 'animal', 'between', 'clean'),
          flags: fc.tuple(fc.nat(6), fc.nat(6), fc.nat(5), fc.nat(4), fc.nat(2)),
          standIn: whole(0, count - 1),
          walk_min: whole(0, 4),
        }),
        { minLength: count, maxLength: count },
      )
      .map((all) =>
        all.map(({ minutes, more, zone, flags, standIn, walk_min }, at) => ({
          id: IDS[at] ?? '',
          minutes: by(minutes),
          capacity: room + more,
          zone,
          roofed: flags[0] > 0,
          wheelchair: flags[1] > 0,
          touch: zone === 'animal',
          // One station shows a milking, if any; the second is never one.
          milking: at === 0 && flags[2] > 1,
          kidding: flags[3] === 0,
          standIn: flags[4] > 0 && standIn !== at ? (IDS[standIn] ?? null) : null,
          walk_min,
        })),
      ),
  );

const farmArb = (size: Size): fc.Arbitrary<TripFarm> =>
  fc
    .record({
      stations: stationsArb(size.stations),
      rules: rulesArb,
      taps: whole(1, 10),
      toilets: whole(1, 8),
      busesAtOnce: whole(1, 2),
      gateWalk_min: whole(0, 4),
      tapsWalk_min: whole(0, 5),
      seats: whole(Math.ceil(size.children / 2), size.children + 20),
      lunchSlack_min: whole(5, 60),
      washTogether_min: whole(6, 20),
      washSpare: fc.constantFrom(0, 0.1, 0.2, 0.25, 0.5),
      childrenPerSpare: whole(15, 70),
      leastAdults: whole(1, 3),
      busSpare_min: whole(0, 8),
      usual: fc.subarray([0, 1, 2, 3, 4]),
    })
    .map(({ rules, usual, ...rest }) => ({
      ...rest,
      usual: by(rest.stations.slice(0, size.stations).filter((_, at) => usual.includes(at)).map(({ id }) => id)),
      kiddingDays: { before: 14, after: 21 },
      rules: by(rules),
    })); // prettier-ignore

const spanArb = (from: number, to: number): fc.Arbitrary<Span> =>
  fc.record({ from: whole(from, to), minutes: whole(40, 240) }).map(({ from: start, minutes }) => ({ from: start, to: start + minutes })); // prettier-ignore

const groundArb: fc.Arbitrary<DayGround> = fc
  .record({
    morning: fc.option(spanArb(360, 700), { freq: 4 }),
    evening: fc.option(spanArb(960, 1080), { freq: 2 }),
    noMilking: fc.constantFrom<NoMilking>('dry', 'with kids', 'no does', 'unknown'),
    doesDue: whole(1, 6),
    kiddingNear: fc.nat(3).map((one) => one === 0),
  })
  .map(({ morning, evening, noMilking, doesDue, kiddingNear }) => {
    const milkings = [morning, evening].filter((span) => span !== null).filter((span, at, all) => at === 0 || span.from >= (all[0]?.to ?? 0)); // prettier-ignore
    const none = milkings.length === 0;
    return { milkings, noMilking: none ? noMilking : null, doesDue: none ? 0 : doesDue, kiddingNear };
  });

const wishArb = (size: Size, farm: TripFarm, easy: boolean): fc.Arbitrary<TripWish> =>
  fc
    .record({
      grade: whole(0, 12),
      fill: whole(1, easy ? 80 : 100),
      more: easy ? fc.nat(4) : fc.constantFrom(-1, 0, 0, 0, 1, 1, 2, 4),
      arrive: whole(500, 640),
      length: easy ? whole(180, 360) : whole(80, 330),
      buses: whole(0, 3),
      lunch: fc.option(whole(60, 170), { freq: 3 }),
      stations: fc.shuffledSubarray(farm.stations.map(({ id }) => id), { maxLength: Math.min(size.stations, farm.stations.length) }),
      needs: fc.subarray([...NEEDS], { maxLength: 3 }),
      rain: fc.nat(2).map((one) => one === 0),
    })
    .map(({ grade, fill, more, length, lunch, ...rest }) => {
      const band = bandOfGrade(grade as Grade);
      const rules = farm.rules[band];
      // Up to somewhat more children than the stations hold.
      const room = Math.min(...farm.stations.map(({ capacity }) => capacity));
      const places = room * Math.max(1, (rest.stations.length > 0 ? rest.stations : farm.usual[band]).length);
      const children = Math.max(1, Math.ceil((Math.min(size.children, places * 1.1) * fill) / 100));
      const leaders = Math.ceil(children / Math.min(rules.perAdult.most, rules.groupMost));
      const adults = Math.max(1, leaders + Math.floor(children / farm.childrenPerSpare) + more);
      return {
        ...rest,
        date: '2026-05-27',
        word: 'fern',
        grade: grade as Grade,
        children,
        adults,
        leave: rest.arrive + length,
        lunch: lunch === null ? null : rest.arrive + lunch,
      };
    }); // prettier-ignore

/** Random trips up to a size: adults about as many as needed. Most of the easy ones can be, most of the others cannot. */
export function tripArb(size: Size, easy: boolean): fc.Arbitrary<Asked> {
  return fc
    .record({ farm: farmArb(size), ground: groundArb })
    .chain(({ farm, ground }) => wishArb(size, farm, easy).map((wish) => ({ wish, farm, ground })));
}

/** Cases for the shortest day with few parties and stations: whatever is there, without asking the planner. */
export function smallCaseArb(parties: number, stations: number): fc.Arbitrary<SmallCase> {
  return fc
    .record({
      asked: tripArb({ children: 30, stations }, false),
      parties: whole(1, parties),
      stations: whole(1, stations),
      more: whole(0, 60),
    })
    .map(({ asked, more, ...most }) => {
      const { wish, farm } = asked;
      const chosen = farm.stations.slice(0, most.stations).map(({ id }) => ({ id, for: null }));
      const count = Math.min(most.parties, chosen.length, wish.children);
      const share = (all: number, party: number) => Math.floor(all / count) + (party < all % count ? 1 : 0);
      const groups = Array.from({ length: count }, (_, party) => ({
        id: party + 1,
        children: share(wish.children, party),
        adults: Math.max(1, share(wish.adults, party)),
        party,
        wheelchair: false,
      }));
      return { ...asked, wish: { ...wish, leave: wish.leave + more }, groups, spare: 0, stations: chosen };
    });
}
