// The paper of a sheet as a style: size, margins, and the words in the margin of every page.
import { PAGE_MEASURES, type Paper } from './pageMeasures.ts';

/** Id of the style element that holds the paper of a sheet. */
export const PAGE_STYLE_ID = 'paper-of-sheet';

/** Words in the margins of the pages. `page` holds `{page}` and `{pages}` for the two counters. */
export interface PageWords {
  readonly left: string;
  readonly seed: string;
  readonly page: string;
  /** "Answer key", on each page of the key. */
  readonly key: string;
}

/**
 * A text as a CSS string. Everything but plain letters and digits is escaped, so that no farm's name
 * can end the string or the style.
 * @example cssText('Elm "A"') // => '"Elm\\20 \\22 A\\22 "'
 */
export function cssText(text: string): string {
  const safe = [...text].map((sign) =>
    /[a-zA-Z0-9]/.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 32).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}

function counterText(page: string): string {
  const parts = page.split(/(\{page\}|\{pages\})/).filter((part) => part !== '');
  return parts
    .map((part) =>
      part === '{page}' ? 'counter(page)' : part === '{pages}' ? 'counter(pages)' : cssText(part),
    )
    .join(' ');
}

/** The `@page` rules of a sheet for one paper. */
export function pageStyle(paper: Paper, words: PageWords): string {
  const { top_mm, foot_mm, side_mm } = PAGE_MEASURES[paper];
  const size = paper === 'letter' ? 'letter' : 'A4';
  const type =
    "font: 8pt/1.3 'Andika', sans-serif; color: #1e1912; white-space: pre; vertical-align: top; padding-top: 3mm;";
  const feet = `
  @bottom-left { content: ${cssText(words.left)} "\\a " ${cssText(words.seed)}; text-align: left; ${type} }
  @bottom-right { content: ${counterText(words.page)}; text-align: right; ${type} }`;
  return `@page { size: ${size}; margin: ${top_mm}mm ${side_mm}mm ${foot_mm}mm;${feet} }
@page key { margin-top: ${top_mm + 4}mm;
  @top-right { content: ${cssText(words.key)}; text-align: right; vertical-align: bottom; padding-bottom: 2mm; font: 700 9pt/1 'Andika', sans-serif; color: #1e1912; } }`;
}
