// What is wrong in a file of the teaching content: place, what was found, what to do.

/** A fault that the coordinator can mend. Lines and columns count from 1. */
export interface ContentFault {
  readonly file: string;
  readonly line: number;
  readonly column: number | null;
  /** What is wrong and what to do, in one or two sentences. */
  readonly text: string;
}

/** What is worth a word but stops nothing. */
export interface ContentNotice {
  readonly file: string;
  readonly text: string;
}

/** The complete list for the terminal. */
export function tellContentFaults(faults: readonly ContentFault[]): string {
  const sorted = [...faults].sort((a, b) => a.file.localeCompare(b.file) || a.line - b.line);
  return sorted
    .map(({ file, line, column, text }) => `${file}:${line}${column === null ? '' : `:${column}`}  ${text}`)
    .join('\n');
}

/**
 * What keeps the teaching content from being taken, for the terminal: two lines before it, then one line a fault,
 * file by file.
 */
export function tellContent(faults: readonly ContentFault[], root: string): string {
  const need = faults.length === 1 ? '1 thing needs' : `${faults.length} things need`;
  const lines = [
    `The sheets and lessons were not taken: ${need} a hand. Nothing was changed.`,
    `The project's folder is ${root}. Each line says file:line:column.`,
  ];
  for (const file of [...new Set(faults.map((one) => one.file))].sort())
    lines.push('', tellContentFaults(faults.filter((one) => one.file === file)));
  return `${lines.join('\n')}\n`;
}
