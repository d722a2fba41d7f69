// Wakes the settings above a sheet in the browser: the built page stands as it is until then.
import { hydrate } from 'svelte';
import type { Paper } from '../../../shared/sheet/pageMeasures.ts';
import type { SheetFront } from '../../../shared/sheet/plan.ts';
import type { SheetRequest } from '../../../shared/sheet/sheet.ts';
import type { Words } from '../../../shared/words/words.ts';
import SheetDesk from './SheetDesk.svelte';

/** What a page hands to the sheet and carries to the browser, as JSON. */
export interface DeskProps {
  readonly source: Omit<SheetRequest, 'seed'>;
  readonly front: SheetFront;
  readonly words: Words;
  readonly farm: string;
  readonly paper: Paper;
  readonly others: readonly { readonly href: string; readonly lang: string; readonly name: string }[];
  readonly all: string;
  /** The print room, with this sheet chosen. */
  readonly pack: string;
}

/** Takes over the built sheet with the same props that it was built from. */
export function wakeSheet(page: Document): void {
  const target = page.querySelector('#sheet-desk');
  const carried = page.querySelector('#sheet-props')?.textContent;
  if (!target || !carried) throw new Error('The page of a sheet lacks its desk or its props.');
  hydrate(SheetDesk, { target, props: JSON.parse(carried) as DeskProps });
}
