// Finds the browser on this machine that prints and tests pages.
import { accessSync, constants, existsSync, readdirSync, statSync } from 'node:fs';
import { chooseBrowser, downloadedBrowsers } from './choose.mjs';

/** Whether a path is a file that this user may run. */
export function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/**
 * The browser for an environment; `why` is null where there simply is none.
 * @param {NodeJS.ProcessEnv} env
 * @returns {{ ok: true, path: string } | { ok: false, why: string | null }}
 */
export function findBrowser(env) {
  const list = (folder) => (existsSync(folder) ? readdirSync(folder) : []);
  return chooseBrowser(env, isProgram, downloadedBrowsers(env, list));
}
