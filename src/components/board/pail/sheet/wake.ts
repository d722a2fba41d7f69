// Wakes the data sheet in the browser: the guesses that it shows are kept on this machine alone.
import { hydrate, type ComponentProps } from 'svelte';
import PailDesk from './PailDesk.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakePailSheet(page: Document): void {
  const target = page.querySelector('#data-sheet');
  const carried = page.querySelector('#data-sheet-props')?.textContent;
  if (!target || !carried) throw new Error('The data sheet lacks its place or its props.');
  hydrate(PailDesk, { target, props: JSON.parse(carried) as ComponentProps<typeof PailDesk> });
}
