// What the calendar's pages carry: the farm, its coming year, when it is taken, and their words. No school's name.
import { isoDate } from '../../shared/calendar/day.ts';
import { usualWish } from '../../shared/trip/usualWish.ts';
import type { DayProps, VisitsProps } from '../../shared/trip/visits/visitsProps.ts';
import type { Words } from '../../shared/words/words.ts';
import { fileHref, href, openSite } from './site.ts';
import { stationTexts, tripFarm, tripSeason } from './trip.ts';
import { wordsOf } from './words.ts';

/** The page of a month in a language. */
export function visitsProps(lang: string): VisitsProps {
  const stations = stationTexts(lang).map(({ id, name, does }) => ({ id, name, does }));
  return { ...calendarProps(lang), stations, usual: usualWish(openSite().ledger.asOf) };
}

/** The sheet of a day in a language. */
export function dayProps(lang: string): DayProps {
  const stations = stationTexts(lang).map(({ id, name, does, ready, care }) => ({ id, name, does, ready, care })); // prettier-ignore
  return { ...calendarProps(lang), stations, farmName: openSite().farm.name };
}

function calendarProps(lang: string) {
  const { taken, ledger } = openSite();
  return {
    base: fileHref('/'),
    farm: tripFarm(),
    season: tripSeason(),
    taken,
    today: isoDate(ledger.asOf),
    words: calendarWords(lang),
    links: {
      visits: href(lang, '/visits/'),
      day: href(lang, '/visits/day/'),
      after: href(lang, '/visits/after/'),
      trip: href(lang, '/trip/'),
      book: href(lang, '/book/'),
    },
  };
}

function calendarWords(lang: string): Words {
  const { entries } = wordsOf(lang);
  const own = /^visits\.(?!after\.)|^trip\.(grade|need|why|note|verdict|aside|form|take)\./;
  return { lang, entries: Object.fromEntries(Object.entries(entries).filter(([key]) => own.test(key))) };
}
