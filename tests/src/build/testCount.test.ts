// The closing line of a test run never hides a failure.
import { describe, expect, it } from 'vitest';
import { closingLine } from '../../../src/build/testCount.ts';

const record = {
  success: true,
  numPassedTests: 12,
  numFailedTests: 0,
  numPendingTests: 2,
  numTodoTests: 1,
  testResults: [{ status: 'passed', assertionResults: [{}] }],
};

describe('closingLine', () => {
  it('counts what passed, failed and was skipped', () => {
    expect(closingLine(record)).toBe('12 passed, 0 failed, 3 skipped');
    expect(closingLine({ ...record, success: false, numFailedTests: 2 })).toBe(
      '12 passed, 2 failed, 3 skipped',
    );
  });

  it('counts a file that failed before its first test as one', () => {
    const unread = { status: 'failed', assertionResults: [] };
    expect(closingLine({ ...record, success: false, testResults: [unread] })).toBe(
      '12 passed, 1 failed, 3 skipped',
    );
  });

  it('shows one failure where the run failed for another reason', () => {
    expect(closingLine({ ...record, success: false })).toBe('12 passed, 1 failed, 3 skipped');
  });
});
