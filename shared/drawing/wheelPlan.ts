// Where the boxes of a circle stand, and the arrows from each to the next: numbers and path texts for SVG.

/** A place on the drawing, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A circle of boxes: their middles clockwise from the top, their side, and an arrow from each to the next. */
export interface WheelPlan {
  readonly side: number;
  readonly boxes: readonly Spot[];
  readonly arrows: readonly { readonly line: string; readonly head: string }[];
}

const SIDE_MM = 13;
const HEAD_MM = 2.4;
// An arrow keeps this far from the boxes that it joins, measured along the circle in degrees beside their half width.
const GAP_DEG = 5;

const short = (value: number): string => value.toFixed(2);

/** Lays `count` boxes (3 or more) evenly on an ellipse that fits the frame. */
export function wheelPlan(
  count: number,
  frame: { readonly width: number; readonly height: number },
): WheelPlan {
  const [rx, ry] = [frame.width / 2 - SIDE_MM / 2 - 0.8, frame.height / 2 - SIDE_MM / 2 - 0.8];
  const at = (deg: number): Spot => {
    const turn = ((deg - 90) * Math.PI) / 180;
    return { x: frame.width / 2 + Math.cos(turn) * rx, y: frame.height / 2 + Math.sin(turn) * ry };
  };
  const step = 360 / count;
  const boxes = Array.from({ length: count }, (_, index) => at(step * index));
  const reach = (Math.asin((SIDE_MM * 0.62) / Math.min(rx, ry)) * 180) / Math.PI + GAP_DEG;
  const arrows = boxes.map((_, index) => {
    const from = step * index + reach;
    const to = step * (index + 1) - reach;
    const bends = Array.from({ length: 9 }, (__, part) => at(from + ((to - from) * part) / 8));
    const line = bends.map(({ x, y }, part) => `${part === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');
    return { line, head: headAt(bends[7] as Spot, bends[8] as Spot) };
  });
  return { side: SIDE_MM, boxes, arrows };
}

/** A point at the end of a line, aimed as the line runs there. */
function headAt(before: Spot, end: Spot): string {
  const length = Math.hypot(end.x - before.x, end.y - before.y) || 1;
  const [dx, dy] = [(end.x - before.x) / length, (end.y - before.y) / length];
  const tip = { x: end.x + dx * HEAD_MM * 0.6, y: end.y + dy * HEAD_MM * 0.6 };
  const foot = { x: end.x - dx * HEAD_MM, y: end.y - dy * HEAD_MM };
  const side = (way: 1 | -1): string =>
    `${short(foot.x - dy * HEAD_MM * 0.7 * way)} ${short(foot.y + dx * HEAD_MM * 0.7 * way)}`;
  return `M${short(tip.x)} ${short(tip.y)}L${side(1)}L${side(-1)}Z`;
}
