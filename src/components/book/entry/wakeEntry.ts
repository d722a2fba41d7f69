// Wakes the milker's page in the browser: until then it says that it looks for the desk.
import { hydrate } from 'svelte';
import type { EntryProps } from './entry.ts';
import EntryPage from './EntryPage.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeEntry(page: Document): void {
  const target = page.querySelector('#milk-book');
  const carried = page.querySelector('#book-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the Milk book lacks its room or its props.');
  hydrate(EntryPage, { target, props: JSON.parse(carried) as EntryProps });
}
