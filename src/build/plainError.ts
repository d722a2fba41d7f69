// Errors that a person at the terminal can do something about.

/** Its message says what is wrong and what to do; where it came from in the code is of no use to anybody. */
export class PlainError extends Error {}

/** Runs a command to its exit code; a PlainError ends it with its message alone. */
export async function runCommand(work: () => Promise<number>): Promise<void> {
  try {
    process.exitCode = await work();
  } catch (error) {
    if (!(error instanceof PlainError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}
