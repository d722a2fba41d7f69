// What the page of a class's data sheets carries to the browser.
import type { UnitSystem } from '../../../herd/types.ts';
import type { Words } from '../../../words/words.ts';
import type { AfterWish } from './afterQuery.ts';
import type { SheetDoe } from './measuredSheet.ts';

/** The farm's does by name, its units, and the words. */
export interface AfterProps {
  readonly words: Words;
  readonly does: readonly SheetDoe[];
  readonly units: UnitSystem;
  readonly farm: string;
  /** What stands there before anything is filled in. */
  readonly usual: AfterWish;
  /** Addresses of pages. */
  readonly links: { readonly visits: string; readonly trip: string };
}
