// What the page of the Trip plan is given: the farm, its coming year, the stations' names, and the words.
import type { TripProps } from '../../shared/trip/tripProps.ts';
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

function tripWords(lang: string): Words {
  const { entries } = wordsOf(lang);
  const kept = Object.entries(entries).filter(([key]) => key.startsWith('trip.'));
  return { lang, entries: Object.fromEntries(kept) };
}
