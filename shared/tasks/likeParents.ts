// A doe and two kids: which has her coat, and whose ears are the same?
import { doeLook, type DoeLook } from '../drawing/doeLook.ts';
import { msg, sub } from '../sheet/message.ts';
import type { Face } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

/** A mother's face and those of two kids: one with her coat, one with another. */
export interface Family {
  readonly doe: Face;
  readonly alike: Face;
  readonly other: Face;
}

// Breeds whose coats are white in some and not in others, so that a copier keeps them apart.
const BREEDS = ['Alpine', 'LaMancha', 'Nigerian Dwarf'] as const;
// Kids are looked for among so many drawn ones of the mother's breed.
const MOST_KIDS = 40;
/** So many pairs of kids for each mother are choice enough. */
const MOST_PAIRS = 6;

const lookOf = ({ breed, id }: Face): DoeLook => doeLook(breed, id);
const pale = ({ coat }: DoeLook): boolean => coat.base === 'milk';
const sameCoat = (a: DoeLook, b: DoeLook): boolean => JSON.stringify(a.coat) === JSON.stringify(b.coat);

/** A mother with each pair of kids: neither horned nor bearded, one with her coat, the other's light where hers is dark. */
function pairsOf(doe: Face): Family[] {
  const own = lookOf(doe);
  const kids = Array.from({ length: MOST_KIDS }, (_, n): Face => ({
    breed: doe.breed,
    id: `kid ${n}`,
  })).filter((kid) => !lookOf(kid).horns && !lookOf(kid).beard);
  const alike = kids.filter((kid) => sameCoat(own, lookOf(kid)));
  const others = kids.filter((kid) => pale(own) !== pale(lookOf(kid)));
  return alike.slice(0, MOST_PAIRS).flatMap((one, index) => {
    const other = others[index % Math.max(1, others.length)];
    return other ? [{ doe, alike: one, other }] : [];
  });
}

/** Families of the herd's own does where their breeds allow it, of drawn ones elsewhere. */
function families(context: TaskContext): Family[] {
  const own = context.week.does.flatMap(({ breed, id }) => pairsOf({ breed, id }));
  return own.length > 0 ? own : BREEDS.flatMap((breed) => pairsOf({ breed, id: 'doe' }));
}

/** Young are like, but not just like, their parents (1-LS3-1): no word of how. */
export const likeParents = taskKind<Family>({
  name: 'like-parents',
  bands: ['k-2'],
  standards: ['1-LS3-1'],
  lack: 'no-milk',
  candidates: families,
  touches: ({ doe }) => [doe.id],
  make: (context, family) => compared(context, family),
});

function compared(context: TaskContext, { doe, alike, other }: Family): Task {
  const kids = context.chance.shuffle([alike, other]);
  const labels = ['kid-a', 'kid-b'] as const;
  const right = labels[kids.indexOf(alike)] as (typeof labels)[number];
  const word = (key: string) => msg(`task.like-parents.${key}`);
  return {
    kind: 'like-parents',
    standards: ['1-LS3-1'],
    lead: [word('lead')],
    picture: {
      is: 'faces',
      faces: [
        { face: doe, label: word('doe'), kid: false },
        ...kids.map((face, index) => ({ face, label: word(labels[index] as string), kid: true })),
      ],
    },
    asks: [
      {
        prompt: word('ask-coat'),
        work: { is: 'ring', of: labels.map((one) => sub(word(one))) },
        answer: word(right),
        values: [right],
        accepted: [],
        steps: [word('step-coat')],
      },
      {
        prompt: word('ask-ears'),
        work: { is: 'ring', of: ['same', 'not-same'].map((one) => sub(word(one))) },
        answer: word('same'),
        values: ['same'],
        accepted: [],
        steps: [word('step-ears')],
      },
    ],
    mistake: { what: word('mistake'), why: word('why') },
    fromBook: [],
  };
}
