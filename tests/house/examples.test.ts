// Every `@example` line in shared/ is run, and gives what it says.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInThisContext } from 'node:vm';
import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';

interface Example {
  readonly file: string;
  readonly line: number;
  readonly call: string;
  /** What it gives; null where the line only promises that the call runs. */
  readonly value: string | null;
}

const files = readdirSync('shared', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join('shared', name))
  .sort();

function examplesIn(file: string): Example[] {
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((text, index) => {
      const told = /@example\s+(.+?)(?:\s+\/\/\s*(?:=>\s*)?(.+?))?(?:\s*\*\/)?$/.exec(text);
      return told ? [{ file, line: index + 1, call: told[1] ?? '', value: told[2] ?? null }] : [];
    });
}

/** Runs an expression with a module's exports, and exact fractions, in scope. */
function evaluate(expression: string, exports: Record<string, unknown>): unknown {
  // A source line of ours, not input: the docs are code here.
  const run = runInThisContext(`({ ${Object.keys(exports).join(', ')} }) => (${expression})`) as (
    scope: Record<string, unknown>,
  ) => unknown;
  return run(exports);
}

const examples = files.flatMap(examplesIn);

describe('@example lines in shared/', () => {
  it('are there to be run', () => {
    expect(examples.length).toBeGreaterThan(10);
  });

  it.each(examples)('$file:$line $call', async ({ file, call, value }) => {
    const module = (await import(/* @vite-ignore */ pathToFileURL(file).href)) as Record<string, unknown>;
    const exports = { Fraction, ...module };
    const actual = evaluate(call, exports);
    if (value === null) expect(actual).toBeDefined();
    else expect(actual).toEqual(evaluate(value, exports));
  });
});
