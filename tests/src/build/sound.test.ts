// The sounds of the board, with a stand-in for the voice: what is made, kept, left out, and told.
import { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { soundKey } from '../../../shared/board/soundKey.ts';
import { build } from '../../../src/build/build.ts';
import { makeSounds } from '../../../src/build/sound.ts';
import { readPage, soundTexts } from '../../../src/build/soundTexts.ts';
import { findSpeaker, hasVoice, type Speaker } from '../../../src/build/soundVoice.ts';
import { ownFolder, smallWorld, writeFiles } from './smallFarm.ts';
import { heard, listOf, page, SITE, soundWorld } from './soundWorld.ts';

describe('the texts of a page', () => {
  it('are what is marked, at either level, hidden or not, and what it may say after a tap', () => {
    expect(readPage(SITE['barn/how-much/index.html'])).toEqual({
      lang: 'en',
      title: 'How much?',
      texts: new Set(['How much?', '16 cups', 'It is much.', 'It is plenty.', 'Yes!', 'It takes more.']),
    });
  });

  it('come from the board alone, each once, with the page that has it first', () => {
    const { given } = soundWorld({ ...SITE, 'barn/what/index.html': page('en', '<p data-read>Yes!</p>') });
    const { texts, clashes } = soundTexts(given.dist);
    expect(clashes).toEqual([]);
    expect(texts.map(({ lang, text }) => `${lang} ${text}`).sort()).toHaveLength(9);
    expect(texts.find(({ text }) => text === 'Yes!')).toMatchObject({ path: 'barn/how-much/', pages: 2 });
  });

  // Found by trying a million texts: these two have one key.
  it('are both left out where two have one key, since a page would play one for the other', () => {
    const pair = ['Tap pail 64450.', 'Tap pail 1116862.'];
    expect(new Set(pair.map((text) => soundKey('en', text))).size).toBe(1);
    const body = [...pair, 'Good.'].map((text) => `<p data-read>${text}</p>`).join('');
    const { given } = soundWorld({
      'barn/index.html': page('en', body),
      'barn/a/index.html': page('en', body),
    });
    const { texts, clashes } = soundTexts(given.dist);
    expect(texts.map(({ text }) => text)).toEqual(['Good.']);
    expect(clashes.toSorted()).toEqual(pair.toSorted());
  });
});

describe('the sounds', () => {
  it('are made for every text, under the key of the text, in a list for each language', async () => {
    const { given } = soundWorld();
    const { said, notes } = await makeSounds(given);
    expect(listOf(given, 'en').size).toBe(8);
    expect(heard(given, 'en', 'Later.')).toBe('en: Later.');
    expect(heard(given, 'en', 'It takes more.')).toBe('en: It takes more.');
    expect(heard(given, 'es', '¿Qué quieres saber?')).toBe('es: ¿Qué quieres saber?');
    expect(heard(given, 'en', 'Not of the board.')).toBeNull();
    expect(said[0]).toMatch(/^9 texts of the board can be heard; 9 spoken anew; 1 MB/);
    expect(notes).toEqual([]);
  });

  it('are kept, so that only a new text is spoken', async () => {
    const { given, spoken } = soundWorld();
    await makeSounds(given);
    spoken.length = 0;
    writeFiles(given.dist, { 'es/barn/index.html': page('es', '<h1 data-read>¿Qué más?</h1>') });
    const { said } = await makeSounds(given);
    expect(spoken).toEqual(['¿Qué más?']);
    expect(said[0]).toContain('1 spoken anew');
    expect([...listOf(given, 'es').keys()]).toEqual([soundKey('es', '¿Qué más?')]);
    expect(readdirSync(join(given.dist, 'barn/sound/es'))).toHaveLength(1);
  });

  it('go from the cache when no build has used them for a quarter of a year', async () => {
    const { given } = soundWorld();
    await makeSounds(given);
    const files = readdirSync(given.cache).filter((name) => name.endsWith('.opus'));
    const long = (Date.now() - 100 * 24 * 3600 * 1000) / 1000;
    for (const name of files) utimesSync(join(given.cache, name), long, long);
    writeFiles(given.dist, { 'es/barn/index.html': page('es', '<h1 data-read>¿Qué más?</h1>') });
    await makeSounds(given);
    const left = readdirSync(given.cache).filter((name) => name.endsWith('.opus'));
    // The Spanish heading that is gone, and nothing that is in use.
    expect(left).toHaveLength(files.length);
    expect(left.filter((name) => !files.includes(name))).toHaveLength(1);
  });

  it('do without a text that could not be spoken, and tell which and why', async () => {
    const { given } = soundWorld({ 'barn/index.html': page('en', '<p data-read>Good.</p><p data-read>unspeakable</p>') });
    const { notes } = await makeSounds(given);
    expect(heard(given, 'en', 'Good.')).toBe('en: Good.');
    expect(heard(given, 'en', 'unspeakable')).toBeNull();
    expect(notes).toEqual(['"unspeakable" could not be spoken and stays silent: espeak-ng: ended with 1']);
    expect(readdirSync(given.cache).filter((name) => /\.\d+$/.test(name))).toEqual([]);
  }); // prettier-ignore

  it('are there for two texts that are said alike and are spoken at the same moment', async () => {
    const { given } = soundWorld({
      'barn/index.html': page('en', '<p data-read>1/2 cup</p><p data-read>½ cup</p>'),
    });
    const slow = (lang: string, text: string) => ({
      manner: lang,
      end: 'opus',
      speak: async (_: string, file: string) => {
        writeFileSync(file, text);
        await new Promise((done) => setTimeout(done, 20));
      },
    });
    const { notes } = await makeSounds({ ...given, speaker: { packedBy: 'nothing', voiceOf: (lang) => slow(lang, 'half a cup') } }); // prettier-ignore
    expect(notes).toEqual([]);
    expect(heard(given, 'en', '1/2 cup')).toBe('half a cup');
    expect(heard(given, 'en', '½ cup')).toBe('half a cup');
  });

  it('are none where there is no voice, said in one line; the lists are there and empty', async () => {
    const { given } = soundWorld();
    const { said } = await makeSounds({ ...given, speaker: null });
    expect(said).toEqual(['the board stays silent and shows no Listen button: there is none.']);
    expect(listOf(given, 'en').size + listOf(given, 'es').size).toBe(0);
  });

  it('tell of a language that has no voice', async () => {
    const { given } = soundWorld();
    const english: Speaker = { packedBy: 'nothing', voiceOf: (lang) => (lang === 'en' ? given.speaker?.voiceOf(lang) ?? null : null) }; // prettier-ignore
    const { said } = await makeSounds({ ...given, speaker: english });
    expect(said.at(-1)).toBe('espeak-ng has no voice for the language "es".');
    expect(listOf(given, 'es').size).toBe(0);
  });

  it('tell of their size where nothing packs them', async () => {
    const { given } = soundWorld();
    const { said } = await makeSounds({ ...given, speaker: { ...given.speaker, packedBy: null } as Speaker });
    expect(said.at(-1)).toContain('nothing here to pack the sounds with');
  });
});

describe('a build', () => {
  it('takes a farm folder with recordings in it, and builds again when one is added', async () => {
    const { world: small, heard: told } = smallWorld(ownFolder());
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: false });
    writeFiles(small.places.farm, { 'recordings/en/welcome.jtx3bbw5.mp3': 'her voice' });
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: false });
    expect(await build(small, { unlessFresh: true })).toMatchObject({ ok: true, fresh: true });
    expect(told.complaints).toEqual([]);
  });

  it('hands on what was said of the sounds, and notes what to look at', async () => {
    const { world: small, heard: told } = smallWorld(ownFolder());
    const making = {
      ...small,
      makePages: async (env: NodeJS.ProcessEnv) => {
        await small.makePages(env);
        return { code: 0, said: 'page built\nListen: 9 texts\nListen, note: a.mp3 is out of date\n' };
      },
    };
    await build(making);
    expect(told.said).toContain('Listen: 9 texts');
    expect(told.said).toContain('  Note: a.mp3 is out of date');
    expect(told.said.at(-1)).toBe('Done: 2 pages, 1 note above.');
  });
});

describe('the voice of this machine', () => {
  it('is none where the PATH has none, or where nobody wants it', async () => {
    expect(hasVoice({ PATH: '/nowhere' })).toBe(false);
    expect(await findSpeaker({ PATH: '/nowhere' })).toBeNull();
    expect(await findSpeaker({ ...process.env, PAILSIDE_SILENT: '1' })).toBeNull();
  });

  it('speaks into a file that holds sound', async ({ skip }) => {
    const speaker = await findSpeaker(process.env);
    if (speaker === null) return skip('espeak-ng is not on this machine');
    for (const lang of ['en', 'es']) {
      const voice = speaker.voiceOf(lang);
      if (voice === null) throw new Error(`There is no voice for ${lang}.`);
      const file = join(ownFolder(), `a.${voice.end}`);
      await voice.speak('16', file);
      expect(readFileSync(file).subarray(0, 4).toString('latin1')).toMatch(/^(?:OggS|RIFF|ID3|\xff\xfb)/);
      expect(readFileSync(file).length).toBeGreaterThan(1000);
      expect(existsSync(`${file}.wav`)).toBe(false);
    }
    expect(speaker.voiceOf('xx')).toBeNull();
  });
});
