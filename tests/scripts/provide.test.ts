// Small programs that the setup installs where it may: the voice of the board, with an apt-get that only pretends.
import { chmodSync, existsSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { needsOf } from '../../scripts/choose.mjs';
import { provideProgram } from '../../scripts/provide.mjs';
import { ownFolder, writeFiles } from '../src/build/smallFarm.ts';

const VOICE = { program: 'espeak-ng', debian: 'espeak-ng', why: 'it reads aloud' };
// The last word that apt-get is given is the package's name; it puts a program of that name beside itself.
const INSTALLS = `#!/bin/sh
echo "$@" >> "$HOME/asked"
[ "$1" = update ] && exit 0
for name; do :; done
printf '#!/bin/sh\\n' > "$HOME/bin/$name"
chmod 755 "$HOME/bin/$name"
`;
const FAILS = '#!/bin/sh\necho "$@" >> "$HOME/asked"\necho "no network" >&2\nexit 100\n';
const isRoot = process.getuid?.() === 0;

/** A machine with this apt-get and no other program than it needs. */
function machine(aptGet: string | null) {
  const root = ownFolder();
  writeFiles(root, { 'bin/note': '' });
  symlinkSync('/bin/chmod', join(root, 'bin/chmod'));
  if (aptGet !== null) {
    writeFiles(root, { 'bin/apt-get': aptGet });
    chmodSync(join(root, 'bin/apt-get'), 0o755);
  }
  const said: string[] = [];
  const env = { PATH: join(root, 'bin'), HOME: root };
  const provide = (patient: boolean): Promise<boolean> =>
    provideProgram(VOICE, root, env, (line: string) => void said.push(line), patient);
  const installs = () =>
    existsSync(join(root, 'asked'))
      ? readFileSync(join(root, 'asked'), 'utf8').split('\n').filter((line) => line.startsWith('install'))
      : []; // prettier-ignore
  return { said, provide, installs };
}

describe('provideProgram', () => {
  it.runIf(isRoot)('installs what is missing, and then no more', async () => {
    const { said, provide, installs } = machine(INSTALLS);
    expect(await provide(false)).toBe(true);
    expect(await provide(false)).toBe(true);
    expect(installs()).toEqual(['install -y -q --no-install-recommends espeak-ng']);
    expect(said[0]).toBe("Installing Debian's espeak-ng (it reads aloud) … (about a minute)");
  });

  it.runIf(isRoot)('goes on where it cannot, and leaves it for a day unless it is asked to be patient', async () => {
    const { said, provide, installs } = machine(FAILS);
    expect(await provide(false)).toBe(false);
    expect(said.join('\n')).toContain('no network');
    expect(await provide(false)).toBe(false);
    expect(installs()).toHaveLength(1);
    expect(await provide(true)).toBe(false);
    expect(installs()).toHaveLength(2);
  }); // prettier-ignore

  it('says nothing and does nothing where there is no apt-get', async () => {
    const { said, provide } = machine(null);
    expect(await provide(true)).toBe(false);
    expect(said).toEqual([]);
  });
});

describe('needsOf', () => {
  it('wants a voice for a start and for the tests, and neither stops without it', () => {
    for (const command of ['start', 'test']) {
      const voice = needsOf(command).programs.filter(({ program }) => /^(espeak-ng|opusenc)$/.test(program));
      expect(voice.map(({ debian, must }) => ({ debian, must }))).toEqual([
        { debian: 'espeak-ng', must: false },
        { debian: 'opus-tools', must: false },
      ]);
    }
    expect(needsOf('build').programs).toEqual([]);
  });
});
