// Follow the grass to the milk: tap the next place on its way through the doe.
// The way is textbook anatomy (from memory); the four chambers: Cornell University, 4-H dairy goat pages.
import { say, type Words } from '../../words/words.ts';
import { daySlots, type DayPlan } from './doeDay.ts';
import { tellTap, textsOf, type Told } from './told.ts';

/** A place on the way. */
export type GrassPlace = 'mouth' | 'rumen' | 'abomasum' | 'gut' | 'blood' | 'udder' | 'pail';

/** The way, place by place: up to the mouth again for the cud, and down again. */
export const GRASS_WAY: readonly GrassPlace[] = Object.freeze([
  'mouth',
  'rumen',
  'mouth',
  'rumen',
  'abomasum',
  'gut',
  'blood',
  'udder',
  'pail',
]);
/** Each place once, as the drawing shows them. */
export const GRASS_PLACES: readonly GrassPlace[] = Object.freeze([...new Set(GRASS_WAY)]);

/** What the board says when a place is tapped and the grass has already been at `done` places of its way. */
export function grassVerdict(words: Words, plan: DayPlan, done: number, tapped: GrassPlace): Told {
  if (tapped === GRASS_WAY[done]) {
    const again = GRASS_WAY.indexOf(tapped) < done ? 'Again' : '';
    if (tapped !== 'pail') return tellTap(words, `barn.do.grass.right.${tapped}${again}`, true);
    const { key, slots } = daySlots(words, plan.day);
    return tellTap(words, `barn.do.grass.right.pail.${key}`, true, slots);
  }
  if (tapped === GRASS_WAY[done - 1]) return tellTap(words, 'barn.do.grass.wrong.here', false);
  const isPast = GRASS_WAY.lastIndexOf(tapped) < done;
  return tellTap(words, `barn.do.grass.wrong.${isPast ? 'past' : tapped}`, false);
}

/** Everything that this page may say. */
export function grassSays(words: Words, plan: DayPlan): string[] {
  const taps = GRASS_WAY.flatMap((_, done) =>
    GRASS_PLACES.map((tapped) => grassVerdict(words, plan, done, tapped)),
  );
  return [
    say(words, 'barn.do.grass.ask'),
    ...GRASS_PLACES.map((place) => say(words, `barn.do.grass.name.${place}`)),
    ...textsOf(taps),
  ];
}
