// What poppler's commands say of a PDF (Debian package poppler-utils).
import { execFileSync, spawnSync } from 'node:child_process';

/** Whether pdfinfo, pdftotext and pdffonts are installed. */
export const hasPoppler = ['pdfinfo', 'pdftotext', 'pdffonts'].every(
  (name) => spawnSync(name, ['-v']).status === 0,
);

const run = (name: string, args: readonly string[]) =>
  execFileSync(name, args, { encoding: 'utf8', maxBuffer: 64_000_000 });

/** The facts of a PDF and the size of each page in points. */
export function pdfInfo(file: string): { facts: Record<string, string>; sizes: [number, number][] } {
  const lines = run('pdfinfo', ['-l', '9999', file]).split('\n');
  const pairs = lines.map((line) => /^([^:]+):\s*(.*)$/.exec(line)).filter((pair) => pair !== null);
  const facts = Object.fromEntries(
    pairs.map(([, name = '', value = '']) => [name.trim().replace(/\s+/g, ' '), value]),
  );
  const sizes = lines.flatMap((line): [number, number][] => {
    const size = /^Page\s+\d+ size:\s*([\d.]+) x ([\d.]+)/.exec(line);
    return size ? [[Number(size[1]), Number(size[2])]] : [];
  });
  return { facts, sizes };
}

/** The text of each page: as it lies on the paper, or column by column as one reads it. */
export function pdfPages(file: string, order: 'laid out' | 'read' = 'laid out'): string[] {
  return run('pdftotext', [...(order === 'read' ? [] : ['-layout']), file, '-'])
    .split('\f')
    .slice(0, -1);
}

/** The fonts of a PDF, and whether each is carried in it. */
export function pdfFonts(file: string): { name: string; embedded: boolean }[] {
  const [, rule = '', ...rows] = run('pdffonts', [file]).trimEnd().split('\n');
  // The rule of dashes tells where the columns stand.
  const columns = [...rule.matchAll(/-+/g)].map(
    (match) => [match.index, match.index + match[0].length] as const,
  );
  const cell = (row: string, index: number) => row.slice(...(columns[index] ?? [0, 0])).trim();
  return rows.map((row) => ({ name: cell(row, 0), embedded: cell(row, 3) === 'yes' }));
}

/** A word on a page, with its place in points from the upper left corner. */
export interface PlacedWord {
  readonly page: number;
  readonly word: string;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

/** Every word of a PDF with its place. */
export function pdfWords(file: string): PlacedWord[] {
  let page = 0;
  return run('pdftotext', ['-bbox', file, '-']).split('\n').flatMap((line): PlacedWord[] => {
    if (line.includes('<page ')) page += 1;
    const word = /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*)<\/word>/.exec(line);
    if (!word) return [];
    const [left = 0, top = 0, right = 0, bottom = 0] = word.slice(1, 5).map(Number);
    return [{ page, word: word[5] ?? '', box: [left, top, right, bottom] }];
  }); // prettier-ignore
}
