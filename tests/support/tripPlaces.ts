// Rules of a school day about stations: who meets which, in what order, and which are closed that day.
import type { DayGround, Slot, Station, TripWish } from '../../shared/trip/types.ts';
import { bandOfGrade } from '../../shared/tasks/grades.ts';
import type { Checked } from './tripChecked.ts';

/** A party's slots at stations. */
export const atStations = (slots: readonly Slot[]) => slots.filter((slot) => slot.kind === 'station');

/** Why a station is closed to this group on this day whatever the hour; null where it is open. */
export function closedBy(
  station: Station,
  wish: TripWish,
  ground: DayGround,
): 'rain' | 'kidding' | 'wheelchair' | 'no milking' | null {
  if (wish.rain && !station.roofed) return 'rain';
  if (ground.kiddingNear && station.kidding) return 'kidding';
  if (wish.needs.includes('wheelchair') && !station.wheelchair) return 'wheelchair';
  if (station.milking && ground.milkings.length === 0) return 'no milking';
  return null;
}

/** Broken rules about which stations are met, when, and by whom. */
export function placeFaults(checked: Checked): string[] {
  return [
    ...listFaults(checked),
    ...latinFaults(checked),
    ...milkingFaults(checked),
    ...(checked.day.manner === 'loop' ? loopFaults(checked) : []),
  ];
}

function listFaults({ day, wish, farm, ground }: Checked): string[] {
  const faults: string[] = [];
  if (day.stations.length === 0) faults.push('no station is met');
  if (new Set(day.stations).size < day.stations.length) faults.push('a station is listed twice');
  const places = day.stations.map((id) => farm.stations.findIndex((one) => one.id === id));
  if (places.some((place, at) => at > 0 && place <= (places[at - 1] ?? -1)))
    faults.push(`stations are not in the order of the loop: ${day.stations.join(', ')}`);
  day.stations.forEach((id, at) => {
    const station = farm.stations[places[at] ?? -1];
    if (station === undefined) return void faults.push(`the farm has no station ${id}`);
    const why = closedBy(station, wish, ground);
    if (why !== null) faults.push(`${id} is in the plan though closed: ${why}`);
  });
  return faults;
}

function latinFaults({ day, wish, farm }: Checked): string[] {
  const faults: string[] = [];
  const band = bandOfGrade(wish.grade);
  const sorted = (ids: readonly (string | null)[]) => [...ids].sort().join(', ');
  day.parties.forEach((slots, party) => {
    const met = atStations(slots).map((slot) => slot.station);
    if (sorted(met) !== sorted(day.stations))
      faults.push(`party ${party} does not meet each station once: ${met.join(', ')}`);
    for (const slot of atStations(slots)) {
      const minutes = farm.stations.find((one) => one.id === slot.station)?.minutes[band] ?? 0;
      if (slot.to - slot.from < minutes)
        faults.push(
          `party ${party} has ${slot.to - slot.from} minutes at ${slot.station}, which takes ${minutes}`,
        );
    }
  });
  for (const id of day.stations) {
    const spans = day.parties.flatMap((slots) => atStations(slots).filter((slot) => slot.station === id));
    spans.sort((a, b) => a.from - b.from);
    if (spans.some((span, at) => at > 0 && span.from < (spans[at - 1]?.to ?? 0)))
      faults.push(`two parties are at ${id} at once`);
  }
  return faults;
}

/** Slots of a station where a doe is milked lie within one time of milking. */
function milkingFaults({ day, farm, ground }: Checked): string[] {
  const showing = new Set(farm.stations.filter((one) => one.milking).map((one) => one.id));
  const slots = day.parties.flatMap(atStations).filter((slot) => showing.has(slot.station ?? ''));
  const within = ground.milkings.some((span) =>
    slots.every(({ from, to }) => from >= span.from && to <= span.to),
  );
  return slots.length === 0 || within ? [] : ['a milking is shown when no doe is milked'];
}

/** In step: party p is in round r at station (p + r) mod S; a round begins and ends for all at once. */
function loopFaults({ day }: Checked): string[] {
  const faults: string[] = [];
  const count = day.stations.length;
  day.parties.forEach((slots, party) =>
    atStations(slots).forEach((slot, round) => {
      const next = day.stations[(party + round) % count];
      if (slot.station !== next)
        faults.push(
          `party ${party} leaves the one-way loop: in round ${round} at ${slot.station}, not ${next}`,
        );
    }),
  );
  const rounds = Array.from({ length: count }, (_, round) =>
    day.parties.map((slots) => atStations(slots)[round]).filter((slot) => slot !== undefined),
  );
  if (rounds.some((slots) => new Set(slots.map(({ from, to }) => `${from}-${to}`)).size > 1))
    faults.push('parties are not in step');
  day.parties.forEach((slots, party) => {
    const food = slots.findIndex((slot) => slot.kind === 'lunch');
    const before = food < 0 ? atStations(slots).length : atStations(slots.slice(0, food)).length;
    if (before !== day.roundsBefore)
      faults.push(
        `party ${party} has ${before} rounds before the food, but the plan says ${day.roundsBefore}`,
      );
  });
  return faults;
}
