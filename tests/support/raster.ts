// A page of a PDF as a copier sees it: drawn by poppler at so many dots an inch, then black or white and nothing between.
import { execFileSync, spawnSync } from 'node:child_process';

/** Whether pdftoppm is installed. */
export const hasRaster = spawnSync('pdftoppm', ['-v']).status === 0;

/** A page in black and white. */
export interface OneBitPage {
  readonly width: number;
  readonly height: number;
  /** Dots a millimetre. */
  readonly perMm: number;
  isDark(x: number, y: number): boolean;
}

/** One page of a PDF at `dpi`; every dot darker than `threshold` (0 black .. 1 white) becomes black, the rest white. */
export function oneBitPage(file: string, page: number, dpi = 300, threshold = 0.6): OneBitPage {
  const picture = execFileSync(
    'pdftoppm',
    ['-gray', '-r', String(dpi), '-f', String(page), '-l', String(page), file],
    { maxBuffer: 200_000_000 },
  );
  // A PGM begins with "P5", width, height and the greatest value, each ended by white space.
  const head = /^P5\s+(\d+)\s+(\d+)\s+(\d+)\s/.exec(picture.subarray(0, 60).toString('latin1'));
  if (!head) throw new Error(`pdftoppm gave no grey picture of page ${page} of ${file}.`);
  const [width, height, white] = [Number(head[1]), Number(head[2]), Number(head[3])];
  const start = head[0].length;
  return {
    width,
    height,
    perMm: dpi / 25.4,
    isDark: (x, y) =>
      x >= 0 &&
      y >= 0 &&
      x < width &&
      y < height &&
      (picture[start + y * width + x] ?? white) < threshold * white,
  };
}

/** A rectangle in dots; right and bottom are not in it. */
export interface DotBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Share of black dots in a rectangle. */
export function darkShare(page: OneBitPage, box: DotBox): number {
  let dark = 0;
  for (let y = box.top; y < box.bottom; y += 1)
    for (let x = box.left; x < box.right; x += 1) if (page.isDark(x, y)) dark += 1;
  return dark / Math.max(1, (box.bottom - box.top) * (box.right - box.left));
}

/** Middles of the level lines in a narrow rectangle: rows of which at least `share` is black, in dots. */
export function levelLines(page: OneBitPage, box: DotBox, share: number): number[] {
  const found: number[] = [];
  let first: number | null = null;
  for (let y = box.top; y <= box.bottom; y += 1) {
    const dark = y < box.bottom && darkShare(page, { ...box, top: y, bottom: y + 1 }) >= share;
    if (dark) first ??= y;
    else if (first !== null) {
      found.push((first + y - 1) / 2);
      first = null;
    }
  }
  return found;
}

/**
 * How a rectangle is hatched: its share of black, and of its black dots the share that have a black dot some way off
 * to the right at the same height, higher up, and lower down. Strokes that run that way score near 1.
 */
export function hatchOf(page: OneBitPage, box: DotBox, way = 10): readonly [number, number, number, number] {
  let [dark, level, up, down] = [0, 0, 0, 0];
  for (let y = box.top + way; y < box.bottom - way; y += 1)
    for (let x = box.left; x < box.right - way; x += 1) {
      if (!page.isDark(x, y)) continue;
      dark += 1;
      if (page.isDark(x + way, y)) level += 1;
      if (page.isDark(x + way, y - way)) up += 1;
      if (page.isDark(x + way, y + way)) down += 1;
    }
  const all = Math.max(1, dark);
  return [darkShare(page, box), level / all, up / all, down / all];
}
