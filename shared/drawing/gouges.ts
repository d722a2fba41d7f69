// Rows of short tapered cuts: the fur, straw and shadow of a block print.
import { outline, pathOf, type Point } from './outline.ts';
import { seedOf, wobble } from './wobble.ts';

/** How a row of cuts lies along its guide line. Lengths in drawing units, lean in degrees. */
export interface Row {
  /** Distance from one cut to the next. */
  readonly every: number;
  /** Length of a cut. */
  readonly length: number;
  /** Width of a cut at its thickest. */
  readonly width: number;
  /** Turn of each cut away from the guide line's own direction, clockwise on the page. */
  readonly lean_deg: number;
}

function sliver(from: Point, turn: number, length: number, width: number): string {
  const [x, y] = from;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const place = (along: number, aside: number): Point => [
    x + cos * along - sin * aside,
    y + sin * along + cos * aside,
  ];
  return pathOf([
    place(0, 0),
    place(length * 0.32, -width / 2),
    place(length, 0),
    place(length * 0.38, width / 2),
  ]);
}

/**
 * Path text of a row of tapered cuts along a written guide line (see `outline`); each cut differs a little in
 * place, length and lean, always the same for the same guide.
 */
export function gougeRow(guide: string, row: Row): string {
  const points = outline(guide, row.every, false);
  const seed = seedOf(guide);
  return points
    .map((point, i) => {
      const next = points[i + 1] ?? point;
      const before = points[i - 1] ?? point;
      const course = Math.atan2(next[1] - before[1], next[0] - before[0]);
      const lean = ((row.lean_deg + wobble(seed, i) * 9) * Math.PI) / 180;
      const length = row.length * (1 + 0.3 * wobble(seed + 1, i));
      const width = row.width * (1 + 0.2 * wobble(seed + 2, i));
      const nudge = row.every * 0.18 * wobble(seed + 3, i);
      const start: Point = [point[0] + Math.cos(course) * nudge, point[1] + Math.sin(course) * nudge];
      return sliver(start, course + lean, length, width);
    })
    .join('');
}
