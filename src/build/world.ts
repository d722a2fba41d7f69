// The real world of a build: this machine's clock, terminal and Astro.
import type { BuildWorld } from './build.ts';
import { placesOf } from './places.ts';
import { runTool } from './tool.ts';

/** The world of a command given on this machine. */
export function thisWorld(env: NodeJS.ProcessEnv = process.env): BuildWorld {
  const places = placesOf(env, process.cwd());
  return {
    places,
    env,
    now_ms: () => Date.now(),
    say: (line) => void process.stdout.write(`${line}\n`),
    complain: (text) => void process.stderr.write(`${text}\n`),
    makePages: (more) => runTool(places.root, 'astro', ['build'], { env: more }),
  };
}
