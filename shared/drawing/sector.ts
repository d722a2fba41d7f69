// A sector of a circle as written points, with "ahead" at the top: how far around somebody sees.
import type { Point } from './outline.ts';

function onCircle([x, y]: Point, radius: number, angle_deg: number): string {
  const turn = (angle_deg * Math.PI) / 180;
  const part = (value: number) => Math.round(value * 10) / 10;
  return `${part(x + radius * Math.sin(turn))},${part(y - radius * Math.cos(turn))}`;
}

/**
 * The outline of a sector between two angles in degrees, 0 at the top and clockwise, as written points for
 * `outline`; a full turn is the circle without its center. The rim has a point at least every 10 degrees.
 * @example sectorAt([0, 0], 10, 0, 90).split(' ').length // => 11
 */
export function sectorAt(center: Point, radius: number, from_deg: number, to_deg: number): string {
  const span = to_deg - from_deg;
  const steps = Math.max(1, Math.ceil(span / 10));
  const rim = Array.from({ length: steps + 1 }, (_, i) =>
    onCircle(center, radius, from_deg + (span * i) / steps),
  );
  if (span >= 360) return rim.slice(0, -1).join(' ');
  return [`${center[0]},${center[1]}!`, `${rim[0]}!`, ...rim.slice(1, -1), `${rim.at(-1)}!`].join(' ');
}

/** Lines from the center to the rim between so many slices, none of them straight behind; parted by ";". */
export function spokesAt(center: Point, radius: number, slices: number): string {
  const slice_deg = 360 / slices;
  return Array.from(
    { length: slices },
    (_, i) => `${center[0]},${center[1]} ${onCircle(center, radius, 180 + slice_deg * (i + 0.5))}`,
  ).join(';');
}
