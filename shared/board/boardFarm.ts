// What the board needs of the farm's records, computed once: by the build for its pages, by the desk for open ones.
import { herdNeeds } from '../feed/needs.ts';
import { figuresOf } from '../herd/figures.ts';
import type { Ledger } from '../herd/ledger.ts';
import { isTreated } from '../herd/treated.ts';
import type { Book, Farm } from '../herd/types.ts';
import { weekView } from '../herd/week.ts';
import { UNIT_ML } from '../quantity/units.ts';
import { boardYear } from './boardYear.ts';
import { pailBook } from './pail/pailBook.ts';
import type { BoardFarm } from './types.ts';

/** The board's view of a farm from its open ledger. Volumes in mL, days as day numbers or ISO dates. */
export function boardFarm(farm: Farm, book: Book, ledger: Ledger): BoardFarm {
  return {
    units: farm.units,
    jar_mL: UNIT_ML[farm.jar.unit].mul(farm.jar.size).valueOf(),
    figures: figuresOf(book, ledger),
    week: weekView(book, ledger),
    does: book.does,
    kiddings: book.kiddings,
    treated: book.does.map(({ id }) => id).filter((id) => isTreated(book.treatments ?? [], id, ledger.asOf)),
    year: boardYear(book, ledger),
    needs: herdNeeds(book, ledger).does,
    pail: pailBook(book, ledger),
  };
}
