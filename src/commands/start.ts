// `npm start`: build if needed, print the week's sheets, serve everything on this machine, say where.
import { existsSync } from 'node:fs';
import { build } from '../build/build.ts';
import { thisWorld } from '../build/world.ts';
import { openDesk, type Desk } from '../desk/serve.ts';

const world = thisWorld();
const { dist, prints } = world.places;

const result = await build(world, { unlessFresh: true });
if (!result.ok && !existsSync(dist)) process.exit(1);
if (!result.ok)
  world.complain(
    '\n*** NOT UP TO DATE: the site from before is served until the fault above is mended. ***\n',
  );

if (!process.argv.includes('--no-serve')) {
  const settings = { dist, prints, basePath: world.env['BASE_PATH'] ?? '/' };
  const desk = await openDesk(settings, Number(world.env['PORT'] ?? 4173), world.env['HOST']);
  tellAddresses(desk);
  const close = () => void desk.close().then(() => process.exit(0));
  process.once('SIGINT', close);
  process.once('SIGTERM', close);
}

function tellAddresses({ url }: Desk): void {
  const lines = [
    ['Front page', url],
    ['Barn board', `${url}barn/`],
    ['Sheets', `${url}sheets/`],
    ['PDFs', `${url}pdf/`],
  ];
  for (const [name = '', address] of lines) world.say(`  ${name.padEnd(12)}${address}`);
}
