// Which goat is which? Every doe of the list, and what of her breed is to be seen on her.
import { doeBreed, type DoeBreed } from '../drawing/doeLook.ts';
import type { EarShape } from './goatPicture.ts';
import { countSum } from './herdOn.ts';
import type { Answer, BoardInput } from './types.ts';

/** The order in which the proof counts the ears. */
const SHAPES: readonly EarShape[] = ['upright', 'long', 'tiny', 'look'];

/** The ears of a breed. Source: breed descriptions of dairy goat associations (from memory). */
export function earsOf(breed: DoeBreed): EarShape {
  if (breed === 'nubian') return 'long';
  if (breed === 'lamancha') return 'tiny';
  return breed === 'mixed' ? 'look' : 'upright';
}

/** The does of the list, with the mark of each breed. Ears and breed are all that the list can tell of a face. */
export function whichGoat(input: BoardInput): Answer {
  const does = input.does.map((doe) => ({ ...doe, mark: doeBreed(doe.breed) }));
  const n = does.length;
  const breeds = new Set(does.map(({ breed }) => breed.trim().toLowerCase()).filter(Boolean)).size;
  const known = does.some(({ mark }) => earsOf(mark) !== 'look');
  const counts = SHAPES.flatMap((shape) => {
    const count = does.filter(({ mark }) => earsOf(mark) === shape).length;
    return count === 0 ? [] : [{ shape, count }];
  });
  return {
    name: 'which-goat',
    missing: n === 0,
    live: false,
    face: null,
    number: n === 0 ? '' : String(n),
    slots: { n, breeds },
    variants: { 'why.second': breeds < 2 ? 'one' : known ? 'several' : 'unknown' },
    concrete: n,
    picture: {
      kind: 'goats',
      goats: { what: 'faces', does: does.map(({ id, name, breed, mark }) => ({ id, name, breed, mark })) },
    },
    proof: {
      figure: null,
      steps: [
        ...counts.map(({ shape, count }) => ({ label: '', key: `ears.${shape}`, sum: String(count) })),
        { label: '', sum: countSum(counts.map(({ count }) => count)) },
      ],
      columns: ['doe', 'breed'],
      rows: does.map(({ name, breed }) => ({ cells: [name, breed || '?'], place: 'does.csv' })),
      missing: 0,
      facts: ['beards-both', 'ears-passed-on', 'breed-size'],
      table: null,
    },
  };
}
