// What the page of the Trip plan is given: the farm, its coming year, the stations' names, and the words.
import { dayNumber } from '../../shared/calendar/day.ts';
import { bandOfGrade } from '../../shared/tasks/grades.ts';
import { dayTold } from '../../shared/trip/dayTold.ts';
import type { TripProps } from '../../shared/trip/tripProps.ts';
import { usualWish } from '../../shared/trip/usualWish.ts';
import type { Words } from '../../shared/words/words.ts';
import { href, openSite, wordsOf } from './site.ts';
import { stationTexts, tripContact, tripFarm, tripSeason } from './trip.ts';

/** Everything that the Trip plan of a language carries to the browser. */
export function tripProps(lang: string): TripProps {
  return {
    farm: tripFarm(),
    season: tripSeason(),
    stations: stationTexts(lang).map(({ id, name, does }) => ({ id, name, does })),
    contact: tripContact(),
    taken: openSite().taken,
    words: tripWords(lang),
    packHref: href(lang, '/trip/pack/'),
    visitsHref: href(lang, '/visits/'),
  };
}

/** What the built page tells of the day that the plan opens with. */
export function expectProps(lang: string) {
  const { farm, season, stations, words } = tripProps(lang);
  const usual = usualWish(season.asOf);
  const told = dayTold(farm, season, dayNumber(usual.date) ?? season.asOf);
  return { told, season, band: bandOfGrade(usual.grade), stations, words };
}

function tripWords(lang: string): Words {
  const { entries } = wordsOf(lang);
  const kept = Object.entries(entries).filter(([key]) => /^trip(?:-expect)?\./.test(key));
  return { lang, entries: Object.fromEntries(kept) };
}
