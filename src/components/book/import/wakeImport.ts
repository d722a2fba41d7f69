// Wakes the import's page in the browser.
import { hydrate } from 'svelte';
import type { ImportProps } from './import.ts';
import ImportPage from './ImportPage.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeImport(page: Document): void {
  const target = page.querySelector('#import-room');
  const carried = page.querySelector('#import-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the import lacks its room or its props.');
  hydrate(ImportPage, { target, props: JSON.parse(carried) as ImportProps });
}
