// `npm run build`: the static site alone, into dist/.
import { build } from '../build/build.ts';
import { thisWorld } from '../build/world.ts';
import { LockedError } from '../build/lock.ts';

try {
  const result = await build(thisWorld());
  process.exitCode = result.ok ? 0 : 1;
} catch (error) {
  if (!(error instanceof LockedError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
