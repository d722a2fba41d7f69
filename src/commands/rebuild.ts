// What a desk starts beside itself: makes the site if files have changed, or prints the week's sheets; tells its parent.
import { build } from '../build/build.ts';
import { PlainError } from '../build/plainError.ts';
import { thisWorld } from '../build/world.ts';
import type { RebuildReport } from '../desk/rebuildChild.ts';
import { deskSettings, openDesk } from '../desk/serve.ts';
import { printWeekSheets } from '../print/weekSheets.ts';

const world = thisWorld();

const report = process.argv.includes('--print') ? await printed() : await built();
if (process.send) process.send(report, () => process.disconnect());
else process.exitCode = report.ok ? 0 : 1;

async function built(): Promise<RebuildReport> {
  try {
    const result = await build(world, { unlessFresh: true });
    if (result.ok) return { ok: true, fresh: result.fresh };
    return { ok: false, again: false, failure: { why: result.why, faults: result.faults } };
  } catch (error) {
    // Another build holds the lock.
    if (!(error instanceof PlainError)) throw error;
    const faults = [{ file: null, line: null, column: null, text: error.message }];
    return { ok: false, again: true, failure: { why: 'busy', faults } };
  }
}

async function printed(): Promise<RebuildReport> {
  const result = await build(world, { unlessFresh: true });
  // What is wrong is told where the site is made; its sheets are printed once it is right.
  if (!result.ok) return { ok: true, fresh: true };
  try {
    const settings = deskSettings(world.places, world.env);
    await printWeekSheets(world, result.reading, result.fingerprint, () => openDesk(settings, 0));
    return { ok: true, fresh: result.fresh };
  } catch (error) {
    if (!(error instanceof PlainError)) throw error;
    return { ok: false, again: true, failure: { why: 'busy', faults: [{ file: null, line: null, column: null, text: error.message }] } }; // prettier-ignore
  }
}
