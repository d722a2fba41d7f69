// The farm folder as the Barn board shows it, and the fingerprint by which two states of it are told apart.
import { createHash } from 'node:crypto';
import { boardFarm } from '../../shared/board/boardFarm.ts';
import type { BoardFarm } from '../../shared/board/types.ts';
import { openLedger } from '../../shared/herd/ledger.ts';
import { readFarm, type Fault, type ReadSettings } from './readFarm.ts';

/** A book that could be read, as the board shows it, or what a person must put right first. */
export type BoardBook =
  | { readonly ok: true; readonly farm: BoardFarm; readonly fingerprint: string }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a farm folder for the board. */
export function readBoardBook(dir: string, settings: ReadSettings): BoardBook {
  const reading = readFarm(dir, settings);
  if (!reading.ok) return { ok: false, faults: reading.faults };
  const farm = boardFarm(reading.farm, reading.book, openLedger(reading.book, reading.asOf));
  return { ok: true, farm, fingerprint: boardFingerprint(farm) };
}

/** 16 hex digits that stand for everything the board is told of a farm. */
export function boardFingerprint(farm: BoardFarm): string {
  return createHash('sha256').update(JSON.stringify(farm)).digest('hex').slice(0, 16);
}
