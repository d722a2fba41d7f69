// Starts the builds of the test sites and lets the tests begin meanwhile.
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { takeLock } from '../../src/build/lock.ts';
import { ROOT } from '../../src/build/places.ts';
import { runTool, type Ended } from '../../src/build/tool.ts';
import { endingFile, SITES, type SiteName } from './builtSite.ts';

const names = Object.keys(SITES) as SiteName[];

/** Vitest calls this once before the run; what it returns, after it. */
export default function setup(): () => Promise<void> {
  for (const name of names) {
    rmSync(SITES[name].dist, { recursive: true, force: true });
    rmSync(endingFile(name), { force: true });
  }
  const building = buildAll();
  return () => building;
}

async function buildAll(): Promise<void> {
  mkdirSync(dirname(SITES.demo.dist), { recursive: true });
  for (const name of names)
    tellEnding(name, await buildOne(name).catch((error: unknown) => ({ code: 1, said: String(error) })));
}

async function buildOne(name: SiteName): Promise<Ended> {
  const waiting = { most_ms: 180_000, every_ms: 200, say: () => {} };
  const giveBack = await takeLock(join(ROOT, '.pailside', 'build.lock'), waiting);
  try {
    return await runTool(ROOT, 'astro', ['build'], {
      env: { ASTRO_TELEMETRY_DISABLED: '1', ...quietEnv(), ...SITES[name].env },
    });
  } finally {
    giveBack();
  }
}

// Astro told that it is under test builds otherwise than on a farm.
function quietEnv(): NodeJS.ProcessEnv {
  const own = Object.keys(process.env).filter((key) =>
    /^(VITEST|VITE_|NODE_ENV$|TEST$|DEV$|PROD$|MODE$|BASE_URL$|SSR$)/.test(key),
  );
  return Object.fromEntries(own.map((key) => [key, undefined]));
}

function tellEnding(name: SiteName, ended: Ended): void {
  writeFileSync(`${endingFile(name)}.part`, JSON.stringify(ended));
  renameSync(`${endingFile(name)}.part`, endingFile(name));
}
