// The rooms of the Milk book besides entering: the month to look at, the book to take away, the import.
import type { Hono } from 'hono';
import { addExportDesk } from './exportDesk.ts';
import { addImportDesk } from './importDesk.ts';
import type { Keeper } from './keeper.ts';
import { addMonthDesk } from './monthDesk.ts';

/** Adds them below `base` (it ends in `/`); the import needs the folder that the keeper writes to. */
export function addBookRooms(
  app: Hono,
  base: string,
  keeper: Keeper,
  source: { readonly farm: string; readonly now_ms: () => number } | undefined,
): void {
  addMonthDesk(app, base, keeper);
  addExportDesk(app, base, keeper);
  if (source) addImportDesk(app, base, { keeper, farm: source.farm, now_ms: source.now_ms });
}
