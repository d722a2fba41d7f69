// Runs a tool of node_modules with the Node that we run on ourselves.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';

/** The script that a package's program starts. */
function toolFile(root: string, name: string): string {
  const folder = join(root, 'node_modules', name);
  const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    bin: string | Record<string, string>;
  };
  const file = typeof bin === 'string' ? bin : bin[name];
  if (file === undefined) throw new Error(`The package ${name} has no program of its name.`);
  return join(folder, file);
}

/** How a tool ended, and all that it said where it was not shown. */
export interface Ended {
  readonly code: number;
  readonly said: string;
}

/** How a tool is run. */
export interface RunOptions {
  /** Additions to the environment. */
  readonly env?: NodeJS.ProcessEnv;
  /** The tool speaks to the terminal itself; else what it says comes back. */
  readonly show?: boolean;
  /** The folder it runs in, where that is not the project's. */
  readonly cwd?: string;
}

/** Runs a package's program. */
export function runTool(
  root: string,
  name: string,
  args: readonly string[],
  options: RunOptions = {},
): Promise<Ended> {
  return runScript(toolFile(root, name), args, { cwd: root, ...options });
}

/** Runs a script with our own Node. */
export async function runScript(
  file: string,
  args: readonly string[],
  { env, show = false, cwd }: RunOptions,
): Promise<Ended> {
  const child = spawn(process.execPath, [file, ...args], {
    cwd,
    env: { ...process.env, ...env },
    stdio: show ? 'inherit' : ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<number>((done, failed) => {
    child.on('error', failed);
    child.on('close', (code) => done(code ?? 1));
  });
  const said = Promise.all([child.stdout ? text(child.stdout) : '', child.stderr ? text(child.stderr) : '']);
  const code = await ended;
  return { code, said: (await said).join('') };
}
