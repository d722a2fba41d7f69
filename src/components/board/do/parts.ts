// The component of each thing to do, fetched only on its own page.
import type { Component } from 'svelte';
import type { Plans } from '../../../../shared/board/do/plans.ts';
import type { Words } from '../../../../shared/words/words.ts';

/** What every thing to do is given. */
export interface DoProps<Plan> {
  readonly words: Words;
  readonly plan: Plan;
}

/** A component of any plan. */
export type AnyPart = Component<DoProps<unknown>>;

type Part<Name extends keyof Plans> = () => Promise<{ default: Component<DoProps<Plans[Name]>> }>;

/** How each component is fetched. */
export const PARTS: { readonly [Name in keyof Plans]: Part<Name> } = {
  pour: () => import('./Pour.svelte'),
  steps: () => import('./Steps.svelte'),
  guess: () => import('./Guess.svelte'),
  cups: () => import('./Cups.svelte'),
  year: () => import('./Year.svelte'),
  'two-milks': () => import('./TwoMilks.svelte'),
  faces: () => import('./Faces.svelte'),
  menu: () => import('./Menu.svelte'),
  squeeze: () => import('./Squeeze.svelte'),
  wash: () => import('./Wash.svelte'),
  'udder-parts': () => import('./UdderParts.svelte'),
  'whose-kid': () => import('./WhoseKid.svelte'),
  grass: () => import('./Grass.svelte'),
};
