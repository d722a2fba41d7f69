// From farm.yaml to what a trip is planned from: the usual filled in, and a notice where the farm goes below guidance.
import type { Band } from '../../shared/quantity/grade.ts';
import { NO_CONTACT, type FarmTrip } from '../../shared/trip/farmTrip.ts';
import { belowGuidance, type BelowGuidance, type RuleName } from '../../shared/trip/ruleSources.ts';
import type { BandRules, TripFarm } from '../../shared/trip/types.ts';
import { USUAL_FARM, USUAL_RULES } from '../../shared/trip/usualRules.ts';
import type { TripContact } from '../../shared/trip/visitTypes.ts';
import type { Notice } from './fault.ts';
import { SETTINGS_FILE, type Settings } from './settingsRule.ts';

type Visits = NonNullable<Settings['visits']>;

/** What a farm says about visits; null where it says nothing at all. */
export function farmTripOf({ stations, taps, visits, contact }: Partial<Settings>): FarmTrip | null {
  if (!stations && taps === undefined && !visits && !contact) return null;
  const written = Object.entries(contact ?? {}).filter(([, text]) => text !== undefined);
  return {
    farm: { ...USUAL_FARM, ...stations, ...(taps !== undefined && { taps }), ...visitsOf(visits ?? {}) },
    shownMilking: visits?.shownMilking ?? null,
    contact: { ...NO_CONTACT, ...(Object.fromEntries(written) as Partial<TripContact>) },
  };
}

function visitsOf(visits: Visits): Omit<TripFarm, 'stations' | 'usual' | 'taps'> {
  const { walks, adults, washing, kiddingPen } = visits;
  const usual = USUAL_FARM;
  return {
    toilets: visits.toilets ?? usual.toilets,
    seats: visits.seats ?? usual.seats,
    busesAtOnce: visits.buses ?? usual.busesAtOnce,
    gateWalk_min: walks?.gate ?? usual.gateWalk_min,
    tapsWalk_min: walks?.taps ?? usual.tapsWalk_min,
    lunchSlack_min: visits.lunchSlack ?? usual.lunchSlack_min,
    washTogether_min: washing?.together ?? usual.washTogether_min,
    washSpare: washing?.spare ?? usual.washSpare,
    childrenPerSpare: adults?.childrenPerSpare ?? usual.childrenPerSpare,
    leastAdults: adults?.least ?? usual.leastAdults,
    busSpare_min: visits.busSpare ?? usual.busSpare_min,
    kiddingDays: {
      before: kiddingPen?.before ?? usual.kiddingDays.before,
      after: kiddingPen?.after ?? usual.kiddingDays.after,
    },
    rules: {
      'k-2': rulesOf('k-2', visits),
      '3-5': rulesOf('3-5', visits),
      '6-8': rulesOf('6-8', visits),
      '9-12': rulesOf('9-12', visits),
    },
  };
}

function rulesOf(band: Band, visits: Visits): BandRules {
  const [own, usual] = [visits[band], USUAL_RULES[band]];
  if (!own) return usual;
  const most = own.most ?? Math.max(usual.perAdult.most, own.aim ?? 0);
  return {
    perAdult: { aim: own.aim ?? Math.min(usual.perAdult.aim, most), most },
    groupMost: own.group ?? usual.groupMost,
    wash_s: own.wash ?? usual.wash_s,
    toilet_s: own.toilet ?? usual.toilet_s,
    toiletWithin_min: own.toiletWithin ?? usual.toiletWithin_min,
    bus_min: own.bus ?? usual.bus_min,
    headCount_min: own.headCount ?? usual.headCount_min,
    lunch_min: own.lunch ?? usual.lunch_min,
    welcome_min: own.welcome ?? usual.welcome_min,
  };
}

const SAID: Readonly<Partial<Record<RuleName, (is: number) => string>>> = {
  most: (is) => `allows ${is} children for one adult`,
  wash: (is) => `gives one person ${is} seconds to wash hands`,
  toiletWithin: (is) => `lets ${is} minutes pass between two chances to go to the toilet`,
  leastAdults: (is) => `lets a visit come with ${is} ${is === 1 ? 'adult' : 'adults'}`,
  childrenPerSpare: (is) => `keeps one adult free for ${is} children`,
  busSpare: (is) => `leaves ${is} minutes before the buses go`,
  washSpare: (is) => `adds ${is} of the washing time for queues`,
  kiddingPen: (is) => `closes the kidding pen for ${is} days on one side of a birth`,
};

/** One notice for each threshold below what is published or usual. Local rules go first, above all of these. */
export function guidanceNotices(farm: TripFarm): Notice[] {
  return belowGuidance(farm).map((below) => ({ file: SETTINGS_FILE, line: null, text: noticeOf(below) }));
}

function noticeOf({ rule, band, is, guide, side, source, sure }: BelowGuidance): string {
  const where = band ? `visits, ${band},` : 'visits';
  const kind = sure === 'practice' ? 'Usual is' : 'Published guidance is';
  const told = sure === 'memory' ? `${source}; from memory` : source;
  return `${where} ${SAID[rule]?.(is) ?? `has ${is} for ${rule}`}. ${kind} ${side} ${guide} (${told}). The rules of your health department and of the school district go first: ask them.`;
}
