// The sheets of content/sheets as tests need them: band, title and the names of the tasks.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type { Band } from '../../shared/quantity/grade.ts';

const DIR = join('content', 'sheets');

/** What a test asks of a sheet's file. */
export interface WrittenSheet {
  readonly name: string;
  readonly band: Band;
  readonly title: string;
  readonly tasks: readonly string[];
}

/** All sheets in a language, by name. */
export function writtenSheets(lang: string): WrittenSheet[] {
  return readdirSync(join(DIR, lang))
    .filter((file) => file.endsWith('.md'))
    .sort()
    .map((file) => {
      const text = readFileSync(join(DIR, lang, file), 'utf8');
      const [, head = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
      const { band, title } = parse(head) as { band: Band; title: string };
      const tasks = [...body.matchAll(/^- ([a-z][a-z-]*)$/gm)].map((match) => match[1] ?? '');
      return { name: file.replace(/\.md$/, ''), band, title, tasks };
    });
}
