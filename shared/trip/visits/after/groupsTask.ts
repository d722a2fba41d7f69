// The task of the youngest from many numbers: sorted into at most three groups, as kindergarten and grade 1 sort.
import { modes } from '../../../board/pail/sheetNumbers.ts';
import { whole } from '../../../quantity/grade.ts';
import { joined, list, math, msg, qty, sub, type Message } from '../../../sheet/message.ts';
import type { TablePicture } from '../../../sheet/picture.ts';
import { GRADE_LIMITS } from '../../../tasks/limits.ts';
import type { Ask } from '../../../tasks/task.ts';
import { asked, KEY, made, type Made, type MeasuredMany } from './madeTask.ts';
import { leadOf, numbers, shownBy, timesOf } from './manyNumbers.ts';

interface Group {
  readonly name: Message;
  readonly n: number;
}

/** The number that groups lie around, and what they are called. */
export interface Sorted {
  readonly middle: number;
  readonly name: (group: 'less' | 'just' | 'more') => Message;
}

/** Sorted by the commonest number. */
function byCommonest(many: MeasuredMany): Sorted {
  const [middle = 0] = modes(many.steps);
  const edge = qty(shownBy(many)(middle), many.unit);
  return { middle, name: (group) => msg(`${KEY}.group.${group}`, { edge }) };
}

/**
 * Groups of less than a number, just it, and more (K.MD.B.3, 1.MD.C.4); none where there are more than the grade counts to.
 * The number is the commonest one where none is given.
 */
export function groupsTask(many: MeasuredMany, sorted: Sorted = byCommonest(many)): Made[] {
  const { steps, grade } = many;
  const groups = groupsOf(many, sorted);
  const picture: TablePicture = {
    is: 'table',
    columns: [msg(`${KEY}.column.group`), msg(`${KEY}.column.times`)],
    rows: groups.map(({ name, n }) => [name, whole(n)]),
  };
  const most = Math.max(...groups.map(({ n }) => n));
  if ((grade === 0 ? most : steps.length) > (GRADE_LIMITS[grade].most ?? Infinity)) return [];
  const older = groups.length > 1 ? [allAsk(groups), moreAsk(groups)] : [allAsk(groups)];
  const asks = grade === 0 ? [mostAsk(groups)] : [mostAsk(groups), ...older];
  const standard = grade === 0 ? 'K.MD.B.3' : '1.MD.C.4';
  return [made('groups', [standard], 'groups', { lead: [leadOf(many)], picture, asks })];
}

function groupsOf({ steps }: MeasuredMany, { middle, name }: Sorted): Group[] {
  return [
    { name: name('less'), n: steps.filter((one) => one < middle).length },
    { name: name('just'), n: timesOf(steps, middle) },
    { name: name('more'), n: steps.filter((one) => one > middle).length },
  ].filter(({ n }) => n > 0);
}

function mostAsk(groups: readonly Group[]): Ask {
  const most = Math.max(...groups.map(({ n }) => n));
  const largest = groups.filter(({ n }) => n === most);
  return {
    prompt: msg(`${KEY}.ask.group`),
    work: { is: 'ring', of: groups.map(({ name }) => sub(name)) },
    answer: msg(`${KEY}.any`, { all: list(largest.map(({ name }) => sub(name))) }),
    values: [],
    accepted: [],
    steps: [],
  };
}

function allAsk(groups: readonly Group[]): Ask {
  const counts = groups.map(({ n }) => whole(n));
  const all = groups.reduce((sum, { n }) => sum + n, 0);
  const line = math(...joined(counts, '+'), '=', whole(all));
  const steps = groups.length > 1 ? [msg('sheet.math', { line })] : [];
  return asked(msg(`${KEY}.ask.all`), [whole(all)], numbers(all), { is: 'boxes', after: [null] }, steps);
}

function moreAsk(groups: readonly Group[]): Ask {
  const counts = groups.map(({ n }) => n);
  const [most, least] = [Math.max(...counts), Math.min(...counts)];
  const line = math(whole(most), '−', whole(least), '=', whole(most - least));
  const prompt = msg(`${KEY}.ask.group-more`);
  const work = { is: 'boxes', after: [null] } as const;
  return asked(prompt, [whole(most - least)], numbers(most - least), work, [msg('sheet.math', { line })]);
}
