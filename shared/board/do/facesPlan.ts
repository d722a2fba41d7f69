// A few does of the herd and what tells each from the others: computed at build time.
import { doeLook } from '../../drawing/doeLook.ts';
import { dateText } from '../../quantity/show.ts';
import { chanceOf } from '../../sheet/chance.ts';
import type { BoardInput } from '../types.ts';
import { TRAITS, type Clue, type FaceDoe, type FacesPlan, type Trait } from './faces.ts';

const MOST_DOES = 5;

/** Up to five does; null where nothing can be asked: none that differ, and no date of birth. */
export function facesPlan(input: BoardInput): FacesPlan | null {
  const chance = chanceOf(`faces/${input.week.asOf}`);
  const few = input.does.length > MOST_DOES ? chance.shuffle(input.does).slice(0, MOST_DOES) : input.does;
  const seen = few.map(({ id, name, breed, born }): Seen => {
    const known = born !== null && born <= input.week.asOf;
    const years = known ? yearsBetween(born, input.week.asOf) : null;
    return {
      id,
      name,
      breed,
      look: doeLook(breed, id),
      born: known ? dateText(born, input.lang) : null,
      years,
    };
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
