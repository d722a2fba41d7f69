// The small block that stands for each thing to do.
import type { ActivityName } from '../../../../shared/board/topics.ts';
import type { EmblemName } from '../../drawings/pieces/emblemName.ts';

export const DO_EMBLEMS: Readonly<Record<ActivityName, EmblemName>> = {
  pour: 'how-much',
  guess: 'whose-milk',
  steps: 'how-to-milk',
  'whose-kid': 'where-kids',
  grass: 'grass-to-milk',
  year: 'winter',
  'two-milks': 'goat-and-cow',
  'udder-parts': 'udder',
  cups: 'where-it-goes',
  squeeze: 'does-it-hurt',
  wash: 'hands',
  menu: 'eats-and-drinks',
  faces: 'which-goat',
};
