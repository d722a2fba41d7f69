// The names of the small printed blocks, and the ink that each one's ground is rolled with.
import { barn, hay, meadow, paperDeep, umber } from '../inks.ts';

/** Blocks of the kitchen and the milking place. */
export const kitchenGrounds = {
  flavor: hay,
  'how-to-milk': meadow,
  'why-clean': paperDeep,
  cheese: hay,
  keeps: paperDeep,
  'drink-here': barn,
  stroke: meadow,
} as const;

/** Blocks of the goats and their kids. */
export const goatGrounds = {
  'which-goat': paperDeep,
  'how-old': hay,
  'who-rests': meadow,
  males: umber,
  eyes: hay,
  'where-kids': meadow,
  twins: hay,
  likeness: paperDeep,
} as const;

/** Blocks of what goats eat, of their insides and of the year. */
export const foodGrounds = {
  udder: paperDeep,
  winter: paperDeep,
  'eats-and-drinks': meadow,
  'grass-to-milk': hay,
  stomachs: barn,
  cans: paperDeep,
  land: meadow,
} as const;

/** Blocks on the board's tools and on what there is to do. */
export const toolGrounds = {
  listen: hay,
  stop: hay,
  down: paperDeep,
  up: paperDeep,
  next: meadow,
  try: hay,
  pail: hay,
} as const;

export const emblemGrounds = {
  'why-milk': hay,
  'how-much': paperDeep,
  'whose-milk': meadow,
  'goat-and-cow': hay,
  'does-it-hurt': barn,
  'where-it-goes': meadow,
  home: hay,
  proof: paperDeep,
  back: paperDeep,
  hands: paperDeep,
  ...kitchenGrounds,
  ...goatGrounds,
  ...foodGrounds,
  ...toolGrounds,
} as const;

export type EmblemName = keyof typeof emblemGrounds;
