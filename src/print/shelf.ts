// The shelf of sheets as the built site tells it.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Shelf } from '../../shared/pack/order.ts';

/** What the site that stands can print, or null for a site without a print room or without sheets. */
export function readShelf(dist: string): Shelf | null {
  const file = join(dist, 'print', 'shelf.json');
  if (!existsSync(file)) return null;
  const shelf = JSON.parse(readFileSync(file, 'utf8')) as Shelf;
  return shelf.sheets.length > 0 ? shelf : null;
}
