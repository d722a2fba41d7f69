// The desk's own copies of the farm folder: one a day, made and looked after by themselves.
import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupState } from '../../../shared/book/backupState.ts';
import { dayNumber } from '../../../shared/calendar/day.ts';
import { dayAt } from '../../farm/entered.ts';
import { copiesIn, copyPath, copyPlace, dropOld, farmNotes, lastChange_ms, makeCopy, onSameDisk, rememberPlace } from './copies.ts'; // prettier-ignore

/** What the copies are made of and where they may go. */
export interface BackupSettings {
  readonly farm: string;
  readonly workshop: string;
  readonly now_ms: () => number;
  /** Tells the coordinator. */
  readonly complain: (text: string) => void;
  /** How often the day's copy is looked for, ms. */
  readonly look_ms?: number;
}

/** The copies of a desk that is open. */
export interface Backups {
  state(): BackupState;
  /** Makes the day's copy if it is wanted now. Never throws: what went wrong is told and stands in the state. */
  look(): Promise<void>;
  close(): Promise<void>;
}

const LOOK_ms = 600_000;
// The day's copy is made early; what is entered later in the day comes in by making it anew.
const STALE_ms = 6 * 3_600_000;

/** Looks at once, and then again and again, whether the day's copy is there. */
export function openBackups(settings: BackupSettings): Backups {
  const { farm, workshop, now_ms, complain, look_ms = LOOK_ms } = settings;
  let failed: string | null = null;
  let running: Promise<void> = Promise.resolve();
  const tell = (text: string | null) => {
    // The same trouble is told once, not every ten minutes.
    if (text !== null && text !== failed) complain(text);
    failed = text;
  };
  const work = async () => {
    try {
      const notes = farmNotes(farm);
      const { folder, aside } = copyPlace(farm, workshop, notes);
      const date = dayAt(now_ms(), notes.timeZone);
      if (isWanted(farm, folder, date, now_ms())) {
        await makeCopy(farm, folder, date, now_ms());
        rememberPlace(farm, workshop, folder);
        dropOld(folder, dayNumber(date) ?? 0);
      }
      tell(aside);
    } catch (error) {
      tell(copyTrouble(error));
    }
  };
  const look = () => (running = running.then(work));
  const looking = setInterval(() => void look(), look_ms);
  looking.unref();
  void look();
  return {
    state: () => stateOf(farm, workshop, failed),
    look,
    close: () => {
      clearInterval(looking);
      return running;
    },
  };
}

/** Whether there is no copy of the day, or one of hours ago that lacks what has changed since. */
function isWanted(farm: string, folder: string, date: string, now_ms: number): boolean {
  const made_ms = statSync(copyPath(folder, date), { throwIfNoEntry: false })?.mtimeMs;
  if (made_ms === undefined) return true;
  // From the future: the clock was set back.
  const age_ms = Math.abs(now_ms - made_ms);
  return age_ms > STALE_ms && lastChange_ms(farm) > made_ms;
}

/** The state; copies that cannot even be looked at are trouble to tell of, no reason to show nothing at all. */
function stateOf(farm: string, workshop: string, failed: string | null): BackupState {
  let folder = join(workshop, 'backups');
  try {
    folder = copyPlace(farm, workshop, farmNotes(farm)).folder;
    return stateIn(folder, farm, failed);
  } catch (error) {
    return { folder, sameDisk: true, copies: [], newest_ms: null, failed: failed ?? copyTrouble(error) };
  }
}

function stateIn(folder: string, farm: string, failed: string | null): BackupState {
  const copies = copiesIn(folder).map(({ name }) => name);
  const newest = copies.at(-1);
  const found = newest === undefined ? undefined : statSync(copyPath(folder, newest), { throwIfNoEntry: false }); // prettier-ignore
  return { folder, sameDisk: onSameDisk(farm, folder), copies, newest_ms: found?.mtimeMs ?? null, failed };
}

/** Why a copy could not be made, and what to do. */
export function copyTrouble(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  const path = (error as NodeJS.ErrnoException).path;
  const place = path === undefined ? '' : `: ${path}`;
  const why: Readonly<Record<string, string>> = {
    ENOSPC: 'The disk for copies is full. Make room on it, or name another folder in farm.yaml (backups:).',
    EDQUOT: 'The disk for copies is full. Make room on it, or name another folder in farm.yaml (backups:).',
    EROFS: 'The disk for copies can only be read. Take off its write protection, or name another folder.',
    EACCES: `A file or folder may not be read or written${place}. Give this user the right to.`,
    EPERM: `A file or folder may not be read or written${place}. Give this user the right to.`,
    ENOENT: `A folder has gone${place}. Put it back, or name another one in farm.yaml (backups:).`,
    EIO: 'The disk does not read or write any more. Copy the farm folder to another disk now.',
  };
  const said = why[code] ?? (error instanceof Error ? error.message : String(error));
  return `The day's copy of the farm folder could not be made. ${said} The desk goes on without it and tries again.`;
}
