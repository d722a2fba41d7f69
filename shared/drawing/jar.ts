// The jar, our unit of sight: where the milk stands in it, so that area drawn is milk measured.
import type { Point } from './outline.ts';

/** The jar's view box, in drawing units. */
export const jarBox = { width: 60, height: 100 } as const;

/** The inside of the jar between its marked base and its full line, in drawing units; y grows downwards. */
export const jarInside = { left: 11, right: 49, full_y: 30, base_y: 90 } as const;

/** Heights of the quarter marks, from one quarter up to the full line, in drawing units. */
export const jarMarks_y: readonly number[] = [0.25, 0.5, 0.75, 1].map(levelAt);

/** Where the milk stands. */
export interface JarLevel {
  /** The share that is drawn, 0..1: the share that was asked for, held within the jar. */
  readonly fill: number;
  /** Mean height of the surface, in drawing units (y grows downwards). */
  readonly y: number;
  /** The outline of the milk, closed; empty for an empty jar. Its area is exactly `fill` of a full jar's. */
  readonly outline: readonly Point[];
  /** The outline of the empty space above it, closed, up under the lid. */
  readonly air: readonly Point[];
}

/** The empty space that every jar has above its full line, from the right wall round under the lid to the left. */
const shoulder: readonly Point[] = [
  [49, 30],
  [47, 27],
  [41, 24.4],
  [30, 24],
  [20, 24.4],
  [13, 27.4],
  [11, 30],
];

/** Ups and downs of the surface, in drawing units at equal steps: hand-cut, and in sum level. */
const surface: readonly number[] = [0.6, -0.7, 0.35, -0.2, 0.7, -0.9, 0.7, -0.25];

function levelAt(fill: number): number {
  return jarInside.base_y - fill * (jarInside.base_y - jarInside.full_y);
}

/**
 * Where milk stands in the jar at a share of its full line.
 *
 * `fill` is a share, 0 (empty) to 1 (to the full line); a share below 0 or above 1 is drawn as 0 or 1, and a
 * share that is no number throws, since no drawing can be right for it. The surface is cut uneven but levels out:
 * the area between base and surface is exactly `fill` times that of a full jar.
 *
 * @example jarLevel(0.5).y // 60
 */
export function jarLevel(fill: number): JarLevel {
  if (Number.isNaN(fill)) throw new Error('A jar was asked for with a fill that is not a number.');
  const share = Math.min(1, Math.max(0, fill));
  const y = levelAt(share);
  const { left, right, base_y, full_y } = jarInside;
  if (share === 0) return { fill: 0, y, outline: [], air: [...shoulder, [left, base_y], [right, base_y]] };
  // Near the base and the full line the cut flattens, so that it never passes them.
  const room = Math.min(1, (base_y - y) / 2, Math.max(0, (y - full_y) / 2));
  const last = surface.length - 1;
  // By the trapezium rule the two ends count half: subtracting this mean makes the surface level in area.
  const mean =
    (surface.reduce((sum, up) => sum + up, 0) - ((surface[0] ?? 0) + (surface[last] ?? 0)) / 2) / last;
  const top = surface.map((up, i): Point => [left + ((right - left) * i) / last, y - (up - mean) * room]);
  return { fill: share, y, outline: [...top, [right, base_y], [left, base_y]], air: [...shoulder, ...top] };
}

/**
 * Slanting strokes that fill the milk of a jar, for milk that nobody drinks and for prints in line only.
 * Each is a start and an end inside the milk's outline; none for an empty jar. `gap` is the distance between
 * strokes along the base, in drawing units.
 */
export function jarHatch(level: JarLevel, gap = 7): (readonly [Point, Point])[] {
  const { left, right, base_y } = jarInside;
  const top = level.y + 1;
  const strokes: (readonly [Point, Point])[] = [];
  const rise = base_y - top;
  if (rise <= 0) return strokes;
  for (let foot = left - rise + gap / 2; foot < right; foot += gap) {
    const from = Math.max(0, left - foot);
    const to = Math.min(rise, right - foot);
    if (to - from > 1)
      strokes.push([
        [foot + from, base_y - from],
        [foot + to, base_y - to],
      ]);
  }
  return strokes;
}
