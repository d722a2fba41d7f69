// `npm run print`: sheets with their answer keys as PDF, into prints/ or a folder of one's own.
import { build } from '../build/build.ts';
import { thisWorld } from '../build/world.ts';
import { deskSettings, openDesk } from '../desk/serve.ts';
import { readPrintOptions } from '../print/options.ts';
import { printSheets, sheetLanguages } from '../print/printSheets.ts';
import { runCommand } from '../build/plainError.ts';

await runCommand(async () => {
  const world = thisWorld();
  const result = await build(world, { unlessFresh: true });
  if (!result.ok) {
    world.complain('Nothing was printed.');
    return 1;
  }
  const langs = sheetLanguages(world.places.dist, result.reading.farm.languages);
  const asked = readPrintOptions(process.argv.slice(2), langs);
  if (!asked.ok) {
    world.complain(`Nothing was printed:\n${asked.faults.map((fault) => `  ${fault}`).join('\n')}`);
    world.complain('Options stand after "--", for instance:  npm run print -- --band 3-5 --lang en');
    return 2;
  }
  await printSheets(world, result.reading, asked.options, () =>
    openDesk(deskSettings(world.places, world.env), 0),
  );
  return 0;
});
