// Names that say nothing, and words that have no place in the project's files.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFiles } from '../support/sources.ts';

const EMPTY_NAMES = new Set([
  'util',
  'utils',
  'helper',
  'helpers',
  'data',
  'info',
  'item',
  'items',
  'manager',
  'misc',
  'stuff',
]);
// Put together here, so that this file does not hold what it looks for.
const UNWANTED = [
  'trans_cript',
  'seed docu_ment',
  'lorem ip_sum',
  'TO_DO',
  'FIX_ME',
  '/wo_rk/',
  'issue _2',
].map((word) => word.replace('_', ''));
const TEXT =
  /\.(ts|mjs|js|svelte|astro|mdx?|css|ya?ml|csv|json|html|txt|svg)$|^\.[a-z]+rc$|(^|\/)\.gitignore$/;

const wordsOfName = (name: string) =>
  name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9]+/);

const emptyNames = (paths: readonly string[]) =>
  paths.filter((path) =>
    path.split('/').some((part) => wordsOfName(part).some((word) => EMPTY_NAMES.has(word))),
  );

function unwanted(path: string, text: string): string[] {
  return text.split('\n').flatMap((line, index) => {
    const word = UNWANTED.find((one) =>
      new RegExp(one.startsWith('/') ? one : `\\b${one}\\b`, one === one.toUpperCase() ? '' : 'i').test(line),
    );
    return word === undefined ? [] : [`${path}:${index + 1} ${line.trim().slice(0, 80)}`];
  });
}

// Published schemas keep the names that they were published under.
const files = projectFiles().filter((path) => !path.startsWith('src/farm/icar/schema/'));

describe('files and folders', () => {
  it('have names that say what is in them', () => {
    expect(emptyNames(files)).toEqual([]);
  });

  it('hold no filler, no unfinished marks and no word of a workplace', () => {
    // The lockfile is checksums, in which any letters may stand.
    const texts = files.filter((path) => TEXT.test(path) && path !== 'package-lock.json');
    expect(texts.length).toBeGreaterThan(80);
    expect(texts.flatMap((path) => unwanted(path, readFileSync(path, 'utf8')))).toEqual([]);
  });

  it('name no registry but the public one, and a checksum for each package', () => {
    const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
      packages: Record<string, { resolved?: string; integrity?: string }>;
    };
    const packages = Object.entries(lock.packages).filter(([name]) => name !== '');
    expect(packages.length).toBeGreaterThan(100);
    const isOdd = ({ resolved, integrity }: { resolved?: string; integrity?: string }) =>
      !integrity || (resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/'));
    expect(packages.filter(([, one]) => isOdd(one)).map(([name]) => name)).toEqual([]);
    expect(readFileSync('.npmrc', 'utf8')).not.toMatch(/registry\s*=/);
  });
});

describe('the rules themselves', () => {
  it('catch an empty name wherever it stands, and not inside another word', () => {
    expect(
      emptyNames([
        'shared/utils/x.ts',
        'src/dataTable.ts',
        'src/farm_info.ts',
        'shared/herd/dates.ts',
        'src/managers-desk.ts',
      ]),
    ).toEqual(['shared/utils/x.ts', 'src/dataTable.ts', 'src/farm_info.ts']);
  });

  it('catch an unwanted word with its line', () => {
    expect(unwanted('x.ts', `a\n// ${UNWANTED[3]}: later`)).toHaveLength(1);
    expect(unwanted('x.md', 'Todo el día. Todos.')).toEqual([]);
  });
});
