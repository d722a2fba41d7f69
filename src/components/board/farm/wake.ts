// Wakes the farm's page in the browser: what it shows is kept on this machine alone.
import { hydrate, type ComponentProps } from 'svelte';
import FarmPage from './FarmPage.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakeFarm(page: Document): void {
  const target = page.querySelector<HTMLElement>('#farm');
  const carried = page.querySelector('#farm-props')?.textContent;
  if (!target || !carried) throw new Error("The farm's page lacks its place or its props.");
  hydrate(FarmPage, { target, props: JSON.parse(carried) as ComponentProps<typeof FarmPage> });
  target.dataset['awake'] = '';
}
