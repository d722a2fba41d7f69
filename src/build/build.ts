// The build: read the book, make the pages beside the standing site, swap them in whole.
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DeskFault } from '../../shared/book/deskState.ts';
import { isoDate } from '../../shared/calendar/day.ts';
import { tellContent } from '../content/contentFault.ts';
import { readFarm, type FarmReading, type Notice } from '../farm/readFarm.ts';
import { listedFaults, tellFaults } from '../farm/tell.ts';
import { contentFor } from './contentFor.ts';
import { FINGERPRINT_FILE, fingerprintIn, fingerprintOf } from './fingerprint.ts';
import { takeLock } from './lock.ts';
import type { Places } from './places.ts';
import { NOTED, SAID } from './soundLines.ts';
import { hasVoice } from './soundVoice.ts';
import { recover, sideFolder, swapIn } from './swap.ts';
import type { Ended } from './tool.ts';
import { visitNotices } from './visitNotices.ts';

/** A farm that could be read. */
export type ReadyFarm = Extract<FarmReading, { ok: true }>;

/** What a build touches beyond the disk, so that a test can stand in for it. */
export interface BuildWorld {
  readonly places: Places;
  readonly env: NodeJS.ProcessEnv;
  readonly now_ms: () => number;
  readonly say: (line: string) => void;
  readonly complain: (text: string) => void;
  /** Runs Astro's build with these additions to the environment. */
  readonly makePages: (env: NodeJS.ProcessEnv) => Promise<Ended>;
}

/**
 * How a build ended. `fresh`: the standing site was made from the very same files already. What was wrong has been
 * told by then; it comes back once more for who keeps it.
 */
export type BuildResult =
  | { ok: true; fresh: boolean; fingerprint: string; reading: ReadyFarm }
  | { ok: false; why: 'book' | 'content' | 'pages'; faults: readonly DeskFault[] };

const LONGEST_WAIT_ms = 120_000;

/**
 * Builds the site into `dist`. With `unlessFresh` a site that was made from the same files for the
 * same day is left as it is. On a fault in the book or a page the standing site stays untouched.
 */
export async function build(
  world: BuildWorld,
  options: { unlessFresh?: boolean } = {},
): Promise<BuildResult> {
  const { places } = world;
  const waiting = { most_ms: LONGEST_WAIT_ms, every_ms: 200, say: world.say };
  const giveBack = await takeLock(join(places.workshop, 'build.lock'), waiting);
  try {
    if (recover(places.dist, places.workshop))
      world.say('A build was cut off earlier; the site from before is back.');
    const clock = stopwatch(world);
    const reading = readFarm(places.farm, { asOf: world.env['AS_OF'] || undefined, now_ms: world.now_ms() });
    if (!reading.ok) {
      world.complain(`${tellFaults(reading.faults, places.farm)}\n${stands(places.dist)}`);
      return { ok: false, why: 'book', faults: listedFaults(reading.faults) };
    }
    const { book, farm } = reading;
    clock.lap(
      `Book read: ${farm.name}, ${count(book.does.length, 'doe')}, ${count(book.rows.length, 'row')}`,
    );
    const fingerprint = fingerprintOf(
      places,
      reading.asOf,
      world.env['BASE_PATH'] ?? '/',
      hasVoice(world.env),
    );
    if (options.unlessFresh && fingerprintIn(places.dist) === fingerprint)
      return { ok: true, fresh: true, fingerprint, reading };
    const content = contentFor(places.root, reading);
    if (content.faults.length > 0) {
      world.complain(`${tellContent(content.faults, places.root)}\n${stands(places.dist)}`);
      return { ok: false, why: 'content', faults: content.faults };
    }
    const notices = [
      ...reading.notices,
      ...content.notices.map((notice): Notice => ({ ...notice, line: null })),
      ...visitNotices(reading),
    ];
    const wrong = await makeSite(world, { ...reading, notices }, fingerprint, clock);
    return wrong === null
      ? { ok: true, fresh: false, fingerprint, reading }
      : { ok: false, why: 'pages', faults: [{ file: null, line: null, column: null, text: wrong }] };
  } finally {
    giveBack();
  }
}

/** Makes the pages and swaps them in; what Astro said where it could not, else null. */
async function makeSite(
  world: BuildWorld,
  reading: ReadyFarm,
  fingerprint: string,
  clock: Stopwatch,
): Promise<string | null> {
  const { dist, farm, workshop } = world.places;
  const stamp = `${world.now_ms()}-${process.pid}`;
  const side = sideFolder(workshop, stamp);
  const isFirst = hasVoice(world.env) && !existsSync(join(workshop, 'sound'));
  world.say(
    `Making the pages … (${isFirst ? 'one to two minutes, since all is spoken for the first time' : 'some seconds'})`,
  );
  const made = await world.makePages({
    PAILSIDE_OUT: side,
    FARM_DIR: farm,
    // A day that the clock set is handed on, so that midnight cannot fall between our reading and the pages' own.
    ...(reading.asOfFrom === 'farm.yaml' ? {} : { AS_OF: isoDate(reading.asOf) }),
    ASTRO_TELEMETRY_DISABLED: '1',
  });
  if (made.code !== 0 || !existsSync(join(side, 'index.html'))) {
    world.complain(
      `${made.said.trim()}\n\nThe pages could not be made; the reason stands above. ${stands(dist)}`,
    );
    recover(dist, workshop);
    return made.said.trim();
  }
  writeFileSync(join(side, FINGERPRINT_FILE), `${fingerprint}\n`);
  const pages = pagesIn(side);
  clock.lap(`Pages made: ${pages}`);
  for (const line of linesAfter(made.said, SAID)) world.say(`Listen: ${line}`);
  swapIn(side, dist, workshop, stamp);
  clock.lap('Site in place: dist/');
  const notes = [...reading.notices.map(noticeText), ...linesAfter(made.said, NOTED)];
  for (const note of notes) world.say(`  Note: ${note}`);
  world.say(`Done: ${count(pages, 'page')}${notes.length ? `, ${count(notes.length, 'note')} above` : ''}.`);
  return null;
}

const stands = (dist: string) =>
  existsSync(dist) ? 'The site that stands (dist/) is left as it is.' : 'There is no site yet.';

/** What a step of the build has to tell: the rest of each line that begins so. */
const linesAfter = (said: string, start: string) =>
  said.split('\n').filter((line) => line.startsWith(start)).map((line) => line.slice(start.length)); // prettier-ignore

function noticeText({ file, line, text }: Notice): string {
  const place = [file, line].filter((part) => part !== null).join(':');
  return place === '' ? text : `${place}  ${text}`;
}

const count = (number: number, noun: string) =>
  `${number.toLocaleString('en')} ${noun}${number === 1 ? '' : 's'}`;

function pagesIn(folder: string): number {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'))
    .length;
}

interface Stopwatch {
  /** Says what is done and the seconds since the lap before. */
  lap(line: string): void;
}

function stopwatch(world: BuildWorld): Stopwatch {
  let last_ms = world.now_ms();
  return {
    lap(line) {
      const now_ms = world.now_ms();
      world.say(`${line} (${((now_ms - last_ms) / 1000).toFixed(1)} s)`);
      last_ms = now_ms;
    },
  };
}
