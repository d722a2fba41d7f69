// What the Barn board's pages are made of: its input from the farm, its questions from content.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import { getEntry } from 'astro:content';
import { boardFarm } from '../../shared/board/boardFarm.ts';
import type { QuestionName } from '../../shared/board/topics.ts';
import type { BoardFarm, BoardInput } from '../../shared/board/types.ts';
import type { NutrientRow } from '../../shared/milk/composition.ts';
import { flatten, type Words } from '../../shared/words/words.ts';
import { boardFingerprint } from '../farm/boardBook.ts';
import { FACTS_DIR } from './facts.ts';
import { openSite } from './site.ts';

let table: NutrientRow[] | null = null;
let herd: BoardFarm | null = null;

function compositionTable(): NutrientRow[] {
  const text = readFileSync(join(FACTS_DIR, 'milk-composition.csv'), 'utf8');
  table ??= parseCsv<Record<string, string>>(text, { columns: true }).map((row) => ({
    ...(row as unknown as NutrientRow),
    per_100g: Number(row['per_100g']),
  }));
  return table;
}

function farmOnBoard(): BoardFarm {
  const { farm, book, ledger } = openSite();
  herd ??= boardFarm(farm, book, ledger);
  return herd;
}

/** The board's input in a language. */
export function boardInput(lang: string): BoardInput {
  return { ...farmOnBoard(), lang, composition: compositionTable() };
}

let mark: string | null = null;

/** What the herd's numbers on the board's pages are told by from newer ones. */
export function boardMark(): string {
  return (mark ??= boardFingerprint(farmOnBoard()));
}

/** A question's entry and its words in a language. */
export async function questionIn(name: QuestionName, lang: string) {
  const entry = await getEntry('questions', `${lang}/${name}`);
  if (!entry) throw new Error(`content/questions/${lang}/${name}.mdx is missing.`);
  const words: Words = { lang, entries: flatten(entry.data.words) };
  return { entry, question: entry.data.question, words };
}
