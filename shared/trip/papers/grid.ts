// The timetable as a table: a row for each minute at which something begins, a column for each party.
import type { DayPlan, Slot } from '../types.ts';

/** A cell: what the parties of its columns do, over as many rows as it lasts. */
export interface GridCell {
  readonly slot: Slot;
  /** The first party it stands for. */
  readonly party: number;
  /** Rows and columns that it takes. */
  readonly rows: number;
  readonly columns: number;
}

/** A row: the minute, and the cells that begin with it. */
export interface GridRow {
  readonly at: number;
  readonly cells: readonly GridCell[];
}

/** A table of some parties. */
export interface Grid {
  readonly parties: readonly number[];
  readonly rows: readonly GridRow[];
}

/** The most parties that stand beside each other on a page, so that the name of a station still fits. */
export const MOST_COLUMNS = 6;

/** Parties in near-equal lots, each of which fits across a page. */
export function lotsOf(parties: number, most: number = MOST_COLUMNS): number[][] {
  const lots = Math.max(1, Math.ceil(parties / most));
  const all = Array.from({ length: parties }, (_, index) => index);
  return Array.from({ length: lots }, (_, lot) =>
    all.slice(Math.round((lot * parties) / lots), Math.round(((lot + 1) * parties) / lots)),
  );
}

/** The tables of a day; together they hold every slot of every party exactly once. */
export function gridsOf(day: Pick<DayPlan, 'parties'>): Grid[] {
  return lotsOf(day.parties.length).map((parties) => ({ parties, rows: rowsOf(day, parties) }));
}

function rowsOf({ parties: all }: Pick<DayPlan, 'parties'>, parties: readonly number[]): GridRow[] {
  const starts = [...new Set(parties.flatMap((party) => (all[party] ?? []).map(({ from }) => from)))];
  starts.sort((a, b) => a - b);
  return starts.map((at) => ({ at, cells: cellsAt(all, parties, starts, at) }));
}

function cellsAt(
  all: DayPlan['parties'],
  parties: readonly number[],
  starts: readonly number[],
  at: number,
): GridCell[] {
  const cells: GridCell[] = [];
  let before: Slot | null = null;
  for (const party of parties) {
    const slot = all[party]?.find(({ from, to }) => from === at && to > from) ?? null;
    const last = cells.at(-1);
    if (slot && last && before && isAlike(before, slot))
      cells[cells.length - 1] = { ...last, columns: last.columns + 1 };
    else if (slot) {
      const rows = starts.filter((start) => start >= slot.from && start < slot.to).length;
      cells.push({ slot, party, rows, columns: 1 });
    }
    before = slot;
  }
  return cells;
}

/** Whether two parties do the same at the same time; walks are alike wherever they lead. */
function isAlike(a: Slot, b: Slot): boolean {
  if (a.kind !== b.kind || a.from !== b.from || a.to !== b.to) return false;
  return a.kind === 'walk' || a.station === b.station;
}
