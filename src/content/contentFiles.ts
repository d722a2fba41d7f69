// The files of a folder of content: their names become addresses, and parts of an order in the print room.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { ContentFault } from './contentFault.ts';

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const ENDINGS = { sheet: '.md', lesson: '.mdx', station: '.yaml' } as const;

/** Whether a sheet, a lesson, a station or a step can be called so: `cups-we-can-count`. */
export function isPlainName(name: string): boolean {
  return NAME.test(name);
}

/** A file of content. */
export interface ContentFile {
  /** Its name without the ending. */
  readonly name: string;
  readonly path: string;
  /** The name that faults are told by: `content/sheets/en/cups-we-can-count.md`. */
  readonly told: string;
}

/**
 * The sheets, lessons or stations in `dir/lang`, in the order of their names, with a fault for each file that can be none. Hidden files,
 * which some systems put into every folder, are passed over; a folder that is not there is empty.
 */
export function contentFiles(
  kind: keyof typeof ENDINGS,
  dir: string,
  lang: string,
): { readonly files: readonly ContentFile[]; readonly faults: readonly ContentFault[] } {
  const folder = join(dir, lang);
  const ending = ENDINGS[kind];
  const here = (existsSync(folder) ? readdirSync(folder) : []).filter((file) => !file.startsWith('.')).sort();
  const nameOf = (file: string) => (file.endsWith(ending) ? file.slice(0, -ending.length) : '');
  const toldOf = (file: string) => `content/${kind}s/${lang}/${file}`;
  const text = `a ${kind} is a file whose name is made of small letters a to z, numbers and "-", with the ending "${ending}"; rename it or take it out.`;
  return {
    files: here
      .filter((file) => isPlainName(nameOf(file)))
      .map((file) => ({ name: nameOf(file), path: join(folder, file), told: toldOf(file) })),
    faults: here
      .filter((file) => !isPlainName(nameOf(file)))
      .map((file) => ({ file: toldOf(file), line: 1, column: null, text })),
  };
}
