// Where things lie: the project, the farm folder, the site, the workshop beside it, the prints.
import { dirname, isAbsolute, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folders that a command works in, all absolute. */
export interface Places {
  readonly root: string;
  /** The farm folder of `FARM_DIR`, else the demo farm. */
  readonly farm: string;
  /** The site that stands. */
  readonly dist: string;
  /** Builds under way, the lock and what else is of no use to anybody but us. */
  readonly workshop: string;
  readonly prints: string;
}

/** The project's own folder. */
export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * The places of a command. A relative `FARM_DIR` counts from where the command was given: npm, which
 * moves to the project's folder, keeps that place in `INIT_CWD`.
 */
export function placesOf(env: NodeJS.ProcessEnv, cwd: string, root = ROOT): Places {
  return {
    root,
    farm: env['FARM_DIR'] ? fromCaller(env['FARM_DIR'], env, cwd) : join(root, 'content', 'farm'),
    dist: join(root, 'dist'),
    // A test works beside a build of the same project.
    workshop: env['PAILSIDE_WORKSHOP'] ?? join(root, '.pailside'),
    prints: join(root, 'prints'),
  };
}

/** A path as the person who gave the command meant it. */
export function fromCaller(path: string, env: NodeJS.ProcessEnv, cwd: string): string {
  return isAbsolute(path) ? path : resolve(env['INIT_CWD'] ?? cwd, path);
}
