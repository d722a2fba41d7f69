// Who is who: a few does of the herd, told apart by ears, coat and age; and how old one is.
import { doeLook, type DoeLook } from '../../drawing/doeLook.ts';
import { dateText } from '../../quantity/show.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import type { BoardInput } from '../types.ts';
import { CHOICES, choicesAround } from './choicesAround.ts';
import { textsOf, type Told } from './told.ts';

/** What a doe can be told by, the plainest first; `years` is her age. */
const TRAITS = ['ears', 'coat', 'pattern', 'horns', 'wattles', 'beard', 'years'] as const;
/** One of these. */
export type Trait = (typeof TRAITS)[number];

/** A trait and how it is in one doe: a word, or her age in years. */
export interface Clue {
  readonly trait: Trait;
  readonly value: string | number;
}

/** A doe that can be found. */
export interface FaceDoe {
  readonly id: string;
  readonly name: string;
  /** As it is written in the list of does; may be empty. */
  readonly breed: string;
  readonly look: DoeLook;
  /** Date of birth and whole years on the page's day; null where the farm does not say. */
  readonly born: string | null;
  readonly years: number | null;
  /** What tells her from every doe of the plan, but for those in `like`. */
  readonly clues: readonly Clue[];
  /** Ids of does that look and are just as old as she. */
  readonly like: readonly string[];
}

/** A few does, and what can be asked of them. */
export interface FacesPlan {
  readonly does: readonly FaceDoe[];
  readonly rounds: readonly { readonly kind: 'who' | 'age'; readonly doe: string }[];
}

const MOST_DOES = 5;

/** Up to five does; null where nothing can be asked: none that differ, and no date of birth. */
export function facesPlan(input: BoardInput): FacesPlan | null {
  const chance = chanceOf(`faces/${input.week.asOf}`);
  const few = input.does.length > MOST_DOES ? chance.shuffle(input.does).slice(0, MOST_DOES) : input.does;
  const seen = few.map(({ id, name, breed, born }): Seen => {
    const known = born !== null && born <= input.week.asOf;
    const years = known ? yearsBetween(born, input.week.asOf) : null;
    return { id, name, breed, look: doeLook(breed, id), born: known ? born : null, years };
  });
  const does = seen.map((doe): FaceDoe => ({ ...doe, ...cluesOf(doe, seen) }));
  const rounds = does.flatMap(({ id, like, years }) => [
    ...(like.length < does.length - 1 ? [{ kind: 'who' as const, doe: id }] : []),
    ...(years === null ? [] : [{ kind: 'age' as const, doe: id }]),
  ]);
  return rounds.length === 0 ? null : { does, rounds };
}

type Seen = Omit<FaceDoe, 'clues' | 'like'>;

/** Whole years from one ISO date to another, birthdays counted on the day itself. */
export function yearsBetween(from: string, to: string): number {
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4));
  return to.slice(5) < from.slice(5) ? years - 1 : years;
}

function valueOf({ look, years }: Seen, trait: Trait): string | number | null {
  if (trait === 'years') return years;
  if (trait === 'ears') return look.ears;
  if (trait === 'coat') return look.coat.base;
  if (trait === 'pattern') return look.coat.pattern;
  return look[trait] ? 'yes' : 'no';
}

// Each clue must leave fewer does than before; the first that leaves none ends the search.
function cluesOf(doe: Seen, all: readonly Seen[]): { clues: Clue[]; like: string[] } {
  const clues: Clue[] = [];
  let left = all.filter(({ id }) => id !== doe.id);
  for (const trait of TRAITS) {
    const value = valueOf(doe, trait);
    const alike = left.filter((other) => valueOf(other, trait) === value);
    if (value === null || alike.length === left.length) continue;
    clues.push({ trait, value });
    left = alike;
  }
  return { clues, like: left.map(({ id }) => id) };
}

