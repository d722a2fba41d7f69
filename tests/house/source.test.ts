// Limits on length, an opening line in each file, and a shared/ that is pure and documented.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codeFiles, projectFiles } from '../support/sources.ts';
import { impurities, longFunctions, MOST_LINES_A_FILE, undocumented } from './sourceRules.ts';

const code = codeFiles();
const shared = code.filter((path) => path.startsWith('shared/'));
const lines = (path: string) => readFileSync(path, 'utf8').trimEnd().split('\n');

describe('every file', () => {
  it(`of code or style has at most ${MOST_LINES_A_FILE} lines`, () => {
    const files = [...code, ...projectFiles().filter((path) => path.endsWith('.css'))];
    const long = files.flatMap((path) =>
      lines(path).length > MOST_LINES_A_FILE ? [`${path}: ${lines(path).length}`] : [],
    );
    expect(long).toEqual([]);
  });

  it('of shared/, src/ and scripts/ has functions of at most 60 lines', () => {
    const own = code.filter(
      (path) =>
        /^(shared|src|scripts|tests\/support|tests\/house)\//.test(path) && !path.endsWith('.test.ts'),
    );
    expect(own.flatMap((path) => longFunctions(path))).toEqual([]);
  });

  it('of TypeScript opens with one line that says what it is for', () => {
    const own = code.filter((path) => /^(shared|src|scripts|tests)\/.*\.(ts|mjs)$/.test(path));
    expect(own.filter((path) => !/^\/\/ [A-Z`‘"\d].{8,}/.test(lines(path)[0] ?? ''))).toEqual([]);
  });

  it('ends with a line feed and holds no carriage return, unless it tests for one', () => {
    const own = code.filter((path) => !path.startsWith('tests/fixtures/'));
    expect(
      own.filter(
        (path) => !readFileSync(path, 'utf8').endsWith('\n') || readFileSync(path, 'utf8').includes('\r'),
      ),
    ).toEqual([]);
  });
});

describe('shared/', () => {
  it('reads no clock, chance, disk, page or net', () => {
    expect(shared.length).toBeGreaterThan(10);
    expect(shared.flatMap((path) => impurities(path))).toEqual([]);
  });

  it('says of everything it exports what a caller gets', () => {
    expect(shared.flatMap((path) => undocumented(path))).toEqual([]);
  });
});

describe('the rules themselves', () => {
  it.each(['Math.random()', 'Date.now()', 'new Date()', 'process.env', 'console.log(1)', 'window', 'fetch("x")', 'Date()', 'new Intl.DateTimeFormat("en").format()'])(
    'catch %s',
    (text) => {
      expect(impurities('shared/x.ts', `export const x = () => ${text};`)).toHaveLength(1);
    },
  ); // prettier-ignore

  it('let words and dates that are given be', () => {
    const text =
      '// console.log\nconst a = { window: 1, process: 2 }; a.window; new Date(0); "Math.random()";';
    expect(impurities('shared/x.ts', text)).toEqual([]);
  });

  it('catch a global beside a name of our own in another place', () => {
    const text = 'const x = (window: number) => window;\nconst y = () => window;';
    expect(impurities('shared/x.ts', text)).toEqual(['shared/x.ts:2 window']);
  });

  it('catch a long function, in a component as well', () => {
    const body = Array.from({ length: 60 }, () => '  a();').join('\n');
    expect(longFunctions('src/x.ts', `function a() {\n${body}\n}`)).toEqual([
      'src/x.ts:1 a function of 62 lines',
    ]);
    expect(
      longFunctions('src/x.svelte', `<script lang="ts">\n  const a = () => {\n${body}\n};</script>`),
    ).toHaveLength(1);
    expect(longFunctions('src/x.ts', 'function a() {\n  a();\n}')).toEqual([]);
  });

  it('catch an export without a doc comment', () => {
    expect(
      undocumented(
        'shared/x.ts',
        'export function a() {}\n/** B. */\nexport const b = 1;\nexport type C = 1;\nexport * from "./y.ts";',
      ),
    ).toEqual(['shared/x.ts:1 a', 'shared/x.ts:4 C']);
  });
});
