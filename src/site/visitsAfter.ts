// What the page of a class's data sheets carries: the does that may be named on it, and its words.
import { paperOf } from '../../shared/sheet/pageMeasures.ts';
import type { AfterProps } from '../../shared/trip/visits/after/afterProps.ts';
import type { Words } from '../../shared/words/words.ts';
import { pailSheetWords } from './pail.ts';
import { href, openSite } from './site.ts';
import { wordsOf } from './words.ts';

/** Everything that the page of a language carries to the browser. */
export function afterProps(lang: string): AfterProps {
  const { farm, book } = openSite();
  const does = book.does.map(({ id, name, breed }) => ({ id, name, breed }));
  return {
    words: afterWords(lang),
    does,
    units: farm.units,
    farm: farm.name,
    usual: {
      grade: 2,
      paper: paperOf(farm.units),
      date: '',
      doe: does[0]?.id ?? '',
      guesses: '',
      gave: '',
      measure: 'milk',
      numbers: '',
    },
    links: { visits: href(lang, '/visits/'), trip: href(lang, '/trip/') },
  };
}

// Every standard that a task of a class's own numbers may support.
const STANDARDS =
  /^sheet\.standard\.(K\.(CC\.B\.5|CC\.C\.7|MD\.B\.3)|1\.MD\.C\.4|2\.MD\.D\.(9|10)|3\.MD\.B\.[34]|4\.MD\.B\.4|5\.MD\.B\.2|6\.SP\.B\.(4|5\.[ac])|HSS-ID\.A\.2)$/;

function afterWords(lang: string): Words {
  const pail = pailSheetWords(lang);
  const own = Object.entries(wordsOf(lang).entries).filter(
    ([key]) => key.startsWith('visits.after.') || STANDARDS.test(key),
  );
  return { lang, entries: { ...pail.entries, ...Object.fromEntries(own) } };
}
