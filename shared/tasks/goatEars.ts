// Count the ears of some goats.
import { doeLook } from '../drawing/doeLook.ts';
import { whole } from '../quantity/grade.ts';
import { count, math, msg } from '../sheet/message.ts';
import type { Face } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';
import { taskKind } from './task.ts';

// Two ears each: up to twenty in rows (K.CC.B.5).
const LEAST_GOATS = 3;
const MOST_GOATS = 10;
const BREEDS = ['Alpine', 'Nubian', 'Saanen', 'Toggenburg', 'Oberhasli'] as const;

/** Faces whose ears can be seen: the herd's own first, drawn goats after them. Ears as small as a LaMancha's are left out. */
function faces(context: TaskContext, goats: number): Face[] {
  const own = context.week.does.map(({ breed, id }): Face => ({ breed, id }));
  const others = Array.from({ length: MOST_GOATS }, (_, n): Face => ({
    breed: BREEDS[n % BREEDS.length] as string,
    id: `goat ${n}`,
  }));
  return [...context.chance.shuffle(own), ...others]
    .filter(({ breed, id }) => doeLook(breed, id).ears !== 'tiny')
    .slice(0, goats);
}

const GOATS = Array.from({ length: MOST_GOATS - LEAST_GOATS + 1 }, (_, n) => LEAST_GOATS + n);

/** Counting to twenty, by twos where the child can (K.CC.B.5). */
export const goatEars = taskKind<number>({
  name: 'goat-ears',
  bands: ['k-2'],
  standards: ['K.CC.B.5'],
  lack: 'no-milk',
  candidates: () => GOATS,
  touches: (goats) => [`ears ${goats}`],
  make(context, goats) {
    const ears = whole(goats * 2);
    return {
      kind: 'goat-ears',
      standards: ['K.CC.B.5'],
      lead: [msg('task.goat-ears.lead')],
      picture: {
        is: 'faces',
        faces: faces(context, goats).map((face) => ({ face, label: null, kid: false })),
      },
      asks: [
        {
          prompt: msg('task.goat-ears.ask'),
          work: { is: 'boxes', after: [null] },
          answer: msg('task.goat-ears.answer', { n: count(ears.num) }),
          values: [ears],
          accepted: [],
          steps: [
            msg('sheet.math', {
              line: math(
                ...Array.from({ length: goats }, (_, n) => (n === 0 ? [whole(2)] : ['+', whole(2)])).flat(),
                '=',
                ears,
              ),
            }),
          ],
        },
      ],
      mistake: {
        what: msg('task.goat-ears.mistake', { wrong: { is: 'number', ...whole(goats) } }),
        why: msg('task.goat-ears.why'),
      },
      fromBook: [],
    };
  },
});
