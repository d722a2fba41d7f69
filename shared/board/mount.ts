// How high the board hangs and how large its targets are, in numbers.

/**
 * Heights above the floor between which everything lies that a child touches, mm and in. Source: advice for children's
 * reach in the 2010 ADA Standards, advisory 308.1: ages 5 to 8 reach from 455 to 1015 mm, ages 3 to 4 from 510 to
 * 915 mm; the band below suits both.
 */
export const MOUNT = Object.freeze({
  low_mm: 510,
  high_mm: 915,
  low_in: 20,
  high_in: 36,
  wheelchair_mm: 760,
});

/** Least sides of what is tapped, mm: younger pages, and all others. */
export const TARGET_MM = Object.freeze({ younger: 25, older: 20, apart: 5, rest: 15 });

/** What a target of that size takes on a screen of a number of pixels. */
export interface TargetPlan {
  readonly width: number;
  readonly height: number;
  readonly px_perMm: number;
  readonly younger_px: number;
  readonly older_px: number;
}

const COMMON_SCREENS = [
  [1080, 1920],
  [1920, 1080],
  [1280, 800],
] as const;

/**
 * Pixels in a millimetre of a screen.
 * @example Math.round(pxPerMm(1920, 1080, 546.1) * 100) / 100 // => 4.03
 */
export function pxPerMm(width: number, height: number, diagonal_mm: number): number {
  return Math.hypot(width, height) / diagonal_mm;
}

/** The board's targets on common screens of a diagonal, whole pixels and never below the millimetres. */
export function targetPlan(diagonal_mm: number): TargetPlan[] {
  return COMMON_SCREENS.map(([width, height]) => {
    const px = pxPerMm(width, height, diagonal_mm);
    return {
      width,
      height,
      px_perMm: px,
      younger_px: Math.ceil(TARGET_MM.younger * px),
      older_px: Math.ceil(TARGET_MM.older * px),
    };
  });
}
