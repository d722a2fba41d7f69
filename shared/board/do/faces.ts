// Who is who: a few does of the herd, told apart by ears, coat and age; and how old one is.
import { doeBreed, type DoeLook } from '../../drawing/doeLook.ts';
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { CHOICES, choicesAround } from './choicesAround.ts';
import { textsOf, type Told } from './told.ts';

/** What a doe can be told by, the plainest first; `years` is her age. */
export const TRAITS = ['ears', 'coat', 'pattern', 'horns', 'wattles', 'beard', 'years'] as const;
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
  /** Date of birth in words and whole years on the page's day; null where the farm does not say. */
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
  return kind === 'who'
    ? say(words, 'barn.do.faces.ask')
    : say(words, 'barn.do.faces.age', { name: doe.name });
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
    const slots = { name: doe.name, n: doe.years ?? 0, born: doe.born ?? '' };
    const more = say(words, 'barn.do.faces.born.more', slots);
    return { right: guess === right, text: say(words, `barn.do.faces.born.${found}`, slots), more };
  }
  const tapped = found === 'right' ? doe.name : doeOf(plan, String(guess)).name;
  const clue = doe.clues.map((one) => clueText(words, one)).join(' ');
  const slots = { name: doe.name, breed: doe.breed, tapped, clue };
  const more = say(
    words,
    `barn.do.faces.breed.${doeBreed(doe.breed) === 'mixed' ? 'unnamed' : 'named'}`,
    slots,
  );
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
