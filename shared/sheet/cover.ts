// What the teacher's page says of a stack of sheets.
import type { Words } from '../words/words.ts';
import { date, msg } from './message.ts';
import { layOut } from './layOut.ts';
import type { Paper, PrintSize } from './pageMeasures.ts';
import type { SheetFront, When } from './plan.ts';
import type { Sheet, Span } from './sheet.ts';
import { tellText } from './tell.ts';

/** A sheet of the stack with all its copies. */
export interface CoverSet {
  readonly copies: readonly Sheet[];
  readonly front: SheetFront;
  /** Time that a class takes, minutes. */
  readonly minutes: number;
  readonly when: When;
}

/** One sheet as the page lists it. */
export interface StackEntry {
  readonly title: string;
  readonly about: string;
  readonly materials: readonly string[];
  readonly minutes: number;
  readonly when: When;
  /** Pages of the longest copy. */
  readonly pages: number;
  readonly codes: readonly string[];
}

/** Everything that the teacher's page tells. */
export interface CoverPage {
  readonly first: Sheet;
  readonly copies: number;
  readonly stack: readonly StackEntry[];
  /** Tasks whose numbers come from an earlier week. */
  readonly earlier: readonly { readonly title: string; readonly number: number; readonly span: Span }[];
  /** How to make the same stack again; null without a week. */
  readonly again: string | null;
  readonly standards: readonly string[];
}

/** The page of a stack; null where there is no sheet in it. */
export function coverOf(
  sets: readonly CoverSet[],
  words: Words,
  paper: Paper,
  print: PrintSize,
): CoverPage | null {
  const first = sets[0]?.copies[0];
  if (!first) return null;
  const all = sets.flatMap(({ copies }) => copies);
  return {
    first,
    copies: Math.max(...sets.map(({ copies }) => copies.length)),
    stack: sets.map(({ copies, front, minutes, when }) => ({
      title: front.title,
      about: front.about,
      materials: front.materials,
      minutes,
      when,
      pages: Math.max(...copies.map((copy) => layOut(copy, front, words, paper, print).length)),
      codes: copies.map(({ code }) => code),
    })),
    earlier: sets.flatMap(({ copies, front }) =>
      (copies[0]?.tasks ?? []).flatMap(({ earlier }, index) =>
        earlier ? [{ title: front.title, number: index + 1, span: earlier }] : [],
      ),
    ),
    again: first.week && tellText(words, msg('sheet.cover.again', { to: date(first.week.to) })),
    standards: [...new Set(all.flatMap(({ tasks }) => tasks.flatMap((task) => task.standards)))],
  };
}
