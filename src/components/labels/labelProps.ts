// What the labels' page hands to the browser.
import type { UnitSystem } from '../../../shared/herd/types.ts';
import type { LabelBook } from '../../../shared/labels/labelBook.ts';
import type { LabelOrder } from '../../../shared/labels/labelOrder.ts';
import type { LabelSheet, SingleLabel } from '../../../shared/labels/labelSheet.ts';
import type { AmountUnit } from '../../../shared/quantity/units.ts';
import type { Words } from '../../../shared/words/words.ts';

/** Everything that the page works with, as plain JSON. */
export interface LabelProps {
  readonly lang: string;
  readonly words: Words;
  readonly farm: string;
  readonly units: UnitSystem;
  readonly recordUnit: AmountUnit;
  readonly jar_mL: number;
  /** The site's path with its last slash, under which the desk answers. */
  readonly base: string;
  /** The book as it was when the page was made. */
  readonly book: LabelBook;
  /** Sheets and single labels, the farm's own first. */
  readonly sheets: readonly LabelSheet[];
  readonly singles: readonly SingleLabel[];
  /** What is printed where an address says nothing. */
  readonly usual: LabelOrder;
}
