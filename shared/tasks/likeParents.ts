// A doe and her kid: what is the same, and what is not.
import { doeBreed, doeLook, type DoeLook } from '../drawing/doeLook.ts';
import { msg, sub } from '../sheet/message.ts';
import type { Face } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { taskKind, type Task } from './task.ts';

/** A mother's face and her kid's. */
export interface Family {
  readonly doe: Face;
  readonly kid: Face;
}

const BREEDS = ['Nubian', 'Alpine', 'LaMancha', 'Nigerian Dwarf'] as const;
// Kids are looked for among so many drawn ones, so that a kid with a coat like hers and one unlike are found.
const MOST_KIDS = 40;
/** Does who are offered as mothers: the herd's own of a breed with several coats, or drawn ones. */
function mothers(context: TaskContext): Face[] {
  const breeds = new Set<string>(BREEDS.map(doeBreed));
  const own = context.week.does
    .filter(({ breed }) => breeds.has(doeBreed(breed)))
    .map(({ breed, id }): Face => ({ breed, id }));
  return own.length > 0 ? own : BREEDS.map((breed): Face => ({ breed, id: 'doe' }));
}

const lookOf = ({ breed, id }: Face): DoeLook => doeLook(breed, id);
const pale = ({ coat }: DoeLook): boolean => coat.base === 'milk';
/** Coats are alike where they are cut alike; they are told apart on a copy only where one is white. */
const sameCoat = (a: DoeLook, b: DoeLook): boolean => JSON.stringify(a.coat) === JSON.stringify(b.coat);
const plainToSee = (a: DoeLook, b: DoeLook): boolean => sameCoat(a, b) || pale(a) !== pale(b);

function families(context: TaskContext): Family[] {
  return mothers(context).flatMap((doe) => {
    const own = lookOf(doe);
    return Array.from({ length: MOST_KIDS }, (_, n): Face => ({ breed: doe.breed, id: `kid ${n}` }))
      .filter((kid) => {
        const look = lookOf(kid);
        const grown = look.horns || look.beard;
        // Like, but not just like: something must differ.
        const differs = !sameCoat(own, look) || own.wattles !== look.wattles;
        return !grown && differs && plainToSee(own, look);
      })
      .map((kid) => ({ doe, kid }));
  });
}

/** Young are like, but not just like, their parents (1-LS3-1): no word of how. */
export const likeParents = taskKind<Family>({
  name: 'like-parents',
  bands: ['k-2'],
  standards: ['1-LS3-1'],
  lack: 'no-milk',
  candidates: families,
  touches: ({ doe }) => [doe.id],
  make: (_, family) => compared(family),
});

const TRAITS = ['ears', 'coat', 'wattles'] as const;
const sameIn = (a: DoeLook, b: DoeLook): Readonly<Record<(typeof TRAITS)[number], boolean>> => ({
  ears: a.ears === b.ears,
  coat: sameCoat(a, b),
  wattles: a.wattles === b.wattles,
});

function compared({ doe, kid }: Family): Task {
  const same = sameIn(lookOf(doe), lookOf(kid));
  // Wattles are asked for where they are the one thing that differs; else ears and coat are enough.
  const asked = TRAITS.filter((trait) => trait !== 'wattles' || same.coat);
  const choices = ['same', 'not-same'].map((one) => sub(msg(`task.like-parents.${one}`)));
  return {
    kind: 'like-parents',
    standards: ['1-LS3-1'],
    lead: [
      msg('task.like-parents.lead'),
      ...(asked.includes('wattles') ? [msg('task.like-parents.lead-wattles')] : []),
    ],
    picture: {
      is: 'faces',
      faces: [
        { face: doe, label: msg('task.like-parents.doe'), kid: false },
        { face: kid, label: msg('task.like-parents.kid'), kid: true },
      ],
    },
    asks: asked.map((trait) => ({
      prompt: msg(`task.like-parents.ask-${trait}`),
      work: { is: 'ring', of: choices },
      answer: msg(`task.like-parents.${same[trait] ? 'same' : 'not-same'}`),
      values: [same[trait] ? 'same' : 'not-same'],
      accepted: [],
      steps: [msg(`task.like-parents.step-${trait}-${same[trait] ? 'same' : 'not-same'}`)],
    })),
    mistake: { what: msg('task.like-parents.mistake'), why: msg('task.like-parents.why') },
    fromBook: [],
  };
}
