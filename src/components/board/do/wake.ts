// Wakes a thing to do in the browser: the built page stands still until then.
import { hydrate, type Component } from 'svelte';
import type { Plans } from '../../../../shared/board/do/plans.ts';
import Doing from './Doing.svelte';
import { showPressed } from './pressed.ts';
import { PARTS, type DoProps } from './parts.ts';

/** Takes over the built page with the same props that it was built from. */
export async function wakeDoing(page: Document): Promise<void> {
  const target = page.querySelector<HTMLElement>('#doing');
  const carried = page.querySelector('#doing-props')?.textContent;
  // Where this week cannot carry it, there is only a word about that.
  if (!target || !carried) return;
  const name = target.dataset['doing'] as keyof Plans;
  const part = (await PARTS[name]()).default as Component<DoProps<unknown>>;
  hydrate(Doing, {
    target,
    props: { ...(JSON.parse(carried) as DoProps<unknown>), part },
  });
  showPressed(target);
  target.dataset['awake'] = '';
}
