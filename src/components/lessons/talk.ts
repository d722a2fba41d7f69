// The text of a step in stretches: what is said to the class, and what is for the teacher alone.
import type { Block, Run } from '../../../shared/lesson/types.ts';

/** Blocks that follow each other and are for the same ears. */
export interface Stretch {
  readonly isNote: boolean;
  readonly blocks: readonly Block[];
}

/** Parts the blocks of a step wherever the listener changes. */
export function stretchesOf(blocks: readonly Block[]): Stretch[] {
  const stretches: { isNote: boolean; blocks: Block[] }[] = [];
  for (const block of blocks) {
    const isNote = block.is === 'note';
    const last = stretches.at(-1);
    if (last?.isNote === isNote) last.blocks.push(block);
    else stretches.push({ isNote, blocks: [block] });
  }
  return stretches;
}

/** The element that a run of text stands in, or none. */
export function tagOf({ strong, emphasis }: Run): 'strong' | 'em' | null {
  return strong ? 'strong' : emphasis ? 'em' : null;
}
