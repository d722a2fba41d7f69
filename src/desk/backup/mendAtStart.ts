// Before a desk is started: what a restore that was cut off has left is mended, so that nobody has to.
import { join } from 'node:path';
import type { BuildWorld } from '../../build/build.ts';
import { takeLock } from '../../build/lock.ts';
import { mendRestore } from './restore.ts';

const LONGEST_WAIT_ms = 120_000;

/** Waits for a restore or a build that runs, and mends the farm folder. */
export async function mendAtStart({ places, say }: Pick<BuildWorld, 'places' | 'say'>): Promise<void> {
  const waiting = { who: 'A build or a restore', most_ms: LONGEST_WAIT_ms, every_ms: 200, say };
  const giveBack = await takeLock(join(places.workshop, 'build.lock'), waiting);
  try {
    if (mendRestore(places.farm))
      say('A restore was cut off earlier; the farm folder from before it is back.');
  } finally {
    giveBack();
  }
}
