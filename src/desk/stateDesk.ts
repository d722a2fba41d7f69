// What the desk says of itself to its own page: rebuilds, rows put back, clashes, copies.
import type { Hono } from 'hono';
import type { BackupState } from '../../shared/book/backupState.ts';
import type { DeskBookState, DeskState } from '../../shared/book/deskState.ts';
import type { Keeper } from './book/keeper.ts';
import type { Rebuilder } from './rebuild.ts';

/** Who knows a part of it; each may be missing. */
export interface StateTellers {
  readonly rebuild?: Pick<Rebuilder, 'state'> | undefined;
  readonly backups?: { state(): BackupState } | undefined;
  readonly keeper?: Pick<Keeper, 'state' | 'restored'> | undefined;
  readonly events?: { count(): number } | undefined;
}

/** Adds `desk/state` below `base` (it ends in `/`). Who may ask is the guard's business. */
export function addStateDesk(
  app: Hono,
  base: string,
  { rebuild, backups, keeper, events }: StateTellers,
): void {
  app.get(`${base}desk/state`, (c) => {
    const state: DeskState = {
      now_ms: Date.now(),
      rebuild: rebuild?.state() ?? null,
      book: keeper ? bookPart(keeper) : null,
      backups: backups?.state() ?? null,
      listeners: events?.count() ?? 0,
    };
    return c.json(state, 200, { 'Cache-Control': 'no-store' });
  });
}

function bookPart(keeper: Pick<Keeper, 'state' | 'restored'>): DeskBookState {
  const { farm, does, faults, clashes } = keeper.state();
  const names = Object.fromEntries(does.map(({ id, name }) => [id, name]));
  return { timeZone: farm.timeZone, names, faults, putBack: keeper.restored(), clashes };
}
