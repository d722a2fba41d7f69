// The herd's tables as they were when the site was built, for the page that writes them.
import { resolve } from 'node:path';
import { HERD_COLUMNS, type HerdBook, type HerdFile } from '../../shared/book/herdBook.ts';
import { isoDate } from '../../shared/calendar/day.ts';
import { readBytes, writtenRows } from '../farm/herdTables.ts';
import { openSite } from './site.ts';

/** What every visitor may see: which medicine a doe got stays with the desk. */
export function builtHerd(): HerdBook {
  const { farm, ledger } = openSite();
  const dir = resolve(process.env['FARM_DIR'] || 'content/farm');
  const rowsOf = <Name extends HerdFile>(file: Name) => writtenRows(readBytes(dir, file), file);
  const treatments = rowsOf('treatments.csv').map((row) => ({ ...row, what: '', note: '' }));
  const marks = Object.fromEntries(
    Object.keys(HERD_COLUMNS).map((file) => [file, null]),
  ) as HerdBook['marks'];
  return {
    today: isoDate(ledger.asOf),
    milkings: farm.milkings,
    does: rowsOf('does.csv'),
    kiddings: rowsOf('kiddings.csv'),
    treatments,
    spoken: [],
    marks,
    faults: [],
  };
}
