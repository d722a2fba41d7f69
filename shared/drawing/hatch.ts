// Hatching: strokes that tell one block from another without colour, and survive a copier.

/** A block on the page, in millimetres; y grows downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Ways to fill a block, in the order that neighbours take them. */
export const HATCHES = Object.freeze(['slant', 'plain', 'cross', 'level', 'back'] as const);
/** One way to fill a block. */
export type Hatch = (typeof HATCHES)[number];

/** A stroke from one point to another. */
export interface Stroke {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/**
 * The strokes that fill a block; each ends on its edge. `gap_mm` is the distance along the edge.
 * A block without area has none.
 */
export function hatchStrokes(box: Box, hatch: Hatch, gap_mm = 2.6): Stroke[] {
  if (!(box.width > 0) || !(box.height > 0)) return [];
  if (hatch === 'plain') return [];
  if (hatch === 'level') return level(box, gap_mm);
  if (hatch === 'slant') return slants(box, gap_mm);
  if (hatch === 'back') return slants(box, gap_mm).map((one) => flipped(box, one));
  const wide = slants(box, gap_mm * 1.4);
  return [...wide, ...wide.map((one) => flipped(box, one))];
}

function level(box: Box, gap_mm: number): Stroke[] {
  const strokes: Stroke[] = [];
  for (let up = gap_mm; up < box.height; up += gap_mm) {
    const y = box.y + box.height - up;
    strokes.push({ x1: box.x, y1: y, x2: box.x + box.width, y2: y });
  }
  return strokes;
}

/** Strokes that rise to the right at 45 degrees, cut to the block. */
function slants(box: Box, gap_mm: number): Stroke[] {
  const strokes: Stroke[] = [];
  for (let foot = gap_mm - box.height; foot < box.width; foot += gap_mm) {
    const start = Math.max(0, foot);
    const end = Math.min(box.width, foot + box.height);
    if (end - start < 0.2) continue;
    const rise = (along: number) => box.y + box.height - (along - foot);
    strokes.push({ x1: box.x + start, y1: rise(start), x2: box.x + end, y2: rise(end) });
  }
  return strokes;
}

function flipped(box: Box, stroke: Stroke): Stroke {
  const over = (x: number) => 2 * box.x + box.width - x;
  return { ...stroke, x1: over(stroke.x1), x2: over(stroke.x2) };
}
