// The names of the small printed blocks, and the ink that each one's ground is rolled with.
import { barn, hay, meadow, paperDeep } from '../inks.ts';

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
} as const;

export type EmblemName = keyof typeof emblemGrounds;
