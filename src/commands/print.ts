// `npm run print`: sheets with their answer keys as PDF, into prints/ or a folder of one's own.
import { build } from '../build/build.ts';
import { thisWorld } from '../build/world.ts';
import { deskSettings, openDesk } from '../desk/serve.ts';
import { readPrintOptions } from '../print/options.ts';
import { printSheets } from '../print/printSheets.ts';
import { readShelf } from '../print/shelf.ts';
import { runCommand } from '../build/plainError.ts';

await runCommand(async () => {
  const world = thisWorld();
  const result = await build(world, { unlessFresh: true });
  if (!result.ok) {
    world.complain('Nothing was printed.');
    return 1;
  }
  const shelf = readShelf(world.places.dist);
  if (shelf === null) {
    world.complain('Nothing was printed: there is no sheet in content/sheets.');
    return 1;
  }
  const asked = readPrintOptions(process.argv.slice(2), shelf);
  if (!asked.ok) {
    world.complain(`Nothing was printed:\n${asked.faults.map((fault) => `  ${fault}`).join('\n')}`);
    world.complain(
      'Options stand after "--", for instance:\n' +
        '  npm run print -- --grade 2 --sheets cups-we-can-count --copies 30 --word fern --lang en',
    );
    return 2;
  }
  await printSheets(world, result.reading, shelf, asked.options, () =>
    openDesk(deskSettings(world.places, world.env), 0),
  );
  return 0;
});
