// What the name of a printed file says: language, grades, paper, and what is special about it.

/** A file of the list, in the words of its language. */
export interface FileWords {
  readonly file: string;
  /** Null where the name does not say. */
  readonly lang: string | null;
  /** Where it stands in its list: bands from the youngest, then grades, then the rest. */
  readonly place: number;
  readonly title: string;
  readonly more: string;
}

const BANDS = ['k-2', '3-5', '6-8', '9-12'];
// The list is made without the site's words, so that it is there when no site is.
const EN = { grades: 'Grades', grade: 'Grade', kinder: 'Kindergarten', letter: 'Letter', large: 'large print', copies: 'copies' }; // prettier-ignore
const WORDS: Readonly<Record<string, typeof EN>> = {
  en: EN,
  es: { grades: 'Grados', grade: 'Grado', kinder: 'Kínder', letter: 'Carta', large: 'letra grande', copies: 'copias' }, // prettier-ignore
};

/**
 * Reads the name that the printer gave: `sheets-grade-2-NAMES-30-copies-WORD-es-a4-large.pdf`. A file of another name stands
 * under its own.
 */
export function describeFile(file: string): FileWords {
  const match =
    /^sheets-(k-2|3-5|6-8|9-12|grade-(?:K|\d{1,2}))(?:-(.+))?-([a-z]{2,3})-(letter|a4)(-large)?\.pdf$/u.exec(file); // prettier-ignore
  if (!match) return { file, lang: null, place: 99, title: file, more: '' };
  const [, whom = '', rest, lang = 'en', paper, large] = match;
  const words = WORDS[lang] ?? EN;
  const band = BANDS.indexOf(whom);
  const grade = whom.replace('grade-', '');
  const title =
    band >= 0
      ? `${words.grades} ${whom.replace('k', 'K').replace('-', '–')}`
      : grade === 'K'
        ? words.kinder
        : `${words.grade} ${grade}`;
  const more = [
    rest?.replace(/(^|-)(\d+)-copies(-|$)/, (_, before, count, after) =>
      [before === '' ? '' : ' · ', count, ' ', words.copies, after === '' ? '' : ' · '].join(''),
    ),
    paper === 'a4' ? 'A4' : words.letter,
    large === undefined ? undefined : words.large,
  ];
  return {
    file,
    lang,
    place: band >= 0 ? band : 10 + (grade === 'K' ? 0 : Number(grade)),
    title,
    more: more.filter((part) => part !== undefined).join(' · '),
  };
}
