// The teaching content in the languages of a farm, held against its figures, before any page is made.
import { join } from 'node:path';
import { figuresOf } from '../../shared/herd/figures.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { USUAL_FARM } from '../../shared/trip/usualRules.ts';
import { languagesIn, servedLanguages } from '../content/languages.ts';
import { readContent, type ContentReading } from '../content/readContent.ts';
import type { FarmReading } from '../farm/readFarm.ts';

/** Reads `content/` of the project for a farm. */
export function contentFor(
  root: string,
  { farm, book, asOf }: Extract<FarmReading, { ok: true }>,
): ContentReading {
  const dir = join(root, 'content');
  const { served } = servedLanguages(farm.languages, languagesIn(join(dir, 'words')));
  // Which figures there are hangs on the does alone; their values need not be summed twice.
  const empty = { ...book, rows: [] };
  const { figures } = figuresOf(empty, openLedger(empty, asOf));
  const { stations } = farm.trip?.farm ?? USUAL_FARM;
  const ids = stations.map(({ id }) => id);
  return readContent(dir, served, Object.keys(figures), ids);
}
