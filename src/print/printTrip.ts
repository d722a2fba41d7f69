// Prints the pack of a trip and writes its calendar file, from the site as it is served.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BuildWorld, ReadyFarm } from '../build/build.ts';
import { fromCaller } from '../build/places.ts';
import { PlainError } from '../build/plainError.ts';
import { calendarVisit, isInZone } from '../../shared/trip/pack/calendarVisit.ts';
import { namedAddress } from '../../shared/trip/pack/namedAddress.ts';
import { MOST_COPIES } from '../../shared/sheet/mostCopies.ts';
import type { PackTongue } from '../../shared/trip/pack/bundle.ts';
import { packCase, tripFileName, type PackCase } from '../../shared/trip/pack/packCase.ts';
import { whyText, wayText, wishText } from '../../shared/trip/tripText.ts';
import { calendarFile } from '../components/trip/pack/calendarFile.ts';
import { startChromium } from './chromium.ts';
import { pageCount } from './pageCount.ts';
import { LONGEST_WAIT_ms } from './printPage.ts';
import { printPages } from './printPages.ts';
import { printsFolder, progress, type ServeSite } from './printSheets.ts';
import type { TripGround } from './tripGround.ts';
import type { TripOptions } from './tripOptions.ts';
import { tripJob } from './tripOrder.ts';

/** Prints the packs of a trip and writes a calendar file in each language. Throws PlainError, also where the day does not work. */
export async function printTrip(
  world: BuildWorld,
  reading: ReadyFarm,
  ground: TripGround,
  { query, langs, out: folder }: TripOptions,
  serveSite: ServeSite,
): Promise<void> {
  const own = packCase(query, ground);
  const tongue = toldIn(ground, langs);
  // What nobody wrote takes the usual: it is told, so that nobody prints a day for another class.
  world.say(wishText(tongue.words, own.wish));
  tellWhys(own, tongue);
  const out =
    folder === null ? printsFolder(world, reading.asOf) : fromCaller(folder, world.env, process.cwd());
  mkdirSync(out, { recursive: true });
  for (const lang of langs) writeCalendar(world, own, ground, lang, out);
  const jobs = langs.map((lang) => tripJob({ own, lang }, ground));
  if (
    own.wish.children > MOST_COPIES &&
    (own.choice.parts?.some((name) => name.startsWith('sheet-')) ?? true)
  )
    world.say(
      `A set has ${MOST_COPIES} copies at most: so many of each sheet are printed for ${own.wish.children} children. For the rest, print a second set with "npm run print" and another class word.`,
    );
  const start_ms = world.now_ms();
  world.say('Printing the pack … (half a minute for two classes)');
  const site = await serveSite();
  try {
    const browser = await startChromium(world.env);
    try {
      const printed = await printPages(browser, site.url, jobs, out, LONGEST_WAIT_ms, progress(world));
      for (const { file } of printed) {
        const pages = pageCount(file);
        world.say(`  ${file}${pages === null ? '' : `  ${pages} pages`}`);
      }
    } finally {
      await browser.close();
    }
  } finally {
    await site.close();
  }
  world.say(`Printed the pack (${((world.now_ms() - start_ms) / 1000).toFixed(1)} s)`);
}

/** The first language asked for. */
function toldIn({ tongues }: TripGround, langs: readonly string[]): PackTongue {
  const tongue = tongues.find(({ lang }) => lang === langs[0]) ?? tongues[0];
  if (!tongue) throw new Error('The ground of trips has no language.');
  return tongue;
}

/** Throws what keeps the day from working and what would mend it. */
function tellWhys({ plan, wish }: PackCase, tongue: PackTongue): void {
  if (plan.ok) return;
  const whys = plan.whys.map((why) => `  ${whyText(tongue, why, wish)}`);
  const ways = plan.ways.map((way) => `  ${wayText(tongue, way, wish)}`);
  throw new PlainError(
    [
      'This day does not work, so nothing was printed:',
      ...whys,
      ...(ways.length > 0 ? ['Each of these was tried, and works:', ...ways] : []),
    ].join('\n'),
  );
}

function writeCalendar(
  world: BuildWorld,
  { trip, wish, tripQuery }: PackCase,
  { tongues, zone, contact }: TripGround,
  lang: string,
  out: string,
): void {
  const tongue = tongues.find((one) => one.lang === lang);
  if (!trip || !tongue) return;
  if (!isInZone(wish.date, zone)) {
    world.complain(`No calendar file: one is made for visits until the end of ${zone.lastYear}.`);
    return;
  }
  const { words, stations } = tongue;
  const folder = lang === tongues[0]?.lang ? '' : `${lang}/`;
  const page = namedAddress(`${folder}trip/${tripQuery}`, contact.site);
  const visit = calendarVisit({ trip, words, stations, zone, page, made_ms: world.now_ms() });
  const file = join(out, `${tripFileName(wish)}-${lang}.ics`);
  writeFileSync(`${file}.part`, calendarFile(visit));
  renameSync(`${file}.part`, file);
  world.say(`  ${file}`);
}
