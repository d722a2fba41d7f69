// What plans a trip on this farm, as the built site tells it.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PackGround, PackTongue } from '../../shared/trip/pack/bundle.ts';

/** The ground of packs with the words of each language, the farm's first one first. */
export interface TripGround extends PackGround {
  readonly tongues: readonly PackTongue[];
}

/** What the site that stands plans trips on, or null for a site without a pack's page. */
export function readTripGround(dist: string): TripGround | null {
  const file = join(dist, 'trip', 'pack', 'ground.json');
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as TripGround) : null;
}
