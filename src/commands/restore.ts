// `npm run restore -- list | DATE`: shows the copies of the farm folder, or puts one of them in its place.
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { DESK_FOLDER } from '../build/fingerprint.ts';
import { takeLock } from '../build/lock.ts';
import { fromCaller, type Places } from '../build/places.ts';
import { PlainError, runCommand } from '../build/plainError.ts';
import { thisWorld } from '../build/world.ts';
import { copiesIn, copyPath, copyPlace, farmNotes } from '../desk/backup/copies.ts';
import { mendRestore, restoreCopy } from '../desk/backup/restore.ts';
import { WRITER_LOCK } from '../desk/backup/zipFolder.ts';
import { momentWriter } from '../farm/entered.ts';

const HOW = `npm run restore -- list                 shows the copies
  npm run restore -- 2026-05-21           puts that day's copy in the place of the farm folder
  npm run restore -- 2026-05-21 --from /media/farm/stick/our-farm     takes it from another folder`;

const world = thisWorld();

await runCommand(async () => {
  const { name, from } = asked();
  const { places } = world;
  const notes = farmNotes(places.farm);
  const folder = from ?? copyPlace(places.farm, places.workshop, notes).folder;
  if (name === 'list') return list(folder);
  const giveBack = await holdEverything(places);
  try {
    if (mendRestore(places.farm)) world.say('A restore was cut off earlier; the farm folder from before it is back.'); // prettier-ignore
    // Its moment on the farm's clock: 2026-05-21T06:40:12.345-05:00.
    const moment = momentWriter(notes.timeZone)(world.now_ms());
    const [today, time] = [moment.slice(0, 10), moment.slice(11, 19).replaceAll(':', '')];
    const done = await restoreCopy({ farm: places.farm, folder, name, now_ms: world.now_ms(), today, time });
    world.say(`The farm folder is the copy "${name}" again: ${done.files} files in ${places.farm}`);
    if (done.before !== null)
      world.say(
        `What stood there is kept as "${done.before}" in ${folder}\nWhat was entered after the copy was made stands in that one. To go back: npm run restore -- ${done.before}`,
      );
    world.say('Now start the desk: npm start');
    return 0;
  } finally {
    giveBack();
  }
});

function asked(): { name: string; from: string | null } {
  try {
    const options = { from: { type: 'string' } } as const;
    const { values, positionals } = parseArgs({
      args: process.argv.slice(2),
      options,
      allowPositionals: true,
    });
    const [name = 'list', ...more] = positionals;
    if (more.length > 0) throw new Error(`One copy at a time, not ${positionals.join(' ')}.`);
    const from = values.from === undefined ? null : fromCaller(values.from, process.env, process.cwd());
    return { name: name.replace(/\.zip$/, '').toLowerCase(), from };
  } catch (error) {
    throw new PlainError(`${error instanceof Error ? error.message : String(error)}\n  ${HOW}`);
  }
}

function list(folder: string): number {
  const copies = copiesIn(folder);
  if (copies.length === 0) {
    world.say(`There is no copy yet in ${folder}\nThe desk makes one a day while it runs (npm start).`);
    return 0;
  }
  world.say(`Copies of the farm folder in ${folder}, oldest first:\n`);
  for (const { name } of copies) {
    const size_kB = Math.ceil(statSync(copyPath(folder, name)).size / 1000);
    world.say(`  ${name.padEnd(34)}${String(size_kB).padStart(8)} kB`);
  }
  world.say(`\nTo put one in the place of the farm folder (stop the desk first):\n  ${HOW}`);
  return 0;
}

/** Nobody may build from the folder or write into it while it is swapped. */
async function holdEverything({ farm, workshop }: Places): Promise<() => void> {
  const waiting = { most_ms: 0, every_ms: 100, say: world.say };
  const endBuild = await takeLock(join(workshop, 'build.lock'), waiting);
  const desk = join(farm, DESK_FOLDER);
  if (!existsSync(desk)) return endBuild;
  try {
    const endDesk = await takeLock(join(desk, WRITER_LOCK), { ...waiting, who: 'The desk' });
    return () => {
      endDesk();
      endBuild();
    };
  } catch (error) {
    endBuild();
    if (!(error instanceof PlainError)) throw error;
    throw new PlainError('The desk of this farm is open and writes into its folder. Stop it (Ctrl+C where it runs), then try again.'); // prettier-ignore
  }
}
