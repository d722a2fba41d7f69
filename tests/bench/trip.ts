// How many school days a second are planned for 10, 60 and 200 children, and how much longer a no takes with its ways out.
import { planTrip } from '../../shared/trip/planTrip.ts';
import { shortestDay } from '../../shared/trip/shortest/shortestDay.ts';
import type { DayGround, TripWish } from '../../shared/trip/types.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import { shortest_ms, timeText, type Line, type Part } from './line.ts';

const GROUND: DayGround = { milkings: [{ from: 570, to: 720 }], noMilking: null, doesDue: 4, kiddingNear: false }; // prettier-ignore
// Farms grow with their visitors: taps, toilets and seats for so many, and room for a party of them at each station.
const SIZES = [10, 60, 200] as const;
const RUNS = 7;
const PLANS = 60;

const farmFor = (children: number) => ({
  ...USUAL_FARM,
  taps: Math.max(4, Math.ceil(children / 8)),
  toilets: Math.max(4, Math.ceil(children / 10)),
  busesAtOnce: 4,
  seats: children * 2,
  stations: USUAL_FARM.stations.map((one) => ({ ...one, capacity: Math.max(16, Math.ceil(children / 3)) })),
});

const wishFor = (children: number, leave: number): TripWish => ({
  date: '2026-05-27',
  grade: 4,
  children,
  adults: Math.ceil(children / 8) + Math.floor(children / 60) + 1,
  arrive: 570,
  leave,
  buses: Math.ceil(children / 50),
  lunch: 690,
  stations: ['milking-stand', 'goat-barn', 'hay-loft', 'measuring-table'],
  needs: [],
  rain: false,
  word: 'fern',
});

/** Plans each size many times; throws where one that should hold does not, or the other way round. */
export const tripPart: Part = async (say) => {
  say('Planning school days …');
  const lines: Line[] = [];
  const planned = async (children: number, leave: number, ok: boolean) => {
    const farm = farmFor(children);
    if (planTrip(wishFor(children, leave), farm, GROUND).ok !== ok)
      throw new Error(`${children} children until ${leave}: the day ${ok ? 'does not hold' : 'holds'}.`);
    const time_ms = await shortest_ms(RUNS, () => {
      // Another number of children each time, so that no day is planned twice.
      for (let run = 0; run < PLANS; run += 1)
        planTrip({ ...wishFor(children, leave), word: `w${run}`, arrive: 570 - (run % 6) }, farm, GROUND);
    });
    return time_ms / PLANS;
  };
  // The first round is for the engine to warm up.
  for (const children of SIZES) await planned(children, 900, true);
  const few_ms = await planned(SIZES[0], 900, true);
  for (const children of SIZES) {
    const yes_ms = children === SIZES[0] ? few_ms : await planned(children, 900, true);
    const no_ms = await planned(children, 660, false);
    lines.push({
      what: `a day of ${children} children`,
      ours: perSecond(yes_ms),
      beside: `the day of ${SIZES[0]} children`,
      theirs: perSecond(few_ms),
      ratio: yes_ms / few_ms,
    });
    lines.push({
      what: `a no to ${children} children, with ways out`,
      ours: perSecond(no_ms),
      beside: 'the same with time enough',
      theirs: perSecond(yes_ms),
      ratio: no_ms / yes_ms,
    });
  }
  return [...lines, await shortestLine()];
};

const perSecond = (time_ms: number) => `${Math.round(1000 / time_ms).toLocaleString('en')}/s`;

/** The shortest day of four parties at four stations, beside the plan on the loop of the same group. */
async function shortestLine(): Promise<Line> {
  const farm = farmFor(60);
  const wish = wishFor(60, 900);
  const plan = planTrip(wish, farm, GROUND);
  if (!plan.ok) throw new Error('The day of 60 children does not hold.');
  const { groups, spare, stations } = plan.day;
  const small = {
    wish,
    farm,
    ground: GROUND,
    groups,
    spare,
    stations: stations.map((id) => ({ id, for: null })),
  };
  const found = shortestDay(small);
  const loop_ms = await shortest_ms(RUNS, () => planTrip(wish, farm, GROUND));
  const time_ms = await shortest_ms(RUNS, () => shortestDay(small));
  return {
    what: `the shortest day of ${plan.day.parties.length} parties at ${stations.length} stations (${found.kind})`,
    ours: timeText(time_ms),
    beside: 'its plan on the loop',
    theirs: timeText(loop_ms),
    ratio: time_ms / loop_ms,
  };
}
