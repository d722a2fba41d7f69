// The milk pail and the measuring cup: where milk stands behind the window cut in their walls.
import type { Point } from './outline.ts';

/** A window in a vessel's wall and the milk behind it. */
export interface WindowLevel {
  /** The share that is drawn, 0..1. */
  readonly fill: number;
  /** The window, closed. */
  readonly inside: readonly Point[];
  /** The milk, closed; empty when there is none. Its area is exactly the share asked for of the window's. */
  readonly milk: readonly Point[];
}

/** The pail's window, in drawing units: straight walls, so that height is share. */
export const pailWindow = { left: 52, right: 90, full_y: 42, base_y: 116 } as const;

/** The measuring cup's inside, in drawing units. */
export const cupWindow = { left: 18, right: 82, full_y: 30, base_y: 100 } as const;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly full_y: number;
  readonly base_y: number;
}

function levelIn(box: Box, fill: number): WindowLevel {
  if (Number.isNaN(fill)) throw new Error('A vessel was asked for with a fill that is not a number.');
  const share = Math.min(1, Math.max(0, fill));
  const { left, right, full_y, base_y } = box;
  const y = base_y - share * (base_y - full_y);
  const inside: Point[] = [
    [left, full_y],
    [right, full_y],
    [right, base_y],
    [left, base_y],
  ];
  if (share === 0) return { fill: 0, inside, milk: [] };
  // The surface tips to and fro by the same amount, so its mean stays at the level.
  const tip = Math.min(1.2, base_y - y, y - full_y);
  const middle = (left + right) / 2;
  const milk: Point[] = [
    [left, y - tip],
    [middle, y + tip],
    [right, y - tip],
    [right, base_y],
    [left, base_y],
  ];
  return { fill: share, inside, milk };
}

/** Where milk stands in the pail's window; `fill` is a share 0..1, held within it, and must be a number. */
export function pailLevel(fill: number): WindowLevel {
  return levelIn(pailWindow, fill);
}

/** Where milk stands in the measuring cup; `fill` is a share 0..1, held within it, and must be a number. */
export function cupLevel(fill: number): WindowLevel {
  return levelIn(cupWindow, fill);
}
