// Starts the one browser that prints, with one set of flags for every use.
import { chromium, type Browser, type BrowserContext } from 'playwright-core';
import { findBrowser } from '../../scripts/findBrowser.mjs';
import { PlainError } from '../build/plainError.ts';

/** Flags of every start: no sandbox (a container's root has none), no graphics card, no word to anybody outside. */
export const CHROMIUM_FLAGS: readonly string[] = Object.freeze([
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]);

/** Starts the browser that `CHROMIUM` names, else the best one on this machine. Throws PlainError. */
export async function startChromium(env: NodeJS.ProcessEnv = process.env): Promise<Browser> {
  const found = findBrowser(env);
  if (!found.ok)
    throw new PlainError(
      `There is no browser to print with${found.why ? `: ${found.why}` : ''}.\n` +
        '  On Debian as root: apt-get update && apt-get install chromium-headless-shell\n' +
        '  Or name one that you have: CHROMIUM=/path/to/chromium',
    );
  try {
    return await chromium.launch({ executablePath: found.path, args: [...CHROMIUM_FLAGS] });
  } catch (error) {
    const [first = ''] = String(error instanceof Error ? error.message : error).split('\n');
    throw new PlainError(
      `The browser ${found.path} does not start (${first}).\n` +
        '  Name another one: CHROMIUM=/path/to/chromium',
    );
  }
}

/** A context to print in. The site's worker stays out: its requests could not be stopped, and it would fetch the whole site. */
export function openPrintContext(browser: Browser): Promise<BrowserContext> {
  return browser.newContext({ serviceWorkers: 'block' });
}
