// What a trip's pack is made of: the page's props, each band's lessons and sheets, and the ground that the desk plans on.
import { civilFromDay } from '../../shared/calendar/day.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import type { PackBundle, PackGround, PackProps, PackTongue } from '../../shared/trip/pack/bundle.ts';
import { HOME_LANGUAGES } from '../../shared/trip/papers/home.ts';
import { usualWish } from '../../shared/trip/usualWish.ts';
import { say, type Words } from '../../shared/words/words.ts';
import { zoneText } from '../farm/zoneText.ts';
import { lessonsIn } from './lessons.ts';
import { printShelf } from './printRoom.ts';
import { sheetEntries, sheetFront, sheetSource } from './sheets.ts';
import { fileHref, href, openSite, wordsOf, wordsUnder } from './site.ts';
import { stationTexts, tripContact, tripFarm, tripSeason } from './trip.ts';

/** Years before and after the book's day whose clock changes a calendar file knows. */
const YEARS = { before: 1, after: 3 };

/** What plans a trip on this farm. */
export function packGround(): PackGround {
  const { farm, ledger } = openSite();
  const { year } = civilFromDay(ledger.asOf);
  const [firstYear, lastYear] = [year - YEARS.before, year + YEARS.after];
  return {
    farmName: farm.name,
    farm: tripFarm(),
    season: tripSeason(),
    usual: usualWish(ledger.asOf),
    contact: tripContact(),
    shelf: printShelf(),
    zone: { name: farm.timeZone, text: zoneText(farm.timeZone, firstYear, lastYear), firstYear, lastYear },
  };
}

/** A language of the pack; `topKeys` are the words that go with it. */
export function packTongue(lang: string, topKeys: readonly string[]): PackTongue {
  return {
    lang,
    name: say(wordsOf(lang), 'site.languageName'),
    words: wordsUnder(lang, topKeys),
    stations: stationTexts(lang),
  };
}

/** Everything that the pack's page of a language carries. */
export function packProps(lang: string): PackProps {
  const { languages } = openSite();
  const others = languages.filter((one) => one !== lang);
  return {
    ...packGround(),
    lang,
    tongues: [
      packTongue(lang, ['trip-papers', 'trip-pack', 'trip-expect', 'trip', 'print']),
      // The hand-washing board is printed in every language of the farm.
      ...others.map((one) => packTongue(one, ['trip-papers'])),
    ],
    otherHome: HOME_LANGUAGES.filter((one) => !languages.includes(one)).map((one) =>
      wordsUnder(one, ['trip-papers']),
    ),
    pages: Object.fromEntries(languages.map((one) => [one, href(one, '/trip/pack/')])),
    front: href(lang, '/'),
    trip: href(lang, '/trip/'),
    tripBelow: `${lang === languages[0] ? '' : `${lang}/`}trip/`,
    bundle: fileHref(`/trip/pack/BAND-${lang}.json`),
    pdf: fileHref('/trip/pack.pdf'),
    pdfState: fileHref('/trip/pack-state.json'),
  };
}

/** Bands and languages that there are bundles of. */
export function bundlePaths(): { band: Band; lang: string }[] {
  return openSite().languages.flatMap((lang) => BANDS.map((band) => ({ band, lang })));
}

/** The lessons and sheets of a band in a language. */
export function packBundle(band: Band, lang: string): PackBundle {
  const entries = sheetEntries().filter(({ plan }) => plan.band === band);
  return {
    words: bundleWords(lang),
    lessons: lessonsIn(lang).filter((lesson) => lesson.band === band),
    fronts: Object.fromEntries(
      entries.flatMap((entry) => {
        const front = sheetFront(entry, lang);
        return front ? [[entry.plan.name, front] as const] : [];
      }),
    ),
    tasks: Object.fromEntries(entries.map(({ plan }) => [plan.name, plan.tasks])),
    source: sheetSource(band),
  };
}

/** The words of sheets and tasks, of lessons, and of the facts that a lesson has on paper. */
function bundleWords(lang: string): Words {
  const { entries } = wordsOf(lang);
  const kept = Object.entries(entries).filter(([key]) =>
    /^(?:sheet|task|lesson)\.|^bench\.(?:facts|steps|paper)\./.test(key),
  );
  return { lang, entries: Object.fromEntries(kept) };
}
