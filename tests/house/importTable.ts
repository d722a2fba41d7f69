// Who may import whom, as a table, and the check that reads it.
import { posix } from 'node:path';
import ts from 'typescript';
import { scriptsIn } from '../support/sources.ts';

interface Rule {
  readonly who: RegExp;
  readonly may: readonly (string | RegExp)[];
  readonly because: string;
}

// The reading scorer brings word lists of its own: it belongs to the build and never travels to a browser.
const SHARED = /^shared\/(?!reading\/)/;
const READING = /^shared\/reading\//;
const COMPONENTS = /^src\/components\//;
const NODE = /^node:/;
const STYLES = /^src\/styles\/|^@fontsource\//;

// The first row that fits a file holds. A path ends in `#script` where the script is sent to the browser.
const RULES: readonly Rule[] = [
  { who: SHARED, may: [SHARED, 'fraction.js', /^pure-rand\//], because: 'shared/ imports only shared/ and the pure packages of this table' },
  { who: READING, may: [SHARED, READING, /^(syllable|silabea|dale-chall|spache)$/], because: 'shared/reading measures texts with the packages of this row' },
  { who: /^content\//, may: [], because: 'content never imports: it uses the components handed to it' },
  { who: /#script$/, may: [SHARED, COMPONENTS], because: 'a script of a page imports shared/ and components, never Node, zod or what loads' },
  { who: /^src\/components\/.*\.astro$/, may: [SHARED, COMPONENTS, 'src/site/site.ts'], because: 'components never load' },
  { who: /^src\/components\/bench\/wordFile\.ts$/, may: [SHARED, COMPONENTS, 'docx'], because: 'one file writes Word documents, and is fetched only when one is wanted' },
  { who: /^src\/components\/trip\/pack\/calendarFile\.ts$/, may: [SHARED, COMPONENTS, 'ical-generator'], because: 'one file writes calendar files, and is fetched only when one is wanted' },
  { who: /^src\/components\/trip\/pack\/qrCut\.ts$/, may: [SHARED, COMPONENTS, 'uqr'], because: 'one file draws the code of a trip, and is fetched only for a pack' },
  { who: /^src\/components\/book\/store\/database\.ts$/, may: [SHARED, COMPONENTS, 'idb'], because: 'one file of the Milk book opens the phone\'s database' },
  { who: COMPONENTS, may: [SHARED, COMPONENTS, /^svelte(\/|$)/], because: 'an island imports shared/ and its own kind, never Node, zod or the site' },
  { who: /^src\/layouts\//, may: [SHARED, COMPONENTS, STYLES, /^src\/(layouts|site)\//], because: 'layouts frame what pages hand down' },
  { who: /^src\/pages\//, may: [SHARED, COMPONENTS, STYLES, /^src\/(layouts|site)\//, /^astro(:|$)/], because: 'pages load through src/site and hand down' },
  { who: /^src\/content\//, may: [SHARED, READING, NODE, /^src\/content\//, 'src/farm/nearest.ts', 'yaml', 'zod', /^unified$|^remark-|^mdast/], because: 'src/content reads what the coordinator writes and knows no page' },
  { who: /^src\/site\//, may: [SHARED, NODE, /^src\/(site|farm|content)\//, 'yaml', 'zod', 'csv-parse/sync', 'astro:content'], because: 'src/site is what pages load through' },
  { who: /^src\/farm\/icar\//, may: [SHARED, NODE, 'ajv', 'ajv-formats'], because: 'src/farm/icar checks JSON against its published schema' },
  { who: /^src\/farm\//, may: [SHARED, NODE, /^src\/farm\//, /^csv-parse(\/|$)/, 'yaml', 'zod', 'fraction.js', 'temporal-polyfill'], because: 'src/farm reads the farm folder and knows no page' },
  { who: /^src\/build\//, may: [SHARED, NODE, 'parse5', /^src\/(build|farm|content)\//], because: 'the build reads the book and runs Astro; it knows no page' },
  { who: /^src\/print\//, may: [SHARED, NODE, /^src\/(print|build|farm)\//, 'playwright-core', 'scripts/findBrowser.mjs', 'src/components/trip/pack/calendarFile.ts'], because: 'the print room prints what was built' },
  { who: /^src\/desk\/book\/(exportWorkbook|xlsxWorker)\.ts$/, may: [SHARED, NODE, /^src\/(desk|farm)\//, 'fraction.js', 'fflate', 'read-excel-file/node', 'write-excel-file/node'], because: 'two files read and write spreadsheets' },
  { who: /^src\/desk\//, may: [SHARED, NODE, /^src\/(desk|build|farm)\//, /^@?hono(\/|$)/, 'uqr', 'fflate'], because: 'the desk serves what was built' },
  { who: /^src\/commands\//, may: [SHARED, NODE, /^src\/(commands|build|farm|print|desk)\//], because: 'a command ties build, print room and desk together' },
  { who: /^src\/content\.config\.ts$/, may: [SHARED, 'astro:content', 'astro/loaders', 'zod'], because: 'the content schema stands alone' },
  { who: /^scripts\//, may: [NODE, /^scripts\//], because: 'setup runs before anything is installed, on an older Node' },
  { who: /^tests\//, may: [/^(?!src\/pages\/)/], because: 'nobody imports pages' },
  { who: /^astro\.config\.mjs$/, may: [/^(?!\.|src\/|shared\/)/, 'src/build/offline.ts', 'src/build/sound.ts'], because: 'the settings of the build import packages and its own last steps' },
  { who: /^[^/]+\.(ts|mjs|js)$/, may: [/^(?!\.|src\/|shared\/)/], because: 'settings of tools import packages alone' },
]; // prettier-ignore

// What a component may ask of the site: words and addresses; numbers are handed to it.
const ASKED_BY_COMPONENTS = new Set(['href', 'wordsOf']);

/** Every import of a file that breaks a rule: file, line, what it imports, and the rule. */
export function importFaults(path: string, text?: string): string[] {
  return scriptsIn(path, text).flatMap((script) => {
    const who = script.inBrowser ? `${path}#script` : path;
    const rule = RULES.find((one) => one.who.test(who));
    if (!rule) return [`${path}: no rule in the import table fits this file`];
    return ts.preProcessFile(script.text, true, true).importedFiles.flatMap(({ fileName, pos }) => {
      const line = script.line + script.text.slice(0, pos).split('\n').length - 1;
      const target = targetOf(path, fileName);
      const told = (rest: string) => [`${path}:${line} imports ${target}${rest}: ${rule.because}`];
      if (!rule.may.some((may) => (typeof may === 'string' ? may === target : may.test(target))))
        return told('');
      const asked =
        target === 'src/site/site.ts' && COMPONENTS.test(path) ? namesFrom(script.text, fileName) : [];
      const wrong = asked.filter((name) => !ASKED_BY_COMPONENTS.has(name));
      return wrong.length > 0 ? told(` for ${wrong.join(', ')}`) : [];
    });
  });
}

function targetOf(path: string, name: string): string {
  if (name.startsWith('.')) return posix.normalize(posix.join(posix.dirname(path), name));
  return name.replace(/^\//, '').replace(/\?.*$/, '');
}

function namesFrom(text: string, specifier: string): string[] {
  const clauses = [...text.matchAll(/import\s+([^'"]*?)\s+from\s+['"]([^'"]+)['"]/g)];
  return clauses
    .filter(([, clause, from]) => from === specifier && !clause?.startsWith('type '))
    .flatMap(([, clause = '']) => clause.replace(/[{}]/g, ' ').split(','))
    .map((name) => name.trim())
    .filter((name) => name !== '' && !name.startsWith('type '))
    .map((name) => name.split(/\s+as\s+/)[0] ?? name);
}
