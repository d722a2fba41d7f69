// The milk's road from the pail: how wide each stream runs, and where it comes down.
import type { Point } from './outline.ts';

/** Where a stream of milk goes, as the milk book's use column says. */
export type MilkUse = 'kept' | 'withheld' | 'fed' | 'lost';

/** One stream as it is drawn. */
export interface MilkStream {
  readonly id: MilkUse;
  /** Middle of its place at the bottom, in drawing units. */
  readonly foot_x: number;
  /** Width in drawing units: its share of the whole spout's width. 0 when no milk went this way. */
  readonly width: number;
  /** The stream's outline, closed; empty when no milk went this way. */
  readonly outline: readonly Point[];
}

/** The road's measures, in drawing units. */
export const milkRoadBox = {
  width: 800,
  spout_x: 400,
  rim_y: 84,
  spout_y: 176,
  foot_y: 496,
  spoutWidth: 120,
} as const;

/** How many cuts a stream's side has below the pail. */
const steps = 12;

interface Middle {
  readonly at: Point;
  /** Across the stream, one unit long. */
  readonly across: Point;
}

function middleAt(from_x: number, to_x: number, t: number): Middle {
  const { spout_y, foot_y } = milkRoadBox;
  const fall = foot_y - spout_y;
  const aside = to_x - from_x;
  // Straight down at both ends: a smooth step aside over an even step down.
  const eased = t * t * (3 - 2 * t);
  const dx = aside * 6 * t * (1 - t);
  const length = Math.hypot(dx, fall);
  return { at: [from_x + aside * eased, spout_y + fall * t], across: [fall / length, -dx / length] };
}

function streamOutline(from_x: number, to_x: number, width: number): Point[] {
  const sway = Math.min(1.6, width / 6);
  const half = width / 2;
  const left: Point[] = [[from_x - half, milkRoadBox.rim_y]];
  const right: Point[] = [[from_x + half, milkRoadBox.rim_y]];
  for (let i = 0; i <= steps; i += 1) {
    const { at, across } = middleAt(from_x, to_x, i / steps);
    // Both sides sway alike, so that the stream keeps its width.
    const cut = i === 0 || i === steps ? 0 : sway * (i % 2 === 0 ? 1 : -1);
    left.push([at[0] + across[0] * (cut - half), at[1] + across[1] * (cut - half)]);
    right.push([at[0] + across[0] * (cut + half), at[1] + across[1] * (cut + half)]);
  }
  // The stream ends in a tongue, not in a straight cut.
  return [...left, [to_x, milkRoadBox.foot_y + Math.min(12, width / 3)], ...right.reverse()];
}

/**
 * The streams for parts of the milk, in the order given, left to right.
 *
 * Each `share` is 0..1 of all the milk, and the shares together at most 1 (a millionth more is let pass as
 * rounding); otherwise it throws. The width of a stream, measured across it, is exactly its share of the spout's
 * width, all the way down.
 */
export function milkRoad(parts: readonly { readonly id: MilkUse; readonly share: number }[]): MilkStream[] {
  const whole = parts.reduce((sum, part) => sum + part.share, 0);
  if (parts.some((part) => !(part.share >= 0)) || whole > 1 + 1e-6) {
    throw new Error(`The milk's parts must each be 0 or more and together at most 1, not ${whole}.`);
  }
  const { width, spout_x, spoutWidth } = milkRoadBox;
  const place = width / Math.max(1, parts.length);
  let from_x = spout_x - (spoutWidth * whole) / 2;
  return parts.map((part, i) => {
    const wide = part.share * spoutWidth;
    const foot_x = place * (i + 0.5);
    const middle_x = from_x + wide / 2;
    from_x += wide;
    return {
      id: part.id,
      foot_x,
      width: wide,
      outline: wide > 0 ? streamOutline(middle_x, foot_x, wide) : [],
    };
  });
}
