// The paper of labels, posters and cards as a style: a page of a size, and its margin.

/** Id of the style element that holds the paper. */
export const LABEL_STYLE_ID = 'paper-of-page';

/** The `@page` rule for pages of a size. Labels, posters and cards have a margin of their own in the page. */
export function labelPageStyle(
  { width_mm, height_mm }: { width_mm: number; height_mm: number },
  margin_mm = 0,
): string {
  const mm = (length: number) => (length === 0 ? '0' : `${Number(length.toFixed(3))}mm`);
  return `@page { size: ${mm(width_mm)} ${mm(height_mm)}; margin: ${mm(margin_mm)}; }`;
}
