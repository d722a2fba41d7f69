// The closing line of a test run, counted from the runner's own record.

/** What vitest's JSON record says that we count; other parts of it are of no matter here. */
export interface TestRecord {
  readonly success: boolean;
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/**
 * `12 passed, 1 failed, 2 skipped`. A file that failed before any of its tests ran counts as one
 * failed test, so that a run that failed never closes with none.
 */
export function closingLine(record: TestRecord): string {
  const unread = record.testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  ).length;
  const counted = record.numFailedTests + unread;
  const failed = counted === 0 && !record.success ? 1 : counted;
  const skipped = record.numPendingTests + record.numTodoTests;
  return `${record.numPassedTests} passed, ${failed} failed, ${skipped} skipped`;
}
