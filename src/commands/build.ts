// `npm run build`: the static site alone, into dist/.
import { build } from '../build/build.ts';
import { runCommand } from '../build/plainError.ts';
import { thisWorld } from '../build/world.ts';

await runCommand(async () => ((await build(thisWorld())).ok ? 0 : 1));
