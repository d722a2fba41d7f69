// `npm run trip`: the pack of a school's visit as one PDF with its calendar file, into prints/ or a folder of one's own.
import { build } from '../build/build.ts';
import { runCommand } from '../build/plainError.ts';
import { thisWorld } from '../build/world.ts';
import { deskSettings, openDesk } from '../desk/serve.ts';
import { printTrip } from '../print/printTrip.ts';
import { readTripGround } from '../print/tripGround.ts';
import { readTripOptions } from '../print/tripOptions.ts';

await runCommand(async () => {
  const world = thisWorld();
  const result = await build(world, { unlessFresh: true });
  if (!result.ok) {
    world.complain('Nothing was printed.');
    return 1;
  }
  const ground = readTripGround(world.places.dist);
  if (ground === null) {
    world.complain('Nothing was printed: the site has no Trip plan.');
    return 1;
  }
  const asked = readTripOptions(process.argv.slice(2), ground, result.reading.visits ?? []);
  if (!asked.ok) {
    world.complain(`Nothing was printed:\n${asked.faults.map((fault) => `  ${fault}`).join('\n')}`);
    world.complain(
      'Options stand after "--", for instance:\n' +
        '  npm run trip -- --date 2026-05-27 --grade 2 --children 54 --adults 7 --arrive 9:30 --leave 13:00 --buses 2 --lunch 11:45\n' +
        'or a link of the Trip plan in quotes:\n' +
        "  npm run trip -- '?date=2026-05-27&children=54&adults=7&buses=2'",
    );
    return 2;
  }
  await printTrip(world, result.reading, ground, asked.options, () =>
    openDesk(deskSettings(world.places, world.env), 0),
  );
  return 0;
});
