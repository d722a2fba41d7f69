// Whose kid is this: a kid with its mother's ears and coat, and three does of the herd to choose from.
// That a kid has half of its traits from each parent is textbook heredity (from memory); here both parents are of one breed.
import { isoDate } from '../../calendar/day.ts';
import { doeLook, type DoeBreed, type DoeLook } from '../../drawing/doeLook.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import type { BoardInput } from '../types.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** A doe who can be the mother. */
export interface Mother {
  readonly id: string;
  readonly name: string;
  /** As it is written in the list of does. */
  readonly breed: string;
  readonly look: DoeLook;
  /** Kids of her last kidding that is over; null where the list does not say. */
  readonly kids: number | null;
}

/** The does to choose from: no two of them have the same ears and coat. */
export interface WhoseKidPlan {
  readonly does: readonly Mother[];
}

/** One kid and three does. */
export interface KidRound {
  readonly choices: readonly Mother[];
  readonly mother: Mother;
  /** The kid's own look: the mother's ears and coat, without horns or beard. */
  readonly kid: DoeLook;
}

const CHOICES = 3;

/** Does of known breeds whose looks tell them apart; null where the herd has fewer than three of them. */
export function whoseKidPlan(input: BoardInput): WhoseKidPlan | null {
  const seen = new Set<string>();
  const breeds = new Set<DoeBreed>();
  const does = input.does.flatMap(({ id, name, breed }) => {
    const look = doeLook(breed, id);
    const seenAs = signOf(look);
    // A mixed kid may look like anybody, and a breed is told once.
    if (look.breed === 'mixed' || breeds.has(look.breed) || seen.has(seenAs)) return [];
    seen.add(seenAs);
    breeds.add(look.breed);
    return [{ id, name, breed, look, kids: lastKids(input, id) }];
  });
  return does.length < CHOICES ? null : { does };
}

function lastKids({ kiddings, figures }: BoardInput, id: string): number | null {
  const own = kiddings.filter(({ doe, day }) => doe === id && isoDate(day) <= figures.asOf);
  const last = own.toSorted((a, b) => a.day - b.day).at(-1);
  return last?.kids ? last.kids : null;
}

const signOf = ({ ears, coat }: DoeLook) => [ears, coat.pattern, coat.base, coat.marks, coat.ears].join();

/** The round of a seed. With `not` another mother than that one is taken. */
export function kidRound(plan: WhoseKidPlan, seed: number, not?: string): KidRound {
  const chance = chanceOf(`kid-${seed}`);
  const mother = chance.pick(plan.does.filter(({ id }) => id !== not));
  const others = chance.shuffle(plan.does.filter(({ id }) => id !== mother.id)).slice(0, CHOICES - 1);
  const kid: DoeLook = { ...mother.look, horns: false, beard: false, wattles: false };
  return { choices: chance.shuffle([mother, ...others]), mother, kid };
}

/** What the board says when a doe is tapped. */
export function kidVerdict(words: Words, { mother }: KidRound, tapped: Mother): Told {
  const slots = { name: tapped.name, breed: tapped.breed };
  if (tapped.id === mother.id) return tellTap(words, 'barn.do.whose-kid.right', true, slots);
  const by = tapped.look.ears === mother.look.ears ? 'coat' : 'ears';
  return tellTap(words, `barn.do.whose-kid.other.${by}`, false, slots);
}

/** What is said last: how many kids the mother had; null where the list does not say it. */
export function kidEnd(words: Words, { mother }: KidRound): string | null {
  if (mother.kids === null) return null;
  return say(words, 'barn.do.whose-kid.kids', { name: mother.name, n: mother.kids });
}

/** Everything that this page may say. */
export function whoseKidSays(words: Words, plan: WhoseKidPlan): string[] {
  const rounds = plan.does.map((mother) => ({ choices: plan.does, mother, kid: mother.look }));
  const taps = rounds.flatMap((round) => plan.does.map((tapped) => kidVerdict(words, round, tapped)));
  return [
    say(words, 'barn.do.whose-kid.ask'),
    ...new Set(rounds.flatMap((round) => kidEnd(words, round) ?? [])),
    ...textsOf(taps),
  ];
}
