// How a doe's head looks: ears and coat from her breed, the small differences from her own id.
import { seedOf } from './wobble.ts';

/** The breeds that have a head of their own; `mixed` stands for every other word in the breed column. */
export type DoeBreed =
  | 'alpine'
  | 'guernsey'
  | 'lamancha'
  | 'mixed'
  | 'nigerian'
  | 'nubian'
  | 'oberhasli'
  | 'saanen'
  | 'sable'
  | 'toggenburg';

/** An ink of the print that a coat can have. */
export type CoatInk = 'hay' | 'ink' | 'milk' | 'umber';

/** Where a second colour lies: stripes down the face, a blaze, a patch over one eye, a dark mask, or nowhere. */
export type CoatPattern = 'plain' | 'stripes' | 'blaze' | 'patch' | 'mask';

/** A coat as it is printed. */
export interface Coat {
  readonly pattern: CoatPattern;
  /** The colour of most of the head. */
  readonly base: CoatInk;
  /** The colour of the stripes, the blaze, the patch or the mask. */
  readonly marks: CoatInk;
  /** The colour of the ears. */
  readonly ears: CoatInk;
}

/** All that a drawing of a doe's head needs to know. */
export interface DoeLook {
  readonly breed: DoeBreed;
  readonly ears: 'upright' | 'long' | 'tiny';
  readonly coat: Coat;
  readonly horns: boolean;
  readonly wattles: boolean;
  readonly beard: boolean;
  /** A small, short head, as Nigerian Dwarf does have. */
  readonly small: boolean;
  readonly collar: 'barn' | 'meadow' | 'hay';
  /** How far she holds her head aside, in degrees, -4 .. 4. */
  readonly tilt_deg: number;
  /** True when the patch or the raised ear is on the viewer's right. */
  readonly right: boolean;
}

const coat = (pattern: CoatPattern, base: CoatInk, marks: CoatInk, ears: CoatInk = base): Coat => ({
  pattern,
  base,
  marks,
  ears,
});

// Coats after the breeds' own descriptions, as far as four inks go (from memory of the breed standards).
const coats: Readonly<Record<DoeBreed, readonly Coat[]>> = {
  saanen: [coat('plain', 'milk', 'milk')],
  toggenburg: [coat('stripes', 'umber', 'milk', 'milk')],
  alpine: [
    coat('stripes', 'ink', 'milk', 'milk'),
    coat('mask', 'umber', 'ink', 'ink'),
    coat('stripes', 'milk', 'ink', 'ink'),
    coat('mask', 'hay', 'ink', 'umber'),
  ],
  nubian: [
    coat('stripes', 'umber', 'ink', 'hay'),
    coat('blaze', 'ink', 'hay', 'milk'),
    coat('plain', 'umber', 'umber', 'milk'),
    coat('patch', 'hay', 'milk', 'umber'),
  ],
  lamancha: [
    coat('blaze', 'umber', 'milk'),
    coat('plain', 'hay', 'hay'),
    coat('blaze', 'ink', 'milk'),
    coat('patch', 'milk', 'umber'),
  ],
  nigerian: [
    coat('patch', 'milk', 'umber', 'umber'),
    coat('blaze', 'hay', 'milk', 'hay'),
    coat('patch', 'milk', 'ink', 'ink'),
    coat('patch', 'umber', 'milk', 'milk'),
  ],
  oberhasli: [coat('mask', 'umber', 'ink', 'ink')],
  guernsey: [coat('plain', 'hay', 'hay')],
  sable: [coat('plain', 'umber', 'umber'), coat('plain', 'ink', 'ink')],
  mixed: [
    coat('blaze', 'umber', 'milk', 'ink'),
    coat('patch', 'hay', 'umber', 'umber'),
    coat('blaze', 'ink', 'milk', 'umber'),
    coat('patch', 'milk', 'ink', 'umber'),
  ],
};

// Whole or part words of a breed column, in several spellings; the first that fits is taken.
const spellings: readonly (readonly [RegExp, DoeBreed])[] = [
  [/alpin|chamois/, 'alpine'],
  [/nubi|anglo/, 'nubian'],
  [/mancha/, 'lamancha'],
  [/sa+nen/, 'saanen'],
  [/sable/, 'sable'],
  [/tog+en/, 'toggenburg'],
  [/nigerian|dwarf|pygmy|enana/, 'nigerian'],
  [/oberhasli/, 'oberhasli'],
  [/guernsey/, 'guernsey'],
];

/** The breed that a word from the breed column stands for; any letter case, `mixed` for words it does not know. */
export function doeBreed(breed: string): DoeBreed {
  const word = breed.toLowerCase();
  // There are Guernsey cows too: the goat's name is Golden Guernsey or says that she is a goat.
  if (/guernsey/.test(word) && !/gold|goat/.test(word)) return 'mixed';
  return spellings.find(([pattern]) => pattern.test(word))?.[1] ?? 'mixed';
}

const earsOf: Readonly<Partial<Record<DoeBreed, DoeLook['ears']>>> = { nubian: 'long', lamancha: 'tiny' };
const collars: readonly DoeLook['collar'][] = ['barn', 'meadow', 'hay'];

/**
 * How a doe looks on every page and sheet: breed decides ears and the coats she can have, her id picks among them.
 *
 * `breed` is free text; a breed that it does not know, or a cow's, gives a mixed-breed goat with upright ears.
 * `id` is any text. The same two texts always give the same look. Never fails.
 *
 * @example doeLook('Nubian', 'juno').ears // 'long'
 */
export function doeLook(breed: string, id: string): DoeLook {
  const kind = doeBreed(breed);
  const seed = seedOf(`${kind}/${id}`);
  // A run of small picks from one seed: each takes its own digits, so that coat does not decide horns.
  const pick = (place: number, many: number): number => Math.floor(seed / 7 ** place) % many;
  const all = coats[kind];
  return {
    breed: kind,
    ears: earsOf[kind] ?? 'upright',
    coat: all[pick(0, all.length)] as Coat,
    // Most dairy does are disbudded as kids; LaMancha and Nubian heads stay bare so that the ears tell.
    horns: kind !== 'lamancha' && kind !== 'nubian' && pick(1, 4) === 0,
    wattles: kind === 'toggenburg' ? pick(2, 4) !== 0 : kind !== 'nubian' && pick(2, 3) === 0,
    beard: kind !== 'nubian' && pick(3, 5) < 2,
    small: kind === 'nigerian',
    collar: collars[pick(5, 3)] as DoeLook['collar'],
    tilt_deg: pick(6, 9) - 4,
    right: pick(7, 2) === 0,
  };
}
