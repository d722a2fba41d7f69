// Rules of a school day about what the plan changed by itself: each change is told, is true, and is needed.
import { bandOfGrade } from '../../shared/tasks/grades.ts';
import type { TripFarm, TripNote, TripWish } from '../../shared/trip/types.ts';
import { atStations, closedBy } from './tripPlaces.ts';
import { rulesOf, type Checked } from './tripChecked.ts';
import { wash_min } from './tripWash.ts';

type Change = Extract<TripNote, { kind: 'stand-in' | 'left out' }>;
const isChange = (note: TripNote): note is Change => note.kind === 'stand-in' || note.kind === 'left out';

/** Broken rules about notes and about the stations that they speak of. */
export function noteFaults(checked: Checked): string[] {
  return [...askedFaults(checked), ...changeFaults(checked), ...forFaults(checked), ...otherFaults(checked)];
}

/** Where a station ended up by the notes: itself, a stand-in along a chain, or nowhere. */
function followed(id: string, notes: readonly TripNote[]): string | null {
  const seen = new Set<string>();
  let at = id;
  for (;;) {
    const change = notes.find((note): note is Change => isChange(note) && note.station === at);
    if (change === undefined) return at;
    if (change.kind === 'left out' || seen.has(at)) return null;
    seen.add(at);
    at = change.by;
  }
}

/** What was asked for is there, stood in for, or told as left out; nothing else is there. */
function askedFaults({ day, notes, wish, farm }: Checked): string[] {
  const chose = notes.find((note) => note.kind === 'farm chose');
  const faults: string[] = [];
  if (wish.stations.length > 0 && chose) faults.push('the farm is said to have chosen, though the group did');
  if (wish.stations.length === 0 && !chose) faults.push('nothing tells that the farm chose the stations');
  const usual = farm.usual[bandOfGrade(wish.grade)];
  const asked = wish.stations.length > 0 ? [...new Set(wish.stations)] : (chose?.stations ?? usual);
  if (asked.some((id) => wish.stations.length === 0 && !usual.includes(id)) && !isTight(wish, farm, usual))
    faults.push('the farm chose a station that it does not usually choose, though its usual ones have room');
  const ends = asked.map((id) => followed(id, notes));
  asked.forEach((id, at) => {
    const end = ends[at];
    if (end !== null && end !== undefined && !day.stations.includes(end))
      faults.push(`${id} was asked for and nothing tells where it went`);
  });
  for (const id of day.stations)
    if (!ends.includes(id)) faults.push(`${id} is in the plan, but nobody asked for it`);
  if (wish.stations.length > 0 && new Set(ends.filter((end) => end !== null)).size < ends.filter((end) => end !== null).length)
    faults.push('two stations have the same stand-in'); // prettier-ignore
  return faults;
}

/** No first part of the usual stations holds as many children, one equal party at each, as come. */
function isTight({ children }: TripWish, { stations }: TripFarm, usual: readonly string[]): boolean {
  const capacities = usual.map((id) => stations.find((one) => one.id === id)!.capacity);
  return capacities.every(
    (_, at) => Math.ceil(children / (at + 1)) > Math.min(...capacities.slice(0, at + 1)),
  );
}

/** Each change has a true reason, follows the farm's stand-ins, and nothing is left out that could be stood in for. */
function changeFaults(checked: Checked): string[] {
  const { notes, farm, wish, ground, day } = checked;
  const faults: string[] = [];
  const elsewhen = notes.some((note) => note.kind === 'milking at another time');
  const isTrue = (id: string, why: Change['why']): boolean => {
    const station = farm.stations.find((one) => one.id === id);
    if (station === undefined) return false;
    if (why === 'no milking') return station.milking && (ground.milkings.length === 0 || elsewhen);
    if (why === 'rain') return wish.rain && !station.roofed;
    if (why === 'kidding') return ground.kiddingNear && station.kidding;
    return wish.needs.includes('wheelchair') && !station.wheelchair;
  };
  const chain = (id: string): string[] => {
    const seen = [id];
    for (;;) {
      const next = farm.stations.find((one) => one.id === seen.at(-1))?.standIn ?? null;
      if (next === null || seen.includes(next)) return seen.slice(1);
      seen.push(next);
    }
  };
  for (const note of notes.filter(isChange)) {
    if (!isTrue(note.station, note.why))
      faults.push(`${note.station} is ${note.kind} for ${note.why}, which is not so`);
    if (note.kind === 'stand-in' && !chain(note.station).includes(note.by))
      faults.push(`${note.by} is no stand-in of ${note.station}`);
    if (note.kind !== 'left out') continue;
    const free = chain(note.station)
      .map((id) => farm.stations.find((one) => one.id === id))
      .find(
        (one) =>
          one && !one.milking && closedBy(one, wish, ground) === null && !day.stations.includes(one.id),
      );
    if (free) faults.push(`${note.station} is left out, though ${free.id} could stand in`);
  }
  return faults;
}

/** A slot says for whom its station stands in, exactly where a note does. */
function forFaults({ day, notes, wish }: Checked): string[] {
  const stoodIn = new Set(notes.flatMap((note) => (note.kind === 'stand-in' ? [note.by] : [])));
  return day.parties.flatMap((slots, party) =>
    atStations(slots).flatMap((slot) => {
      const id = slot.station ?? '';
      if (slot.for === null)
        return stoodIn.has(id) && !wish.stations.includes(id) && wish.stations.length > 0
          ? [`party ${party} is not told for what ${id} stands in`]
          : [];
      const leads = slot.for !== id && followed(slot.for, notes) === id;
      return leads
        ? []
        : [`party ${party} is told that ${id} stands in for ${slot.for}, and no note says so`];
    }),
  );
}

function otherFaults(checked: Checked): string[] {
  const { day, notes, ground, farm } = checked;
  const faults: string[] = [];
  const { aim } = rulesOf(checked).perAdult;
  const worst = Math.max(...day.groups.map((one) => one.children / one.adults));
  const few = notes.some((note) => note.kind === 'few adults');
  if (few !== worst > aim) faults.push(few ? 'there are adults enough, but the plan says few' : 'nothing tells that adults are few');
  const byParty = notes.some((note) => note.kind === 'wash by party');
  const washes = day.parties.some((slots) => slots.some((slot) => slot.kind === 'wash'));
  const long = washes && day.parties.length > 1 && wash_min(checked, null) > farm.washTogether_min + 1e-9;
  if (byParty !== long)
    faults.push(byParty ? 'washing is not too long to be done together' : 'nothing tells that parties wash in turn');
  for (const note of notes)
    if (note.kind === 'milking at another time') {
      if (ground.milkings.length === 0) faults.push('a milking at another time is told, but there is none');
      if (JSON.stringify(note.milkings) !== JSON.stringify(ground.milkings))
        faults.push('the times of milking that are told are not those of the day');
      if (day.stations.some((id) => farm.stations.find((one) => one.id === id)?.milking))
        faults.push('a milking at another time is told, and one is in the plan');
    }
  return faults;
} // prettier-ignore
