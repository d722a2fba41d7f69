// What is found about visits, in sentences: for the farm by school and doe, for a school without any name.
import { isoDate } from '../../calendar/day.ts';
import { clockText, dateText } from '../../quantity/show.ts';
import { say, type Words } from '../../words/words.ts';
import { listText, stationName, whyText, type TripTongue } from '../tripText.ts';
import type { Visit } from '../visitTypes.ts';
import type { Clash } from './clashes.ts';
import type { VisitFinding } from './findings.ts';
import type { KiddingNear } from './kiddings.ts';

/** A finding as the farm reads it: what it is, and where there is more than one reason, each. */
export interface FindingText {
  readonly title: string;
  readonly more: readonly string[];
}

/** Tells a finding; the schools' names come from the visits on file. */
export function findingText(
  tongue: TripTongue,
  finding: VisitFinding,
  visits: readonly Visit[],
): FindingText {
  const { words } = tongue;
  const of = finding.visits.flatMap((file) => visits.find((visit) => visit.file === file) ?? []);
  const who = listText(words, of.map(({ school }) => school)); // prettier-ignore
  if (finding.kind === 'clash') return { title: clashText(tongue, finding.clash, who), more: [] };
  if (finding.kind === 'kidding') {
    const more = finding.does.map((doe) => doeText(words, doe));
    return { title: say(words, 'visits.finding.kidding', { who }), more };
  }
  const [first] = of;
  const more = first ? finding.whys.map((why) => whyText(tongue, why, first.wish)) : [];
  return { title: say(words, 'visits.finding.no-plan', { who }), more };
}

function clashText(tongue: TripTongue, clash: Clash, who: string): string {
  const { kind, station, load, holds } = clash;
  const slots = {
    who,
    from: clockText(clash.from, tongue.words.lang),
    to: clockText(clash.to, tongue.words.lang),
    station: station === null ? '' : stationName(tongue, station),
    n: load,
    holds,
  };
  return say(tongue.words, `visits.finding.clash.${kind}`, slots);
}

function doeText(words: Words, { name, day, basis }: KiddingNear): string {
  const date = dateText(isoDate(day), words.lang);
  return say(words, `visits.finding.doe.${basis.replace(' ', '-')}`, { name, date });
}

/** The sentence that a school is told of a kidding near its date. It names no doe. */
export function kiddingForSchool(words: Words, date: string): string {
  return say(words, 'visits.finding.for-school', { date: dateText(date, words.lang) });
}
