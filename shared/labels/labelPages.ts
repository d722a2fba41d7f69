// All labels of an order on their pages: the geometry of a label sheet with the text of each jar set into it.
import { PAGE_MEASURES } from '../sheet/pageMeasures.ts';
import { fitLabel, type LabelLine, type SetLine } from './fitLabel.ts';
import { labelPlaces, type LabelSheet, type SingleLabel } from './labelSheet.ts';

/** Something that lies on a rectangle, in mm from the page's upper left corner. */
export interface PlacedLabel {
  readonly key: string;
  readonly page: number;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
  /** The lines, from the label's own upper left corner; all begin at `textX_mm`. */
  readonly lines: readonly SetLine[];
  readonly textX_mm: number;
  /** A jar drawn beside the text; null where the label has no room for it. */
  readonly jar: { readonly x_mm: number; readonly y_mm: number; readonly height_mm: number } | null;
  /** Milk that nobody drinks: the label has a heavy frame of this width; 0 for other milk. */
  readonly frame_mm: number;
}

/** The pages of labels with their size. */
export interface LabelPages {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly count: number;
  readonly labels: readonly PlacedLabel[];
}

/** What is to be put on a label. */
export interface ToLabel {
  readonly key: string;
  readonly lines: readonly LabelLine[];
  readonly barred: boolean;
}

// A printer may be a millimetre off; what stands this far from the edge is still on its label. Common practice, no source.
const INSET_MM = 1.8;
const FRAME_MM = 0.9;
// A jar is drawn where it leaves most of the width to the text. A warning needs all of it.
const JAR_FROM_MM = 34;
const JAR_SHARE = 0.24;
const JAR_WIDE = 0.6;

/** Whether labels lie on a sheet, or are pages of their own. */
export function isSheet(paper: LabelSheet | SingleLabel): paper is LabelSheet {
  return 'paper' in paper;
}

/** Sets labels on a sheet from its label `start` on, or each on a page of its own. */
export function labelPages(
  paper: LabelSheet | SingleLabel,
  start: number,
  all: readonly ToLabel[],
): LabelPages {
  const { width_mm, height_mm } = paper;
  if (!isSheet(paper))
    return {
      width_mm,
      height_mm,
      count: all.length,
      labels: all.map((one, page) => ({ ...setLabel(one, width_mm, height_mm), page, x_mm: 0, y_mm: 0 })),
    };
  const page = PAGE_MEASURES[paper.paper];
  const places = labelPlaces(paper, start, all.length);
  return {
    width_mm: page.width_mm,
    height_mm: page.height_mm,
    count: (places.at(-1)?.page ?? -1) + 1,
    labels: all.flatMap((one, index) => {
      const place = places[index];
      return place
        ? [{ ...setLabel(one, width_mm, height_mm), page: place.page, x_mm: place.x_mm, y_mm: place.y_mm }]
        : [];
    }),
  };
}

/** One label by itself. */
function setLabel(
  { key, lines, barred }: ToLabel,
  width_mm: number,
  height_mm: number,
): Omit<PlacedLabel, 'page' | 'x_mm' | 'y_mm'> {
  const frame_mm = barred ? FRAME_MM : 0;
  const inset = INSET_MM + (barred ? FRAME_MM + 0.3 : 0);
  const inner = { width: width_mm - 2 * inset, height: height_mm - 2 * inset };
  const jarHigh = Math.min(inner.height, (inner.width * JAR_SHARE) / JAR_WIDE);
  const jar =
    height_mm >= JAR_FROM_MM && !barred
      ? {
          x_mm: width_mm - inset - jarHigh * JAR_WIDE,
          y_mm: (height_mm - jarHigh) / 2,
          height_mm: jarHigh,
        }
      : null;
  const room = inner.width - (jar ? jarHigh * JAR_WIDE + INSET_MM : 0);
  const set = fitLabel(lines, room, inner.height).map((line) => ({ ...line, y_mm: line.y_mm + inset }));
  return { key, width_mm, height_mm, lines: set, textX_mm: inset, jar, frame_mm };
}
