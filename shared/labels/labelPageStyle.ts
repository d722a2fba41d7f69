// The paper of labels as a style: a page as large as the sheet or the label, without a margin of its own.

/** Id of the style element that holds the paper of the labels. */
export const LABEL_STYLE_ID = 'paper-of-labels';

/** The `@page` rule for pages of a size. */
export function labelPageStyle({ width_mm, height_mm }: { width_mm: number; height_mm: number }): string {
  const mm = (length: number) => `${Number(length.toFixed(3))}mm`;
  return `@page { size: ${mm(width_mm)} ${mm(height_mm)}; margin: 0; }`;
}
