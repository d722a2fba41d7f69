// The sites that page and print tests look at: built once a run, beside the other tests.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { ROOT } from '../../src/build/places.ts';
import type { Ended } from '../../src/build/tool.ts';

/** A site to test. */
export interface TestSite {
  /** Its folder. */
  readonly dist: string;
  readonly basePath: string;
  /** What it is built with beyond the usual. */
  readonly env: NodeJS.ProcessEnv;
}

const site = (name: string, basePath: string, env: NodeJS.ProcessEnv): TestSite => ({
  dist: join(ROOT, '.pailside', name),
  basePath,
  env: { FARM_DIR: join(ROOT, 'content', 'farm'), AS_OF: '', BASE_PATH: basePath, PAILSIDE_OUT: join(ROOT, '.pailside', name), ...env },
}); // prettier-ignore

/** The demo farm in its own week; and on a December day, for a host that keeps the site in a folder. */
export const SITES = {
  demo: site('test-dist', '/', {}),
  winter: site('test-dist-winter', '/hill/', { AS_OF: '2026-12-20', PAILSIDE_SILENT: '1' }),
} as const;

/** The name of one of them. */
export type SiteName = keyof typeof SITES;

/** Where a finished build says how it ended. */
export const endingFile = (name: SiteName) => `${SITES[name].dist}.ended.json`;

// A bare machine speaks every text of the board first.
const LONGEST_WAIT_ms = 400_000;

/** Waits until a site stands. Throws what the build said where it failed. */
export async function builtSite(name: SiteName): Promise<TestSite> {
  const until = Date.now() + LONGEST_WAIT_ms;
  while (!existsSync(endingFile(name))) {
    if (Date.now() > until)
      throw new Error(`The site "${name}" was not built in ${LONGEST_WAIT_ms / 1000} s.`);
    await sleep(100);
  }
  const ended = JSON.parse(readFileSync(endingFile(name), 'utf8')) as Ended;
  if (ended.code !== 0) throw new Error(`The site "${name}" could not be built:\n${ended.said}`);
  return SITES[name];
}
