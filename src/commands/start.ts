// `npm start`: build if needed, print the week's sheets, serve everything on this machine, say where.
import { existsSync } from 'node:fs';
import { build, type BuildResult } from '../build/build.ts';
import { PlainError, runCommand } from '../build/plainError.ts';
import { thisWorld } from '../build/world.ts';
import { openKeeper, type Keeper } from '../desk/book/keeper.ts';
import { hereAlone, openAccess } from '../desk/access/access.ts';
import { waysIn } from '../desk/access/tellWays.ts';
import { openBackups } from '../desk/backup/backups.ts';
import { mendAtStart } from '../desk/backup/mendAtStart.ts';
import { portOf } from '../desk/port.ts';
import { openRebuilder, type Rebuilder } from '../desk/rebuild.ts';
import { childWork, watchContent } from '../desk/rebuildChild.ts';
import { deskSettings, openDesk, type Desk } from '../desk/serve.ts';
import { startOptions } from '../desk/startOptions.ts';
import { openPackPrinter } from '../print/packPrinter.ts';
import { printWeekSheets } from '../print/weekSheets.ts';

const world = thisWorld();
const { dist, prints } = world.places;
const settings = deskSettings(world.places, world.env);
const live = { farm: world.places.farm, asOf: world.env['AS_OF'], now_ms: world.now_ms, complain: world.complain }; // prettier-ignore

await runCommand(async () => {
  const port = portOf(world.env['PORT']);
  const { serve, lan, newWords } = startOptions(process.argv.slice(2));
  await mendAtStart(world);
  // Before anything reads the book: a row that a power cut tore could be taken for another amount.
  const keeper = serve ? await keeperIfFree() : null;
  const result = await build(world, { unlessFresh: true });
  if (!result.ok && !existsSync(dist)) {
    await keeper?.close();
    return 1;
  }
  if (result.ok) await printIfPossible(result);
  if (!serve) return result.ok ? 0 : 1;
  // The printer asks for the site's address only once somebody orders, and then the desk is open.
  let desk: Desk | null = null;
  const printer = openPackPrinter(dist, () => desk?.url ?? '', world.env);
  const canPrint = !world.env['PAILSIDE_NO_BROWSER'];
  const book = keeper ? { keeper, complain: world.complain } : undefined;
  const lang = result.ok ? (result.reading.farm.languages[0] ?? 'en') : 'en';
  const access = lan ? openAccess({ ...world.places, lang, newWords, env: world.env, now_ms: world.now_ms }) : hereAlone(world.env); // prettier-ignore
  const backups = openBackups({ ...world.places, now_ms: world.now_ms, complain: world.complain });
  const failed = result.ok ? null : { at_ms: world.now_ms(), why: result.why, faults: result.faults };
  const rebuild = openRebuilder(childWork(world.places, world.env, canPrint), failed);
  const endWatch = watchContent(world.places, rebuild);
  desk = await openDesk(
    { ...settings, printer: canPrint ? printer : undefined, live, book, access, rebuild, backups },
    port,
    lan ? '0.0.0.0' : world.env['PAILSIDE_HOST'] || undefined,
  );
  tellAddresses(desk);
  tellRebuilds(rebuild, desk);
  tellPort(desk, port);
  for (const line of waysIn(access, { url: desk.url, isTerminal: process.stdout.isTTY === true })) world.say(line); // prettier-ignore
  // Last of all, so that it stays in sight.
  if (!result.ok)
    world.complain('\n*** THIS IS THE OLD SITE. It stays until the faults listed above are mended. ***');
  closeOnSignal(async () => {
    endWatch();
    await rebuild.close();
    await printer.close();
    await desk?.close();
    await backups.close();
    await keeper?.close();
  });
  return 0;
});

/** Pages are of use without a desk that writes, so what hinders the writing is told and no more. */
async function keeperIfFree(): Promise<Keeper | null> {
  try {
    return await openKeeper(live);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    world.complain(`${why}\nThis desk shows the pages and takes no entries for the Milk book.`);
    return null;
  }
}

/** A site without its PDFs is still of use, so what hinders the printing is told and no more. */
async function printIfPossible(result: Extract<BuildResult, { ok: true }>): Promise<void> {
  const hindrance = world.env['PAILSIDE_NO_BROWSER'];
  try {
    if (hindrance) throw new PlainError(`There is no browser to print with: ${hindrance}.`);
    await printWeekSheets(world, result.reading, result.fingerprint, () => openDesk(settings, 0));
  } catch (error) {
    if (!(error instanceof PlainError)) throw error;
    world.complain(
      `${error.message}\nThe PDFs are left out; the site works without them, and its sheets print from any browser.`,
    );
  }
}

function tellAddresses({ url }: Desk): void {
  const lines = [
    ['Front page', url],
    ['Barn board', `${url}barn/`],
    ['Sheets', `${url}sheets/`],
    ['Print room', `${url}print/`],
    ['PDFs', `${url}pdf/  (folder ${prints})`],
    ['Trip plan', `${url}trip/`],
    ['Visits', `${url}visits/`],
    ['Milk book', `${url}book/`],
    ['The desk', `${url}desk/`],
  ];
  world.say('\nPailside is open on this machine:\n');
  for (const [name = '', address] of lines) world.say(`  ${name.padEnd(12)}${address}`);
  world.say('\nStop it with Ctrl+C.');
}

function tellRebuilds(rebuild: Rebuilder, { url }: Desk): void {
  rebuild.onEnd((isNew) => {
    if (isNew) world.say('The site is as the milk book again.');
    else
      world.complain(`The site could not be made anew and stays as it was. Why, and what to do: ${url}desk/`);
  });
}

/** Phones know the desk by its address: another port than the day before is another desk to them. */
function tellPort({ url }: Desk, asked: number): void {
  const port = Number(new URL(url).port || 80);
  if (asked === 0 || port === asked) return;
  world.complain(
    `\nPort ${asked} is taken by another program, so the desk is at ${port} this time. Phones that know ${asked} do not find it: end the other program and start again.`,
  );
}

function closeOnSignal(closeAll: () => Promise<void>): void {
  const close = () => void closeAll().then(() => process.exit(0));
  process.on('SIGINT', close);
  process.on('SIGTERM', close);
  process.on('SIGHUP', close);
}
