// How many pages a PDF has, where this machine can tell.
import { spawnSync } from 'node:child_process';

/** Pages of a PDF by poppler's pdfinfo, or null where that is not installed or cannot read it. */
export function pageCount(file: string): number | null {
  const asked = spawnSync('pdfinfo', [file], { encoding: 'utf8' });
  const pages = /^Pages:\s+(\d+)$/m.exec(asked.stdout ?? '');
  return pages ? Number(pages[1]) : null;
}
