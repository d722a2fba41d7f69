// What is on the menu: things that a goat eats, things that she gets a little of, and things that are bad for her.
import { chanceOf } from '../../sheet/chance.ts';
import { say, type Words } from '../../words/words.ts';
import { textsOf, type Told } from './told.ts';

/** A thing beside the feeder. */
export type MenuThing =
  | 'hay'
  | 'grass'
  | 'leaves'
  | 'water'
  | 'salt'
  | 'grain'
  | 'can'
  | 'bag'
  | 'bread'
  | 'yew'
  | 'rhododendron'
  | 'cord';

/**
 * Whether it belongs on a goat's menu. That bread and much grain upset the rumen, and that yew and rhododendron are
 * poison for goats, is from memory of veterinary handbooks; that goats refuse cans is the fact "choosy-browser".
 */
export const MENU: Readonly<Record<MenuThing, boolean>> = Object.freeze({
  hay: true,
  grass: true,
  leaves: true,
  water: true,
  salt: true,
  grain: true,
  can: false,
  bag: false,
  bread: false,
  yew: false,
  rhododendron: false,
  cord: false,
});

/** All things, so that the page's texts are known beforehand. */
export interface MenuPlan {
  readonly things: readonly MenuThing[];
}

const GOOD = 4;
const BAD = 4;

/** The plan of any week: what a goat eats does not hang on the book. */
export function menuPlan(): MenuPlan {
  return { things: Object.keys(MENU) as MenuThing[] };
}

/** Eight things for a seed, four of them on the menu, mixed. */
export function menuRound({ things }: MenuPlan, seed: number): MenuThing[] {
  const chance = chanceOf(`menu/${seed}`);
  const mixed = chance.shuffle(things);
  const picked = [
    ...mixed.filter((thing) => MENU[thing]).slice(0, GOOD),
    ...mixed.filter((thing) => !MENU[thing]).slice(0, BAD),
  ];
  return chance.shuffle(picked);
}

/** What the board says when a thing is tapped. */
export function menuVerdict(words: Words, thing: MenuThing): Told {
  const key = `barn.do.menu.thing.${thing}`;
  return { right: MENU[thing], text: say(words, `${key}.short`), more: say(words, `${key}.more`) };
}

/** What the board says once everything on the menu is found. */
export function menuDone(words: Words): Told {
  return {
    right: true,
    text: say(words, 'barn.do.menu.done.short'),
    more: say(words, 'barn.do.menu.done.more'),
  };
}

/** The verdict and the last word in one, as they stand on the page once everything is found. */
export function menuFound(told: Told, done: Told): string {
  return `${told.text} ${done.text}`;
}

/** Everything that this page may say. */
export function menuSays(words: Words, { things }: MenuPlan): string[] {
  const verdicts = things.map((thing) => menuVerdict(words, thing));
  const done = menuDone(words);
  return [
    say(words, 'barn.do.menu.ask'),
    say(words, 'barn.do.menu.never'),
    ...textsOf([...verdicts, done]),
    ...verdicts.map((told) => menuFound(told, done)),
  ];
}
