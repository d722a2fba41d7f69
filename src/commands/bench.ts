// `npm run bench`: how fast, as ratios measured in one run. `npm run bench -- figures` measures one part.
import { join } from 'node:path';
import { ROOT } from '../build/places.ts';
import { runScript } from '../build/tool.ts';

const script = join(ROOT, 'tests', 'bench', 'run.ts');
process.exitCode = (await runScript(script, process.argv.slice(2), { show: true, cwd: ROOT })).code;
