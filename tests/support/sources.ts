// The project's own files, and the code in each of them, for tests that read the source.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

const SKIPPED = new Set(['node_modules', 'dist', 'prints', '.git', '.astro', '.pailside']);
const CODE = /\.(ts|mjs|svelte|astro|mdx)$/;

/** Every file of the project by its path from the root, with `/` between folders. */
export function projectFiles(folder = '.'): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      if (SKIPPED.has(entry.name)) return [];
      const path = join(folder, entry.name);
      return entry.isDirectory() ? projectFiles(path) : [relative('.', path).split(sep).join('/')];
    })
    .sort();
}

/** Files that hold code. */
export function codeFiles(): string[] {
  return projectFiles().filter((path) => CODE.test(path));
}

/** A stretch of script in a file. `inBrowser` where it is sent along with the page. */
export interface Script {
  readonly path: string;
  readonly text: string;
  /** Line of the file on which the text begins. */
  readonly line: number;
  readonly inBrowser: boolean;
}

/** The scripts of a file: all of a `.ts`, the script blocks of a component, the frontmatter of an Astro file. */
export function scriptsIn(path: string, text = readFileSync(path, 'utf8')): Script[] {
  if (/\.(ts|mjs)$/.test(path)) return [{ path, text, line: 1, inBrowser: false }];
  const lineAt = (index: number) => text.slice(0, index).split('\n').length;
  const scripts: Script[] = [];
  const matter = path.endsWith('.astro') ? /^---\r?\n([\s\S]*?)^---/m.exec(text) : null;
  if (matter) scripts.push({ path, text: matter[1] ?? '', line: lineAt(matter.index) + 1, inBrowser: false });
  if (path.endsWith('.mdx')) {
    const body = text.replace(/^---\r?\n[\s\S]*?\n---/, (head) => head.replace(/.*/g, ''));
    const lines = body.split('\n').map((line) => (/^(import|export)\s/.test(line) ? line : ''));
    return [{ path, text: lines.join('\n'), line: 1, inBrowser: false }];
  }
  for (const block of text.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g))
    scripts.push({
      path,
      text: block[1] ?? '',
      line: lineAt(block.index),
      inBrowser: path.endsWith('.astro'),
    });
  return scripts;
}
