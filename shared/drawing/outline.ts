// Turns a written list of points into the short straight facets that a knife leaves in lino.

/** A place on the drawing, in the units of its view box; y grows downwards. */
export type Point = readonly [x: number, y: number];

interface Knot {
  readonly at: Point;
  readonly corner: boolean;
}

function readKnots(written: string): Knot[] {
  return written
    .trim()
    .split(/\s+/)
    .map((word) => {
      const corner = word.endsWith('!');
      const [x, y] = (corner ? word.slice(0, -1) : word).split(',').map(Number);
      if (x === undefined || y === undefined || !Number.isFinite(x) || !Number.isFinite(y)) {
        throw new Error(`A point is written "x,y" or "x,y!" for a corner, not "${word}".`);
      }
      return { at: [x, y], corner };
    });
}

function heading(from: Point, to: Point): Point {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = Math.hypot(dx, dy) || 1;
  return [dx / length, dy / length];
}

function along(a: Point, b: Point, out: Point, into: Point, t: number): Point {
  const reach = Math.hypot(b[0] - a[0], b[1] - a[1]) / 3;
  const u = 1 - t;
  const mix = (axis: 0 | 1): number =>
    u * u * u * a[axis] +
    3 * u * u * t * (a[axis] + out[axis] * reach) +
    3 * u * t * t * (b[axis] - into[axis] * reach) +
    t * t * t * b[axis];
  return [mix(0), mix(1)];
}

/**
 * The facets of a written outline.
 *
 * `written` is a list of points, "10,20 30,20! 30,40": the line runs smoothly through each point, and turns
 * sharply at one marked "!". `facet` is the wanted length of a cut in drawing units; `closed` joins the last
 * point to the first. Throws when a word is no point: that is a slip in a drawing, not in anyone's farm.
 *
 * @example outline('0,0! 10,0! 10,10!', 5, true).length // 7
 */
export function outline(written: string, facet: number, closed: boolean): Point[] {
  const knots = readKnots(written);
  const count = knots.length;
  const knot = (i: number): Knot => {
    const place = closed ? (i + count) % count : Math.min(count - 1, Math.max(0, i));
    return knots[place] as Knot;
  };
  const points: Point[] = [];
  const segments = closed ? count : count - 1;
  for (let i = 0; i < segments; i += 1) {
    const a = knot(i);
    const b = knot(i + 1);
    const straight = heading(a.at, b.at);
    const out = a.corner ? straight : heading(knot(i - 1).at, b.at);
    const into = b.corner ? straight : heading(a.at, knot(i + 2).at);
    const length = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]);
    const cuts = Math.max(1, Math.round(length / facet));
    for (let k = 0; k < cuts; k += 1) points.push(along(a.at, b.at, out, into, k / cuts));
  }
  if (!closed) points.push(knot(count - 1).at);
  return points;
}

/** Path text for a polygon or an open line, to a tenth of a unit. */
export function pathOf(points: readonly Point[], closed = true): string {
  const text = points.map(([x, y]) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`).join('L');
  return `M${text}${closed ? 'Z' : ''}`;
}

/** The same written points seen in a mirror that stands upright at `axis_x`. */
export function mirrored(written: string, axis_x: number): string {
  return written.replace(
    /(-?[\d.]+),/g,
    (_, x: string) => `${Math.round((2 * axis_x - Number(x)) * 10) / 10},`,
  );
}
