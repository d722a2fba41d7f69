// Runs one of Pailside's commands, after making sure of all that it needs. Runs on a bare Node 18.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { needsOf } from './choose.mjs';
import { provideBrowser, provideNode, providePackages, provideProgram } from './provide.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const COMMANDS = join(ROOT, 'src', 'commands');
const HOW_BROWSER =
  'On Debian as root: apt-get update && apt-get install chromium-headless-shell\n  Or name one that you have: CHROMIUM=/path/to/chromium';

const say = (line) => process.stdout.write(`${line}\n`);

/** Environment for the command: the project's programs first on the PATH, and the browser's path. */
async function makeReady(command) {
  const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' };
  await providePackages(ROOT, env, say);
  const node = provideNode(ROOT, env);
  const needs = needsOf(command);
  if (needs.browser !== 'no') {
    const browser = await provideBrowser(ROOT, env, say, needs.browser === 'must');
    if (browser.ok) env.CHROMIUM = browser.path;
    else if (needs.browser === 'must')
      throw new Error(`No browser to print with: ${browser.why}.\n  ${HOW_BROWSER}`);
    else env.PAILSIDE_NO_BROWSER = browser.why;
    if (browser.ok) say(`Browser for printing: ${browser.path}`);
  }
  for (const need of needs.programs) {
    const there = await provideProgram(need, ROOT, env, say, command !== 'start');
    if (!there && need.must)
      throw new Error(
        `${need.program} is missing: ${need.why}.\n  On Debian as root: apt-get update && apt-get install ${need.debian}`,
      );
    if (!there && need.without) say(`${need.program} is missing: ${need.why}; ${need.without}.`);
  }
  const bin = join(ROOT, 'node_modules', '.bin');
  return { node, env: { ...env, PATH: `${bin}:${env.PATH ?? ''}` } };
}

/** Hands over to the command and ends as it ends. */
function handOver(node, env, command, args) {
  const script = join(COMMANDS, `${command}.ts`);
  // Types in the sources are erased by Node itself; older lines of it warn each time.
  const child = spawn(node, ['--disable-warning=ExperimentalWarning', script, ...args], {
    cwd: ROOT,
    env,
    stdio: 'inherit',
  });
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
  for (const signal of signals) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => fail(error.message));
  child.on('exit', (code, signal) => {
    if (signal === null) process.exit(code ?? 1);
    for (const one of signals) process.removeAllListeners(one);
    process.kill(process.pid, signal);
  });
}

function fail(message) {
  process.stderr.write(`\n${message}\n`);
  process.exit(1);
}

const [command = '', ...args] = process.argv.slice(2);
const known = readdirSync(COMMANDS).filter((name) => name.endsWith('.ts')).map((name) => name.slice(0, -3)).sort(); // prettier-ignore
if (!known.includes(command) || !existsSync(join(COMMANDS, `${command}.ts`)))
  fail(`There is no command "${command}". There are: ${known.join(', ')}.`);
else
  makeReady(command).then(
    ({ node, env }) => handOver(node, env, command, args),
    (error) => fail(error.message),
  );
