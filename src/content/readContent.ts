// All teaching content that a build rests on, read in one go, so that everything that is wrong is told at once.
import { join } from 'node:path';
import type { ContentFault, ContentNotice } from './contentFault.ts';
import { contentFiles } from './contentFiles.ts';
import { readLessonFiles, type LessonShelf } from './lessonFiles.ts';
import { readRoutineFiles, type RoutineShelf } from './routineFile.ts';
import { readSheetFiles, type SheetShelf } from './sheetFiles.ts';
import { readStationFiles, type StationShelf } from './stationFile.ts';

/** Sheets, lessons, the steps of milking and the texts of stations, with the faults and notices of all. */
export interface ContentReading {
  readonly sheets: SheetShelf['sheets'];
  readonly lessons: LessonShelf['lessons'];
  readonly routine: RoutineShelf['routine'];
  readonly stations: StationShelf['stations'];
  readonly faults: readonly ContentFault[];
  readonly notices: readonly ContentNotice[];
}

/**
 * Reads `dir/sheets`, `dir/lessons`, `dir/routine` and `dir/stations` in some languages. `figures` are the ids that a
 * text may name, `needed` the farm's stations.
 */
export function readContent(
  dir: string,
  languages: readonly string[],
  figures: readonly string[],
  needed: readonly string[] = [],
): ContentReading {
  const sheets = readSheetFiles(join(dir, 'sheets'), languages, figures);
  // A sheet with a fault of its own is there all the same for the lesson that names it.
  const read = new Map(sheets.sheets.map(({ plan }) => [plan.name, plan.band]));
  const names = new Set(
    languages.flatMap((lang) =>
      contentFiles('sheet', join(dir, 'sheets'), lang).files.map(({ name }) => name),
    ),
  );
  const known = [...names].map((name) => ({ name, band: read.get(name) ?? null }));
  const lessons = readLessonFiles(join(dir, 'lessons'), languages, { figures, sheets: known });
  const routine = readRoutineFiles(join(dir, 'routine'), languages);
  const stations = readStationFiles(join(dir, 'stations'), languages, needed);
  return {
    sheets: sheets.sheets,
    lessons: lessons.lessons,
    routine: routine.routine,
    stations: stations.stations,
    faults: [...sheets.faults, ...lessons.faults, ...routine.faults, ...stations.faults],
    notices: [...sheets.notices, ...lessons.notices, ...routine.notices],
  };
}
