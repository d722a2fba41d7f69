// Holds a lesson's text against the reading level of its grade band; a failing text names the sentence and what to do.
import { judge, type Broken, type ReadingPart } from '../../shared/reading/judge.ts';
import { GRADE_TOLERANCE } from '../../shared/reading/limits.ts';
import type { ReadingLanguage } from '../../shared/reading/spellOut.ts';
import type { ContentFault } from './contentFault.ts';
import type { LessonFile } from './lessonFile.ts';
import type { Piece } from './lessonParts.ts';

/** Languages whose texts can be measured. */
export const READING_LANGUAGES: readonly ReadingLanguage[] = ['en', 'es'];

// What stands for a figure and for the farm's name while a text is measured: it must not depend on a farm's book. A
// week of a herd is some hundred cups, so the number is as long as such a one.
const STANDS: Readonly<Record<ReadingLanguage, { readonly figure: string; readonly farm: string }>> = {
  en: { figure: '245 cups', farm: 'the farm' },
  es: { figure: '245 tazas', farm: 'la granja' },
};

interface PlacedPart extends ReadingPart {
  /** The line of each stretch of the text, by the offset at which it begins. */
  readonly lines: readonly (readonly [offset: number, line: number])[];
}

/** Everything in a lesson that its band cannot be asked to read. A language that we cannot measure has no faults. */
export function readingFaults(lesson: LessonFile, lang: string): ContentFault[] {
  const measured = READING_LANGUAGES.find((one) => one === lang.split('-')[0]);
  if (!measured) return [];
  const explained = lesson.words.map(({ word }) => word);
  const withNumber = readingParts(lesson, measured);
  const { broken } = judge(withNumber, lesson.band, measured, explained);
  // What stands where the book has no number yet is read, too; a sentence that is told of already is not told twice.
  const without = partsOf(lesson, (piece) =>
    piece.is === 'figure' ? piece.otherwise : standIn(piece, measured),
  );
  const told = new Set(broken.map(keyOf));
  const more = judge(without, lesson.band, measured, explained).broken.filter((one) => !told.has(keyOf(one)));
  return [
    ...broken.map((one) => faultOf(one, withNumber, lesson)),
    ...more.map((one) => faultOf(one, without, lesson)),
  ];
}

/** What tells one broken limit from another; those of the whole text have no sentence of their own. */
function keyOf({ rule, part, nth }: Broken): string {
  return ['mean', 'grade', 'ease', 'words'].includes(rule) ? rule : `${rule} ${part} ${nth}`;
}

/** What is measured of a lesson, with a number of its own for every figure. */
export function readingParts(lesson: LessonFile, lang: ReadingLanguage): readonly PlacedPart[] {
  return partsOf(lesson, (piece) => standIn(piece, lang));
}

function standIn(piece: Piece, lang: ReadingLanguage): string {
  return piece.is === 'text' ? piece.text : STANDS[lang][piece.is];
}

/** The class's text by paragraphs and lines of lists, and what its words to know mean. Notes are for the teacher. */
function partsOf(lesson: LessonFile, told: (piece: Piece) => string): PlacedPart[] {
  const place = (pieces: readonly Piece[], step: string): PlacedPart => {
    let text = '';
    const lines = pieces.map((piece) => {
      const start = [text.length, piece.line] as const;
      text += told(piece);
      return start;
    });
    return { text, step, lines };
  };
  const meanings = lesson.words.map(({ means }, index): PlacedPart => {
    const line = lesson.lineOf(['words', index]);
    return { text: means, step: `words.${index}`, label: true, lines: [[0, line]] };
  });
  const steps = lesson.steps.flatMap((step) =>
    step.blocks.flatMap((block): PlacedPart[] => {
      // A line of a list without a full stop is a label, such as a name on a card.
      if (block.is === 'list')
        return block.lines.map((pieces) => {
          const part = place(pieces, step.name);
          return /[.!?…]["'”’»)]*\s*$/.test(part.text) ? part : { ...part, label: true };
        });
      return block.is === 'note' ? [] : [place(block.pieces, step.name)];
    }),
  );
  return [...meanings, ...steps];
}

function faultOf(broken: Broken, parts: readonly PlacedPart[], lesson: LessonFile): ContentFault {
  const part = parts[broken.part] as PlacedPart;
  const line = part.lines.findLast(([offset]) => offset <= broken.sentence.offset)?.[1] ?? 1;
  return { file: lesson.file, line, column: null, text: toldOf(broken, part, lesson.band) };
}

const one = (number: number) => (Math.round(number * 10) / 10).toFixed(1);

function toldOf({ rule, found, limit, sentence, unknown }: Broken, part: PlacedPart, band: string): string {
  const text = sentence.text.length > 160 ? `${sentence.text.slice(0, 157)}…` : sentence.text;
  const named = `"${text}"`;
  const words = unknown.join(', ');
  const inPart = part.step.startsWith('words.') ? 'this meaning' : `the step "${part.step}"`;
  const easier = 'Explain them in "words:", or say it with words that children know.';
  switch (rule) {
    case 'longest':
      return `this sentence has ${found} words and ${band} reads at most ${limit}: ${named} Part it in two.`;
    case 'mean':
      return `the sentences have ${one(found)} words on average and ${band} reads at most ${limit}; the longest is ${named} Part the long ones in two.`;
    case 'new':
      return `${inPart} has ${found} words that ${band} may not know (${words}) and at most ${limit} may stand there; one too many stands in ${named} ${easier}`;
    case 'new-in-sentence':
      return `this sentence has ${found} words that children may not know (${words}) and ${band} reads at most ${limit}: ${named} ${easier}`;
    case 'words':
      return `the words are too hard: Dale-Chall ${one(found)}, and ${band} reads up to ${limit}; the hardest sentence, with ${words}, is ${named} ${easier}`;
    case 'grade':
      return `the text reads like grade ${one(found)} (Flesch-Kincaid), and ${band} reads up to ${one(limit)}, of which ${GRADE_TOLERANCE} is tolerance; the hardest sentence is ${named} Part it in two, or use shorter words.`;
    case 'ease':
      return `the text has the ease ${one(found)} (INFLESZ), and ${band} needs ${limit} or more; the hardest sentence is ${named} Part it in two, or use shorter words.`;
  }
}
