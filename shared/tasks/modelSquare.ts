// A square of inheritance for a textbook trait of one gene with two forms.
import { askInWords } from './askInWords.ts';
import { rounded, whole } from '../quantity/grade.ts';
import { count, msg, qty, sub, text } from '../sheet/message.ts';
import type { SquarePicture } from '../sheet/picture.ts';
import { taskKind } from './task.ts';
import Fraction from 'fraction.js';

/** A parent's two forms, the one that shows written first. */
export type Pair = readonly [string, string];

/** Textbook traits, made up for the square: no coat or ear of a real goat rests on one gene alone. */
export const TRAITS = [
  { name: 'coat', shows: 'P', hides: 'p' },
  { name: 'ears', shows: 'L', hides: 'l' },
  { name: 'eyes', shows: 'B', hides: 'b' },
] as const;

interface Cross {
  readonly trait: (typeof TRAITS)[number];
  /** Hidden forms that the doe and the buck carry: 1 or 2 each. */
  readonly doe: number;
  readonly buck: number;
}

/** The two forms of a parent that carries some hidden ones. */
export function pairOf(trait: { shows: string; hides: string }, hidden: number): Pair {
  const { shows, hides } = trait;
  return hidden === 0 ? [shows, shows] : hidden === 1 ? [shows, hides] : [hides, hides];
}

/** One form from each parent, the one that shows written first. */
export function childOf(a: string, b: string): string {
  return a === a.toUpperCase() ? a + b : b + a;
}

/** The square of two parents, the doe's forms over the columns. */
export function squareOfPairs(doe: Pair, buck: Pair): SquarePicture {
  return {
    is: 'square',
    top: { label: msg('sheet.square.doe'), forms: doe },
    side: { label: msg('sheet.square.buck'), forms: buck },
    cells: buck.map((b) => doe.map((a) => childOf(a, b))),
  };
}

const CROSSES: readonly Cross[] = TRAITS.flatMap((trait) => [
  { trait, doe: 1, buck: 1 },
  { trait, doe: 1, buck: 2 },
  { trait, doe: 2, buck: 1 },
]);

/** Why young of two parents differ (MS-LS3-2), from a plain textbook square. */
export const modelSquare = taskKind<Cross>({
  name: 'model-square',
  bands: ['6-8'],
  standards: ['MS-LS3-2'],
  lack: 'nothing',
  candidates: () => CROSSES,
  touches: ({ trait }) => [`trait|${trait.name}`],
  make(_, { trait, doe, buck }) {
    const [does, bucks] = [pairOf(trait, doe), pairOf(trait, buck)];
    const square = squareOfPairs(does, bucks);
    const pairs = square.cells.flat();
    const hiddenPair = trait.hides + trait.hides;
    const hits = pairs.filter((pair) => pair === hiddenPair).length;
    const percent = rounded(new Fraction(hits, pairs.length).mul(100), 0);
    const words = (name: string) => sub(msg(`task.model-square.${trait.name}-${name}`));
    const slots = { shows: text(trait.shows), hides: text(trait.hides) };
    return {
      kind: 'model-square',
      standards: ['MS-LS3-2'],
      lead: [
        msg('task.model-square.lead', { ...slots, common: words('shows'), rare: words('hides') }),
        msg('task.model-square.parents', { doe: text(does.join('')), buck: text(bucks.join('')) }),
        msg('task.model-square.model'),
      ],
      picture: square,
      asks: [
        {
          prompt: msg('task.model-square.ask-square'),
          work: { is: 'picture' },
          answer: msg('task.model-square.answer-square'),
          values: pairs,
          accepted: [msg('task.model-square.accept-square')],
          steps: [],
          picture: square,
        },
        {
          prompt: msg('task.model-square.ask-percent', { rare: words('hides') }),
          work: { is: 'boxes', after: ['percent'] },
          answer: msg('sheet.answer', { amount: qty(whole(percent.num), 'percent') }),
          values: [whole(percent.num)],
          accepted: [
            msg('task.model-square.accept-percent', { hits: count(hits), all: count(pairs.length) }),
          ],
          steps: [msg('task.model-square.step', { n: count(hits), pair: text(hiddenPair) })],
        },
        askInWords(
          msg('task.model-square.ask-twins', { rare: words('hides') }),
          msg('task.model-square.answer-twins'),
        ),
        askInWords(msg('task.model-square.ask-differ'), msg('task.model-square.answer-differ')),
      ],
      mistake: { what: msg('task.model-square.mistake', slots), why: msg('task.model-square.why') },
      fromBook: [],
    };
  },
});
