// Boxes on a grid and arrows between them, cut at the boxes' edges.

/** A point, mm. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** An arrow from edge to edge: its shaft, the corners of its head, and the middle, where its number stands. */
export interface FlowArrow {
  readonly from: Place;
  readonly to: Place;
  readonly head: readonly Place[];
  readonly middle: Place;
}

/** Millimetres of a flow picture: three columns, two rows. */
export const FLOW = Object.freeze({ width: 164, height: 56, boxWidth: 38, boxHeight: 13 });

const GAP_MM = 1.2;
const HEAD_MM = 3.6;
const HEAD_HALF_MM = 1.5;

/** The middle of a box in its column (0 to 2) and row (0 or 1). */
export function boxMiddle(column: number, row: number): Place {
  const { width, height, boxWidth, boxHeight } = FLOW;
  return {
    x: boxWidth / 2 + 1 + (column * (width - boxWidth - 2)) / 2,
    y: boxHeight / 2 + 1 + row * (height - boxHeight - 2),
  };
}

/** An arrow between the middles of two boxes that do not lie on each other, cut where it leaves one and meets the other. */
export function flowArrow(from: Place, to: Place): FlowArrow {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = [dx / long, dy / long];
  // How far along the arrow the edge of a box lies from its middle.
  const edge = Math.min(
    ux === 0 ? Infinity : FLOW.boxWidth / 2 / Math.abs(ux),
    uy === 0 ? Infinity : FLOW.boxHeight / 2 / Math.abs(uy),
  );
  const along = (start: Place, way: number): Place => ({ x: start.x + ux * way, y: start.y + uy * way });
  const tip = along(to, -edge - GAP_MM);
  const foot = along(tip, -HEAD_MM);
  return {
    from: along(from, edge + GAP_MM),
    to: foot,
    head: [
      tip,
      { x: foot.x - uy * HEAD_HALF_MM, y: foot.y + ux * HEAD_HALF_MM },
      { x: foot.x + uy * HEAD_HALF_MM, y: foot.y - ux * HEAD_HALF_MM },
    ],
    middle: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 },
  };
}
