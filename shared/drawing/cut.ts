// The three marks of the house's hand: a solid block, the uneven line round it, and a line that swells and thins.
import { outline, pathOf, type Point } from './outline.ts';
import { remembered } from './remembered.ts';
import { seedOf, swell, wobble } from './wobble.ts';

/** Light falls from the upper left, so lines on the lower right are the thicker ones. */
const shade: Point = [0.5, 0.87];

function normalsOf(points: readonly Point[], closed: boolean): Point[] {
  const count = points.length;
  const at = (i: number): Point =>
    points[closed ? (i + count) % count : Math.min(count - 1, Math.max(0, i))] as Point;
  return points.map((_, i) => {
    const [x0, y0] = at(i - 1);
    const [x1, y1] = at(i + 1);
    const length = Math.hypot(x1 - x0, y1 - y0) || 1;
    return [(y1 - y0) / length, -(x1 - x0) / length];
  });
}

function areaOf(points: readonly Point[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as Point;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function moved(points: readonly Point[], normals: readonly Point[], by: (i: number) => number): Point[] {
  return points.map(([x, y], i) => {
    const [nx, ny] = normals[i] as Point;
    return [x + nx * by(i), y + ny * by(i)];
  });
}

/** How far a facet's end may stray for cuts of this length, in drawing units. */
function stray(facet: number): number {
  return facet * 0.07;
}

/**
 * Path text of a solid block cut along a written outline (see `outline`). `facet` is the length of a cut in
 * drawing units: shorter for small drawings.
 */
export function cutBlock(written: string, facet = 8): string {
  return remembered(`block ${facet} ${written}`, () => blockOf(written, facet));
}

function blockOf(written: string, facet: number): string {
  const points = outline(written, facet, true);
  const seed = seedOf(written);
  return pathOf(moved(points, normalsOf(points, true), (i) => wobble(seed, i) * stray(facet)));
}

/**
 * Path text (fill rule evenodd) of the ink line round a written outline: `width` units on average, thicker on the
 * side away from the light, never quite even.
 */
export function cutRing(written: string, width: number, facet = 8): string {
  return remembered(`ring ${width} ${facet} ${written}`, () => ringOf(written, width, facet));
}

function ringOf(written: string, width: number, facet: number): string {
  const points = outline(written, facet, true);
  const seed = seedOf(written);
  const sign = areaOf(points) > 0 ? 1 : -1;
  const normals = normalsOf(points, true).map(([x, y]): Point => [x * sign, y * sign]);
  const thick = (i: number): number => {
    const [nx, ny] = normals[i] as Point;
    const dark = nx * shade[0] + ny * shade[1];
    return width * (0.85 + 0.4 * dark + 0.22 * swell(seed, i / 3));
  };
  const outer = moved(points, normals, (i) => thick(i) * 0.55 + wobble(seed, i) * stray(facet));
  const inner = moved(points, normals, (i) => -thick(i) * 0.45 + wobble(seed + 7, i) * stray(facet));
  return pathOf(outer) + pathOf(inner);
}

/** How a line ends: `taper` thins at both ends, `wedge` starts thick and thins out, `blunt` keeps its width. */
export type LineEnds = 'taper' | 'wedge' | 'blunt';

function profile(ends: LineEnds, t: number): number {
  if (ends === 'taper') return Math.sin(Math.PI * Math.min(1, Math.max(0, t))) ** 0.7;
  if (ends === 'wedge') return (1 - t) ** 0.8;
  return 1;
}

/** Path text of one open line along written points, `width` units at its thickest. */
export function cutLine(written: string, width: number, ends: LineEnds = 'taper', facet = 8): string {
  return remembered(`line ${width} ${ends} ${facet} ${written}`, () => lineOf(written, width, ends, facet));
}

function lineOf(written: string, width: number, ends: LineEnds, facet: number): string {
  const points = outline(written, facet, false);
  const seed = seedOf(written);
  const normals = normalsOf(points, false);
  const last = Math.max(1, points.length - 1);
  const half = (i: number): number =>
    (width / 2) * profile(ends, i / last) * (1 + 0.18 * swell(seed, i / 2)) +
    wobble(seed, i) * stray(facet) * 0.3;
  const left = moved(points, normals, half);
  const right = moved(points, normals, (i) => -half(i)).reverse();
  return pathOf([...left, ...right]);
}
