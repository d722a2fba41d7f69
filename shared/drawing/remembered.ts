// Shapes that were cut once are not cut again: a tap draws the same child, jar or face many times over.

const MOST_SHAPES = 3000;
const shapes = new Map<string, string>();

/**
 * The path text of a key, made by `cut` the first time. The text depends on the key alone, so a caller cannot tell the
 * difference but by the time it takes. At most some thousand shapes are kept; then it starts anew.
 */
export function remembered(key: string, cut: () => string): string {
  const known = shapes.get(key);
  if (known !== undefined) return known;
  if (shapes.size >= MOST_SHAPES) shapes.clear();
  const shape = cut();
  shapes.set(key, shape);
  return shape;
}
