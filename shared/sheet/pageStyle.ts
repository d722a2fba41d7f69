// The paper of a sheet as a style: size, margins, and the mark of the key's pages.
import { PAGE_MEASURES, type Paper } from './pageMeasures.ts';

/** Id of the style element that holds the paper of a sheet. */
export const PAGE_STYLE_ID = 'paper-of-sheet';

/**
 * A text as a CSS string. Everything but plain letters and digits is escaped, so that no text
 * can end the string or the style.
 * @example cssText('Elm "A"') // => '"Elm\\20 \\22 A\\22 "'
 */
export function cssText(text: string): string {
  const safe = [...text].map((sign) =>
    /[a-zA-Z0-9]/.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 32).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}

/** The `@page` rules for one paper; `key` ("Answer key") stands at the head of every page of a key. */
export function pageStyle(paper: Paper, key: string): string {
  const { top_mm, bottom_mm, side_mm } = PAGE_MEASURES[paper];
  const size = paper === 'letter' ? 'letter' : 'A4';
  return `@page { size: ${size}; margin: ${top_mm}mm ${side_mm}mm ${bottom_mm}mm; }
@page key { margin-top: ${top_mm + 5}mm;
  @top-right { content: ${cssText(key)}; text-align: right; vertical-align: bottom; padding-bottom: 2mm; font: 700 10pt/1 'Andika', sans-serif; color: #1e1912; } }`;
}
