// The farm's steps of milking as its page shows them, with the does who may be milked.
import { join } from 'node:path';
import { phaseSpans } from '../../shared/herd/expected.ts';
import type { BookDoe } from '../../shared/book/types.ts';
import type { Routine } from '../../shared/routine/routine.ts';
import { tellContentFaults } from '../content/contentFault.ts';
import { readRoutineFiles } from '../content/routineFile.ts';
import { openSite } from './site.ts';

let read: Readonly<Record<string, Routine>> | null = null;

/** The steps in a language, or null where nobody has written them. Throws the whole list of faults. */
export function routineIn(lang: string): Routine | null {
  if (read === null) {
    const shelf = readRoutineFiles(join(process.cwd(), 'content', 'routine'), openSite().languages);
    if (shelf.faults.length > 0) throw new Error(tellContentFaults(shelf.faults));
    read = shelf.routine;
  }
  return read[lang] ?? null;
}

/** The does with the parts of their years, so that a page can tell who is expected at a milking. */
export function doesWithSpans(): BookDoe[] {
  const { book } = openSite();
  return book.does.map(({ id, name, breed }) => ({
    id,
    name,
    breed,
    spans: phaseSpans(book.kiddings.filter(({ doe }) => doe === id)),
  }));
}
