// Wakes "Guess the pail" in the browser: the built page stands still until then.
import { hydrate, type ComponentProps } from 'svelte';
import { showPressed } from '../do/pressed.ts';
import GuessPail from './GuessPail.svelte';

/** Takes over the built page with the same props that it was built from. */
export function wakePail(page: Document): void {
  const target = page.querySelector<HTMLElement>('#pail');
  const carried = page.querySelector('#pail-props')?.textContent;
  if (!target || !carried) throw new Error('The page "Guess the pail" lacks its place or its props.');
  hydrate(GuessPail, { target, props: JSON.parse(carried) as ComponentProps<typeof GuessPail> });
  showPressed(target);
  target.dataset['awake'] = '';
}
