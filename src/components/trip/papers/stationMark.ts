// Which of our printed blocks stands for a station on paper.
import type { Station } from '../../../../shared/trip/types.ts';
import type { EmblemName } from '../../drawings/pieces/emblemName.ts';

const MARKS: Readonly<Record<string, EmblemName>> = {
  'milking-stand': 'how-to-milk',
  'goat-barn': 'which-goat',
  'kid-pen': 'twins',
  'pasture-rail': 'grass-to-milk',
  'hay-loft': 'eats-and-drinks',
  'hoof-and-coat': 'stroke',
  'barn-board': 'try',
  'measuring-table': 'how-much',
  'practice-stand': 'pail',
  'kid-table': 'why-milk',
  'kitchen-window': 'cheese',
};
// A station of the farm's own has the block of its zone.
const ZONE_MARKS: Readonly<Record<Station['zone'], EmblemName>> = {
  animal: 'which-goat',
  between: 'home',
  clean: 'proof',
};

/** The block of a station. */
export function stationMark({ id, zone }: Pick<Station, 'id' | 'zone'>): EmblemName {
  return MARKS[id] ?? ZONE_MARKS[zone];
}
