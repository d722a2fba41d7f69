// The area of a closed outline, by the shoelace rule: checks drawings without the code that draws them.
import type { Point } from '../../../shared/drawing/outline.ts';

/** Area in square drawing units; 0 for no outline. */
export function areaOf(points: readonly Point[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as Point;
    twice += x * ny - nx * y;
  });
  return Math.abs(twice) / 2;
}
