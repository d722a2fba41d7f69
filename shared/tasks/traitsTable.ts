// A goat family in a table: which traits do the kids share, and with whom?
// A textbook family, made up for the table; no word of how traits are handed on (3-LS3-1).
import { msg, sub, type Message } from '../sheet/message.ts';
import { taskKind, type Task } from './task.ts';
import type { TaskContext } from './context.ts';

const WHO = ['doe', 'buck', 'kid-a', 'kid-b'] as const;
type Who = (typeof WHO)[number];
const TRAITS = {
  ears: ['up', 'down'],
  coat: ['black', 'brown'],
  wattles: ['yes', 'no'],
  hair: ['short', 'long'],
} as const;
type Trait = keyof typeof TRAITS;
type Family = Readonly<Record<Trait, Readonly<Record<Who, string>>>>;

/** Each trait of a kid is one of its parents'; `ears` is the same in all, as in one breed. */
function family(context: TaskContext): Family {
  const { chance } = context;
  const ears = chance.pick(TRAITS.ears);
  const mixed = (values: readonly string[], a: 0 | 1, b: 0 | 1): Record<Who, string> => {
    const [doe, buck] = chance.shuffle(values) as [string, string];
    return { doe, buck, 'kid-a': a === 0 ? doe : buck, 'kid-b': b === 0 ? doe : buck };
  };
  // Three traits in which the parents differ; the kids are alike in one of them, and so that no kid is just like a parent.
  const patterns = chance.shuffle([[0, 1], [1, 0], chance.pick([[0, 0], [1, 1]])] as [0 | 1, 0 | 1][]);
  const [coat, wattles, hair] = patterns as [[0 | 1, 0 | 1], [0 | 1, 0 | 1], [0 | 1, 0 | 1]];
  return {
    ears: { doe: ears, buck: ears, 'kid-a': ears, 'kid-b': ears },
    coat: mixed(TRAITS.coat, ...coat),
    wattles: mixed(TRAITS.wattles, ...wattles),
    hair: mixed(TRAITS.hair, ...hair),
  };
} // prettier-ignore

/** Traits come from the parents and vary (3-LS3-1). */
export const traitsTable = taskKind<'family'>({
  name: 'traits-table',
  bands: ['3-5'],
  standards: ['3-LS3-1'],
  lack: 'no-milk',
  candidates: () => ['family'],
  touches: () => [],
  make: (context) => asked(family(context)),
});

const word = (trait: string): Message => msg(`task.traits-table.trait-${trait}`);

function asked(all: Family): Task {
  const traits = Object.keys(TRAITS) as Trait[];
  const alike = traits.filter((trait) => trait !== 'ears' && all[trait]['kid-a'] === all[trait]['kid-b']);
  const [shared] = alike as [Trait];
  const parent: Who = all[shared]['kid-a'] === all[shared].doe ? 'doe' : 'buck';
  const ring = (of: readonly string[]) => ({ is: 'ring' as const, of: of.map((one) => sub(word(one))) });
  const others = traits.filter((trait) => trait !== 'ears');
  return {
    kind: 'traits-table',
    standards: ['3-LS3-1'],
    lead: [msg('task.traits-table.lead'), msg('task.traits-table.lead-wattles')],
    picture: {
      is: 'table',
      columns: [msg('task.traits-table.who'), ...traits.map(word)],
      rows: WHO.map((who) => [
        word(who),
        ...traits.map((trait) => msg(`task.traits-table.${trait}-${all[trait][who]}`)),
      ]),
    },
    asks: [
      {
        prompt: msg('task.traits-table.ask-all'),
        work: ring(traits),
        answer: word('ears'),
        values: ['ears'],
        accepted: [],
        steps: [msg('task.traits-table.step-all')],
      },
      {
        prompt: msg('task.traits-table.ask-kids'),
        work: ring(others),
        answer: word(shared),
        values: [shared],
        accepted: [],
        steps: [msg('task.traits-table.step-kids')],
      },
      {
        prompt: msg('task.traits-table.ask-whose'),
        work: ring(['doe', 'buck']),
        answer: word(parent),
        values: [parent],
        accepted: [],
        steps: [msg('task.traits-table.step-whose', { trait: sub(word(shared)) })],
      },
    ],
    mistake: { what: msg('task.traits-table.mistake'), why: msg('task.traits-table.why') },
    fromBook: [],
  };
}
