// Reads a drawn QR code back with another program (zbarimg, Debian package zbar-tools), where it is installed.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ownFolder } from '../src/build/smallFarm.ts';

/** Whether zbarimg is installed. */
export const hasQrReader = ((): boolean => {
  try {
    execFileSync('zbarimg', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

/** The dark squares of a code that is drawn as one path of squares, row by row. */
export function squares(path: string, size: number): boolean[][] {
  const rows = Array.from({ length: size }, () => Array.from({ length: size }, () => false));
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) (rows[Number(y)] ?? [])[Number(x)] = true;
  return rows;
}

/** Writes the squares as a picture (PGM, eight dots a square) and lets the other program read it. */
export function readBack(rows: readonly (readonly boolean[])[]): string {
  const wide = (row: readonly boolean[]) => row.flatMap((dark) => Array.from({ length: 8 }, () => (dark ? 0 : 255))); // prettier-ignore
  const dots = rows.flatMap((row) => Array.from({ length: 8 }, () => wide(row)).flat());
  const file = join(ownFolder(), 'code.pgm');
  const head = `P5\n${(rows[0]?.length ?? 0) * 8} ${rows.length * 8}\n255\n`;
  writeFileSync(file, Buffer.concat([Buffer.from(head), Buffer.from(dots)]));
  return readImage(file);
}

/** What the other program reads in a picture. */
export function readImage(file: string): string {
  return execFileSync('zbarimg', ['--raw', '-q', file], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  }).trim();
}
