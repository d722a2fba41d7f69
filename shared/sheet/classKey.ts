// The key of a class: what is the same on every copy once, and of each copy what is its own, in short.
import type { Ask } from '../tasks/task.ts';
import type { Words } from '../words/words.ts';
import { msg, num, row, text, type Message } from './message.ts';
import type { Sheet } from './sheet.ts';
import { tellText } from './tell.ts';

/**
 * An answer in short: what was written or drawn into a figure as its numbers in order, else the answer itself. Things
 * that are ringed stand in the values by their names in the drawing, so they too are told by the answer's words.
 */
export function shortAnswer(ask: Ask): Message {
  if (ask.work.is !== 'picture' || ask.values.length === 0 || ask.picture?.is === 'picks') return ask.answer;
  return msg('sheet.answer-row', {
    row: row(ask.values.map((one) => (typeof one === 'string' ? text(one) : num(one)))),
  });
}

/** A question of a copy: the letter among the questions of its task, empty where it is the only one. */
export interface KeyLine {
  readonly letter: string;
  readonly answer: Message;
  /** Other forms that are right, but for those that every copy accepts. */
  readonly also: readonly Message[];
}

/** What a copy's key says of one task: its number and the answers that are its own. */
export interface CopyTask {
  readonly number: number;
  readonly lines: readonly KeyLine[];
}

/** The answers of a copy that differ from copy to copy. */
export interface CopyKey {
  readonly code: string;
  readonly tasks: readonly CopyTask[];
}

/** What is told once: answers that every copy has, by the number of the task. */
export interface ClassKey {
  readonly shared: readonly CopyTask[];
  /** What every copy accepts beside its answer, by the number of the task. */
  readonly accepted: readonly { readonly number: number; readonly also: readonly Message[] }[];
  readonly copies: readonly CopyKey[];
}

const LETTERS = 'abcdef';

/**
 * The key of the copies of one sheet. Where copies have tasks of other kinds in one place, none of its answers
 * counts as shared. A single copy has nothing to share: all its answers are its own.
 */
export function classKey(copies: readonly Sheet[], words: Words): ClassKey {
  const everywhere = acceptedByAll(copies, words);
  const told = copies.map((copy) => answersOf(copy, words, everywhere));
  const textOf = ({ answer, also }: KeyLine): string =>
    [answer, ...also].map((message) => tellText(words, message)).join('|');
  const alike = (task: number, line: number): boolean => {
    const [first, ...others] = told.map((tasks) => tasks[task]?.lines[line]);
    if (first === undefined || others.length === 0 || !sameKind(copies, task)) return false;
    return others.every((one) => one && textOf(one) === textOf(first));
  };
  const sift = (tasks: readonly CopyTask[], wanted: boolean): CopyTask[] =>
    tasks
      .map(({ number, lines }) => ({
        number,
        lines: lines.filter((_, line) => alike(number - 1, line) === wanted),
      }))
      .filter(({ lines }) => lines.length > 0);
  return {
    shared: sift(told[0] ?? [], true),
    accepted: everywhere.flatMap((also, index) => (also.length > 0 ? [{ number: index + 1, also }] : [])),
    copies: copies.map(({ code }, index) => ({ code, tasks: sift(told[index] ?? [], false) })),
  };
}

const sameKind = (copies: readonly Sheet[], task: number): boolean =>
  new Set(copies.map((copy) => copy.tasks[task]?.kind)).size === 1;

/** What a question accepts. The number in words, or alone, is said without the number, so that it is the same on every copy. */
export function acceptedInShort({ accepted }: Ask): Message[] {
  return accepted.map((one) => (one.key === 'sheet.accept.word' ? msg('sheet.accept.word-any') : one));
}

const acceptedOn = (sheet: Sheet, task: number): readonly Message[] =>
  sheet.tasks[task]?.asks.flatMap(acceptedInShort) ?? [];

/** For each task, what all copies accept in the same words. A single copy shares nothing. */
function acceptedByAll(copies: readonly Sheet[], words: Words): Message[][] {
  const [first, ...others] = copies;
  return (first?.tasks ?? []).map((_, task) => {
    if (others.length === 0 || !sameKind(copies, task)) return [];
    const theirs = others.map(
      (copy) => new Set(acceptedOn(copy, task).map((message) => tellText(words, message))),
    );
    return acceptedOn(first as Sheet, task).filter((message) =>
      theirs.every((texts) => texts.has(tellText(words, message))),
    );
  });
}

function answersOf(sheet: Sheet, words: Words, everywhere: readonly (readonly Message[])[]): CopyTask[] {
  return sheet.tasks.map(({ asks }, index) => {
    const shared = new Set(everywhere[index]?.map((message) => tellText(words, message)));
    return {
      number: index + 1,
      lines: asks.map((ask, place) => ({
        letter: asks.length > 1 ? LETTERS.charAt(place) : '',
        answer: shortAnswer(ask),
        also: acceptedInShort(ask).filter((message) => !shared.has(tellText(words, message))),
      })),
    };
  });
}
