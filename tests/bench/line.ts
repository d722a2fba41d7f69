// What a bench measures, as one line of its table.

/** A measurement beside the one it is compared with; null where there is none on this machine. */
export interface Line {
  readonly what: string;
  readonly ours: string;
  readonly beside: string;
  readonly theirs: string | null;
  /** Our time over theirs: below 1 we are faster. */
  readonly ratio: number | null;
}

/** A part of the bench: it says what it is doing and gives its lines. */
export type Part = (say: (line: string) => void) => Promise<Line[]>;

/** The shortest of some runs, ms: the one that the other work of the machine disturbed least. */
export async function shortest_ms(runs: number, work: () => unknown): Promise<number> {
  let best_ms = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run += 1) {
    const start_ms = performance.now();
    await work();
    best_ms = Math.min(best_ms, performance.now() - start_ms);
  }
  return best_ms;
}

/** `1.23 s` or `45 ms`. */
export function timeText(time_ms: number): string {
  return time_ms >= 1000 ? `${(time_ms / 1000).toFixed(2)} s` : `${time_ms.toFixed(time_ms < 10 ? 1 : 0)} ms`;
}

/** The lines as a table of text. */
export function table(lines: readonly Line[]): string {
  const rows = [
    ['what', 'ours', 'beside', 'theirs', 'ratio'],
    ...lines.map(({ what, ours, beside, theirs, ratio }) => [
      what,
      ours,
      beside,
      theirs ?? 'not here',
      ratio === null ? '' : ratio.toFixed(2),
    ]),
  ];
  const widths = [0, 1, 2, 3, 4].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  const text = rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  return [text[0], widths.map((width) => '-'.repeat(width)).join('  '), ...text.slice(1)].join('\n');
}
