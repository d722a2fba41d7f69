// The lessons as pages need them: read once, with the farm's figures filled in as the band reads them.
import { join } from 'node:path';
import { PLACES, type Block, type Lesson, type Place, type Run } from '../../shared/lesson/types.ts';
import { BANDS, type Band } from '../../shared/quantity/grade.ts';
import { tellContentFaults } from '../content/contentFault.ts';
import type { LessonFile } from '../content/lessonFile.ts';
import { readLessonFiles, type LessonEntry } from '../content/lessonFiles.ts';
import type { Piece, WrittenBlock } from '../content/lessonParts.ts';
import { figureText, sheetEntries } from './sheets.ts';
import { openSite } from './site.ts';

const LESSONS_DIR = join(process.cwd(), 'content', 'lessons');
let entries: readonly LessonEntry[] | null = null;

/** All lessons, the youngest band first, in the order of a visit. Throws the whole list of what is wrong. */
export function lessonEntries(): readonly LessonEntry[] {
  if (entries) return entries;
  const { languages, figures } = openSite();
  const sheets = sheetEntries().map(({ plan: { name, band } }) => ({ name, band }));
  const known = { figures: Object.keys(figures.figures), sheets };
  const { lessons, faults } = readLessonFiles(LESSONS_DIR, languages, known);
  if (faults.length > 0) throw new Error(tellContentFaults(faults));
  entries = lessons;
  return entries;
}

/** The lessons of a language, their figures filled in. */
export function lessonsIn(lang: string): readonly Lesson[] {
  return lessonEntries().flatMap(({ inLanguage }) => {
    const file = inLanguage[lang];
    return file ? [filled(file, lang)] : [];
  });
}

/** The lessons of a language by band and by place; bands and places without one are left out. */
export function lessonShelf(
  lang: string,
): { band: Band; places: { place: Place; lessons: readonly Lesson[] }[] }[] {
  const all = lessonsIn(lang);
  return BANDS.map((band) => ({
    band,
    places: PLACES.map((place) => ({
      place,
      lessons: all.filter((lesson) => lesson.band === band && lesson.place === place),
    })).filter(({ lessons }) => lessons.length > 0),
  })).filter(({ places }) => places.length > 0);
}

function filled(file: LessonFile, lang: string): Lesson {
  const { name, title, band, place, minutes, aims, standards, topics, words, materials, cautions } = file;
  const steps = file.steps.map(({ name: own, title: stepTitle, kind, source, must, sheet, ...step }) => ({
    id: `${name}.${own}`,
    title: stepTitle,
    kind,
    minutes: step.minutes,
    least: step.least,
    most: step.most,
    topics: step.topics,
    must,
    sheet,
    blocks: step.blocks.map((block) => filledBlock(block, band, lang)),
    source,
  }));
  return { name, title, band, place, minutes, aims, standards, topics, words, materials, cautions, steps };
}

function filledBlock(block: WrittenBlock, band: Band, lang: string): Block {
  if (block.is === 'list')
    return { ...block, lines: block.lines.map((pieces) => runsOf(pieces, band, lang)) };
  return { is: block.is, runs: runsOf(block.pieces, band, lang) };
}

/** Pieces with their figures told, one run for all that stand next to each other with the same marks. */
function runsOf(pieces: readonly Piece[], band: Band, lang: string): Run[] {
  const runs: Run[] = [];
  for (const { strong, emphasis, ...piece } of pieces) {
    const marks = { ...(strong && { strong }), ...(emphasis && { emphasis }) };
    const text = textOf(piece, band, lang);
    const last = runs.at(-1);
    if (last && last.strong === strong && last.emphasis === emphasis)
      runs[runs.length - 1] = { ...last, text: last.text + text };
    else runs.push({ text, ...marks });
  }
  return runs.filter(({ text }) => text !== '');
}

function textOf(piece: Piece, band: Band, lang: string): string {
  if (piece.is === 'text') return piece.text;
  if (piece.is === 'farm') return openSite().farm.name;
  return figureText(piece.id, band, lang) ?? piece.otherwise;
}
