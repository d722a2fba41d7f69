// Reads the farm as it would be with a change, before anything is written.
import { mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { HerdFile } from '../../../shared/book/herdBook.ts';
import { DESK_FOLDER } from '../../build/fingerprint.ts';
import type { Fault } from '../../farm/fault.ts';
import { readSoundParts, type ReadSettings } from '../../farm/readFarm.ts';

/**
 * The faults that the farm would have with other bytes in one of its tables and has not now. A book that is faulty
 * elsewhere can so still be changed, and mended.
 */
export function faultsWith(
  farm: string,
  file: HerdFile,
  bytes: Uint8Array,
  settings: ReadSettings,
): readonly Fault[] {
  const faults = readWith(farm, file, bytes, settings);
  if (faults.length === 0) return [];
  // Lines move when a row is taken out, so a fault is known by its words.
  const wordsOf = ({ file: where, found, expected }: Fault) => JSON.stringify([where, found, expected]);
  const known = readSoundParts(farm, settings).faults.map(wordsOf);
  return faults.filter((fault) => {
    const at = known.indexOf(wordsOf(fault));
    if (at >= 0) known.splice(at, 1);
    return at < 0;
  });
}

/** The farm in a folder of links, with the one table in it as it would be. */
function readWith(farm: string, file: HerdFile, bytes: Uint8Array, settings: ReadSettings): readonly Fault[] {
  const trial = mkdtempSync(join(tmpdir(), 'pailside-trial-'));
  try {
    for (const name of readdirSync(farm))
      if (name !== file && name !== DESK_FOLDER && !name.startsWith('.'))
        symlinkSync(resolve(farm, name), join(trial, name));
    writeFileSync(join(trial, file), bytes);
    return readSoundParts(trial, settings).faults;
  } finally {
    rmSync(trial, { recursive: true, force: true });
  }
}
