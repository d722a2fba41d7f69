// Lays out an empty farm folder that a coordinator can fill in, and that reads without a fault.
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { HEADINGS, howToText, settingsText } from './layOutText.ts';
import { isTimeZone } from './settingsRule.ts';

/** What was laid out, relative to the folder, or why nothing was. */
export type LayOut = { ok: true; files: string[] } | { ok: false; why: string };

// With this mark spreadsheets open and save the file as UTF-8, so that every name keeps its letters.
const BYTE_ORDER_MARK = '\ufeff';

/**
 * Makes the folder where it is missing and lays out its files. A folder with anything in it is left
 * as it is. The clock names the milk book's first file, the computer's settings the time zone.
 */
export function layOutFarm(dir: string, now = new Date()): LayOut {
  const bookFile = `milkings/${now.getFullYear()}.csv`;
  const texts: Record<string, string> = {
    'README.txt': howToText(bookFile),
    'farm.yaml': settingsText(localTimeZone()),
    'does.csv': `${BYTE_ORDER_MARK}${HEADINGS.does}\n`,
    'kiddings.csv': `${BYTE_ORDER_MARK}${HEADINGS.kiddings}\n`,
    'treatments.csv': `${BYTE_ORDER_MARK}${HEADINGS.treatments}\n`,
    [bookFile]: `${BYTE_ORDER_MARK}${HEADINGS.milkings}\n`,
  };
  try {
    mkdirSync(dir, { recursive: true });
    const there = readdirSync(dir);
    if (there.length > 0) return { ok: false, why: holds(there) };
    for (const [file, text] of Object.entries(texts)) {
      mkdirSync(dirname(join(dir, file)), { recursive: true });
      writeFileSync(join(dir, file), text, { flag: 'wx' });
    }
  } catch (error) {
    return { ok: false, why: refused(error) };
  }
  return { ok: true, files: Object.keys(texts) };
}

function localTimeZone(): string {
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  return timeZone.includes('/') && isTimeZone(timeZone) ? timeZone : 'America/Chicago';
}

function holds(names: readonly string[]): string {
  const some = names.slice(0, 5).join(', ');
  return `There is something in this folder already (${some}${names.length > 5 ? ', …' : ''}). Name a new or an empty folder, so that nothing is written over.`;
}

function refused(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  if (code === 'EEXIST' || code === 'ENOTDIR')
    return 'There is a file of this name. Name a new or an empty folder.';
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS')
    return 'Nothing may be written there. Name a folder of your own.';
  return `The folder could not be made (${code}). Name another one.`;
}
