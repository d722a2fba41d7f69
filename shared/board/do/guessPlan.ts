// What this week gives to guess, and why one doe gave more than another: computed at build time.
import { doeBreed, doeLook } from '../../drawing/doeLook.ts';
import type { DoeWeek, WeekMilking } from '../../herd/week.ts';
import { dateText, inParts } from '../../quantity/show.ts';
import { UNIT_ML } from '../../quantity/units.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { dayUnit } from '../shown.ts';
import type { BoardInput } from '../types.ts';
import type { GuessDoe, GuessPlan, GuessRound, GuessWhy } from './guess.ts';

const MOST_PAIRS = 5;
const MOST_ALONE = 3;
const MOST_JARS = 16;
// Does of about the same weight do not differ by their size.
const MUCH_LIGHTER = 0.75;
const YOUNG_years = 3;
// A month and a half: about as long as milk rises after the kids are born (fact "peak-weeks": 28 to 56 days).
const MUCH_LATER_days = 45;

/** Pairs of the newest milking that two does have, and single does at their last one; null where nobody has milk. */
export function guessPlan(input: BoardInput): GuessPlan | null {
  const unit = dayUnit(input) === 'L' ? 'L' : 'cup';
  const perUnit = unit === 'L' ? 2 : 1;
  const jarParts = (input.jar_mL / UNIT_ML[unit].valueOf()) * perUnit;
  const seen = (doe: DoeWeek, row: WeekMilking) => {
    const { id, name, breed } = doe;
    return { id, name, look: doeLook(breed, id), parts: inParts(row.amount_mL, unit, perUnit) };
  };
  const fits = ({ parts }: GuessDoe) => parts > 0 && parts <= MOST_JARS * jarParts;
  const dayText = (date: string) => dateText(date, input.lang, 'day');
  const chance = chanceOf(`guess/${input.week.window?.to ?? ''}`);
  const alone = chance.shuffle(input.week.does).flatMap((doe): GuessRound[] => {
    const row = doe.milkings.at(-1);
    if (!row) return [];
    const one = seen(doe, row);
    return fits(one) ? [{ does: [one], day: dayText(row.date), milking: row.milking, why: 'unknown' }] : [];
  });
  const pairs = chance.shuffle(pairsOf(input)).flatMap(([first, second]): GuessRound[] => {
    const two = [seen(first.doe, first.row), seen(second.doe, second.row)] as const;
    // A pair that is shown alike has nothing to guess.
    if (!two.every(fits) || two[0].parts === two[1].parts) return [];
    const [low, high] = two[0].parts < two[1].parts ? [first.doe, second.doe] : [second.doe, first.doe];
    const { date, milking } = first.row;
    return [{ does: two, day: dayText(date), milking, why: whyOf(input, low, high) }];
  });
  const rounds = [...pairs.slice(0, MOST_PAIRS), ...alone.slice(0, MOST_ALONE)];
  return rounds.length === 0 ? null : { unit, perUnit, jarParts, rounds };
}

interface Milked {
  readonly doe: DoeWeek;
  readonly row: WeekMilking;
}

// Pairs of does at the newest milking that at least two does have a row of.
function pairsOf({ week }: BoardInput): [Milked, Milked][] {
  const rows = week.does.flatMap((doe) => doe.milkings.map((row): Milked => ({ doe, row })));
  const byMilking = Map.groupBy(rows, ({ row }) => `${row.date} ${row.milking}`);
  const shared = [...byMilking].filter(([, milked]) => milked.length > 1);
  const newest = shared.toSorted(([a], [b]) => a.localeCompare(b)).at(-1)?.[1] ?? [];
  return newest.flatMap((first, place) =>
    newest.slice(place + 1).map((second): [Milked, Milked] => [first, second]),
  );
}

function whyOf(input: BoardInput, low: DoeWeek, high: DoeWeek): GuessWhy {
  if (isSmaller(input, low, high)) return 'size';
  if (isSmaller(input, high, low)) return 'surprise';
  if (isYoung(input, low) && !isYoung(input, high)) return 'young';
  const [lowBorn, highBorn] = [lastKidding(input, low), lastKidding(input, high)];
  if (lowBorn !== null && highBorn !== null && highBorn - lowBorn >= MUCH_LATER_days) return 'later';
  return 'unknown';
}

// Nigerian Dwarf does are half as heavy as a Saanen (fact "breed-size"); else the farm's own scale tells.
function isSmaller({ does }: BoardInput, one: DoeWeek, other: DoeWeek): boolean {
  const isDwarf = ({ breed }: DoeWeek) => doeBreed(breed) === 'nigerian';
  if (isDwarf(one) !== isDwarf(other)) return isDwarf(one);
  const weightOf = ({ id }: DoeWeek) => does.find((doe) => doe.id === id)?.weight_kg ?? null;
  const [light, heavy] = [weightOf(one), weightOf(other)];
  return light !== null && heavy !== null && light <= MUCH_LIGHTER * heavy;
}

// Does in their first lactation give less than grown ones: from memory of dairy textbooks.
function isYoung({ week }: BoardInput, { born }: DoeWeek): boolean {
  if (born === null) return false;
  const limit = `${Number(born.slice(0, 4)) + YOUNG_years}${born.slice(4)}`;
  return week.asOf < limit;
}

function lastKidding({ kiddings, week }: BoardInput, { id }: DoeWeek): number | null {
  const to = week.window ? Date.parse(week.window.to) / 86_400_000 : 0;
  const days = kiddings.filter(({ doe, day }) => doe === id && day <= to).map(({ day }) => day);
  return days.length === 0 ? null : Math.max(...days);
}
