// What a lesson file holds once it is read: steps with blocks, in which figures are still to be filled in.
import type { LessonStep } from '../../shared/lesson/types.ts';
import type { Band } from '../../shared/quantity/grade.ts';

/** What a lesson may name. */
export interface LessonKnown {
  /** Ids of the farm's figures; a lesson may show those of the whole herd. */
  readonly figures: readonly string[];
  /** The sheets that a step may hand out; the band is null where a sheet's own faults hide it. */
  readonly sheets: readonly { readonly name: string; readonly band: Band | null }[];
}

interface Placed {
  /** Line of the file on which it stands. */
  readonly line: number;
  readonly strong?: true;
  readonly emphasis?: true;
}

/** A piece of a line of text: words, a figure of the herd, or the farm's name. */
export type Piece =
  | (Placed & { readonly is: 'text'; readonly text: string })
  | (Placed & { readonly is: 'figure'; readonly id: string; readonly otherwise: string })
  | (Placed & { readonly is: 'farm' });

/** A block as written; the same as a lesson's block but for its pieces. */
export type WrittenBlock =
  | { readonly is: 'paragraph' | 'note'; readonly pieces: readonly Piece[] }
  | { readonly is: 'list'; readonly ordered: boolean; readonly lines: readonly (readonly Piece[])[] };

/** A step as written. */
export interface WrittenStep extends Omit<LessonStep, 'blocks' | 'id'> {
  /** Its name in the file. */
  readonly name: string;
  readonly line: number;
  readonly blocks: readonly WrittenBlock[];
}

/** A fault within a lesson, before its file is known. */
export interface Found {
  readonly line: number;
  readonly column: number | null;
  readonly text: string;
}
