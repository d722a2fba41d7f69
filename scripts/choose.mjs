// What the setup decides, apart from doing it: which packages are missing, which Node, which browser.
import { join } from 'node:path';

/** The oldest Node that builds the site: its bundler and test runner need it. */
export const OLDEST_NODE = [22, 19];

/** Chromium and its kin under the names that Linux distributions and macOS give them, the leanest first. */
export const BROWSER_NAMES = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
];
const BROWSER_FOLDERS = [
  '/usr/bin',
  '/usr/local/bin',
  '/usr/lib/chromium',
  '/snap/bin',
  '/opt/google/chrome',
];
const MAC_BROWSERS = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/**
 * Packages of the lockfile that the installed folder lacks or holds in another version, by their
 * path. Both arguments are parsed lockfiles (npm keeps the second one in node_modules when it is
 * through); null for none. Optional packages may be absent: npm leaves out those for other machines.
 */
export function missingPackages(lock, installed) {
  const wanted = Object.entries(lock.packages).filter(([path]) => path !== '');
  const there = installed === null ? {} : installed.packages;
  return wanted
    .filter(([path, entry]) => {
      const found = there[path];
      if (found === undefined) return !mayBeAbsent(entry);
      return found.version !== entry.version || found.integrity !== entry.integrity;
    })
    .map(([path]) => path);
}

const mayBeAbsent = (entry) => entry.optional === true || entry.devOptional === true;

/** Whether a Node version (`v22.19.0`) is new enough. */
export function nodeFits(version) {
  const match = /^v?(\d+)\.(\d+)\./.exec(version ?? '');
  if (!match) return false;
  const [major, minor] = [Number(match[1]), Number(match[2])];
  return major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1]);
}

/**
 * The first Node of the list that is new enough, or null. Each entry is `{ path, version }`; the
 * machine's own Node comes first, the one in node_modules last.
 */
export function chooseNode(candidates) {
  return candidates.find(({ version }) => nodeFits(version)) ?? null;
}

/** Every place where a browser may lie, the best first, for `env` and the folders of its PATH. */
export function browserPlaces(env) {
  const onPath = (env.PATH ?? '').split(':').filter(Boolean);
  const folders = [...new Set([...BROWSER_FOLDERS, ...onPath])];
  const named = BROWSER_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...(env.CHROMIUM ? [env.CHROMIUM] : []), ...named, ...MAC_BROWSERS];
}

/**
 * The browser to print with: what CHROMIUM names, else the first of the usual places that
 * `isProgram` says yes to. `{ ok: false, why }` where CHROMIUM names a file that is no program, or
 * where there is none at all (`why` is then null).
 */
export function chooseBrowser(env, isProgram, downloaded = []) {
  if (env.CHROMIUM && !isProgram(env.CHROMIUM))
    return { ok: false, why: `CHROMIUM is "${env.CHROMIUM}", which is not a program on this machine` };
  const path = [...browserPlaces(env), ...downloaded].find(isProgram);
  return path === undefined ? { ok: false, why: null } : { ok: true, path };
}

/**
 * Browsers that Playwright has downloaded, newest first; `list(folder)` names a folder's entries, or none.
 * @param {NodeJS.ProcessEnv} env
 * @param {(folder: string) => string[]} list
 * @returns {string[]}
 */
export function downloadedBrowsers(env, list) {
  const cache = env.PLAYWRIGHT_BROWSERS_PATH ?? (env.HOME ? join(env.HOME, '.cache', 'ms-playwright') : null);
  if (cache === null) return [];
  const number = (name) => Number(name.split('-').pop());
  const shells = list(cache).filter((name) => /^chromium_headless_shell-\d+$/.test(name));
  return shells
    .sort((a, b) => number(b) - number(a))
    .flatMap((shell) =>
      list(join(cache, shell))
        .filter((name) => name.startsWith('chrome-'))
        .flatMap((folder) =>
          ['headless_shell', 'chrome-headless-shell'].map((name) => join(cache, shell, folder, name)),
        ),
    );
}

// The board's voice, and what makes its sounds small. The build itself says where they are missing.
const VOICE = [
  { program: 'espeak-ng', debian: 'espeak-ng', must: false, why: 'it reads the Barn board aloud' },
  { program: 'opusenc', debian: 'opus-tools', must: false, why: 'it packs what is read aloud' },
];

/**
 * What a command needs beyond Node packages. `must`: the command cannot do without. `without`: what to say where it
 * stays missing, unless the command says so itself.
 */
export function needsOf(command) {
  const none = { browser: 'no', programs: [] };
  const pdfTools = {
    program: 'pdfinfo',
    debian: 'poppler-utils',
    must: true,
    why: 'the tests read PDFs with it',
  };
  const units = {
    program: 'units',
    debian: 'units',
    must: false,
    why: 'some tests check unit factors with it',
    without: 'those are skipped',
  };
  const glpsol = {
    program: 'glpsol',
    debian: 'glpk-utils',
    must: false,
    why: 'a test checks the shortest school day with it',
    without: 'that one is skipped',
  };
  if (command === 'start') return { browser: 'wish', programs: VOICE };
  if (command === 'print' || command === 'trip') return { browser: 'must', programs: [] };
  if (command === 'test') return { browser: 'must', programs: [pdfTools, units, glpsol, ...VOICE] };
  return none;
}
