// Holds what a station's helper says to children against the reading level of each band.
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { judge, type Broken, type ReadingPart } from '../../shared/reading/judge.ts';
import type { ContentFault } from './contentFault.ts';
import { READING_LANGUAGES } from './lessonReading.ts';
import type { StationFile } from './stationFile.ts';

interface Placed extends ReadingPart {
  readonly path: readonly PropertyKey[];
}

/** Everything that is too hard for the band that it is said to. A language that we cannot measure has none. */
export function stationReading(station: StationFile, lang: string): ContentFault[] {
  const measured = READING_LANGUAGES.find((one) => one === lang.split('-')[0]);
  if (!measured) return [];
  return BANDS.flatMap((band) => {
    const parts = partsOf(station, band);
    return judge(parts, band, measured, station.words).broken.map((broken) =>
      faultOf(broken, parts, station, band),
    );
  });
}

function partsOf({ say, ask }: StationFile, band: Band): Placed[] {
  return [
    ...say[band].map((text, index): Placed => ({ text, step: 'say', path: ['say', band, index] })),
    ...ask[band].flatMap((one, index): Placed[] => [
      { text: one.ask, step: `ask ${index}`, path: ['ask', band, index, 'ask'] },
      { text: one.answer, step: `ask ${index}`, path: ['ask', band, index, 'answer'] },
    ]),
  ];
}

const one = (number: number) => (Math.round(number * 10) / 10).toFixed(1);

function faultOf(broken: Broken, parts: readonly Placed[], station: StationFile, band: Band): ContentFault {
  const { rule, found, limit, sentence, unknown } = broken;
  const told = `"${sentence.text}"`;
  const easier =
    'say it in easier words, or name them under "words" where the helper shows or explains them.';
  const texts: Readonly<Record<Broken['rule'], string>> = {
    longest: `this sentence has ${found} words and ${band} follows at most ${limit}: ${told} Part it in two.`,
    mean: `the sentences for ${band} have ${one(found)} words on average, and at most ${limit} are right; the longest is ${told}`,
    new: `${band} may not know ${unknown.join(', ')}: ${told}; ${easier}`,
    'new-in-sentence': `${band} may not know ${unknown.join(', ')}: ${told}; ${easier}`,
    words: `the words for ${band} are too hard; the hardest sentence, with ${unknown.join(', ')}, is ${told}; ${easier}`,
    grade: `the text for ${band} reads like grade ${one(found)}, and ${one(limit)} is the most; the hardest sentence is ${told} Part it in two, or use shorter words.`,
    ease: `the text for ${band} has the ease ${one(found)} (INFLESZ) and needs ${limit}; the hardest sentence is ${told} Part it in two, or use shorter words.`,
  };
  const path = parts[broken.part]?.path ?? [];
  return { file: station.file, line: station.lineOf(path), column: null, text: texts[rule] };
}
