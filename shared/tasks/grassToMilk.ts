// Arrows of matter and energy on a farm with goats: what moves along each, what comes round and what does not.
import { askInWords } from './askInWords.ts';
import { whole } from '../quantity/grade.ts';
import { count, msg, sub } from '../sheet/message.ts';
import type { TaskContext } from './context.ts';
import { mixedFlow } from './mixedFlow.ts';
import { taskKind, type Ask, type Task } from './task.ts';

type Moves = 'energy' | 'matter' | 'both';

const BOXES = [
  { name: 'sun', column: 0, row: 0 },
  { name: 'plants', column: 1, row: 0 },
  { name: 'doe', column: 2, row: 0 },
  { name: 'air', column: 0, row: 1 },
  { name: 'soil', column: 1, row: 1 },
  { name: 'kid', column: 2, row: 1 },
] as const;
type Box = (typeof BOXES)[number]['name'];

interface Arrow {
  readonly name: string;
  readonly from: Box;
  readonly to: Box;
  readonly moves: Moves;
}

/** Matter and energy at the level of grades 6-8 (MS-LS1-6, MS-LS2-3); school knowledge, from memory. */
const ARROWS: readonly Arrow[] = [
  { name: 'light', from: 'sun', to: 'plants', moves: 'energy' },
  { name: 'carbon', from: 'air', to: 'plants', moves: 'matter' },
  { name: 'feed', from: 'plants', to: 'doe', moves: 'both' },
  { name: 'milk', from: 'doe', to: 'kid', moves: 'both' },
  { name: 'manure', from: 'doe', to: 'soil', moves: 'both' },
  { name: 'minerals', from: 'soil', to: 'plants', moves: 'matter' },
  { name: 'breath', from: 'soil', to: 'air', moves: 'matter' },
];
const CIRCLE = ['feed', 'manure', 'minerals'] as const;
const LONGER = ['feed', 'manure', 'breath', 'carbon'] as const;

/** Two arrows to ask about: one that carries energy alone or matter alone, and one that carries both. */
function asked(context: TaskContext): Arrow[] {
  const of = (both: boolean) =>
    context.chance.pick(ARROWS.filter(({ moves }) => (moves === 'both') === both));
  return context.chance.shuffle([of(false), of(true)]);
}

function askArrow(arrow: Arrow, number: number): Ask {
  const words = (moves: Moves) => sub(msg(`task.grass-to-milk.${moves}`));
  return {
    prompt: msg('task.grass-to-milk.ask-arrow', { arrow: count(number) }),
    work: { is: 'ring', of: (['energy', 'matter', 'both'] as const).map(words) },
    answer: msg('sheet.answer-name', { name: words(arrow.moves) }),
    values: [arrow.moves],
    accepted: [],
    steps: [msg('task.grass-to-milk.step-arrow', { what: sub(msg(`task.grass-to-milk.is-${arrow.name}`)) })],
  };
}

function askCircle(numberOf: (name: string) => number): Ask {
  const slots = (names: readonly string[], letters: string) =>
    Object.fromEntries(names.map((name, index) => [letters.charAt(index), count(numberOf(name))]));
  return {
    prompt: msg('task.grass-to-milk.ask-circle'),
    work: { is: 'boxes', after: [null, null, null], signs: [',', ','] },
    answer: msg('task.grass-to-milk.answer-circle', slots(CIRCLE, 'abc')),
    values: CIRCLE.map((name) => whole(numberOf(name))),
    accepted: [msg('task.grass-to-milk.accept-circle', slots(LONGER, 'defg'))],
    steps: [msg('task.grass-to-milk.step-circle')],
  };
}

/** What is asked last: what becomes of the energy, or how grass becomes milk. */
type Last = 'energy' | 'rebuilt';

function task(context: TaskContext, last: Last): Task {
  const { picture, mixed } = mixedFlow(context, 'grass-to-milk', BOXES, ARROWS);
  const numberOf = (name: string) => mixed.findIndex((arrow) => arrow.name === name) + 1;
  const key = (part: string) => msg(`task.grass-to-milk.${part}-${last}`);
  return {
    kind: 'grass-to-milk',
    standards: last === 'energy' ? ['MS-LS1-6', 'MS-LS2-3'] : ['MS-LS1-7', 'MS-LS2-3'],
    lead: [msg('task.grass-to-milk.lead')],
    picture,
    asks: [
      ...asked(context).map((arrow) => askArrow(arrow, numberOf(arrow.name))),
      askCircle(numberOf),
      askInWords(key('ask'), key('answer'), 2, [key('accept')]),
    ],
    mistake: { what: msg('task.grass-to-milk.mistake'), why: msg('task.grass-to-milk.why') },
    fromBook: [],
  };
}

/** Matter circles and energy flows (MS-LS2-3), from photosynthesis (MS-LS1-6) to milk rebuilt from feed (MS-LS1-7). */
export const grassToMilk = taskKind<Last>({
  name: 'grass-to-milk',
  bands: ['6-8'],
  standards: ['MS-LS1-6', 'MS-LS1-7', 'MS-LS2-3'],
  lack: 'nothing',
  candidates: () => ['energy', 'rebuilt'],
  touches: (last) => [`flow|${last}`],
  make: task,
});
