// Wakes the Trip plan in the browser: the built page stands as the day of a usual class until then.
import { hydrate } from 'svelte';
import type { TripProps } from '../../../shared/trip/tripProps.ts';
import Trip from './Trip.svelte';

/** Takes over the built plan with the same props that it was built from. */
export function wakeTrip(page: Document): void {
  const target = page.querySelector('#trip');
  const carried = page.querySelector('#trip-props')?.textContent;
  if (!target || !carried) throw new Error('The page of the Trip plan lacks its plan or its props.');
  hydrate(Trip, { target, props: JSON.parse(carried) as TripProps });
}