/** A round as it is shown. */
export interface FacesShown {
  readonly kind: 'who' | 'age';
  readonly doe: FaceDoe;
  /** Ids of does, or ages in years. */
  readonly choices: readonly (string | number)[];
  readonly right: string | number;
  /** Ages stand beside the names, since a clue speaks of them. */
  readonly ages: boolean;
}

/** A round by its seed; each next turn asks something else, until all has been asked. */
export function facesShown(plan: FacesPlan, seed: number, turn: number): FacesShown {
  const round = chanceOf(`faces/${seed}`).shuffle(plan.rounds)[turn % plan.rounds.length];
  const doe = doeOf(plan, round?.doe ?? '');
  const chance = chanceOf(`faces/${seed}/${turn}`);
  if (round?.kind === 'age') {
    const right = doe.years ?? 0;
    return { kind: 'age', doe, choices: choicesAround(chance, right, 1, 0), right, ages: false };
  }
  const others = plan.does.filter(({ id }) => id !== doe.id && !doe.like.includes(id));
  const picked = chance.shuffle(others).slice(0, CHOICES - 1);
  const choices = chance.shuffle([doe, ...picked]).map(({ id }) => id);
  return { kind: 'who', doe, choices, right: doe.id, ages: doe.clues.some(({ trait }) => trait === 'years') };
}

/** A doe of the plan by her id; throws where the plan has none. */
export function doeOf({ does }: FacesPlan, id: string): FaceDoe {
  const doe = does.find((one) => one.id === id);
  if (!doe) throw new Error(`The plan has no doe "${id}".`);
  return doe;
}

/** A clue as a sentence. */
export function clueText(words: Words, { trait, value }: Clue): string {
  return trait === 'years'
    ? say(words, 'barn.do.faces.clue.years', { n: value })
    : say(words, `barn.do.faces.clue.${trait}.${value}`);
}

/** What is asked in a round. */
export function facesAsk(words: Words, { kind, doe }: Pick<FacesShown, 'kind' | 'doe'>): string {
  return kind === 'who' ? say(words, 'barn.do.faces.ask') : say(words, 'barn.do.faces.age', { name: doe.name });
}

/** What the board says after a tap on a doe or an age. */
export function facesVerdict(
  words: Words,
  plan: FacesPlan,
  { kind, doe, right }: Pick<FacesShown, 'kind' | 'doe' | 'right'>,
  guess: string | number,
): Told {
  const found = guess === right ? 'right' : 'other';
  if (kind === 'age') {
    const born = doe.born === null ? '' : dateText(doe.born, words.lang);
    const slots = { name: doe.name, n: doe.years ?? 0, born };
    const more = say(words, 'barn.do.faces.born.more', slots);
    return { right: guess === right, text: say(words, `barn.do.faces.born.${found}`, slots), more };
  }
  const tapped = found === 'right' ? doe.name : doeOf(plan, String(guess)).name;
  const clue = doe.clues.map((one) => clueText(words, one)).join(' ');
  const slots = { name: doe.name, breed: doe.breed, tapped, clue };
  const more = say(words, `barn.do.faces.breed.${doe.breed === '' ? 'unnamed' : 'named'}`, slots);
  return { right: guess === right, text: say(words, `barn.do.faces.${found}`, slots), more };
}

/** Everything that this page may say. */
export function facesSays(words: Words, plan: FacesPlan): string[] {
  return plan.rounds.flatMap(({ kind, doe: id }) => {
    const doe = doeOf(plan, id);
    const isWho = kind === 'who';
    const others = plan.does.filter((other) => other.id !== id && !doe.like.includes(other.id));
    const right = isWho ? id : (doe.years ?? 0);
    const guesses = isWho ? [id, ...others.map((other) => other.id)] : [right, -1];
    return [
      facesAsk(words, { kind, doe }),
      ...(isWho ? doe.clues.map((clue) => clueText(words, clue)) : []),
      ...textsOf(guesses.map((guess) => facesVerdict(words, plan, { kind, doe, right }, guess))),
    ];
  });
}
