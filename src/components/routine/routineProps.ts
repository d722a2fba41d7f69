// What the page of the milking routine hands to the browser.
import type { BookDoe, BookFarm } from '../../../shared/book/types.ts';
import type { Routine } from '../../../shared/routine/routine.ts';
import type { Paper } from '../../../shared/sheet/pageMeasures.ts';
import type { ShownFact } from '../../../shared/words/shownFact.ts';
import type { Words } from '../../../shared/words/words.ts';

/** Everything that the page works with, as plain JSON. */
export interface RoutineProps {
  readonly lang: string;
  readonly words: Words;
  /** Null where the farm has not written its steps in this language. */
  readonly routine: Routine | null;
  readonly farm: Pick<BookFarm, 'name' | 'timeZone' | 'units' | 'milkings' | 'fixedDay'>;
  readonly does: readonly BookDoe[];
  readonly paper: Paper;
  /** Cautions by the ids of their facts. */
  readonly cautions: readonly ShownFact[];
}

/** The ways in which the steps are shown. */
export type RoutineFace = 'list' | 'poster' | 'card';
/** All of them. */
export const FACES: readonly RoutineFace[] = Object.freeze(['list', 'poster', 'card']);
