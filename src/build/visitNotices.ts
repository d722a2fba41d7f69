// What the coordinator hears of the visits to come when the site is built: told at the terminal alone, never on a page.
import { dayNumber, isoDate } from '../../shared/calendar/day.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { clockText } from '../../shared/quantity/show.ts';
import type { TripWhy } from '../../shared/trip/types.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import type { Clash } from '../../shared/trip/visits/clashes.ts';
import { viewVisits, type VisitFinding } from '../../shared/trip/visits/findings.ts';
import type { KiddingNear } from '../../shared/trip/visits/kiddings.ts';
import { tripSeason } from '../../shared/trip/yearAhead.ts';
import type { FarmReading, Notice } from '../farm/readFarm.ts';

/** Clashes, days that do not work and kiddings near, of visits from the farm's day on. */
export function visitNotices({
  farm,
  book,
  asOf,
  visits = [],
}: Extract<FarmReading, { ok: true }>): Notice[] {
  const ahead = visits.filter(
    ({ state, wish }) => state !== 'called off' && (dayNumber(wish.date) ?? 0) >= asOf,
  );
  if (ahead.length === 0) return [];
  const season = tripSeason(book, openLedger(book, asOf), farm);
  const { findings } = viewVisits(ahead, farm.trip?.farm ?? USUAL_FARM, season);
  return findings.map((one) => ({ file: one.visits[0] ?? null, line: null, text: textOf(one) }));
}

const WHYS: Readonly<Record<TripWhy['kind'], string>> = {
  wish: 'something in it cannot be',
  'no station': 'no station is left',
  adults: 'too few adults',
  capacity: 'a station with too little room',
  time: 'too little time',
  lunch: 'food too late',
  seats: 'too few seats',
  toilets: 'too long between toilets',
};

function textOf(finding: VisitFinding): string {
  const { date, visits } = finding;
  if (finding.kind === 'clash') return `${date}: ${clashText(finding.clash, visits)} Change one of them; /visits/ shows both.`; // prettier-ignore
  if (finding.kind === 'kidding')
    return `${date}: the kidding pen is closed to visitors, for ${finding.does.map(doeText).join(', ')}. Tell the school; /visits/ has the sentence.`;
  const whys = [...new Set(finding.whys.map(({ kind }) => WHYS[kind]))].join(', ');
  return `${date}: this day does not work (${whys}). Open its plan from /visits/ to see what would make it work.`;
}

function clashText({ kind, station, from, to, load, holds }: Clash, visits: readonly string[]): string {
  const time = `${clockText(from, 'en')} to ${clockText(to, 'en')}`;
  const who = visits.join(' and ');
  const places = {
    station: `${load} children would be at ${station}, which holds ${holds}`,
    milking: `${load} children would be at the milking (${station}), which holds ${holds}`,
    taps: 'the taps are wanted at the same time',
    toilets: 'the toilets are wanted at the same time',
    seats: `${load} people would eat on ${holds} seats`,
    yard: `${load} buses would stand where ${holds} can be unloaded`,
  };
  return `${who}: ${places[kind]}, ${time}.`;
}

const doeText = ({ name, day, basis }: KiddingNear): string =>
  `${name} (${isoDate(day)}, ${basis === 'record' || basis === 'book' ? 'by the book' : basis})`;
