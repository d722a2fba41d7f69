// Hatches of the day's chart as plain strokes, cut off at the block's edge: patterns of SVG swell a PDF by megabytes.
import type { SlotKind } from '../types.ts';

/** A block, mm. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const LINE_mm = 1.1;
const SLANT_mm = 1.6;
const DOT_mm = 1.7;

/** The strokes of a kind within a block as one path; empty for kinds that are white, or solid. */
export function hatchPath(kind: SlotKind, box: Box): string {
  switch (kind) {
    case 'walk':
      return steps(box.y, box.height, LINE_mm).map((y) => `M${at(box.x)} ${at(y)}H${at(box.x + box.width)}`).join(''); // prettier-ignore
    case 'welcome':
      return steps(box.x, box.width, LINE_mm).map((x) => `M${at(x)} ${at(box.y)}V${at(box.y + box.height)}`).join(''); // prettier-ignore
    case 'toilets':
      return dots(box);
    case 'wash':
      return slants(box, false);
    case 'lunch':
      return slants(box, false) + slants(box, true);
    case 'unload':
    case 'load':
    case 'station':
    case 'wait':
      return '';
  }
}

const at = (value: number): string => String(Math.round(value * 100) / 100);

/** Places inside a span, a step apart and never on its edge. */
function steps(from: number, length: number, step: number): number[] {
  const count = Math.max(0, Math.ceil(length / step) - 1);
  return Array.from({ length: count }, (_, index) => from + (index + 1) * step);
}

function dots({ x, y, width, height }: Box): string {
  const places = steps(y, height, DOT_mm).flatMap((dy) =>
    steps(x, width, DOT_mm).map((dx) => [dx, dy] as const),
  );
  return places.map(([dx, dy]) => `M${at(dx)} ${at(dy)}h0.01`).join('');
}

/** Slanting lines from the left edge up to the right, or mirrored. */
function slants({ x, y, width, height }: Box, mirror: boolean): string {
  return steps(0, width + height, SLANT_mm)
    .map((reach) => {
      // The line on which the ways from the block's corner add up to `reach`.
      const [fromX, toX] = [Math.max(0, reach - height), Math.min(width, reach)];
      const place = (dx: number): string => `${at(mirror ? x + width - dx : x + dx)} ${at(y + reach - dx)}`;
      return `M${place(fromX)}L${place(toX)}`;
    })
    .join('');
}
