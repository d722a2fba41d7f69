// How long the demo site takes to build, beside a bare Astro project of as many pages.
import { mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../src/build/places.ts';
import { runTool } from '../../src/build/tool.ts';
import { shortest_ms, timeText, type Part } from './line.ts';

const RUNS = 2;

/** Builds both beside the standing site and throws the results away. */
export const sitePart: Part = async (say) => {
  const workshop = join(ROOT, '.pailside', 'bench');
  const site = join(workshop, 'site');
  const bare = join(workshop, 'bare');
  try {
    say('Building the demo site …');
    const ours_ms = await shortest_ms(RUNS, () => astro(ROOT, { PAILSIDE_OUT: site }));
    const pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html')).length; // prettier-ignore
    layOutBare(bare, pages);
    say(`Building a bare project of ${pages} pages …`);
    const theirs_ms = await shortest_ms(RUNS, () => astro(bare, {}));
    return [
      {
        what: `demo site, ${pages} pages`,
        ours: timeText(ours_ms),
        beside: 'bare Astro, as many pages',
        theirs: timeText(theirs_ms),
        ratio: ours_ms / theirs_ms,
      },
    ];
  } finally {
    rmSync(workshop, { recursive: true, force: true });
  }
};

async function astro(cwd: string, env: NodeJS.ProcessEnv): Promise<void> {
  const { code, said } = await runTool(ROOT, 'astro', ['build'], {
    cwd,
    env: { ...env, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  if (code !== 0) throw new Error(`The build in ${cwd} failed:\n${said}`);
}

function layOutBare(folder: string, pages: number): void {
  mkdirSync(join(folder, 'src', 'pages'), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  writeFileSync(join(folder, 'package.json'), '{ "name": "bare", "type": "module" }');
  writeFileSync(join(folder, 'astro.config.mjs'), "export default { cacheDir: './cache' };");
  const page = `---
export function getStaticPaths() {
  return Array.from({ length: ${pages} }, (_, number) => ({ params: { page: String(number) } }));
}
const { page } = Astro.params;
---
<!doctype html>
<html lang="en"><head><title>{page}</title></head><body><h1>Page {page}</h1></body></html>
`;
  writeFileSync(join(folder, 'src', 'pages', '[page].astro'), page);
}
