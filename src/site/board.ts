// What the Barn board's pages are made of: its input from the farm, its questions from content.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import { parse } from 'yaml';
import { getEntry } from 'astro:content';
import * as z from 'zod';
import type { BoardInput, QuestionName } from '../../shared/board/types.ts';
import type { NutrientRow } from '../../shared/milk/composition.ts';
import { flatten, type Words } from '../../shared/words/words.ts';
import { openSite } from './site.ts';

const FACTS_DIR = join(process.cwd(), 'content', 'facts');

const factShape = z.strictObject({
  en: z.string().min(1),
  es: z.string().min(1),
  source: z.string().min(1),
  sure: z.enum(['seen', 'memory', 'practice']),
});

/** A reference value or statement with its source. */
export type Fact = z.infer<typeof factShape>;

let facts: Record<string, Fact> | null = null;

/** A fact by its id. Throws where there is none, so that no page shows a claim without its source. */
export function factOf(id: string): Fact {
  facts ??= z.record(z.string(), factShape).parse(parse(readFileSync(join(FACTS_DIR, 'facts.yaml'), 'utf8')));
  const fact = facts[id];
  if (!fact) throw new Error(`content/facts/facts.yaml has no fact "${id}".`);
  return fact;
}

let table: NutrientRow[] | null = null;

function compositionTable(): NutrientRow[] {
  const text = readFileSync(join(FACTS_DIR, 'milk-composition.csv'), 'utf8');
  table ??= parseCsv<Record<string, string>>(text, { columns: true }).map((row) => ({
    ...(row as unknown as NutrientRow),
    per_100g: Number(row['per_100g']),
  }));
  return table;
}

/** The board's input in a language. */
export function boardInput(lang: string): BoardInput {
  const { farm, book, figures, week, jar_mL } = openSite();
  return {
    lang,
    units: farm.units,
    jar_mL,
    figures,
    week,
    kiddings: book.kiddings,
    composition: compositionTable(),
  };
}

/** A question's entry and its words in a language. */
export async function questionIn(name: QuestionName, lang: string) {
  const entry = await getEntry('questions', `${lang}/${name}`);
  if (!entry) throw new Error(`content/questions/${lang}/${name}.mdx is missing.`);
  const words: Words = { lang, entries: flatten(entry.data.words) };
  return { entry, question: entry.data.question, words };
}
