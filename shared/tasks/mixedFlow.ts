// A drawing of boxes and arrows, the arrows numbered in an order by chance.
import { msg } from '../sheet/message.ts';
import type { FlowPicture } from '../sheet/picture.ts';
import type { TaskContext } from './context.ts';

/** A box by its name, in a column and a row from 0. */
export interface FlowBox<Name extends string> {
  readonly name: Name;
  readonly column: number;
  readonly row: number;
}

/** An arrow between two boxes. */
export interface FlowArrow<Name extends string> {
  readonly from: Name;
  readonly to: Name;
}

/**
 * The drawing of a task, whose boxes are labelled `task.KIND.box-NAME`, and its arrows in the order of their numbers, from 1 up.
 */
export function mixedFlow<Name extends string, Arrow extends FlowArrow<Name>>(
  { chance }: TaskContext,
  kind: string,
  boxes: readonly FlowBox<Name>[],
  arrows: readonly Arrow[],
): { picture: FlowPicture; mixed: readonly Arrow[] } {
  const mixed = chance.shuffle(arrows);
  const at = (box: Name) => boxes.findIndex(({ name }) => name === box);
  const picture: FlowPicture = {
    is: 'flow',
    boxes: boxes.map(({ name, column, row }) => ({ label: msg(`task.${kind}.box-${name}`), column, row })),
    arrows: mixed.map(({ from, to }, index) => ({ from: at(from), to: at(to), number: index + 1 })),
  };
  return { picture, mixed };
}
