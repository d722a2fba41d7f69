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
  readonly copies: readonly CopyKey[];
}

const LETTERS = 'abcdef';

/**
 * The key of the copies of one sheet. Where copies have tasks of other kinds in one place, none of its answers
 * counts as shared. A single copy has nothing to share: all its answers are its own.
 */
export function classKey(copies: readonly Sheet[], words: Words): ClassKey {
  const told = copies.map((copy) => answersOf(copy));
  const alike = (task: number, line: number): boolean => {
    const [first, ...others] = told.map((tasks) => tasks[task]?.lines[line]);
    if (first === undefined || others.length === 0) return false;
    const kinds = new Set(copies.map((copy) => copy.tasks[task]?.kind));
    const text = tellText(words, first.answer);
    return kinds.size === 1 && others.every((one) => one && tellText(words, one.answer) === text);
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
    copies: copies.map(({ code }, index) => ({ code, tasks: sift(told[index] ?? [], false) })),
  };
}

function answersOf(sheet: Sheet): CopyTask[] {
  return sheet.tasks.map(({ asks }, index) => ({
    number: index + 1,
    lines: asks.map((ask, place) => ({
      letter: asks.length > 1 ? LETTERS.charAt(place) : '',
      answer: shortAnswer(ask),
    })),
  }));
}
