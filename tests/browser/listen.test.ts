// The Barn board read aloud: text and sound belong together on every page, and a child has it in hand.
import { readdirSync, readFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { soundFiles, soundKey, type SoundList } from '../../shared/board/soundKey.ts';
import { hasVoice } from '../../src/build/soundVoice.ts';
import { openVisit, pagePaths, type Visit } from '../support/openPages.ts';

const LANGS = ['en', 'es'] as const;
const LEVELS = ['younger', 'older'] as const;
const TAPS = 60;
const why = hasVoice(process.env) ? null : 'espeak-ng is not on this machine, so the built board is silent';

let visit: Visit;
let context: BrowserContext;
let sounds: Record<string, Map<string, string>>;

beforeAll(async () => {
  visit = await openVisit('demo');
  context = await visit.browser.newContext({
    viewport: { width: 1080, height: 1920 },
    hasTouch: true,
    serviceWorkers: 'block',
  });
  // Sentences go by at sixteen times their pace, and what is played is written down.
  await context.addInitScript(() => {
    const played: string[] = [];
    const { prototype } = HTMLMediaElement;
    const play = Object.getOwnPropertyDescriptor(prototype, 'play')?.value as (
      this: HTMLMediaElement,
    ) => Promise<void>;
    prototype.play = function () {
      played.push(this.src);
      Object.assign(window, { player: this });
      const started = play.call(this);
      this.playbackRate = 16;
      return started;
    };
    Object.assign(window, { played });
  });
  const listOf = (lang: string) =>
    JSON.parse(readFileSync(join(visit.site.dist, `barn/sound/${lang}.json`), 'utf8')) as SoundList;
  sounds = Object.fromEntries(LANGS.map((lang) => [lang, soundFiles(listOf(lang))]));
});
afterAll(async () => {
  await visit?.close();
});

const boardPaths = () => pagePaths(visit.site).filter((path) => /^(es\/)?barn\//.test(path));
const langOf = (path: string) => (path.startsWith('es/') ? 'es' : 'en');
async function open(path: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(new URL(path, visit.desk.url).href, { waitUntil: 'load' });
  return page;
}

/**
 * The words that are seen in what is marked to be read, at each level, as the browser itself tells them: drawings taken out.
 */
function seenAt(levels: readonly string[]): Record<string, string[]> {
  const drawings = document.querySelectorAll('[data-read] svg, [data-read] [aria-hidden="true"]');
  for (const one of drawings) one.setAttribute('hidden', '');
  const seen = levels.map((level) => {
    document.documentElement.dataset['level'] = level;
    const marked = [...document.querySelectorAll<HTMLElement>('[data-read]')];
    return [level, marked.filter((one) => one.checkVisibility()).map((one) => one.innerText)] as const;
  });
  for (const one of drawings) one.removeAttribute('hidden');
  return Object.fromEntries(seen);
}
const seenNow = async (page: Page) => (await page.evaluate(seenAt, ['younger']))['younger'] ?? [];

/** Taps one live thing after another, chosen by a seeded row of numbers, and gathers all that there is to read meanwhile. */
async function textsAfterTaps([taps, level]: readonly [number, string]): Promise<string[]> {
  document.documentElement.dataset['level'] = level;
  const texts = new Set<string>();
  let seed = 7;
  for (let tap = 0; tap < taps; tap += 1) {
    const live = [...document.querySelectorAll<HTMLElement>('#doing button, #doing [role="button"]')].filter(
      (one) => one.checkVisibility() && !one.matches(':disabled, [aria-disabled="true"]'),
    );
    // Numbers that look random, the same each time (Lehmer's generator, from memory).
    seed = (seed * 48_271) % 2_147_483_647;
    const chosen = live[seed % live.length];
    if (!chosen) break;
    chosen.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
    await new Promise((done) => setTimeout(done, 5));
    for (const one of document.querySelectorAll<HTMLElement>('[data-read]')) {
      if (!one.checkVisibility()) continue;
      const copy = one.cloneNode(true) as HTMLElement;
      for (const part of copy.querySelectorAll('svg, [aria-hidden="true"], [hidden]')) part.remove();
      for (const part of copy.querySelectorAll<HTMLElement>('[data-for]'))
        if (part.dataset['for'] !== level) part.remove();
      texts.add(copy.textContent);
    }
  }
  return [...texts].filter((text) => text.trim() !== '');
}

/** What is played so far, by the name of its file. */
const playedOn = (page: Page) =>
  page.evaluate(() => (window as unknown as { played: string[] }).played.map((url) => url.split('/').at(-1)));
const fileOf = (lang: string, text: string) => sounds[lang]?.get(soundKey(lang, text));
const isBusy = (page: Page) => page.evaluate(() => document.documentElement.dataset['busy'] !== undefined);
const volumeOf = (page: Page) =>
  page.evaluate(() => (window as unknown as { player: HTMLMediaElement }).player.volume);

describe.skipIf(why !== null)(`every text of the board (${why ?? 'spoken on this machine'})`, () => {
  it(
    'has the sound that is named by its own words, on every page, in both languages and levels',
    { timeout: 400_000 },
    async () => {
      const silent: string[] = [];
      let count = 0;
      const page = await context.newPage();
      for (const path of boardPaths()) {
        await page.goto(new URL(path, visit.desk.url).href);
        // Pages for whoever looks after the board are not read to children.
        if ((await page.locator('[data-listen]').count()) === 0) continue;
        for (const [level, texts] of Object.entries(await page.evaluate(seenAt, LEVELS))) {
          count += texts.length;
          if (texts.length === 0) silent.push(`/${path} (${level}) has nothing to read`);
          for (const text of texts)
            if (fileOf(langOf(path), text) === undefined) silent.push(`/${path} (${level}) "${text}"`);
        }
      }
      await page.close();
      expect(silent).toEqual([]);
      expect(count).toBeGreaterThan(500);
    },
  );

  it('has it after taps as well, in everything that there is to do', { timeout: 400_000 }, async () => {
    const silent = new Set<string>();
    const doings = boardPaths().filter((path) => /barn\/do\/[^/]+\/$/.test(path));
    expect(doings.length).toBeGreaterThan(1);
    const page = await context.newPage();
    for (const path of doings) {
      await page.goto(new URL(path, visit.desk.url).href);
      // Where this week cannot carry it, there is only a word about that.
      if ((await page.locator('#doing').count()) === 0) continue;
      await page.locator('#doing[data-awake]').waitFor();
      for (const level of LEVELS)
        for (const text of await page.evaluate(textsAfterTaps, [TAPS, level] as const))
          if (fileOf(langOf(path), text) === undefined) silent.add(`/${path} (${level}) "${text}"`);
    }
    await page.close();
    expect([...silent]).toEqual([]);
  });

  it.each(LANGS)('has a file that sounds (%s), and no file is there for nothing', async (lang) => {
    const folder = join(visit.site.dist, 'barn/sound', lang);
    const files = [...(sounds[lang]?.values() ?? [])].sort();
    expect(readdirSync(folder).sort()).toEqual(files);
    const page = await open('barn/');
    const mute = await page.evaluate(async ([names, base]) => {
      const ear = new OfflineAudioContext(1, 1, 48_000);
      const found: string[] = [];
      const rest = [...names];
      const some = async () => {
        for (let name = rest.pop(); name !== undefined; name = rest.pop()) {
          const bytes = await (await fetch(`${base}${name}`)).arrayBuffer();
          const heard = await ear.decodeAudioData(bytes).catch(() => null);
          const isLoud = heard?.getChannelData(0).some((part) => Math.abs(part) > 0.05);
          if (heard === null || heard.duration < 0.2 || !isLoud) found.push(name);
        }
      };
      await Promise.all(Array.from({ length: 8 }, some));
      return found;
    }, [files, new URL(`barn/sound/${lang}/`, visit.desk.url).pathname] as const); // prettier-ignore
    await page.close();
    expect(mute).toEqual([]);
  });

  it('is named alike in the browser and in the build', async () => {
    const code = stripTypeScriptTypes(readFileSync('shared/board/soundKey.ts', 'utf8')).replaceAll('export ', '');
    const page = await open('barn/');
    const texts = ['', 'Four cups fill one jar.', '¿Cua\u0301nta leche?', '½ taza', '山羊 🐐', 'x'.repeat(3000)];
    const there = await page.evaluate(`${code}; ${JSON.stringify(texts)}.map((text) => soundKey('es', text))`);
    await page.close();
    expect(there).toEqual(texts.map((text) => soundKey('es', text)));
  }); // prettier-ignore
});

describe.skipIf(why !== null)(`Listen (${why ?? 'with the voice of this machine'})`, () => {
  it.each(['barn/how-much/', 'es/barn/how-much/'])('reads /%s from top to end, in order', async (path) => {
    const page = await open(path);
    expect(await playedOn(page)).toEqual([]);
    const texts = await seenNow(page);
    await page.locator('[data-listen]').tap();
    expect(await isBusy(page)).toBe(true);
    await page.waitForFunction(() => document.documentElement.dataset['busy'] === undefined);
    expect(await playedOn(page)).toEqual(texts.map((text) => fileOf(langOf(path), text)));
    expect(await page.locator('.reading').count()).toBe(0);
    await page.close();
  });

  it('marks the sentence that is read, and stops at a second tap', async () => {
    const page = await open('barn/how-much/');
    const listen = page.locator('[data-listen]');
    await listen.tap();
    expect(await page.locator('.reading').count()).toBe(1);
    expect(await listen.getAttribute('aria-pressed')).toBe('true');
    await listen.tap();
    expect(await page.locator('.reading').count()).toBe(0);
    expect(await listen.getAttribute('aria-pressed')).toBe('false');
    expect(await isBusy(page)).toBe(false);
    const before = (await playedOn(page)).length;
    await page.waitForTimeout(400);
    expect(await playedOn(page)).toHaveLength(before);
    await page.close();
  });

  it('goes on from the sentence that is tapped, once it is switched on', async () => {
    const page = await open('barn/how-much/');
    const last = page.locator('[data-read]:visible').last();
    const text = (await last.innerText()).trim();
    await last.tap();
    expect(await playedOn(page)).toEqual([]);
    await page.locator('[data-listen]').tap();
    await last.tap();
    await page.waitForFunction(() => document.documentElement.dataset['busy'] === undefined);
    expect((await playedOn(page)).at(-1)).toBe(fileOf('en', text));
    await page.close();
  });

  it('stops when the words change to the other level', async () => {
    const page = await open('es/barn/how-much/');
    await page.locator('[data-listen]').tap();
    await page.locator('[data-level-switch]').tap();
    expect(await isBusy(page)).toBe(false);
    await page.close();
  });

  it('reads what comes up after a tap at once, while it is switched on, and else not', async () => {
    const path = boardPaths().find((one) => /^barn\/do\/[^/]+\/$/.test(one)) ?? '';
    const page = await open(path);
    await page.locator('#doing[data-awake]').waitFor();
    const says = JSON.parse((await page.locator('#board-says').textContent()) ?? '[]') as string[];
    const shown = new Set(await seenNow(page));
    const text = says.find((one) => !shown.has(one)) ?? '';
    const bringUp = (words: string) =>
      page.evaluate((told) => {
        const line = document.createElement('p');
        line.dataset['read'] = '';
        line.textContent = told;
        document.querySelector('#doing')?.append(line);
      }, words);
    await bringUp(text);
    await page.waitForTimeout(200);
    expect(await playedOn(page)).toEqual([]);
    await page.evaluate(() => document.querySelector('#doing > p:last-child')?.remove());
    await page.locator('[data-listen]').tap();
    await page.waitForFunction(() => document.documentElement.dataset['busy'] === undefined);
    const before = (await playedOn(page)).length;
    await bringUp(text);
    await page.waitForFunction((many) => (window as unknown as { played: string[] }).played.length > many, before); // prettier-ignore
    expect((await playedOn(page)).slice(before)).toEqual([fileOf('en', text)]);
    await page.close();
  });

  it('has a volume in three steps, told by name, kept for the child and back in the middle for the next', async () => {
    const page = await open('barn/how-much/');
    const volume = page.locator('[data-volume]');
    const state = async () => [await volume.getAttribute('data-volume'), await volume.getAttribute('aria-label')];
    expect(await state()).toEqual(['middle', 'Volume: medium']);
    await page.locator('[data-listen]').tap();
    const middle = await volumeOf(page);
    await volume.tap();
    expect(await state()).toEqual(['loud', 'Volume: loud']);
    expect(await volumeOf(page)).toBe(1);
    await page.goto(new URL('es/barn/whose-milk/', visit.desk.url).href);
    await volume.waitFor();
    expect(await state()).toEqual(['loud', 'Volumen: alto']);
    await page.locator('[data-listen]').tap();
    await page.evaluate(() => document.dispatchEvent(new CustomEvent('board:forget')));
    expect((await state())[0]).toBe('middle');
    expect(await volumeOf(page)).toBe(middle);
    expect(await isBusy(page)).toBe(false);
    await volume.tap();
    await volume.tap();
    expect((await state())[0]).toBe('quiet');
    expect(await volumeOf(page)).toBeLessThan(middle);
    await page.close();
  }); // prettier-ignore
});

describe('a board without sounds', () => {
  it('shows no Listen button and no volume', async () => {
    const page = await context.newPage();
    await page.route('**/barn/sound/*.json', (route) => route.fulfill({ json: {} }));
    await page.goto(new URL('barn/how-much/', visit.desk.url).href, { waitUntil: 'networkidle' });
    expect(await page.locator('[data-listen]:visible, [data-volume]:visible').count()).toBe(0);
    await page.close();
  });
});
